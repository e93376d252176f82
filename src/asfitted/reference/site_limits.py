"""Limits that a job is held against and that no other table carries."""

from __future__ import annotations

from asfitted.errors import OutsideTableError
from asfitted.reference.conductors import minimum_cpc_by_table
from asfitted.reference.figure import Figure
from asfitted.reference.heights import HeightRange, workplace_heights
from asfitted.reference.loader import table

_FILE = "site_limits"


def site_limit(item: str) -> Figure:
    """Return one limit by its item words, such as "length of tails".

    Raises:
        OutsideTableError: item not held.
    """
    row = table(_FILE, "limits").row(item=item)
    return Figure(
        value=float(row["value"]),
        unit=str(row["unit"]),
        source=str(row["source"]),
        provenance=str(row["provenance"]),
        note=str(row.get("note", "")),
    )


def height_range(kind: str) -> HeightRange | None:
    """Return the planning heights of a kind of point, mm, or None where there are none."""
    try:
        item = table(_FILE, "height_by_kind").row(kind=kind)["item"]
    except OutsideTableError:
        return None
    return next(h for h in workplace_heights() if h.item == item)


def usual_ze_ohm(system: str) -> Figure:
    """Return the greatest usual Ze of an earthing system, ohm.

    Raises:
        OutsideTableError: no such value for the system (TT).
    """
    found = table(_FILE, "supply_impedance")
    return found.figure(found.row(system=system), "ze", "Ω")


def bonding_without_pme_mm2(tails_mm2: float) -> Figure:
    """Return the least main bonding conductor without PME, mm2 copper, by BS 7671 544.1.1.

    Half the earthing conductor that Table 54.7 asks for the tails, not below 6 and not above 25.

    >>> bonding_without_pme_mm2(25).value, bonding_without_pme_mm2(10).value
    (8.0, 6.0)
    """
    earthing = minimum_cpc_by_table(tails_mm2)
    return Figure(
        value=min(max(earthing.value / 2, 6.0), 25.0),
        unit="mm²",
        source="BS 7671 544.1.1",
        provenance=earthing.provenance,
    )


def edition_in_force() -> tuple[str, str]:
    """Return the edition of BS 7671 to be named, and the ISO date from which it alone may be."""
    row = table(_FILE, "edition_in_force").rows[0]
    return str(row["edition"]), str(row["only_from"])


def vague_names() -> frozenset[str]:
    """Return circuit names, in small letters, that need a place to tell which one is meant."""
    return frozenset(str(row["word"]) for row in table(_FILE, "vague_names").rows)


def tray_planning_load_kg_m(*, heavy: bool = False) -> Figure:
    """Return the cable load above which the maker's load graph must be read, kg/m."""
    found = table("containment", "tray_load")
    key = f"planning_limit_{'heavy' if heavy else 'medium'}_duty_1p5m"
    return found.figure(found.row(key=key), "value", "kg/m")
