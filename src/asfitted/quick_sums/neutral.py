"""Neutral current of three line currents."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.neutral_current import neutral_current_a
from asfitted.calculate.working import Step
from asfitted.quick_sums._kinds import CURRENT_OR_NONE
from asfitted.quick_sums._sum import Example, Input, QuickSum

if TYPE_CHECKING:
    from asfitted.quick_sums._sum import Values


def work(given: Values) -> tuple[Step, ...]:
    """Return IN."""
    lines = [given.number(name) for name in ("l1", "l2", "l3")]
    written = ", ".join(f"{amps:g}" for amps in lines)
    return (
        Step(
            symbol="IN",
            words="neutral current at equal power factors; harmonics come on top",
            formula="√(a² + b² + c² - ab - bc - ca)",
            substituted=f"a, b, c = {written} A",
            value=neutral_current_a(*lines),
            unit="A",
            source="phasor sum",
        ),
    )


SUM = QuickSum(
    name="neutral",
    title="Neutral current of three line currents",
    inputs=tuple(
        Input(name, f"current of {name.upper()}", CURRENT_OR_NONE) for name in ("l1", "l2", "l3")
    ),
    work=work,
    example=Example(
        {"l1": "10 A", "l2": "8 A", "l3": "6 A"},
        3.46,
        0.01,
        "electrical forum thread on unbalanced neutral current, its corrected answer (seen)",
    ),
)
