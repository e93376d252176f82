"""Stock in hand and to order, prices and the label grid, as meant."""

from __future__ import annotations

from dataclasses import dataclass, field
from types import MappingProxyType
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from collections.abc import Mapping
    from decimal import Decimal


@dataclass(frozen=True)
class StockPiece:
    """A length in hand, or a length that can be ordered.

    ``family`` and the two after it name a cable; ``kind`` and ``size_words`` containment or
    conduit. ``csa_mm2`` None stands for every size of the family.
    """

    length_mm: int
    count: int  # how many in hand; of no meaning for a length to order
    family: str = ""
    cores: int | None = None
    csa_mm2: float | None = None
    kind: str = ""
    width_mm: float = 0.0
    height_mm: float = 0.0


@dataclass(frozen=True)
class Price:
    """What one item costs. ``per`` says for what."""

    amount: Decimal
    per: Literal["m", "each"]


@dataclass(frozen=True)
class LabelGrid:
    """Labels on a sheet; None where the sheet decides.

    Margins are from the edge of the paper to the first label, gaps between one label and the next.
    """

    columns: int | None = None
    rows: int | None = None
    width_mm: float | None = None
    height_mm: float | None = None
    left_margin_mm: float | None = None
    top_margin_mm: float | None = None
    gap_across_mm: float | None = None
    gap_down_mm: float | None = None

    @property
    def is_cut_already(self) -> bool:
        """Whether the sheet is a stock of labels, not paper to cut."""
        placed = (self.left_margin_mm, self.top_margin_mm, self.gap_across_mm, self.gap_down_mm)
        return any(value is not None for value in placed)


@dataclass(frozen=True)
class StockFacts:
    """Everything that the spec says of stock. ``prices`` is keyed by :func:`price_key`."""

    in_hand: tuple[StockPiece, ...] = ()
    to_order: tuple[StockPiece, ...] = ()
    saw_cut_mm: int = 0
    currency: str = ""
    prices: Mapping[str, Price] = field(default_factory=lambda: MappingProxyType({}))
    labels: LabelGrid = field(default_factory=LabelGrid)


def price_key(item: str) -> str:
    """Return an item as prices are looked up: typed signs and drawn signs are the same.

    Example:
        >>> price_key("4c × 6 mm² XLPE/SWA/PVC") == price_key("4c x 6 mm2  xlpe/swa/pvc")
        True
    """
    plain = item.replace("×", "x").replace("²", "2").replace("∅", "dia ")
    return " ".join(plain.casefold().split())
