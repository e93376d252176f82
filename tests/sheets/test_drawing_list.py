"""The drawing list: no sheet twice, none left out, a row for a series, revisions as they are."""

from __future__ import annotations

import re
import sys
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from sheet_words import items_of, said, words_by_ident

from asfitted.layout.sheet_model import SheetPlan
from asfitted.pipeline import lay_out_job
from asfitted.sheets._sheet_series import numbers_of, series_of

sys.path.insert(0, str(Path(__file__).parent.parent / "compare"))  # for small_issues.py

from small_issues import edited, issues

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import SheetLayout

    Sheets = tuple[SheetLayout, ...]

JOBS = ("pottery-studio", "community-shed", "shop-cctv")
PACK = re.compile(r" (?:all|(?:client|electrician|inspector)(?:, (?:electrician|inspector))*)$")


def planned(*titles: str, room: str = "") -> list[SheetPlan]:
    return [
        SheetPlan(f"elevation/{room} {t[-1]}" if room else t, t, "A3", "Drawings") for t in titles
    ]


def rows_of(sheets: Sheets) -> list[tuple[range, str]]:
    """Return the sheets of each row, by number, with what the row says."""
    rows = []
    for ident, words in words_by_ident(sheets, "drawing-list").items():
        told = re.match(r"(\d+)(?: to (\d+))? (\d+) ", words)
        if ident.startswith("sheets:") and told:
            first, last = int(told[1]), int(told[2] or told[1])
            assert int(told[3]) == last - first + 1, words
            rows.append((range(first, last + 1), words))
    return rows


@pytest.mark.parametrize("job", JOBS)
def test_each_sheet_of_the_set_is_in_one_row(demo_sheets: dict[str, Sheets], job: str) -> None:
    sheets = demo_sheets[job]
    listed = [number for row, _ in rows_of(sheets) for number in row]
    assert listed == list(range(1, len(sheets) + 1))


@pytest.mark.parametrize("job", JOBS)
def test_a_row_leads_to_the_first_of_its_series(demo_sheets: dict[str, Sheets], job: str) -> None:
    sheets = demo_sheets[job]
    rows = [i for _, i in items_of(sheets, "drawing-list") if i.link]
    assert [int(row.link) for row in rows] == [numbers[0] for numbers, _ in rows_of(sheets)]
    by_number = {sheet.number: sheet for sheet in sheets}
    assert [row.ident for row in rows] == [f"sheets:{by_number[row.link].key}" for row in rows]


@pytest.mark.parametrize("job", JOBS)
def test_sheets_of_one_row_have_one_title_but_for_their_parts(
    demo_sheets: dict[str, Sheets], job: str
) -> None:
    sheets = demo_sheets[job]
    for numbers, words in rows_of(sheets):
        titles = {
            re.sub(r",? (part )?\d+ of \d+$| part \d+$", "", sheets[number - 1].title)
            for number in numbers
        }
        assert len(titles) == 1, titles
        assert titles.pop() in words


def test_sheets_that_stand_alone_keep_their_row() -> None:
    alone = planned("Key plan", "Door chart DB1", "Cut list, part 1 of 1")
    assert [series.title for series in series_of(alone)] == [
        "Key plan",
        "Door chart DB1",
        "Cut list, part 1 of 1",
    ]


def test_walls_are_told_by_room_where_there_are_rooms() -> None:
    plant = planned("Elevation A", "Elevation B", "Elevation C", room="Plant")
    outside = SheetPlan(
        "elevation/Plant C/outside", "Elevation C, outside face: Plant", "A3", "Drawings"
    )
    store = planned("Elevation A", room="Store")
    together = series_of([*plant, outside, *store])
    assert [(s.title, len(s.sheets)) for s in together] == [
        ("Elevations A to C, C outside: Plant", 4),
        ("Elevation A", 1),
    ]
    assert [len(s.sheets) for s in series_of(plant)] == [1, 1, 1], "one room: each wall its row"


def test_the_numbered_parts_of_one_wall_are_told_as_one_wall() -> None:
    hall = [
        SheetPlan("elevation/Hall A/1", "Elevation A, part 1 of 2: Hall", "A3", "Drawings"),
        SheetPlan("elevation/Hall A/2", "Elevation A, part 2 of 2: Hall", "A3", "Drawings"),
        SheetPlan("elevation/Hall B", "Elevation B: Hall", "A3", "Drawings"),
    ]
    store = planned("Elevation A", room="Store")
    assert series_of([*hall, *store])[0].title == "Elevations A, B: Hall"


def test_runs_of_numbers_are_told_from_first_to_last() -> None:
    every = list("abcdefg")
    assert numbers_of(["a", "b", "c", "e", "f"], every) == "[[a]] to [[c]], [[e]], [[f]]"


@pytest.fixture(scope="module")
def reissued(tmp_path_factory: pytest.TempPathFactory) -> Sheets:
    newer = edited(("revision: P01", "revision: P02"), ("load: 2 kW", "load: 2.2 kW"))
    return lay_out_job(issues(tmp_path_factory.mktemp("reissue"), newer))


def test_a_reissue_names_the_sheets_that_it_changed(reissued: Sheets) -> None:
    """Beside the record of change, which lists the same sheets one by one."""
    record = {
        int(i.link)
        for _, i in items_of(reissued, "record-of-change")
        if i.link and "changed-sheets" in i.ident
    }
    assert record
    seen = set()
    for numbers, words in rows_of(reissued):
        told = PACK.sub("", words.partition(" P02 ")[2])
        section = reissued[numbers[0] - 1].section
        changed = record & set(numbers)
        if section in {"Front", "Handover"}:
            wanted = "each issue"
        elif not changed:
            wanted = "no"
        elif changed == set(numbers):
            wanted = "yes" if len(numbers) == 1 else "all"
        else:
            assert {int(n) for n in re.findall(r"\d+", told)} <= changed, words
            seen.add("numbers")
            continue
        assert told == wanted, words
        seen.add(wanted)
    assert {"each issue", "no", "yes"} <= seen


def test_without_an_issue_before_nothing_is_said_of_changes(
    demo_sheets: dict[str, Sheets],
) -> None:
    heads = {said(i) for _, i in items_of(demo_sheets["community-shed"], "drawing-list")}
    assert "Sheet Count Title Paper Revision In the pack of" in heads


def test_the_record_says_whose_packs_hold_each_sheet_that_changed(reissued: Sheets) -> None:
    """So that a row which leads nowhere in one reader's pack is no riddle."""
    by_number = {sheet.number: sheet for sheet in reissued}
    seen = set()
    for _, item in items_of(reissued, "record-of-change"):
        if item.link and "changed-sheets" in item.ident:
            readers = by_number[item.link].readers
            told = ", ".join(readers).replace("-", " ") if len(readers) < 3 else "every reader"
            assert said(item).endswith(told)
            seen.add(told)
    assert {"inspector", "every reader"} <= seen
    assert "not in this pack" in " ".join(words_by_ident(reissued, "record-of-change").values())
