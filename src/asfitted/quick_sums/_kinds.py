"""Kinds of figure and inputs that several quick sums share."""

from __future__ import annotations

from dataclasses import replace

from asfitted.quantities import (
    AREA_MM2,
    CURRENT_A,
    LENGTH_M,
    NUMBER,
    RESISTANCE_OHM,
    TEMPERATURE_C,
    VOLTAGE_V,
    QuantityKind,
)
from asfitted.quick_sums._sum import Input

PER_METRE = QuantityKind(
    "resistance per metre", "mΩ/m", {"mohm/m": 1.0, "mΩ/m": 1.0, "ohm/km": 1.0, "Ω/km": 1.0}, "7.41"
)
DROP_PER_AMPERE_METRE = QuantityKind(
    "drop per ampere and metre", "mV/A/m", {"mV/A/m": 1.0, "V/A/km": 1.0}, "11"
)
PERCENT = QuantityKind("share", "%", {"%": 1.0}, "5 %", nought=True)
TIME_S = QuantityKind("time", "s", {"s": 1.0, "ms": 0.001}, "0.4 s")
POWER_KVA = QuantityKind("apparent power", "kVA", {"kVA": 1.0, "MVA": 1000.0}, "500 kVA")
BIT_RATE = QuantityKind("bit rate", "Mbit/s", {"Mbit/s": 1.0, "kbit/s": 0.001}, "4 Mbit/s")
DIAMETER_MM = QuantityKind("width or diameter", "mm", {"mm": 1.0}, "18.7 mm")
OHM = replace(RESISTANCE_OHM, example="0.15 ohm")
CURRENT_OR_NONE = replace(CURRENT_A, nought=True, example="10 A")

CURRENT = Input("current", "design current Ib", CURRENT_A)
LENGTH = Input("length", "length of the run, one way", LENGTH_M)
SIZE = Input("size", "size of the line conductor", AREA_MM2)
FAMILY = Input("family", 'make of cable as in a job file, such as "SWA" or "twin and earth"')
METHOD = Input(
    "method", "reference method", choices=("A", "B", "C", "D", "E", "F", "100", "101", "102", "103")
)
PHASES = Input("phases", "phases of the circuit", choices=("1", "3"), default="1")
U0 = Input("u0", "line to neutral voltage", VOLTAGE_V, default="230 V")
AMBIENT = Input("ambient", "temperature of the air", TEMPERATURE_C, default="30 C")
POWER_FACTOR = Input("power-factor", "power factor of the load", NUMBER, default="1")
