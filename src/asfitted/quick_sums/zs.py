"""Loop impedance at the far end."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.earth_fault_loop import loop_impedance_ohm
from asfitted.calculate.working import Step
from asfitted.quick_sums._kinds import OHM
from asfitted.quick_sums._sum import Example, Input, QuickSum

if TYPE_CHECKING:
    from asfitted.quick_sums._sum import Values


def work(given: Values) -> tuple[Step, ...]:
    """Return Zs."""
    ze, run = given.number("ze"), given.number("r1r2")
    return (
        Step(
            symbol="Zs",
            words="earth fault loop impedance at the far end; the plain sum is the safe side",
            formula="Ze + (R1 + R2)",
            substituted=f"{ze:g} Ω + {run:g} Ω",
            value=loop_impedance_ohm(ze, r1_plus_r2_ohm=run),
            unit="Ω",
            source="BS 7671 411.4",
        ),
    )


SUM = QuickSum(
    name="zs",
    title="Earth fault loop impedance at the far end",
    inputs=(
        Input("ze", "loop impedance before the run (Ze, or Zs at the board)", OHM),
        Input("r1r2", "R1 + R2 of the run at working temperature", OHM),
    ),
    work=work,
    example=Example(
        {"ze": "0.15 ohm", "r1r2": "0.37764 ohm"},
        0.5276,
        0.0005,
        "engineering forum thread on loop impedance, shower circuit 6.0/2.5 mm², 30 m (seen)",
    ),
)
