"""Running text: nothing torn apart, no line alone, headers repeated, references true."""

from __future__ import annotations

import itertools
from types import MappingProxyType

import pytest

from asfitted.errors import DoesNotFitError
from asfitted.geometry import Point
from asfitted.layout.document.blocks import (
    Boxed,
    Bullets,
    Facts,
    Heading,
    PageBreak,
    Paragraph,
    Ruled,
)
from asfitted.layout.document.flow import Placed, balanced_pages, is_thin, pages_of
from asfitted.layout.document.page import page_items
from asfitted.layout.document.references import PLACEHOLDER, filled, marked
from asfitted.layout.document.strips import Strip, strips_of
from asfitted.layout.sheet_layout import Text
from asfitted.layout.sheet_model import Numbers
from asfitted.layout.table import Column, Table

WIDTH, HEIGHT = 170.0, 100.0
NUMBERS = Numbers(MappingProxyType({"elevation/A": "07", "cable-schedule": "112"}))
LONG = "An ordinary sentence about a cable that runs along a wall and ends at a socket-outlet. "


def table(rows: int) -> Table:
    columns = (Column("Tag"), Column("What"))
    cells = tuple((f"W{i:02d}", LONG if i % 3 == 0 else "short") for i in range(rows))
    return Table(columns, cells, tuple(f"W{i:02d}" for i in range(rows)))


def words_on(page: tuple[Placed, ...]) -> list[str]:
    items = page_items(page, Point(0, 0), NUMBERS)
    return [part.text for item in items for part in item.parts if isinstance(part, Text)]


def rows_on(page: tuple[Placed, ...]) -> list[int]:
    return [p.strip.table.row for p in page if p.strip.table is not None]


@pytest.mark.parametrize("rows", [1, 2, 7, 8, 9, 40, 400])
def test_every_row_stands_once_in_order_and_no_page_is_overfull(rows: int) -> None:
    pages = pages_of(strips_of([Ruled("t", table(rows))], WIDTH), HEIGHT)
    assert [row for page in pages for row in rows_on(page)] == list(range(rows))
    for page in pages:
        last = page[-1]
        assert last.top_mm + last.strip.height_mm <= HEIGHT + 1e-6
        for above, below in itertools.pairwise(page):
            assert below.top_mm >= above.top_mm + above.strip.height_mm - 1e-6


def test_the_header_of_a_table_is_on_each_of_its_pages() -> None:
    pages = pages_of(strips_of([Ruled("t", table(40))], WIDTH), HEIGHT)
    assert len(pages) > 2
    for page in pages:
        assert words_on(page)[:2] == ["Tag", "What"]


def test_no_row_of_a_table_is_left_alone_on_its_first_or_last_page() -> None:
    for rows in range(2, 40):
        pages = pages_of(strips_of([Paragraph(LONG), Ruled("t", table(rows))], WIDTH), HEIGHT)
        held = [len(rows_on(page)) for page in pages if rows_on(page)]
        assert held[0] >= 2
        assert held[-1] >= 2, rows


@pytest.mark.parametrize("before", range(1, 30))
def test_no_line_of_a_paragraph_is_left_alone(before: int) -> None:
    blocks = [*[Paragraph("One line.")] * before, Paragraph(LONG * 5)]
    pages = pages_of(strips_of(blocks, WIDTH), HEIGHT)
    name = f"text:{before:03d}"
    held = [sum(p.strip.ident == name for p in page) for page in pages]
    assert all(count != 1 for count in held), held


@pytest.mark.parametrize("before", range(1, 30))
def test_a_heading_never_ends_a_page(before: int) -> None:
    blocks = [*[Paragraph("One line.")] * before, Heading("Part"), Paragraph(LONG * 3)]
    for page in pages_of(strips_of(blocks, WIDTH), HEIGHT):
        assert page[-1].strip.ident != f"text:{before:03d}"


@pytest.mark.parametrize("before", range(1, 30))
def test_words_that_lead_to_a_table_stand_on_its_page(before: int) -> None:
    blocks = [*[Paragraph("One line.")] * before, Paragraph("Of it:", leads=True)]
    pages = pages_of(strips_of([*blocks, Ruled("t", table(3))], WIDTH), HEIGHT)
    (led,) = [page for page in pages if "Of it:" in words_on(page)]
    assert rows_on(led)[0] == 0


def test_a_box_is_never_split_and_a_break_begins_a_page() -> None:
    box = Boxed("Look here", (LONG, LONG))
    pages = pages_of(strips_of([Paragraph("a"), PageBreak(), box], WIDTH), HEIGHT)
    assert len(pages) == 2
    assert len(pages[1]) == 1


def test_what_is_higher_than_a_page_is_an_error_that_says_so() -> None:
    strip = Strip("text:000", HEIGHT + 1)
    with pytest.raises(DoesNotFitError, match="no page holds it"):
        pages_of([strip], HEIGHT)


def test_labels_and_words_of_facts_stand_side_by_side() -> None:
    strips = strips_of([Facts((("Client", "Someone"),), 40.0)], WIDTH)
    assert [(t.text, t.at.x) for t in strips[0].texts] == [("Client", 0.0), ("Someone", 40.0)]


def test_references_are_filled_in_order_and_lead_to_their_sheet() -> None:
    words = "see sheet [[elevation/A]] and sheet [[cable-schedule#cable-schedule:W05]]"
    pages = pages_of(strips_of([Bullets((words,))], WIDTH), HEIGHT)
    items = page_items(pages[0], Point(0, 0), NUMBERS)
    texts = [p.text for p in items[0].parts if isinstance(p, Text)]
    assert texts == ["•", "see sheet 07 and sheet 112"]
    assert items[0].link == "07"


def test_a_row_leads_where_it_is_told() -> None:
    links = {"W01": "cable-schedule#cable-schedule:W01"}
    pages = pages_of(strips_of([Ruled("t", table(3), links)], WIDTH), HEIGHT)
    items = {item.ident: item for item in page_items(pages[0], Point(0, 0), NUMBERS)}
    assert items["t:W01"].link == "112#cable-schedule:W01"
    assert items["t:W02"].link == ""


def test_a_placeholder_is_never_left_behind() -> None:
    given = marked("a [[elevation/A]] b")
    text = Text(Point(0, 0), given.text, 2.5)
    assert PLACEHOLDER in given.text
    (done,) = filled((text,), given.keys, NUMBERS)
    assert done.text == "a 07 b"


@pytest.mark.parametrize("rows", range(14, 60, 3))
def test_a_text_that_ends_on_a_thin_page_shares_its_rows(rows: int) -> None:
    strips = strips_of([Ruled("t", table(rows))], WIDTH)
    plain, shared = pages_of(strips, HEIGHT), balanced_pages(strips, HEIGHT)
    assert len(shared) == len(plain)
    assert [row for page in shared for row in rows_on(page)] == list(range(rows))
    assert not is_thin(shared, HEIGHT)
    if not is_thin(plain, HEIGHT):
        assert shared == plain, "what fills its pages is left alone"


def test_a_text_of_one_page_is_never_thin() -> None:
    assert not is_thin(pages_of(strips_of([Paragraph("Short.")], WIDTH), HEIGHT), HEIGHT)


def test_closer_strips_take_less_room_for_the_same_words() -> None:
    blocks = [Heading("One"), Paragraph(LONG), Bullets((LONG, LONG)), Ruled("t", table(6))]
    usual, close = strips_of(blocks, WIDTH), strips_of(blocks, WIDTH, close=True)
    (page,), (closer,) = pages_of(usual, 400.0), pages_of(close, 400.0)
    assert words_on(page) == words_on(closer)
    assert closer[-1].top_mm < page[-1].top_mm - 6 * 0.5
    for above, below in itertools.pairwise(closer):
        assert below.top_mm >= above.top_mm + above.strip.height_mm - 1e-6


def test_rows_for_handwriting_keep_their_height_when_set_closer() -> None:
    strips = strips_of([Ruled("t", table(3), least_row_mm=9.0)], WIDTH, close=True)
    assert all(strip.height_mm >= 9.0 for strip in strips)
