"""Readings of a ring final circuit."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.ring_final import cross_connected_ohm
from asfitted.calculate.working import Step
from asfitted.quick_sums._kinds import OHM
from asfitted.quick_sums._sum import Example, Input, QuickSum

if TYPE_CHECKING:
    from asfitted.quick_sums._sum import Values


def work(given: Values) -> tuple[Step, ...]:
    """Return the reading to expect at each socket of a cross-connected ring."""
    first, second = given.number("r1"), given.number("second")
    return (
        Step(
            symbol="R1+R2",
            words="reading to expect at each socket, cross-connected",
            formula="(r1 + r2) / 4",
            substituted=f"({first:g} Ω + {second:g} Ω) / 4",
            value=cross_connected_ohm(first, second_end_to_end_ohm=second),
            unit="Ω",
            source="IET Guidance Note 3, continuity of ring final circuits (memory)",
        ),
    )


SUM = QuickSum(
    name="ring",
    title="Reading at the sockets of a cross-connected ring",
    inputs=(
        Input("r1", "line, end to end", OHM),
        Input("second", "protective conductor r2 or neutral rn, end to end", OHM),
    ),
    work=work,
    example=Example(
        {"r1": "1.15 ohm", "second": "1.8 ohm"},
        0.7375,
        0.0005,
        "electricians' forum thread on the length of a ring: readings seen, quarter rule by hand",
    ),
)
