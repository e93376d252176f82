"""Separation of data from power, BS EN 50174-2, and of voltage bands, BS 7671 528.1."""

from __future__ import annotations

from typing import Literal

from asfitted.errors import InputOutOfRangeError
from asfitted.reference.figure import Figure
from asfitted.reference.loader import table

_FILE = "segregation"
Containment = Literal["none_or_plastic", "mesh", "perforated", "solid_metal"]
CIRCUIT_AMPERES = 20.0


def segregation_class(family_id: str) -> str:
    """Return the segregation class of a data cable: b for unscreened Cat 5e and 6, a for coax.

    Raises:
        OutsideTableError: not a data or coax family.
    """
    classes = {"cat6": "b", "cat5e": "b", "coax": "a", "coax_power": "a"}
    if family_id not in classes:
        raise table(_FILE, "en50174_classes").outside("class", family_id)
    return classes[family_id]


def base_separation_mm(segregation: str, containment: Containment) -> Figure:
    """Return the base distance S, mm, for a class and the containment of the power cable.

    Args:
        segregation: "a" to "d".
        containment: "none_or_plastic", "mesh", "perforated" or "solid_metal" (1 mm or more).

    Raises:
        OutsideTableError: class or containment not in the table.
    """
    found = table(_FILE, "en50174_classes")
    return found.figure(found.row(**{"class": segregation}), containment, "mm")


def counted_circuits(rating_a: float, phases: Literal[1, 3]) -> int:
    """Return how many circuits one cable counts as: one per phase and per 20 A begun.

    Args:
        rating_a: Rated current of the circuit, A, above 0.
        phases: 1 or 3.
    """
    if rating_a <= 0:
        raise InputOutOfRangeError(f"rated current must be above 0 A, not {rating_a}")
    return int(phases * -(-rating_a // CIRCUIT_AMPERES))


def power_factor_p(circuits: int) -> Figure:
    """Return the factor P for a number of 230 V, 20 A circuits beside the data cables.

    Raises:
        OutsideTableError: less than one circuit.
    """
    found = table(_FILE, "en50174_power_factor")
    for row in found.rows:
        if row["circuits_min"] <= circuits <= row.get("circuits_max", circuits):
            return found.figure(row, "P", "")
    raise found.outside("circuits_min", circuits)


def separation_mm(segregation: str, containment: Containment, circuits: int) -> Figure:
    """Return the required separation A = S x P, mm (BS EN 50174-2).

    Args:
        segregation: Class of the data cable, "a" to "d".
        containment: What the power cable runs in.
        circuits: Number of 230 V, 20 A circuits beside it, counted by ``counted_circuits``.

    Raises:
        OutsideTableError: class, containment or count outside the tables.
    """
    base, p = base_separation_mm(segregation, containment), power_factor_p(circuits)
    weakest = base.provenance if base.from_memory else p.provenance
    return Figure(base.value * p.value, "mm", base.source, weakest)
