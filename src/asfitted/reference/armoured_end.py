"""Making off an armoured end: parts of the gland in order, strip lengths, earth tag and lead."""

from __future__ import annotations

from dataclasses import dataclass

from asfitted.errors import OutsideTableError
from asfitted.reference.figure import Figure
from asfitted.reference.loader import table

_FILE = "termination"
SMALL_MM2 = 16.0


@dataclass(frozen=True)
class GlandPart:
    """One part of a gland in the order of assembly, from the cable towards the enclosure."""

    number: int
    name: str
    note: str


@dataclass(frozen=True)
class StripLengths:
    """How far an end is stripped, mm, with where the figures come from."""

    armour_mm: float
    cores_least_mm: float  # end of the sheath to the end of the cores, at least
    provenance: str


def gland_parts() -> tuple[GlandPart, ...]:
    """Return the parts of an armour gland in the order they go on."""
    rows = table(_FILE, "gland_parts_order").rows
    return tuple(GlandPart(int(r["n"]), r["part"], str(r.get("note", ""))) for r in rows)


def strip_lengths(gland: str) -> StripLengths:
    """Return bared armour and length of cores for a gland size such as "20S".

    Raises:
        OutsideTableError: the size is not held.
    """
    found = table(_FILE, "armour_length_by_gland")
    row = next((r for r in found.rows if str(r["gland"]) == gland), None)
    if row is None:
        raise found.outside("gland", gland)
    least = float(row["sheath_end_to_core_end_min"])
    return StripLengths(float(row["armour"]), least, str(row["provenance"]))


def bedding_proud_mm() -> Figure:
    """Return how far the bedding stands proud of the gland face inside the enclosure, mm."""
    found = table(_FILE, "gland_steps")
    row = next(r for r in found.rows if "length" in r)
    return found.figure(row, "length", "mm")


def fly_lead_mm2(line_csa_mm2: float) -> Figure:
    """Return the usual size of the lead from the earth tag to the earth terminal, mm2.

    Up to 16 mm2 equal to the line conductor, 4 mm2 at least; above it 16 mm2.

    Raises:
        OutsideTableError: the size is not above 0.
    """
    found = table(_FILE, "earth_tag_rule")
    if line_csa_mm2 <= 0:
        raise OutsideTableError(f"no conductor has {line_csa_mm2:g} mm2")
    size = max(line_csa_mm2, 4.0) if line_csa_mm2 <= SMALL_MM2 else SMALL_MM2
    return Figure(size, "mm2", found.standard, found.provenance)
