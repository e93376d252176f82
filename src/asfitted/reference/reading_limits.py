"""Limits of test readings, and the band within which a reading agrees with the calculation."""

from __future__ import annotations

from dataclasses import dataclass

from asfitted.reference.figure import Figure
from asfitted.reference.loader import table

_FILE = "reading_limits"


@dataclass(frozen=True)
class Band:
    """From where to where a reading agrees with what was calculated, ohm."""

    least_ohm: float
    most_ohm: float
    provenance: str


def _limit(item: str) -> Figure:
    row = table(_FILE, "limits").row(item=item)
    return Figure(
        value=float(row["value"]),
        unit=str(row["unit"]),
        source=str(row["source"]),
        provenance=str(row["provenance"]),
    )


def least_insulation_mohm(test_v: float | None) -> Figure:
    """Return the least insulation resistance, MΩ; without a test voltage that of 500 V."""
    return _limit(f"insulation at {test_v or 500:g} V")


def longest_trip_ms(*, delayed: bool) -> Figure:
    """Return the longest tripping time of an RCD at its rated residual current, ms."""
    return _limit("RCD with delay" if delayed else "RCD without delay")


def shortest_trip_ms() -> Figure:
    """Return the time before which an RCD with delay must not trip, ms."""
    return _limit("RCD with delay not before")


def reading_band(calculated_ohm: float) -> Band:
    """Return where a reading may lie that agrees with the calculation, ohm.

    >>> band = reading_band(0.4)
    >>> round(band.least_ohm, 3), round(band.most_ohm, 3)
    (0.14, 0.6)
    """
    found = table(_FILE, "bands")
    above, below = found.row(item="above"), found.row(item="below")
    most = calculated_ohm * (1 + float(above["share"]) / 100) + float(above["ohm"])
    least = calculated_ohm * (1 - float(below["share"]) / 100) - float(below["ohm"])
    return Band(max(least, 0.0), most, str(above["provenance"]))
