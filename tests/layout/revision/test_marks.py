"""Marks of a revision on laid-out sheets: what is clouded, what is not, and the revision rows."""

from __future__ import annotations

from dataclasses import replace

from asfitted.compare.changes import Change, Changes, Effect, Issue
from asfitted.geometry import Point
from asfitted.layout.frame import frame_items
from asfitted.layout.revision.ink import item_box
from asfitted.layout.revision.marks import sheet_changes, with_clouds
from asfitted.layout.sheet_layout import Item, SheetLayout, SymbolUse, Text
from asfitted.layout.sheet_model import Model
from asfitted.layout.title_block import TitleFacts, revision_items, title_block_box
from asfitted.resolve.installation import Installation, Job
from asfitted.resolve.job_record import Revision

JOB = Job(
    number="J1",
    title="A job",
    client="A client",
    site="A site",
    installer="An installer",
    phone="not recorded",
    designer="D. Signer",
    checker="not recorded",
    edition="BS 7671:2018+A4:2026",
    date="2026-11-20",
    revision="P02",
    status="For construction",
    description="",
)
ISSUE = Issue("J1", "A job", "P01", "For construction", "2026-10-01")


def changed(*changes: tuple[str, str]) -> Changes:
    made = tuple(
        Change(kind, tag, "point", "", "", (Effect("length", "W01", "1 m", "2 m"),), "")  # type: ignore[arg-type]
        for kind, tag in changes
    )
    return Changes(ISSUE, replace(ISSUE, revision="P02"), made)


def model(changes: Changes | None = None, job: Job = JOB) -> Model:
    return Model(Installation(job, None), None, None, {}, changes=changes)  # type: ignore[arg-type]


def with_tags(*tags: str, changes: Changes | None = None) -> Model:
    """Return a model of a job in which some tags are known."""
    made = model(changes or changed())
    points = dict.fromkeys(tags)
    return replace(made, installation=replace(made.installation, points=points))  # type: ignore[arg-type]


def text(ident: str, words: str, y: float) -> Item:
    return Item(ident, "text", (Text(Point(100, y), words, 2.5),))


def sheet(*items: Item, number: str = "01", key: str = "elevation/A") -> SheetLayout:
    return SheetLayout(
        number, f"J1-{number}-P02-x", "X", "A3", (*frame_items("A3"), *items), key=key
    )


def clouds(made: SheetLayout) -> list[Item]:
    return [i for i in made.items if i.ident.endswith(":cloud")]


def test_no_change_gives_no_cloud() -> None:
    one = sheet(text("callout:X1", "X1", 50), text("note:1", "a note", 80))
    assert with_clouds([one], [one], model(changed())) == (one,)


def test_what_stands_elsewhere_and_says_the_same_is_no_change() -> None:
    old = sheet(text("callout:X1", "X1, C/L +1300", 50))
    moved = sheet(text("callout:X1", "X1 C/L +1300", 120))
    assert not clouds(with_clouds([moved], [old], model(changed()))[0])


def test_a_reference_to_a_sheet_that_got_another_number_is_no_change() -> None:
    old = sheet(text("flag:right", "T1 → B (sheet 05) zone", 50), text("x", "to 03/B2", 70))
    new = sheet(text("flag:right", "T1 → B (sheet 06) zone", 50), text("x", "to 04/C2", 70))
    assert not clouds(with_clouds([new], [old], model(changed()))[0])


def test_a_running_number_is_no_change() -> None:
    old = sheet(text("note:1", "first", 50), text("note:2", "second", 60))
    new = sheet(text("note:1", "second", 50))
    assert not clouds(with_clouds([new], [old], model(changed()))[0])


def test_a_note_that_went_to_another_number_or_sheet_is_no_change() -> None:
    words = "Keep T1 and T3 at least 100 mm apart"
    old = sheet(text("note:4:number", "4", 50), text("note:4", words, 50))
    bare = sheet(text("x", "y", 50), number="02", key="elevation/schedules")
    given = sheet(
        text("x", "y", 50),
        text("note:9:number", "9", 60),
        text("note:9", f"Wall A: {words}", 60),
        number="02",
        key="elevation/schedules",
    )
    assert not clouds(with_clouds([given], [old, bare], model(changed()))[0])
    other = replace(given, items=(*given.items[:-1], text("note:9", "Keep 150 mm apart", 60)))
    (told,) = sheet_changes([other], [old, bare], model(changed()))
    assert [item.ident for item in told.items] == ["note:9:number", "note:9"]


def test_a_callout_that_gave_its_words_to_a_keynote_is_no_change() -> None:
    old = sheet(text("crossing-tag:T2:6000", "T2 over to C, 100 × 25 W08", 50))
    new = sheet(
        text("crossing-tag:T2:6000", "1", 50),
        text("keynote:1:number", "1", 70),
        text("keynote:1", "T2 over to C 100 × 25 W08", 70),
    )
    (told,) = sheet_changes([new], [old], with_tags("T2"))
    assert told.items == ()


def test_a_row_of_drops_is_ringed_for_the_run_that_it_names() -> None:
    old = sheet(text("drops:wall A:drop:3:D06", "4000 AP1 D06 T3 U/S +2550", 50))
    new = sheet(text("drops:wall A:drop:3:D06", "4000 AP1 D06 T3 U/S +2450", 50))
    known = with_tags("T3", "D06", changes=changed(("moved", "T3")))
    assert len(sheet_changes([new], [old], known)[0].items) == 1
    still = with_tags("T3", "D06", changes=changed(("moved", "X9")))
    assert not sheet_changes([new], [old], still)[0].items


def test_changed_words_get_a_cloud_and_a_triangle_with_the_code() -> None:
    old = sheet(text("callout:X1", "C/L +1300", 50))
    new = sheet(text("callout:X1", "C/L +1500", 50))
    (made,) = with_clouds([new], [old], model(changed(("moved", "X1"))))
    (cloud,) = clouds(made)
    assert item_box(cloud).holds(item_box(new.items[-1]))
    codes = [p.text for i in made.items for p in i.parts if i.ident.endswith(":code")]  # type: ignore[union-attr]
    assert codes == ["02"]


def test_a_thing_that_moved_is_ringed_though_its_words_are_the_same() -> None:
    sign = Item("thing:X1", "symbol", (SymbolUse("socket", Point(100, 60)),))
    (made,) = with_clouds([sheet(sign)], [sheet(sign)], model(changed(("moved", "X1"))))
    assert len(clouds(made)) == 1
    (still,) = with_clouds([sheet(sign)], [sheet(sign)], model(changed(("moved", "X2"))))
    assert not clouds(still)


def test_a_new_sheet_is_told_as_new_and_carries_no_cloud() -> None:
    old, new = sheet(text("a", "x", 50)), sheet(text("a", "x", 50), number="02", key="elevation/B")
    told = sheet_changes([new], [old], model(changed()))
    assert told[0].is_new
    assert "new sheet" in told[0].words
    assert not clouds(with_clouds([new], [old], model(changed()))[0])


def test_an_as_fitted_issue_carries_no_clouds() -> None:
    # clouds come off the record issue: common practice
    old, new = sheet(text("a", "x", 50)), sheet(text("a", "y", 50))
    fitted = replace(JOB, status="As fitted")
    assert with_clouds([new], [old], model(changed(), fitted)) == (new,)


def facts(paper: str, *revisions: Revision) -> TitleFacts:
    job = replace(JOB, revisions=revisions)
    return TitleFacts(job, None, "X", "Drawings", "01", 3, "Not to scale", paper)  # type: ignore[arg-type]


def revision(code: str, date: str) -> Revision:
    return Revision(code, date, f"what {code} brought", "R. Ashdown", "not recorded")


THREE = tuple(
    revision(code, f"2026-0{i}-01") for i, code in enumerate(("P01", "P02", "P03"), start=1)
)


def rows(items: tuple[Item, ...]) -> list[str]:
    return [
        i.ident.rpartition(":")[2] for i in items if i.ident.startswith("title-block:revision:")
    ]


def test_older_revisions_stand_over_the_block_the_newest_next_to_it() -> None:
    assert rows(revision_items(facts("A3", *THREE), ())) == ["P01", "P02"]
    assert rows(revision_items(facts("A4", *THREE), ())) == ["P01", "P02", "P03"]


def test_rows_give_way_to_the_drawing() -> None:
    block = title_block_box("A4")
    inside = Item("drawing", "text", (Text(Point(block.x0 + 5, block.y0 - 14), "words", 2.5),))
    assert rows(revision_items(facts("A4", *THREE), (inside,))) == ["P03"]
