"""Fault current at the terminals of a transformer."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.fault_current import (
    three_phase_fault_a,
    transformer_current_a,
    transformer_impedance_ohm,
)
from asfitted.calculate.working import Step
from asfitted.quantities import NUMBER, VOLTAGE_V
from asfitted.quick_sums._kinds import PERCENT, POWER_KVA
from asfitted.quick_sums._sum import Example, Input, QuickSum

if TYPE_CHECKING:
    from asfitted.quick_sums._sum import Values


def work(given: Values) -> tuple[Step, ...]:
    """Return the rated current, the impedance and the three-phase fault current."""
    rating, volts, uk = given.number("rating"), given.number("voltage"), given.number("uk")
    c = given.number("c")
    z = transformer_impedance_ohm(rating, line_voltage_v=volts, uk_percent=uk)
    source = "IEC 60909-0; the network before the transformer is taken as infinite: the safe side"
    return (
        Step(
            "In",
            "rated current",
            "S / (√3 × U)",
            f"{rating:g} kVA / (√3 × {volts:g} V)",
            transformer_current_a(rating, line_voltage_v=volts),
            "A",
            source,
        ),
        Step(
            "Z",
            "impedance of one phase",
            "uk / 100 × U² / S",
            f"{uk:g} / 100 × {volts:g}² / {rating * 1000:g} VA",
            abs(z),
            "Ω",
            source,
        ),
        Step(
            symbol="Ik",
            words="three-phase fault current at its terminals",
            formula="c × U / (√3 × Z)",
            substituted=f"{c:g} × {volts:g} V / (√3 × {abs(z):.5f} Ω)",
            value=three_phase_fault_a(z, line_voltage_v=volts, c=c) / 1000,
            unit="kA",
            source=source,
        ),
    )


SUM = QuickSum(
    name="transformer-fault",
    title="Fault current at the terminals of a transformer",
    inputs=(
        Input("rating", "rated power", POWER_KVA),
        Input("voltage", "secondary voltage without load, line to line", VOLTAGE_V),
        Input("uk", "short-circuit voltage on the plate", PERCENT),
        Input("c", "voltage factor", NUMBER, default="1"),
    ),
    work=work,
    example=Example(
        {"rating": "1000 kVA", "voltage": "420 V", "uk": "6 %"},
        22.91,
        0.01,
        "calculation sheet following the Electrical Installation Guide method (seen)",
    ),
)
