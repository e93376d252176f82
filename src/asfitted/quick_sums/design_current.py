"""Design current of a load."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.design_current import single_phase_current_a, three_phase_current_a
from asfitted.calculate.working import Step
from asfitted.quantities import POWER_W, VOLTAGE_V
from asfitted.quick_sums._kinds import PHASES, POWER_FACTOR
from asfitted.quick_sums._sum import Example, Input, QuickSum

if TYPE_CHECKING:
    from asfitted.quick_sums._sum import Values


def work(given: Values) -> tuple[Step, ...]:
    """Return Ib from power, power factor and phases."""
    load_w, factor = given.number("load"), given.number("power-factor")
    three = given.word("phases") == "3"
    volts = given.number("voltage") if given.has("voltage") else (400.0 if three else 230.0)
    kilowatts = load_w / 1000
    if three:
        value = three_phase_current_a(kilowatts, power_factor=factor, line_voltage_v=volts)
    else:
        value = single_phase_current_a(kilowatts, power_factor=factor, voltage_v=volts)
    root = "√3 × " if three else ""
    return (
        Step(
            symbol="Ib",
            words=f"design current, {'three-phase' if three else 'single-phase'}",
            formula=f"P / ({root}U × cos φ)",
            substituted=f"{load_w:g} W / ({root}{volts:g} V × {factor:g})",
            value=value,
            unit="A",
            source="definition of active power; BS 7671 Part 2, design current",
        ),
    )


SUM = QuickSum(
    name="design-current",
    title="Design current of a load",
    inputs=(
        Input("load", "electrical input power", POWER_W),
        PHASES,
        POWER_FACTOR,
        Input("voltage", "line to line for 3 phases, else to neutral", VOLTAGE_V, default=""),
    ),
    work=work,
    example=Example(
        {"load": "16 kW", "phases": "3"},
        23.1,
        0.05,
        "teaching sheet on sizing cable, three-phase 16 kW process heater (seen)",
    ),
)
