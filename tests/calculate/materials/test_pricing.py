"""Prices: to the penny, waste told apart, and what has none says so."""

from __future__ import annotations

from decimal import Decimal
from types import MappingProxyType

from asfitted.calculate.materials.items import MaterialLine
from asfitted.calculate.materials.pricing import priced
from asfitted.resolve.stock_facts import Price, StockFacts, price_key


def line(item: str, needed: float, to_order: float, unit: str = "m") -> MaterialLine:
    return MaterialLine("Cable", item, needed, to_order, unit, "", "geometry")  # type: ignore[arg-type]


def test_cost_waste_and_total_by_hand() -> None:
    prices = {
        price_key("2.5/1.5 mm2 PVC twin and earth"): Price(Decimal("0.845"), "m"),
        price_key("coupler pair"): Price(Decimal("1.20"), "each"),
    }
    stock = StockFacts(prices=MappingProxyType(prices))
    found = priced(
        [
            line("2.5/1.5 mm² PVC twin and earth", 46.3, 50.0),
            line("coupler pair", 14, 14, "each"),
            line("gland", 3, 4, "each"),
        ],
        stock,
    )
    # 50 × 0.845 = 42.25; waste 3.7 × 0.845 = 3.1265 -> 3.13; 14 × 1.20 = 16.80
    assert [one.cost for one in found.lines] == [Decimal("42.25"), Decimal("16.80"), None]
    assert (found.total, found.waste) == (Decimal("59.05"), Decimal("3.13"))
    assert (found.unpriced, found.lines[2].not_priced) == (1, "not priced")


def test_a_price_for_another_unit_is_not_used() -> None:
    stock = StockFacts(prices=MappingProxyType({price_key("Cat6"): Price(Decimal(60), "each")}))
    only = priced([line("Cat6", 163, 200)], stock).lines[0]
    assert only.cost is None
    assert only.not_priced == "not priced: the list must say per m"
