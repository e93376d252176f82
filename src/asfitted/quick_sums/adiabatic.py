"""Least size of a conductor under fault."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.adiabatic import minimum_csa_for_energy_mm2, minimum_csa_mm2
from asfitted.calculate.working import Step
from asfitted.errors import InputOutOfRangeError
from asfitted.quantities import CURRENT_A, NUMBER
from asfitted.quick_sums._kinds import TIME_S
from asfitted.quick_sums._sum import Example, Input, QuickSum

if TYPE_CHECKING:
    from asfitted.quick_sums._sum import Values


def work(given: Values) -> tuple[Step, ...]:
    """Return S from a current and a time, or from the energy let through."""
    k = given.number("k")
    if given.has("energy"):
        energy = given.number("energy")
        value = minimum_csa_for_energy_mm2(energy, k=k)
        formula, figures = "√(I²t) / k", f"√({energy:g} A²s) / {k:g}"
    elif given.has("current") and given.has("time"):
        current, time = given.number("current"), given.number("time")
        value = minimum_csa_mm2(current, time_s=time, k=k)
        formula, figures = "√(I² × t) / k", f"√({current:g}² A² × {time:g} s) / {k:g}"
    else:
        raise InputOutOfRangeError('give "current" and "time", or "energy"')
    return (
        Step(
            symbol="S",
            words="least cross-section; take the next standard size",
            formula=formula,
            substituted=figures,
            value=value,
            unit="mm²",
            source="BS 7671 543.1.3 and 434.5.2; good for 0.1 s to 5 s",
        ),
    )


SUM = QuickSum(
    name="adiabatic",
    title="Least size of a conductor under fault",
    inputs=(
        Input("current", "fault current", CURRENT_A, default=""),
        Input("time", "time to disconnect; under 0.1 s give the energy", TIME_S, default=""),
        Input("energy", "energy the device lets through, A²s", NUMBER, default=""),
        Input("k", "115 copper/PVC core, 143 copper/XLPE, 46 armour of XLPE", NUMBER),
    ),
    work=work,
    example=Example(
        {"current": "200 A", "time": "0.4 s", "k": "115"},
        1.1,
        0.005,
        "Basic Electrical Installation Work, pp. 250-251, example 1 (seen)",
    ),
)
