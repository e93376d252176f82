"""Fault current at the end of a loop."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.earth_fault_loop import earth_fault_current_a
from asfitted.calculate.working import Step
from asfitted.quantities import NUMBER
from asfitted.quick_sums._kinds import OHM, U0
from asfitted.quick_sums._sum import Example, Input, QuickSum

if TYPE_CHECKING:
    from asfitted.quick_sums._sum import Values


def work(given: Values) -> tuple[Step, ...]:
    """Return the fault current."""
    zs, u0, c = given.number("impedance"), given.number("u0"), given.number("c")
    return (
        Step(
            symbol="If",
            words="fault current; for the greatest use a cold loop and c 1.1, for the least c 0.95",
            formula="c × U0 / Z",
            substituted=f"{c:g} × {u0:g} V / {zs:g} Ω",
            value=earth_fault_current_a(zs, u0_v=u0, c=c),
            unit="A",
            source="BS 7671 411.4.4 and 434.1; c of IEC 60909-0",
        ),
    )


SUM = QuickSum(
    name="fault-current",
    title="Fault current of a loop",
    inputs=(
        Input("impedance", "impedance of the loop", OHM),
        U0,
        Input("c", "voltage factor", NUMBER, default="1"),
    ),
    work=work,
    example=Example(
        {"impedance": "1.15 ohm"},
        200,
        0.1,
        "Basic Electrical Installation Work, pp. 250-251, example 1 (seen)",
    ),
)
