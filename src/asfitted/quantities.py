"""Figures as written on site, such as ``6 mm²``, ``2.4 m`` or ``0.15 ohm measured``.

Each kind of field has one unit that a bare number stands for:

======================================  ==========
kind                                    bare unit
======================================  ==========
positions, heights, widths, sizes       mm
cable and run lengths, distances        m
currents                                A
residual currents                       mA
fault currents, short-circuit ratings   kA
power                                   W
cross-section                           mm²
resistance, impedance                   ohm
voltage                                 V
temperature                             °C
disk                                    TB
apparent power of a source              kVA
short-circuit power                     MVA
share                                   %
thermal resistivity of soil             K.m/W
time kept                               days
time of fire resistance                 min
======================================  ==========

Nothing is guessed: a decimal comma, a wrong unit or a suspiciously small bare number is refused,
with a hint that says what to write.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from asfitted.errors import NotUnderstoodError

if TYPE_CHECKING:
    from collections.abc import Mapping

BASIS_WORDS = ("measured", "declared", "assumed")

_NUMBER = re.compile(r"(?P<sign>[+-]?)(?P<digits>\d+(?:\.\d+)?|\.\d+)(?P<rest>.*)", re.DOTALL)
_DECIMAL_COMMA = re.compile(r"(\d+),(\d+)")


@dataclass(frozen=True)
class QuantityKind:
    """One kind of figure: its name, its units and what a bare number means.

    ``units`` gives the factor to the unit in which the figure is handed on, which is the unit of a
    bare number. ``bare_from`` and ``bare_to`` bound the bare numbers that cannot be a slip;
    ``nought`` and ``below_zero`` say whether a figure may be nought or less.
    """

    name: str
    unit: str
    units: Mapping[str, float]
    example: str
    bare_from: float = 0.0
    bare_to: float = float("inf")
    bare_hint: str = ""
    nought: bool = False
    below_zero: bool = False


@dataclass(frozen=True)
class Figure:
    """A figure in the unit of its kind, with the word that says how it is known ("" if none)."""

    value: float
    unit: str
    basis: str = ""


_MM = {"mm": 1.0, "cm": 10.0, "m": 1000.0, "metre": 1000.0, "metres": 1000.0}
_M = {"m": 1.0, "metre": 1.0, "metres": 1.0, "mm": 0.001, "cm": 0.01, "km": 1000.0}

POSITION_MM = QuantityKind(
    "length or height",
    "mm",
    _MM,
    "2.4 m or 2400",
    bare_from=50.0,
    bare_hint="write {n} m or {k}",
    nought=True,
)
EXTENT_MM = replace(POSITION_MM, nought=False)
SIZE_MM = QuantityKind(
    "size", "mm", _MM, "50 or 50 mm", bare_from=5.0, bare_hint="write {n} m or {k}"
)
LENGTH_M = QuantityKind(
    "length", "m", _M, "23 m", bare_to=999.0, bare_hint="write {n} mm or the length in m"
)
CURRENT_A = QuantityKind("current", "A", {"A": 1.0, "mA": 0.001, "kA": 1000.0}, "32 A")
RESIDUAL_MA = QuantityKind(
    "residual current",
    "mA",
    {"mA": 1.0, "A": 1000.0},
    "30 mA",
    bare_from=5.0,
    bare_hint="write {n} A or the figure in mA",
)
FAULT_KA = QuantityKind(
    "fault current",
    "kA",
    {"kA": 1.0, "A": 0.001},
    "4.2 kA",
    bare_to=100.0,
    bare_hint="write {n} A or the figure in kA",
)
POWER_W = QuantityKind("power", "W", {"W": 1.0, "kW": 1000.0}, "3 kW or 45 W", nought=True)
AREA_MM2 = QuantityKind(
    "cross-section", "mm2", {"mm2": 1.0, "mm²": 1.0, "sq mm": 1.0, "sqmm": 1.0}, "6 mm2"
)
RESISTANCE_OHM = QuantityKind(
    "impedance or resistance",
    "ohm",
    {"ohm": 1.0, "ohms": 1.0, "\u03a9": 1.0, "\u2126": 1.0, "mohm": 0.001, "milliohm": 0.001},
    "0.15 ohm measured",
)
VOLTAGE_V = QuantityKind("voltage", "V", {"V": 1.0, "kV": 1000.0}, "230 V")
FREQUENCY_HZ = QuantityKind("frequency", "Hz", {"Hz": 1.0}, "50 Hz")
TEMPERATURE_C = QuantityKind(
    "temperature", "C", {"C": 1.0, "°C": 1.0, "deg C": 1.0}, "30 C", nought=True, below_zero=True
)
ANGLE_DEG = QuantityKind("angle", "deg", {"deg": 1.0, "°": 1.0, "degrees": 1.0}, "45")
DISK_TB = QuantityKind("disk size", "TB", {"TB": 1.0, "GB": 0.001}, "4 TB")
TIME_DAYS = QuantityKind(
    "time", "days", {"days": 1.0, "day": 1.0, "weeks": 7.0, "week": 7.0}, "14 days"
)
FLOOR_LEVEL_MM = replace(POSITION_MM, name="floor level", example="3.2 m", below_zero=True)
TIME_MIN = QuantityKind(
    "time", "min", {"min": 1.0, "minutes": 1.0, "minute": 1.0, "h": 60.0}, "60 min"
)
APPARENT_KVA = QuantityKind("apparent power", "kVA", {"kVA": 1.0, "MVA": 1000.0}, "500 kVA")
SHORT_CIRCUIT_MVA = QuantityKind(
    "short-circuit power", "MVA", {"MVA": 1.0, "GVA": 1000.0}, "250 MVA"
)
SHARE_PCT = QuantityKind(
    "share", "%", {"%": 1.0}, "20 %", bare_from=1.0, bare_to=100.0, bare_hint="write {n} %"
)
SOIL_KM_W = QuantityKind(
    "thermal resistivity",
    "K.m/W",
    {"K.m/W": 1.0, "Km/W": 1.0, "K m/W": 1.0},
    "1.5 K.m/W",
    bare_to=10.0,
    bare_hint="write the figure in K.m/W",
)
NUMBER = QuantityKind("number", "", {}, "0.8")


def _refuse_comma(text: str, kind: QuantityKind) -> None:
    comma = _DECIMAL_COMMA.search(text)
    if not comma:
        return
    whole, part = comma.groups()
    hint = f"decimal comma: write {whole}.{part}"
    if len(part) == 3:
        hint += f", or {whole}{part} if the comma parts thousands"
    raise NotUnderstoodError(f'"{text}" cannot be read as {kind.name}', hint, is_quantity=True)


def _unit_factor(unit: str, number: str, text: str, kind: QuantityKind) -> float:
    if unit in kind.units:
        return kind.units[unit]
    loose = {name.lower(): name for name in kind.units}
    if unit.lower() in loose:
        hint = f"write {number} {loose[unit.lower()]}"
    elif kind.units:
        hint = f"write it like {kind.example}"
    else:
        hint = f"a plain number such as {kind.example}"
    message = f'"{text}" cannot be read as {kind.name}: unit "{unit}" is not known here'
    raise NotUnderstoodError(message, hint, is_quantity=True)


def _check_bare(value: float, number: str, text: str, kind: QuantityKind) -> None:
    if value == 0 or kind.bare_from <= value <= kind.bare_to:
        return
    hint = kind.bare_hint.format(n=number, k=f"{value * 1000:g}")
    message = f'"{text}" has no unit; a bare figure is taken as {kind.unit} here'
    raise NotUnderstoodError(message, hint, is_quantity=True)


def _signed(value: float, sign: str, text: str, kind: QuantityKind) -> float:
    if sign == "-" and not kind.below_zero:
        raise NotUnderstoodError(f'"{text}" is below zero', is_quantity=True)
    if value == 0 and not kind.nought:
        hint = "leave it out if it is not known"
        raise NotUnderstoodError(f'"{text}": {kind.name} cannot be nought', hint, is_quantity=True)
    return -value if sign == "-" else value


def parse_quantity(text: str, kind: QuantityKind) -> float:
    """Return a figure in the unit of its kind.

    Args:
        text: the words of the spec, such as ``"2.4 m"``.
        kind: what the field holds.

    Raises:
        NotUnderstoodError: no figure, a unit that does not belong, a decimal comma, a bare number
            that looks like a slip, or a figure of nought or less where that cannot be.
    """
    text = " ".join(text.split())
    if not text:
        raise NotUnderstoodError(
            f"no {kind.name} is written", f"write it like {kind.example}", is_quantity=True
        )
    _refuse_comma(text, kind)
    match = _NUMBER.fullmatch(text)
    if not match:
        raise NotUnderstoodError(
            f'"{text}" cannot be read as {kind.name}',
            f"write it like {kind.example}",
            is_quantity=True,
        )
    number, unit = match["digits"], match["rest"].strip()
    value = _signed(float(number), match["sign"], text, kind)
    if not unit:
        _check_bare(value, number, text, kind)
        return value
    # rounding takes off the dust of 2.55 * 1000 without touching a written figure
    return round(value * _unit_factor(unit, number, text, kind), 9)


def parse_figure(text: str, kind: QuantityKind) -> Figure:
    """Return a figure and the word after it that says how it is known.

    Raises:
        NotUnderstoodError: as :func:`parse_quantity`.
    """
    words = text.split()
    basis = words[-1].lower() if words and words[-1].lower() in BASIS_WORDS else ""
    figure = " ".join(words[:-1] if basis else words)
    return Figure(parse_quantity(figure, kind), kind.unit, basis)


def parse_count(text: str) -> int:
    """Return a whole number, one or more; ``010`` is ten, as written.

    Raises:
        NotUnderstoodError: not a whole number, or none.
    """
    if not re.fullmatch(r"\d+", text.strip(), re.ASCII) or int(text) < 1:
        raise NotUnderstoodError(
            f'"{text}" is not a whole number', "write a count such as 4", is_quantity=True
        )
    return int(text)


def parse_size_mm(text: str) -> tuple[float, float]:
    """Return width and height in mm of ``450 x 700`` or ``50`` (round: both the same).

    Raises:
        NotUnderstoodError: not one or two sizes.
    """
    parts = re.split(r"\s*[x×X]\s*", text.strip())
    if len(parts) > 2:
        raise NotUnderstoodError(
            f'"{text}" is not a size', "write width x height, such as 150 x 25", is_quantity=True
        )
    sizes = [parse_quantity(part, SIZE_MM) for part in parts]
    return sizes[0], sizes[-1]
