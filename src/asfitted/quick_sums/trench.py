"""Shortest branched trench between places on open ground."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.routes.branched_trench import branched_trench, unbranched_trench
from asfitted.calculate.working import Step
from asfitted.errors import InputOutOfRangeError
from asfitted.geometry import Point
from asfitted.quantities import QuantityKind
from asfitted.quick_sums._sum import Example, Input, QuickSum

if TYPE_CHECKING:
    from asfitted.quick_sums._sum import Values

ON_PLAN_M = QuantityKind(
    "place on plan",
    "m",
    {"m": 1.0, "mm": 0.001},
    "12.5 m",
    bare_from=float("-inf"),
    nought=True,
    below_zero=True,
)
_SOURCE = "least tree between points, by relaxation (Smith, Algorithmica 7, 1992)"


def work(given: Values) -> tuple[Step, ...]:
    """Return the length with branches only at the places, the branches, then the least length."""
    east, north = given.numbers("east"), given.numbers("north")
    if len(east) != len(north):
        raise InputOutOfRangeError(
            f"{len(east)} figures east but {len(north)} north: give one of each per place"
        )
    places = [Point(x, y) for x, y in zip(east, north, strict=True)]
    plain, least = unbranched_trench(places), branched_trench(places)
    branches = ", ".join(f"{at.x:.2f}/{at.y:.2f}" for at in least.branches) or "none"
    return (
        Step(
            "Lp",
            "trench that branches only at the places",
            "least sum of straight lines",
            f"{len(places)} places",
            plain.length,
            "m",
            "least spanning tree (Prim, 1957)",
        ),
        Step(
            "L",
            "least trench, branching anywhere",
            "three arms at 120° to each other",
            f"branches at east/north {branches}",
            least.length,
            "m",
            _SOURCE,
        ),
    )


SUM = QuickSum(
    name="trench",
    title="Shortest branched trench or duct between places on open ground",
    inputs=(
        Input("east", "each place, metres east of a mark", ON_PLAN_M, many=True),
        Input("north", "each place, metres north of the mark", ON_PLAN_M, many=True),
    ),
    work=work,
    example=Example(
        {"east": "0, 1, 1, 0", "north": "0, 0, 1, 1"},
        2.7320508,
        1e-6,
        "unit square: 1 + root 3 (paper on trees for lattice points, value recalled) (memory)",
    ),
    note="ground without obstacles; a branch needs a draw pit, and cables in it a joint or a loop",
)
