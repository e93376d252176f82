"""Where the columns of the data diagram stand on each paper, and how its lines are drawn."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import Paper, Pattern

PATTERNS: dict[str, Pattern] = {
    "signal": "long_dash_double_dot",
    "supply": "dashed",
    "network": "continuous",
}
LEG_WORDS = {
    "signal": "Picture leg (coaxial or one pair through baluns)",
    "supply": "12 V d.c. leg in the same cable",
    "network": "Four-pair data cable; PoE where stated",
}


@dataclass(frozen=True)
class Columns:
    """Distances from the left edge of the usable area, mm."""

    facts_mm: float
    device_x: float
    balun_x: float
    ring_x: float
    words_x: float
    far_balun_x: float
    port_x: float
    port_mm: float
    equipment_x: float
    right_x: float

    @property
    def words_mm(self) -> float:
        """Room for the words on a leg, clear of the far balun."""
        return self.far_balun_x - self.words_x - 3.0

    @property
    def equipment_mm(self) -> float:
        """Room for the words on a piece of equipment."""
        return self.right_x - self.equipment_x - 2.0

    @property
    def block_x(self) -> float:
        """Left edge of the enclosures."""
        return self.port_x - 4.0


_A3 = Columns(62.0, 64.0, 85.0, 98.5, 103.0, 249.0, 268.0, 36.0, 308.0, 380.0)
_A4 = Columns(48.0, 50.0, 67.0, 79.5, 83.0, 152.0, 170.0, 32.0, 205.0, 257.0)


def columns_for(paper: Paper) -> Columns:
    """Return the columns of a paper."""
    return _A3 if paper == "A3" else _A4
