"""Mounting heights, prescribed zones and least degrees of protection."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from asfitted.reference.figure import Figure, TextFigure
from asfitted.reference.loader import table

_FILE = "heights"


@dataclass(frozen=True)
class HeightRange:
    """Heights at which something is mounted, mm above finished floor level."""

    item: str
    default_mm: float
    least_mm: float
    greatest_mm: float
    source: str
    provenance: str


def workplace_heights() -> tuple[HeightRange, ...]:
    """Return the planning heights for workplaces that give a default and a range."""
    found = table(_FILE, "heights_workshop")
    return tuple(
        HeightRange(
            item=row["item"],
            default_mm=float(row["default"]),
            least_mm=float(row["range"][0]),
            greatest_mm=float(row["range"][1]),
            source=str(row.get("source", found.standard)),
            provenance=str(row["provenance"]),
        )
        for row in found.rows
        if "default" in row and "range" in row
    )


def height_limit_mm(
    building: Literal["dwelling", "non_dwelling"], item: str, end: Literal["min", "max"]
) -> Figure:
    """Return a height limit of Approved Document M, mm, by its item words.

    Raises:
        OutsideTableError: item not held, or no such limit for it.
    """
    found = table(_FILE, f"heights_{building}")
    return found.figure(found.row(item=item), end, "mm")


def prescribed_zone_mm(zone: Literal["top of wall", "vertical corner"]) -> Figure:
    """Return the width of a zone for hidden cables, mm (BS 7671 522.6.202)."""
    found = table(_FILE, "prescribed_zones")
    return found.figure(found.row(zone=zone), "value", "mm")


def least_ip(place: str) -> TextFigure:
    """Return the least degree of protection for a place, such as "outdoor open".

    Raises:
        OutsideTableError: place not held.
    """
    found = table(_FILE, "external_influences_ip")
    row = found.row(place=place)
    text = str(row.get("least", row.get("default", "")))
    source = f"BS 7671 {row['reg']}" if "reg" in row else found.standard
    return TextFigure(text, source, str(row["provenance"]), str(row.get("note", "")))
