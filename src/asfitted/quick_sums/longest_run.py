"""Longest run within a limit of voltage drop."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.voltage_drop import greatest_length_m
from asfitted.calculate.working import Step
from asfitted.quantities import VOLTAGE_V
from asfitted.quick_sums._kinds import CURRENT, DROP_PER_AMPERE_METRE
from asfitted.quick_sums._sum import Example, Input, QuickSum

if TYPE_CHECKING:
    from asfitted.quick_sums._sum import Values


def work(given: Values) -> tuple[Step, ...]:
    """Return the length."""
    per, current, limit = given.number("mv"), given.number("current"), given.number("limit")
    return (
        Step(
            symbol="L",
            words="longest run, one way",
            formula="1000 × Vd / ((mV/A/m) × Ib)",
            substituted=f"1000 × {limit:g} V / ({per:g} × {current:g} A)",
            value=greatest_length_m(per, current_a=current, limit_v=limit),
            unit="m",
            source="BS 7671 Appendix 4, 6.2 solved for the length",
        ),
    )


SUM = QuickSum(
    name="longest-run",
    title="Longest run within a limit of voltage drop",
    inputs=(
        CURRENT,
        Input("mv", "drop of the cable from its table", DROP_PER_AMPERE_METRE),
        Input("limit", "drop allowed for this run", VOLTAGE_V),
    ),
    work=work,
    example=Example(
        {"current": "32 A", "mv": "11", "limit": "11.5 V"},
        32.67,
        0.01,
        "IET online community thread on a radial, published as 32 m rounded down (seen)",
    ),
)
