"""Voltage at a 12 V camera."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.data.dc_supply import load_current_a, loop_resistance_ohm, voltage_at_load_v
from asfitted.calculate.working import Step
from asfitted.errors import InputOutOfRangeError
from asfitted.quantities import AREA_MM2, CURRENT_A, POWER_W, VOLTAGE_V
from asfitted.quick_sums._kinds import LENGTH
from asfitted.quick_sums._sum import Example, Input, QuickSum
from asfitted.reference import cctv, conductors

if TYPE_CHECKING:
    from asfitted.quick_sums._sum import Values

LEAST_V = 10.8


def _current(given: Values) -> tuple[float, tuple[Step, ...]]:
    if given.has("current"):
        return given.number("current"), ()
    if not given.has("load"):
        raise InputOutOfRangeError('give the "current" or the "load" of the camera')
    load = given.number("load")
    value = load_current_a(load, least_v=LEAST_V)
    step = Step(
        "I",
        "current at the lowest voltage it works at",
        "P / Vmin",
        f"{load:g} W / {LEAST_V:g} V",
        value,
        "A",
        "Ohm's law, the safe side",
    )
    return value, (step,)


def work(given: Values) -> tuple[Step, ...]:
    """Return the voltage at the far end of a two-wire run."""
    current, before = _current(given)
    if given.has("size"):
        found = conductors.resistance_20c(given.number("size"))
        per_100m, source = found.value / 10, found
    elif given.has("cable"):
        source = cctv.conductor_ohm_per_100m(given.word("cable").replace(" ", "_"))
        per_100m = source.value
    else:
        raise InputOutOfRangeError('give the "size" of each wire, or the "cable"')
    length, wires, supply = given.number("length"), given.count("wires"), given.number("supply")
    loop = loop_resistance_ohm(per_100m, length_m=length, conductors_each_way=wires)
    told = f"{source.source} ({source.provenance})"
    return (
        *before,
        Step(
            "R",
            f"resistance out and back, {wires} wire(s) each way",
            "2 × r × L / (100 × n)",
            f"2 × {per_100m:g} Ω/100 m × {length:g} m / (100 × {wires})",
            loop,
            "Ω",
            told,
        ),
        Step(
            symbol="V",
            words="voltage at the camera",
            formula="Vsupply - I × R",
            substituted=f"{supply:g} V - {current:.4g} A × {loop:.4g} Ω",
            value=voltage_at_load_v(supply, current_a=current, loop_ohm=loop),
            unit="V",
            source=f"Ohm's law; {told}",
        ),
    )


SUM = QuickSum(
    name="dc-drop",
    title="Voltage at a 12 V camera",
    inputs=(
        LENGTH,
        Input("supply", "voltage of the supply", VOLTAGE_V, default="12 V"),
        Input("load", "greatest power of the camera, infra-red on", POWER_W, default=""),
        Input("current", "its current, where known", CURRENT_A, default=""),
        Input("size", "size of each wire", AREA_MM2, default=""),
        Input(
            "cable",
            "camera cable, where no size is given",
            choices=("cat5e", "cat6", "coax power"),
            default="",
        ),
        Input("wires", "wires in parallel each way", is_count=True, default="1"),
    ),
    work=work,
    example=Example(
        {"length": "25 m", "current": "1 A", "size": "2.5 mm2"},
        11.63,
        0.005,
        "by hand: 12 V - 1 A x 2 x 25 m x 7.41 mΩ/m (IEC 60228 class 2, 2.5 mm²); an energy "
        "company's note gives 11.66 V with 0.017 Ω mm²/m (seen)",
    ),
)
