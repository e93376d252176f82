"""Voltage drop of a run."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.voltage_drop import drop_per_ampere_metre, drop_percent, voltage_drop_v
from asfitted.calculate.working import Step
from asfitted.errors import InputOutOfRangeError
from asfitted.quick_sums._kinds import (
    CURRENT,
    DROP_PER_AMPERE_METRE,
    LENGTH,
    PHASES,
    POWER_FACTOR,
    SIZE,
)
from asfitted.quick_sums._sum import Example, Input, QuickSum
from asfitted.reference import cables

if TYPE_CHECKING:
    from asfitted.quick_sums._sum import Values


def _per_ampere_metre(given: Values, loaded: int) -> tuple[float, str]:
    if given.has("mv"):
        return given.number("mv"), "mV/A/m as given"
    if not (given.has("family") and given.has("size")):
        raise InputOutOfRangeError('give "mv" from the table, or both "family" and "size"')
    row = cables.voltage_drop_r_x_z(given.word("family"), given.number("size"), loaded, "C")
    factor = given.number("power-factor")
    value = drop_per_ampere_metre(r_mv_a_m=row.r_mv_a_m, x_mv_a_m=row.x_mv_a_m, power_factor=factor)
    return value, f"{row.figure.source} ({row.figure.provenance}), at cos φ {factor:g}"


def work(given: Values) -> tuple[Step, ...]:
    """Return the drop in per cent of nominal, then in volts."""
    three = given.word("phases") == "3"
    per, source = _per_ampere_metre(given, 3 if three else 2)
    current, length = given.number("current"), given.number("length")
    volts = voltage_drop_v(per, current_a=current, length_m=length)
    nominal = 400.0 if three else 230.0
    between = "line to line" if three else "line to neutral"
    return (
        Step("mV/A/m", "drop per ampere and metre", "", "", per, "mV/A/m", source),
        Step(
            symbol="Vd %",
            words=f"share of {nominal:g} V; 3 % lighting, 5 % other from a public supply",
            formula="100 × Vd / U",
            substituted=f"100 × {volts:.3f} V / {nominal:g} V",
            value=drop_percent(volts, nominal_v=nominal),
            unit="%",
            source="BS 7671 Appendix 4, 6.4 (limits: memory)",
        ),
        Step(
            symbol="Vd",
            words=f"voltage drop, {between}",
            formula="(mV/A/m) × Ib × L / 1000",
            substituted=f"{per:g} × {current:g} A × {length:g} m / 1000",
            value=volts,
            unit="V",
            source=f"BS 7671 Appendix 4, 6.2; {source}",
        ),
    )


SUM = QuickSum(
    name="voltage-drop",
    title="Voltage drop of a run",
    inputs=(
        CURRENT,
        LENGTH,
        Input("mv", "drop of the cable from its table", DROP_PER_AMPERE_METRE, default=""),
        Input("family", "make of cable, where mv is not given", default=""),
        Input(SIZE.name, f"{SIZE.words}, where mv is not given", SIZE.kind, default=""),
        PHASES,
        POWER_FACTOR,
    ),
    work=work,
    example=Example(
        {"current": "25 A", "length": "16 m", "mv": "11"},
        4.4,
        0.001,
        "lecture document on cables, conduits and trunking, 6 kW shower on 4 mm² (seen)",
    ),
)
