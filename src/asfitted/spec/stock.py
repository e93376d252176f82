"""Stock in hand and to order, prices, and the grid of label sheets."""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated

from pydantic import BeforeValidator, Field, WithJsonSchema

from asfitted.errors import NotUnderstoodError
from asfitted.spec.fields import (
    CablePhrase,
    Count,
    ExtentMm,
    LengthM,
    Size,
    SpecModel,
    Text,
)


@dataclass(frozen=True)
class PriceWords:
    """``3.10 per m`` or ``12.40 each``."""

    amount: Decimal
    per: str  # "m" or "each"


def parse_price(text: str) -> PriceWords:
    """Return a price and what it is for.

    Raises:
        NotUnderstoodError: no amount, or neither "each" nor "per m" after it.
    """
    match = re.fullmatch(r"(\d+(?:\.\d+)?)\s+(?:(each)|per (m))", " ".join(text.split()))
    if not match:
        hint = 'write "12.40 each" or "3.10 per m", without a sign of currency'
        raise NotUnderstoodError(f'price "{text}" is not understood', hint)
    return PriceWords(Decimal(match[1]), match[2] or match[3])


def _read_price(value: object) -> object:
    return parse_price(value) if isinstance(value, str) else value


Price = Annotated[
    PriceWords,
    BeforeValidator(_read_price),
    WithJsonSchema({"type": ["string", "number"], "description": "such as 12.40 each, 3.10 per m"}),
]


class StockPieceWords(SpecModel):
    """A length of cable (``cable:``) or of containment (``is:`` and ``size:``)."""

    cable: CablePhrase | None = None
    kind: Text | None = Field(None, alias="is")
    size: Size | None = None
    length: LengthM
    count: Count | None = None


class LabelWords(SpecModel):
    """``labels:`` the grid of the label sheets; sizes in mm.

    A margin or a gap says that the labels are cut already: then no cut lines are drawn.
    """

    columns: Count | None = None
    rows: Count | None = None
    width: ExtentMm | None = None
    height: ExtentMm | None = None
    left_margin: ExtentMm | None = None
    top_margin: ExtentMm | None = None
    gap_across: ExtentMm | None = None
    gap_down: ExtentMm | None = None


class StockWords(SpecModel):
    """``stock:`` of a job, or a file of its own that ``stock file:`` names."""

    in_hand: list[StockPieceWords] = Field(default_factory=list)
    to_order: list[StockPieceWords] = Field(default_factory=list)
    saw_cut: ExtentMm | None = None
    labels: LabelWords | None = None  # of every job that shares the file


class PriceListWords(SpecModel):
    """A file of prices: items as the materials sheet names them."""

    currency: Text | None = None
    items: dict[str, Price]
