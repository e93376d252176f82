"""The cutting plan: each reel and bar with the pieces cut from it, and what is left over."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from asfitted.layout.figures import rounded
from asfitted.layout.table import Column, Table

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.calculate.materials.items import ItemCuts, StockCut
    from asfitted.layout.sheet_model import Model

COLUMNS = (
    Column("Item"),
    Column("Stock", wraps=False),
    Column("Pieces, in order of cutting (m)"),
    Column("Left over"),
    Column("Orders the least?"),
    Column("Done", align="middle", wraps=False),
)
SCRAP_MM = 500  # common practice: shorter offcuts of containment are scrap
BOX = "☐"
LEAST = "proved"
ON = "goes on"  # a row that goes on from the one over it
MOST_PIECES = 36  # in one row


def cutting_plan_table(model: Model) -> Table:
    """Return a row of sums for each item, then a row for each reel or bar, equal ones together."""
    off = model.results.take_off
    rows: list[tuple[str, ...]] = []
    idents: list[str] = []
    strong: set[int] = set()
    for item in off.cuts if off is not None else ():
        strong.add(len(rows))
        is_ordered = item.cut_by_seller and not item.from_hand
        sums = (item.item, order_words(item), _sums(item), "", proof_words(item), "")
        found = list(_by_seller(item)) if is_ordered else [sums, *_cuts(item)]
        rows += found
        idents += [item.item, *(f"{item.item}/{i}" for i in range(1, len(found)))]
    return Table(
        COLUMNS, tuple(rows), tuple(idents), strong_rows=frozenset(), tinted_rows=frozenset(strong)
    )


def order_words(item: ItemCuts) -> str:
    """Return what is ordered in all."""
    ordered = rounded(item.ordered_mm / 1000, 2).rstrip("0").rstrip(".")
    return f"order {ordered} m" if item.ordered_mm else "all in hand"


def _by_seller(item: ItemCuts) -> Iterator[tuple[str, ...]]:
    """Yield the row of an item that is ordered to its lengths; many lengths take several rows."""
    pieces = [f"{p.mark} {_m(p.length_mm)}" for cut in item.cuts for p in cut.pieces]
    first, *more = _rows_of(pieces)
    yield (
        item.item,
        order_words(item),
        f"cut to length by the seller: {first}",
        "nothing",
        LEAST,
        BOX,
    )
    for words in more:
        yield "", ON, words, "", "", BOX


def _rows_of(pieces: list[str]) -> list[str]:
    """Return pieces in as many rows as keep each well under the height of a page."""
    starts = range(0, len(pieces), MOST_PIECES)
    return [", ".join(pieces[start : start + MOST_PIECES]) for start in starts] or [""]


def _sums(item: ItemCuts) -> str:
    hand = sum(cut.stock_mm for cut in item.from_hand)
    words = f"needed {_m(item.needed_mm)} m; {item.basis}"
    return f"{words}; from hand {_m(hand)} m" if hand else words


def proof_words(item: ItemCuts) -> str:
    """Return how good the plan is: the least there is, or how far it may be from it."""
    if item.is_least:
        return LEAST
    return f"not proved: {_m(item.ordered_mm - item.least_mm)} m gap"


def _cuts(item: ItemCuts) -> Iterator[tuple[str, ...]]:
    """Yield a row for each reel or bar; bars cut alike are one row with their count."""
    number = 0
    for key, same in groupby(item.cuts, key=_alike):
        group = list(same)
        first, count = number + 1, len(group)
        number += count
        numbers = f"{first}" if count == 1 else f"{first} to {number}"
        name = "reel" if item.of == "cable" else "bar"
        hand = " in hand" if key[1] else ""
        stock = f"{name} {numbers}: {_m(key[0])} m{hand}"
        first_words, *more = _pieces(group)
        yield "", stock, first_words, _rest(item, group[0]), "", BOX
        for words in more:
            yield "", ON, words, "", "", BOX


def _alike(cut: StockCut) -> tuple[int, bool, tuple[int, ...]]:
    return cut.stock_mm, cut.in_hand, tuple(p.length_mm for p in cut.pieces)


def _pieces(group: list[StockCut]) -> list[str]:
    """Return the pieces of bars cut alike, by rows; the names of whole bars are told once."""
    if len(group) == 1:
        return _rows_of([f"{p.mark} {_m(p.length_mm)}" for p in group[0].pieces])
    marks = [p.mark for cut in group for p in cut.pieces]
    counts = [f"{mark} {marks.count(mark)} ×" for mark in dict.fromkeys(marks)]
    lengths = " + ".join(_m(p.length_mm) for p in group[0].pieces)
    first, *more = _rows_of(counts)
    return [f"{lengths} each: {first}", *more]


def _rest(item: ItemCuts, cut: StockCut) -> str:
    if cut.rest_mm == 0:
        return "nothing"
    words = f"{_m(cut.rest_mm)} m"
    if item.of == "containment" and cut.rest_mm < SCRAP_MM:
        return f"{words}, scrap"
    return f"{words}, keep"


def _m(length_mm: int) -> str:
    return rounded(length_mm / 1000, 2)
