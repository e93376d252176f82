"""The reel in hand of the pottery: what it saves, by hand."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model

    Models = dict[str, Model]


def test_the_reel_in_hand_saves_half_of_what_would_be_ordered(demo_models: Models) -> None:
    # lengths 16.1 5.4 5.2 5.2 5.1 5.1 4.2 = 46.3 m: without the reel of 22 m one of 50 m
    # 16.1 + 5.4 = 21.5 from hand; 5.2 + 5.2 + 5.1 + 5.1 + 4.2 = 24.8 from a reel of 25
    off = demo_models["pottery-studio"].results.take_off
    assert off is not None
    item = next(one for one in off.cuts if one.item == "2.5/1.5 mm² PVC twin and earth")
    assert (item.needed_mm, item.ordered_mm, item.is_least) == (46300, 25000, True)
    (hand,) = item.from_hand
    assert [p.mark for p in hand.pieces] == ["W16", "W16-2"]
    assert hand.rest_mm == 500
    (order,) = item.to_order
    assert (order.stock_mm, order.rest_mm) == (25000, 200)
