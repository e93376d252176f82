"""What a reader of the printed pack needs, where nothing can be clicked on.

The figures beside the checks are those of specs/pottery-studio.yaml: X1 to X3 are socket-outlets
with an RCD of their own on ways 3TP to 5TP of DB1, Q4 is the starter of the extract fan on 8TP, and
DB2 is fed from 9TP.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import pytest
from sheet_words import items_of, said, words_by_ident

from asfitted.explain.sheet_rows import circuit_blocks
from asfitted.layout.document.edition_words import HOW_KNOWN
from asfitted.layout.document.own_levers import grouped, own_levers
from asfitted.layout.sheet_layout import READERS

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import SheetLayout
    from asfitted.layout.sheet_model import Model

    Sheets = dict[str, tuple[SheetLayout, ...]]
    Models = dict[str, Model]

JOBS = ("pottery-studio", "community-shed", "shop-cctv")
STUDIO = "pottery-studio"
#: Words of the program, which no electrician uses. The attached job file is named on the cover.
OURS = re.compile(
    r"\b(the tool|drawing program|this program|device phrase|the spec gives|the spec does|"
    r"the spec names|see the words)\b"
)
_SHEETS = re.compile(r"sheets? (\d+(?:(?:, | to | and )\d+)*)(?P<after>.{0,20})")


def every_word(sheets: tuple[SheetLayout, ...], key: str = "") -> str:
    return " ".join(said(item) for _, item in items_of(sheets, key))


def test_each_thing_with_a_lever_of_its_own_has_a_row(demo_sheets: Sheets) -> None:
    rows = words_by_ident(demo_sheets[STUDIO], "client-summary")
    assert rows["levers:X1"] == "Drying cabinet socket-outlet lever on X1 itself way 3TP at DB1"
    assert rows["levers:Q4"] == "Extract fan reset button of the starter Q4 way 8TP at DB1"
    assert rows["levers:DB2"] == "Everything fed from DB2 main switch of DB2 way 9TP at DB1"
    assert {ident for ident in rows if re.fullmatch(r"levers:[A-Z].*", ident)} == {
        f"levers:{tag}" for tag in ("X1", "X2", "X3", "Q4", "DB2")
    }


def test_many_levers_are_told_in_groups(demo_models: Models) -> None:
    lines = grouped(own_levers(demo_models[STUDIO].installation))
    assert (
        "X1, X2, X3: a lever on the socket-outlet itself; then ways 3TP, 4TP, 5TP at DB1." in lines
    )
    assert len(lines) == 3


def test_the_client_finds_the_wall_and_writes_the_dates(demo_sheets: Sheets) -> None:
    told = every_word(demo_sheets[STUDIO], "client-summary")
    assert "wall D of the making floor (on your right as you stand inside and face the" in told
    assert re.search(r"Date of the certificate: _{10,} +Next due: _{10,}", told)
    assert "3 years from the date on the certificate" in told


def test_every_circuit_is_in_the_index_with_the_sheets_it_is_on(demo_sheets: Sheets) -> None:
    sheets = demo_sheets[STUDIO]
    index = {
        item.ident.removeprefix("calculation-index:"): item
        for _, item in items_of(sheets, "calculation-keys")
        if item.ident.startswith("calculation-index:") and item.link
    }
    on: dict[str, list[str]] = {}
    for sheet, item in items_of(sheets, "calculations"):
        row = re.fullmatch(r"calculations:(.+/.+?):(\d+|continued)", item.ident)
        if row:
            on.setdefault(row[1], []).append(sheet.number)
    assert set(index) == set(on)
    for tag, numbers in on.items():
        distinct = list(dict.fromkeys(numbers))
        assert said(index[tag]).endswith(" " + ", ".join(distinct)), tag
        assert index[tag].link.startswith(f"{distinct[0]}#")


def test_calculations_name_their_key_sheets_by_number(demo_sheets: Sheets) -> None:
    sheets = demo_sheets[STUDIO]
    keys = [s.number for s in sheets if s.key.startswith("calculation-keys")]
    words = f"sheets {keys[0]} to {keys[-1]}" if len(keys) > 1 else f"sheet {keys[0]}"
    for sheet in sheets:
        if sheet.key.startswith("calculations"):
            assert words in every_word((sheet,)), sheet.key
    assert "first of these sheets" not in every_word(sheets, "calculations")


def test_a_limit_of_zs_tells_its_table(demo_models: Models) -> None:
    """BS EN 60898-1 Table 2 and BS 7671 Figs 3A4 to 3A6: where the current of a breaker stands."""
    model = demo_models[STUDIO]
    blocks, _ = circuit_blocks(model.installation, model.results)
    limits = [row for block in blocks for row in block.rows if row[0] == "Zs max"]
    assert limits
    for row in limits:
        assert row[2].splitlines()[1:] == ["BS 7671 Figs 3A4 to 3A6", "BS EN 60898-1 Table 2"]


@pytest.mark.parametrize("job", ["pottery-studio", "community-shed"])
def test_every_mark_of_a_source_is_explained(
    demo_models: Models, demo_sheets: Sheets, job: str
) -> None:
    model = demo_models[job]
    _, sources = circuit_blocks(model.installation, model.results)
    marks = {
        found for _, words in sources for found in re.findall(r"\((seen|memory|derived)\b", words)
    }
    assert marks
    assert marks <= {mark for mark, _ in HOW_KNOWN}
    told = every_word(demo_sheets[job], "calculation-keys")
    for mark, meaning in HOW_KNOWN:
        assert f"{mark} {meaning}" in told


@pytest.mark.parametrize("job", JOBS)
def test_no_source_claims_an_edition_that_was_not_read(demo_sheets: Sheets, job: str) -> None:
    """Figures are known from books before A4, so no table of Appendix 4 is "A4:2026"."""
    told = every_word(demo_sheets[job])
    assert not re.search(r"A4:2026 Appendix", told)
    if any(sheet.key.startswith("description") for sheet in demo_sheets[job]):
        assert "carry the numbers of the 2018 book" in told


@pytest.mark.parametrize("job", JOBS)
def test_no_reader_is_sent_to_a_sheet_that_the_pack_lacks(demo_sheets: Sheets, job: str) -> None:
    """Running text; the overview, a drawing, names the sheet of every diagram."""
    sheets = demo_sheets[job]
    checked = 0
    for reader in READERS:
        own = {sheet.number for sheet in sheets if reader in sheet.readers}
        for sheet, item in items_of(sheets, ""):
            if reader not in sheet.readers or sheet.key == "distribution-overview":
                continue
            for found in _SHEETS.finditer(said(item)):
                if not found["after"].startswith(" of the full set"):
                    checked += 1
                    numbers = set(re.findall(r"\d+", found[1]))
                    assert numbers <= own, (reader, sheet.key, said(item))
    assert checked


@pytest.mark.parametrize("job", JOBS)
def test_the_drawing_list_says_in_whose_pack_a_sheet_is(demo_sheets: Sheets, job: str) -> None:
    sheets = demo_sheets[job]
    by_number = {sheet.number: sheet for sheet in sheets}
    rows = [item for _, item in items_of(sheets, "drawing-list") if item.link]
    assert rows
    for row in rows:
        readers = by_number[row.link].readers
        told = ", ".join(r for r in READERS if r in readers).replace("second-", "")
        assert said(row).endswith(" all" if len(readers) == len(READERS) else told)
    assert "leads nowhere" not in every_word(sheets, "drawing-list")


def test_the_drawing_list_stays_short(demo_sheets: Sheets) -> None:
    assert sum(sheet.key.startswith("drawing-list") for sheet in demo_sheets[STUDIO]) <= 2


def test_the_zero_of_an_outer_face_is_labelled_as_the_note_counts(demo_sheets: Sheets) -> None:
    sheets = [s for s in demo_sheets[STUDIO] if s.key.endswith("/outside")]
    assert sheets
    for sheet in sheets:
        told = every_word((sheet,))
        assert "outer corner" not in told
        assert len(re.findall(r"inner face of wall [BD]", told)) == 2
        assert "Lengths count from 0, the inner face of the wall at the left end" in told


def test_plan_and_elevation_say_the_same_of_the_thickness_of_walls(demo_sheets: Sheets) -> None:
    told = every_word(demo_sheets[STUDIO], "key-plan")
    assert re.search(r"drawn 100 mm thick, thickness not recorded", told)
    assert "nominal" not in told


@pytest.mark.parametrize("job", JOBS)
def test_paper_speaks_as_electricians_do(demo_sheets: Sheets, job: str) -> None:
    assert [found[0] for found in OURS.finditer(every_word(demo_sheets[job]))] == []


def test_a_starter_is_isolated_and_looked_at(demo_sheets: Sheets) -> None:
    told = every_word(demo_sheets[STUDIO], "operation-and-maintenance")
    assert "Extract fan: motor starter Q4 wall D, +1500 Q3, wall D, +1500 DB1/8TP" in told
    assert "Motor starters, setting of the overload: Q4 3.5 A" in told


def test_what_comes_with_the_job_is_new(demo_sheets: Sheets) -> None:
    rows = words_by_ident(demo_sheets[STUDIO], "equipment-schedule")
    cabinet = next(words for words in rows.values() if words.startswith("CAB1 "))
    assert cabinet.endswith(" new")


def test_a_place_reads_alike_on_schedule_and_elevation(demo_sheets: Sheets) -> None:
    """LS1 stands 1.75 m along wall A; the elevation says 1750."""
    rows = words_by_ident(demo_sheets[STUDIO], "equipment-schedule")
    assert any(words.startswith("LS1 ") and "1.75 m" in words for words in rows.values())
    assert "1750 LS1" in every_word(demo_sheets[STUDIO], "elevation/A")


def test_the_pieces_of_a_run_are_on_its_sheet_or_named_at_both_ends(demo_sheets: Sheets) -> None:
    sheets = [s for s in demo_sheets[STUDIO] if s.key.startswith("containment-strips")]
    strips: dict[str, set[str]] = {}
    tables: dict[str, list[tuple[str, str]]] = {}
    facts: dict[str, str] = {}
    for sheet, item in items_of(sheets, ""):
        kind, _, rest = item.ident.partition(":")
        tag = rest.partition(":")[0]
        if item.ident.endswith(":title") and kind == "strip":
            strips.setdefault(tag, set()).add(sheet.number)
        if item.ident.endswith(":fact:1"):
            facts[tag] = said(item)
        if item.ident.endswith(":caption"):
            tables.setdefault(tag, []).append((sheet.number, said(item)))
    assert set(strips) == set(tables) == set(facts)
    away = 0
    for tag, parts in tables.items():
        if {number for number, _ in parts} != strips[tag]:
            away += 1
            assert all(number in facts[tag] for number, _ in parts), tag
        for number, caption in parts:
            if number not in strips[tag]:
                assert caption == f"Pieces of {tag}; strip: sheet {', '.join(strips[tag])}"
    assert away < len(tables), "most tables stand by their strip"


@pytest.mark.parametrize("job", ["pottery-studio", "community-shed"])
def test_every_sheet_of_strips_has_a_heading(demo_sheets: Sheets, job: str) -> None:
    sheets = [s for s in demo_sheets[job] if s.key.startswith("containment-strips")]
    assert sheets
    for sheet in sheets:
        idents = [item.ident for item in sheet.items]
        assert any(i.endswith(":title") or i == "tables:heading" for i in idents), sheet.key


def test_a_short_table_of_the_plans_takes_no_sheet_of_its_own(demo_sheets: Sheets) -> None:
    sheets = demo_sheets[STUDIO]
    assert not [sheet for sheet in sheets if sheet.key.startswith("plan-tables/out")]
    schedules = next(sheet for sheet in sheets if sheet.key == "elevation/schedules")
    assert "Things out in the room" in every_word((schedules,))
    assert f"tables on sheet {schedules.number}" in every_word(sheets, "key-plan")
