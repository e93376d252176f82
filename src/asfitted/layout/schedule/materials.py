"""The list of materials: needed, to order, why, and what it costs where prices are given."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from asfitted.calculate.materials.pricing import priced
from asfitted.layout.figures import rounded
from asfitted.layout.table import Column, Table

if TYPE_CHECKING:
    from asfitted.calculate.materials.items import MaterialLine
    from asfitted.calculate.materials.pricing import Priced, PricedLine
    from asfitted.layout.sheet_model import Model

COLUMNS = (
    Column("Item", least_mm=46.0),
    Column("Needed", align="end", wraps=False),
    Column("To order", align="end", wraps=False),
    Column("Made up of"),
    Column("How it was counted"),
)
PRICE_COLUMNS = (Column("Price", align="end"), Column("Cost", align="end", wraps=False))
TICK = Column("Got", align="middle", wraps=False)
BOX = "☐"


def materials_table(model: Model) -> Table:
    """Return the list, grouped; with prices and their sum where a price list is given."""
    stock = model.installation.stock
    off = model.results.take_off
    lines = off.lines if off is not None else ()
    sums = priced(lines, stock)
    with_prices = bool(stock.prices)
    rows: list[tuple[str, ...]] = []
    idents: list[str] = []
    heads: set[int] = set()
    for group, same in groupby(sums.lines, key=lambda one: one.line.group):
        heads.add(len(rows))
        rows.append(_padded(group, with_prices=with_prices))
        idents.append(group)
        for one in same:
            rows.append(_row(one, stock.currency, with_prices=with_prices))
            idents.append(f"{group}/{one.line.item}/{len(rows)}")
    if with_prices:
        heads.add(len(rows))
        rows.append(_total(sums, stock.currency))
        idents.append("total")
    columns = (*COLUMNS, *PRICE_COLUMNS, TICK) if with_prices else (*COLUMNS, TICK)
    return Table(columns, tuple(rows), tuple(idents), tinted_rows=frozenset(heads))


def price_notes(model: Model) -> tuple[tuple[str, str], ...]:
    """Return what is said of prices beside the list."""
    stock = model.installation.stock
    if not stock.prices:
        return (("Prices", 'not priced: the job names no price list ("prices: FILE")'),)
    off = model.results.take_off
    sums = priced(off.lines if off is not None else (), stock)
    words = f"{_money(str(sums.total), stock.currency)} for the lines that have a price, of which "
    words += f"{_money(str(sums.waste), stock.currency)} is waste; tax as the list has it"
    return (("Prices", f"{words}; {sums.unpriced} lines not priced"),)


def quantity(value: float, unit: str) -> str:
    """Return a quantity with its unit; a count has none.

    Example:
        >>> quantity(19.95, "m"), quantity(21, "m"), quantity(14, "each")
        ('19.95 m', '21 m', '14')
    """
    text = rounded(value, 2).rstrip("0").rstrip(".") if unit == "m" else f"{value:.0f}"
    return f"{text} m" if unit == "m" else text


def _row(one: PricedLine, currency: str, *, with_prices: bool) -> tuple[str, ...]:
    line = one.line
    cells = (
        line.item,
        quantity(line.needed, line.unit),
        quantity(line.to_order, line.unit),
        line.packs or _made_up(line),
        line.basis,
    )
    if not with_prices:
        return (*cells, BOX)
    if one.price is None:
        return (*cells, one.not_priced, "–", BOX)
    per = "per m" if one.price.per == "m" else "each"
    price = f"{_money(str(one.price.amount), currency)} {per}"
    return (*cells, price, _money(str(one.cost), currency), BOX)


def _made_up(line: MaterialLine) -> str:
    return f"{quantity(line.over, line.unit)} over for waste" if line.over > 0 else "–"


def _money(amount: str, currency: str) -> str:
    return f"{currency} {amount}" if currency else amount


def _total(sums: Priced, currency: str) -> tuple[str, ...]:
    words = f"of which waste {_money(str(sums.waste), currency)}; {sums.unpriced} lines not priced"
    return (
        "Total of the lines that have a price",
        "",
        "",
        "",
        words,
        "",
        _money(str(sums.total), currency),
        "",
    )


def _padded(words: str, *, with_prices: bool) -> tuple[str, ...]:
    width = len(COLUMNS) + 1 + (len(PRICE_COLUMNS) if with_prices else 0)
    return (words, *[""] * (width - 1))
