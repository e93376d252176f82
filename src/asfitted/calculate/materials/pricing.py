"""What the materials cost at the prices of the local list, and how much of it is waste."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from typing import TYPE_CHECKING

from asfitted.calculate.materials.item_words import without_size
from asfitted.resolve.stock_facts import price_key

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.calculate.materials.items import MaterialLine
    from asfitted.resolve.stock_facts import Price, StockFacts

PENNY = Decimal("0.01")


@dataclass(frozen=True)
class PricedLine:
    """A line with its price; ``cost`` and ``waste`` are None where ``not_priced`` says why."""

    line: MaterialLine
    price: Price | None
    cost: Decimal | None
    waste: Decimal | None
    not_priced: str = ""


@dataclass(frozen=True)
class Priced:
    """All lines with prices, and their sums over the lines that have one."""

    lines: tuple[PricedLine, ...]
    total: Decimal
    waste: Decimal
    unpriced: int


def priced(lines: Sequence[MaterialLine], stock: StockFacts) -> Priced:
    """Return the lines with their cost: price times what is ordered, to the penny, half up.

    Waste is the cost of what is ordered and not used; what is in hand costs nothing.
    """
    found = tuple(_line(line, stock) for line in lines)
    costs = [one.cost for one in found if one.cost is not None]
    wastes = [one.waste for one in found if one.waste is not None]
    return Priced(
        found,
        sum(costs, Decimal(0)),
        sum(wastes, Decimal(0)),
        sum(1 for one in found if one.cost is None),
    )


def _line(line: MaterialLine, stock: StockFacts) -> PricedLine:
    price = stock.prices.get(price_key(without_size(line.item)))
    if price is None:
        return PricedLine(line, None, None, None, "not priced")
    if price.per != line.unit:
        wanted = "per m" if line.unit == "m" else "each"
        return PricedLine(line, None, None, None, f"not priced: the list must say {wanted}")
    return PricedLine(line, price, _times(price, line.to_order), _times(price, line.over))


def _times(price: Price, quantity: float) -> Decimal:
    exact = price.amount * Decimal(f"{quantity:.6f}")
    return exact.quantize(PENNY, rounding=ROUND_HALF_UP)
