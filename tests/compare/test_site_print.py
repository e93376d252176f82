"""A set printed with mark-ups from site: what it says of itself and of what was found."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import pytest
from small_issues import JOB, edited, issues

from asfitted.layout.sheet_layout import Text
from asfitted.pipeline import changed_sheets, check_job, lay_out_job

if TYPE_CHECKING:
    from collections.abc import Sequence
    from pathlib import Path

    from asfitted.layout.sheet_layout import Item, SheetLayout

SITE = """\
asfitted-site: 1
for: J2801 P01
by: C. Person
date: 2026-10-20
marks:
  - {tag: S1, moved to: "wall A, 3.0 m along, 1.2 m up"}
  - {tag: W03, measured: 12.5 m}
  - {tag: CU1, note: lid cracked, photo: p2.jpg}
"""
STANDING = (
    "For information: P01 marked up on site. What was found otherwise holds as on this print, all "
    "else as issued in P01."
)
Set = tuple["SheetLayout", ...]


@pytest.fixture(scope="module")
def site_print(tmp_path_factory: pytest.TempPathFactory) -> tuple[Set, set[str]]:
    """Return the set with mark-ups laid over it, and the numbers of the sheets that changed."""
    folder = tmp_path_factory.mktemp("site")
    job, site = folder / "job.yaml", folder / "site.yaml"
    job.write_text(JOB, encoding="utf-8")
    site.write_text(SITE, encoding="utf-8")
    checked = check_job(job, site=site)
    numbers = {c.sheet.number for c in changed_sheets(checked) if c.is_concerned}
    return lay_out_job(checked), numbers


def words_of(item: Item) -> str:
    return " ".join(part.text for part in item.parts if isinstance(part, Text))


def words(sheets: Sequence[SheetLayout], kind: str) -> str:
    return " ".join(words_of(i) for s in sheets if s.key.startswith(kind) for i in s.items)


def listed(sheets: Set) -> dict[str, Item]:
    """Return the rows of the list of changed sheets, by the number of the sheet."""
    return {
        item.link: item
        for sheet in sheets
        if sheet.key.startswith("record-of-change")
        for item in sheet.items
        if item.ident.startswith("changed-sheets:") and item.link
    }


def clouded(sheets: Set) -> set[str]:
    return {s.number for s in sheets if any(i.ident.endswith(":cloud") for i in s.items)}


def test_the_record_lists_every_changed_sheet_and_leads_to_it(
    site_print: tuple[Set, set[str]],
) -> None:
    sheets, changed = site_print
    rows = listed(sheets)
    assert set(rows) == changed
    by_number = {sheet.number: sheet for sheet in sheets}
    for number, row in rows.items():
        said = words_of(row)
        assert said.startswith(number)
        assert by_number[number].title.split(",")[0] in said


def test_the_record_says_which_of_them_carry_clouds(site_print: tuple[Set, set[str]]) -> None:
    sheets, _ = site_print
    rows = {number: words_of(row) for number, row in listed(sheets).items()}
    assert clouded(sheets)
    assert {n for n, said in rows.items() if re.search(r" clouds\b", said)} == clouded(sheets)
    sections = {sheet.number: sheet.section for sheet in sheets}
    bare = {sections[n] for n, said in rows.items() if "changed, no cloud" in said}
    assert "Calculations" in bare
    assert "Clouds stand on drawings and schedules only" in words(sheets, "record-of-change")


def test_a_print_from_site_supersedes_nothing(site_print: tuple[Set, set[str]]) -> None:
    sheets, _ = site_print
    for kind in ("cover", "drawing-list"):
        assert STANDING in words(sheets, kind)
    assert "destroy" not in words(sheets, "drawing-list")


def test_a_reissue_still_supersedes_what_was_before(tmp_path: Path) -> None:
    newer = edited(("revision: P01", "revision: P02"), ("A, 2.0 m along", "A, 3.0 m along"))
    sheets = lay_out_job(issues(tmp_path, newer))
    assert "destroy it" in words(sheets, "drawing-list")
    assert "stay in force" not in words(sheets, "cover") + words(sheets, "drawing-list")


def test_a_sheet_that_did_not_change_says_so_in_its_row(site_print: tuple[Set, set[str]]) -> None:
    sheets, changed = site_print
    seen = {True: 0, False: 0}
    for sheet in sheets:
        if sheet.section in {"Front", "Handover"}:
            continue
        for item in sheet.items:
            if item.ident in {"title-block:revision", "title-block:revision:P01-S"}:
                is_changed = sheet.number in changed
                seen[is_changed] += 1
                assert ("no change on this sheet" in words_of(item)) is not is_changed
                assert ("As marked up on site" in words_of(item)) is is_changed
    assert all(seen.values())


def test_every_sheet_says_how_many_there_are(site_print: tuple[Set, set[str]]) -> None:
    sheets, _ = site_print
    for sheet in sheets:
        (field,) = [i for i in sheet.items if i.ident == "title-block:revision, sheet"]
        assert words_of(field).endswith((f" of {len(sheets)}", f"/{len(sheets)}"))


def test_damage_found_on_site_is_outstanding_and_asks_for_action(
    site_print: tuple[Set, set[str]],
) -> None:
    sheets, _ = site_print
    rows = [
        words_of(item)
        for sheet in sheets
        if sheet.key.startswith("outstanding")
        for item in sheet.items
        if item.ident.startswith("site-marks:")
    ]
    damage = next(row for row in rows if row.startswith("CU1 "))
    assert "Lid cracked (C. Person, 2026-10-20; photograph p2.jpg)" in damage
    assert "put it right" in damage
    moved = next(row for row in rows if row.startswith("S1 "))
    assert "Drawn here as found" in moved
    assert rows.index(damage) < rows.index(moved), "what no drawing shows comes first"


MEANING = "length as measured on site, way not surveyed"


def test_a_cable_of_which_only_the_length_was_found_is_marked_where_it_is_drawn(
    site_print: tuple[Set, set[str]],
) -> None:
    sheets, changed = site_print
    for kind in ("elevation", "containment-strips", "containment-sections"):
        drawn = [s for s in sheets if s.key.startswith(kind) and "W03‡" in words([s], kind)]
        assert drawn, kind
        for sheet in drawn:
            notes = words([s for s in sheets if s.key.startswith(kind)], kind)
            assert MEANING in notes, sheet.key
            assert sheet.number in changed, sheet.key
        assert "W01‡" not in words(sheets, kind)
    assert "way not surveyed" in words(sheets, "cable-schedule")
    assert "way not surveyed: the legs above are as designed" in words(sheets, "route-brief")
    rows = words(sheets, "outstanding")
    assert "Survey its way and mark it up" in rows


def test_no_mark_stands_without_its_meaning_nor_on_a_set_from_the_desk(
    site_print: tuple[Set, set[str]], tmp_path: Path
) -> None:
    for sheet in site_print[0]:
        said = words([sheet], "")
        assert "‡" not in said or MEANING in said, sheet.key
    job = tmp_path / "job.yaml"
    job.write_text(JOB, encoding="utf-8")
    assert "‡" not in words(lay_out_job(check_job(job)), "")
