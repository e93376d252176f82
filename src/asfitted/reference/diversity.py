"""Allowances for diversity and conventional socket circuits, from the On-Site Guide."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.reference.loader import table

if TYPE_CHECKING:
    from asfitted.reference.figure import Figure

_FILE = "diversity"
PREMISES = ("dwelling", "small_business", "hotel")


@dataclass(frozen=True)
class Allowance:
    """How circuits of one kind add up in one kind of premises.

    Either shares of the largest, the second and each remaining circuit, or a first part taken
    whole (``full_to_a`` above 0) and a share of the rest.
    """

    load: str
    first_percent: float
    second_percent: float
    others_percent: float
    full_to_a: float
    rest_percent: float
    socket_a: float
    source: str
    provenance: str


def load_kinds() -> tuple[str, ...]:
    """Return the kinds of load that have an allowance."""
    return tuple(dict.fromkeys(row["load"] for row in table(_FILE, "allowances").rows))


def allowance(load: str, premises: str) -> Allowance:
    """Return the allowance for a kind of load.

    Args:
        load: One of ``load_kinds()``.
        premises: One of ``PREMISES``.

    Raises:
        OutsideTableError: the guide gives no allowance for it there.
    """
    found = table(_FILE, "allowances")
    for row in found.rows:
        if row["load"] == load and row["premises"] in (premises, "any"):
            return Allowance(
                load=load,
                first_percent=float(row.get("first_percent", 0.0)),
                second_percent=float(row.get("second_percent", 0.0)),
                others_percent=float(row.get("others_percent", 0.0)),
                full_to_a=float(row.get("full_to_a", 0.0)),
                rest_percent=float(row.get("rest_percent", 0.0)),
                socket_a=float(row.get("socket_a", 0.0)),
                source=found.standard,
                provenance=str(row["provenance"]),
            )
    raise found.outside("load", f"{load} in {premises}")


def floor_area_m2(circuit: str, rating_a: float, csa_mm2: float) -> Figure:
    """Return the floor area a conventional socket circuit goes with, m2; guidance only.

    Raises:
        OutsideTableError: not a conventional circuit.
    """
    found = table(_FILE, "standard_circuits")
    row = found.row(circuit=circuit, rating_a=rating_a, csa_mm2=csa_mm2)
    return found.figure(row, "floor_m2", "m2")
