"""The cutting plan tells every piece once, in rows that a page can hold."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from asfitted.calculate.materials.items import ItemCuts, Piece, StockCut
from asfitted.layout.schedule.cutting_plan import MOST_PIECES, ON, cutting_plan_table

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model
    from asfitted.layout.table import Table


def _table(model: Model, count: int, *, by_seller: bool) -> Table:
    pieces = tuple(Piece(f"W{n:03d}", 1000 + n) for n in range(count))
    whole = sum(p.length_mm for p in pieces)
    cut = StockCut(whole, in_hand=False, pieces=pieces)
    item = ItemCuts("3c × 4 mm²", "cable", (cut,), whole, whole, whole, by_seller, "demo")
    assert model.results.take_off is not None
    off = replace(model.results.take_off, cuts=(item,))
    return cutting_plan_table(replace(model, results=replace(model.results, take_off=off)))


@pytest.mark.parametrize("by_seller", [True, False])
@pytest.mark.parametrize("count", [1, MOST_PIECES, MOST_PIECES + 1, 5 * MOST_PIECES + 3])
def test_every_piece_is_told_once_in_rows_of_a_bearable_length(
    demo_models: dict[str, Model], count: int, *, by_seller: bool
) -> None:
    table = _table(demo_models["community-shed"], count, by_seller=by_seller)
    told = [re.findall(r"W\d{3}", row[2]) for row in table.rows]
    assert [tag for tags in told for tag in tags] == [f"W{n:03d}" for n in range(count)]
    assert max(map(len, told)) <= MOST_PIECES
    assert sum(row[1] == ON for row in table.rows) == -(-count // MOST_PIECES) - 1
    assert len(set(table.row_idents)) == len(table.rows)


def test_the_proof_has_a_place_of_its_own(demo_models: dict[str, Model]) -> None:
    table = _table(demo_models["community-shed"], 2, by_seller=False)
    heads = [column.header for column in table.columns]
    proof, left = heads.index("Orders the least?"), heads.index("Left over")
    assert [row[proof] for row in table.rows] == ["proved", ""]
    assert [row[left] for row in table.rows] == ["", "nothing"]
