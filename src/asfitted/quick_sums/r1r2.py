"""R1 + R2 of a run."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.earth_fault_loop import r1_plus_r2_ohm
from asfitted.calculate.working import Step
from asfitted.quantities import AREA_MM2, TEMPERATURE_C
from asfitted.quick_sums._kinds import LENGTH
from asfitted.quick_sums._sum import Example, Input, QuickSum
from asfitted.reference import conductors

if TYPE_CHECKING:
    from asfitted.quick_sums._sum import Values


def work(given: Values) -> tuple[Step, ...]:
    """Return R1 + R2 of copper conductors at a temperature."""
    line = conductors.resistance_20c(given.number("line"))
    cpc = conductors.resistance_20c(given.number("cpc"))
    at_c, length = given.number("temperature"), given.number("length")
    factor = conductors.temperature_factor(at_c)
    return (
        Step(
            symbol="R1+R2",
            words=f"line {given.number('line'):g} mm² and cpc {given.number('cpc'):g} mm², "
            f"copper, at {at_c:g} °C",
            formula="(r1 + r2) × L × factor / 1000",
            substituted=f"({line.value:g} + {cpc.value:g}) mΩ/m × {length:g} m × "
            f"{factor.value:.2f} / 1000",
            value=r1_plus_r2_ohm(
                r1_mohm_m=line.value,
                r2_mohm_m=cpc.value,
                length_m=length,
                temperature_factor=factor.value,
            ),
            unit="Ω",
            source=f"{line.source} ({line.provenance}); factor {factor.source} "
            f"({factor.provenance})",
        ),
    )


SUM = QuickSum(
    name="r1r2",
    title="R1 + R2 of copper conductors",
    inputs=(
        Input("line", "size of the line conductor", AREA_MM2),
        Input("cpc", "size of the protective conductor", AREA_MM2),
        LENGTH,
        Input(
            "temperature", "of the conductors; 20 C for a cold test", TEMPERATURE_C, default="70 C"
        ),
    ),
    work=work,
    example=Example(
        {"line": "6 mm2", "cpc": "2.5 mm2", "length": "30 m"},
        0.378,
        0.001,
        "engineering forum thread on loop impedance, shower circuit 6.0/2.5 mm², 30 m (seen)",
    ),
)
