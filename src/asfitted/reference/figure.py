"""A figure read from a table, with where it came from."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Figure:
    """A number from a published table.

    Attributes:
        value: The number, in ``unit``.
        unit: Unit as printed on paper, "" for a ratio.
        source: Standard and table, in words.
        provenance: "seen", "memory", "common practice" or "derived", with any doubt after it.
        note: What the reader should know of this one cell, often empty.
    """

    value: float
    unit: str
    source: str
    provenance: str
    note: str = ""

    @property
    def from_memory(self) -> bool:
        """Whether the figure was recalled and must be checked against the book."""
        return self.provenance.startswith("memory")


@dataclass(frozen=True)
class TextFigure:
    """A word from a published table, such as a gland size."""

    text: str
    source: str
    provenance: str
    note: str = ""


@dataclass(frozen=True)
class VoltDropRow:
    """Voltage drop of one cable, mV/A/m at its full conductor temperature.

    Up to 16 mm2 the tables give one value: then ``r`` equals ``z`` and ``x`` is zero. Three-phase
    rows give the drop between lines.
    """

    r_mv_a_m: float
    x_mv_a_m: float
    z_mv_a_m: float
    figure: Figure


@dataclass(frozen=True)
class ArmourRow:
    """Steel wire armour of one cable at 20 C."""

    area_mm2: float
    r20_mohm_m: float
    source: str
    provenance: str
    note: str = ""
