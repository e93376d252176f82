"""Lengths to cut, fixings and materials of a job. Frozen; nothing is judged."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Group = Literal[
    "Cable",
    "Containment",
    "Supports and fixings",
    "Terminations",
    "Boards and accessories",
    "Cameras and data",
    "Labels and sealing",
]
GROUPS: tuple[Group, ...] = (
    "Cable",
    "Containment",
    "Supports and fixings",
    "Terminations",
    "Boards and accessories",
    "Cameras and data",
    "Labels and sealing",
)


@dataclass(frozen=True)
class Piece:
    """One length to cut, mm. ``mark`` names it on the cut list: a cable tag, or run and wall."""

    mark: str
    length_mm: int


@dataclass(frozen=True)
class StockCut:
    """One reel, drum or bar with the pieces cut from it, longest first."""

    stock_mm: int
    in_hand: bool
    pieces: tuple[Piece, ...]
    saw_mm: int = 0  # width of a saw cut

    @property
    def rest_mm(self) -> int:
        """What is left over, mm."""
        cut = sum(piece.length_mm for piece in self.pieces)
        sawn = self.saw_mm * sum(1 for p in self.pieces if p.length_mm < self.stock_mm)
        return max(self.stock_mm - cut - sawn, 0)


@dataclass(frozen=True)
class ItemCuts:
    """How the lengths of one item are cut from what is in hand and to order.

    Attributes:
        item: Words of the item: "4c × 6 mm² XLPE/SWA/PVC", "225 × 25 perforated tray".
        of: "cable" or "containment".
        cuts: Pieces of stock used, in hand first.
        needed_mm: Sum of the lengths.
        ordered_mm: Sum of the stock to order.
        least_mm: No plan orders less.
        cut_by_seller: Whether each length is ordered to measure, so that nothing is over.
        basis: Where the stock lengths come from.
    """

    item: str
    of: Literal["cable", "containment"]
    cuts: tuple[StockCut, ...]
    needed_mm: int
    ordered_mm: int
    least_mm: int
    cut_by_seller: bool
    basis: str

    @property
    def is_least(self) -> bool:
        """Whether it is proved that no plan orders less."""
        return self.ordered_mm == self.least_mm

    @property
    def to_order(self) -> tuple[StockCut, ...]:
        """The stock to order."""
        return tuple(cut for cut in self.cuts if not cut.in_hand)

    @property
    def from_hand(self) -> tuple[StockCut, ...]:
        """The pieces in hand that are cut into."""
        return tuple(cut for cut in self.cuts if cut.in_hand)


@dataclass(frozen=True)
class Fixing:
    """Supports, saddles, clips or ties of one piece, at what centres, and how many."""

    subject: str  # tag of a run or cable
    where: str  # "wall A", "overhead"
    what: str  # "wall bracket for 225 tray"
    spacing_mm: int
    length_mm: int
    count: int
    basis: str


@dataclass(frozen=True)
class TopFixing:
    """The fixings at the top of one thing that hangs: a run, a luminaire, conduit of a cable."""

    tag: str
    what: str  # "threaded rod M10", "luminaires and devices", "conduit off the walls"
    count: int


@dataclass(frozen=True)
class MaterialLine:
    """One line of the materials list.

    ``needed``, ``to_order`` and ``over`` are in ``unit``; ``over`` is what is left of the order.
    ``packs`` says how the order is made up: "7×3 m".
    """

    group: Group
    item: str
    needed: float
    to_order: float
    unit: Literal["m", "each"]
    packs: str
    basis: str
    left_of_lengths: float | None = None  # of what is ordered, where some comes from hand

    @property
    def over(self) -> float:
        """What is ordered and not used."""
        if self.left_of_lengths is not None:
            return self.left_of_lengths
        return max(self.to_order - self.needed, 0.0)


@dataclass(frozen=True)
class GlandEnd:
    """One armoured end: its gland and how the cable is stripped for it."""

    cable: str
    at: str  # tag of the board or point
    size: str  # "20S"
    kind: str  # "BW" or "CW"
    thread: str  # "" where not held
    armour_mm: float | None  # None where not held for the size
    core_mm: float | None  # from the end of the sheath to the end of the cores, at least
    source: str


@dataclass(frozen=True)
class TakeOff:
    """Everything to cut, fix and buy."""

    cuts: tuple[ItemCuts, ...] = ()
    fixings: tuple[Fixing, ...] = ()
    glands: tuple[GlandEnd, ...] = ()
    lines: tuple[MaterialLine, ...] = ()
    top_fixings: tuple[TopFixing, ...] = ()  # of what hangs from a ceiling or roof
    left_out: tuple[str, ...] = ()  # what could not be counted, and why
