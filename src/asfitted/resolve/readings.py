"""Measured results as resolved: readings by circuit and board, who took them and with what."""

from __future__ import annotations

from dataclasses import dataclass, field
from types import MappingProxyType
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from collections.abc import Mapping


@dataclass(frozen=True)
class Reading:
    """One reading. ``value`` is None where it was not taken; ``not_tested`` says why.

    ``beyond``: the instrument showed more than the end of its range, which ``value`` is.
    """

    value: float | None
    shown: str  # as the instrument showed it: "0.35", ">999"; "not tested"
    beyond: bool = False
    not_tested: str = ""


@dataclass(frozen=True)
class Instrument:
    """One instrument, named as it is marked."""

    tag: str
    name: str
    serial: str
    checked: str  # date of its last check, or "not recorded"


@dataclass(frozen=True)
class Taken:
    """Who took some readings, when, and with which instrument (its tag)."""

    by: str
    date: str
    instrument: str
    remarks: str = ""


@dataclass(frozen=True)
class SupplyReading:
    """Readings at the origin, ohm and kA."""

    taken: Taken
    ze_ohm: Reading | None = None
    fault_ka: Reading | None = None
    electrode_ohm: Reading | None = None
    polarity: Literal["correct", "wrong"] | None = None


@dataclass(frozen=True)
class BoardReading:
    """Readings at one board, ohm and kA."""

    taken: Taken
    zs_ohm: Reading | None = None
    fault_ka: Reading | None = None
    polarity: Literal["correct", "wrong"] | None = None
    phase_sequence: Literal["correct", "wrong"] | None = None


@dataclass(frozen=True)
class CircuitReading:
    """Readings of one circuit; what was not taken is None."""

    taken: Taken
    r1_ohm: Reading | None = None
    rn_ohm: Reading | None = None
    ring_r2_ohm: Reading | None = None
    r1r2_ohm: Reading | None = None
    r2_ohm: Reading | None = None
    insulation_test_v: float | None = None
    insulation_live_mohm: Reading | None = None
    insulation_earth_mohm: Reading | None = None
    polarity: Literal["correct", "wrong"] | None = None
    zs_ohm: Reading | None = None
    rcd_ms: Reading | None = None
    rcd_button: Literal["works", "fails"] | None = None
    afdd_button: Literal["works", "fails"] | None = None
    not_tested: str = ""  # why the circuit as a whole was not tested


@dataclass(frozen=True)
class Readings:
    """Everything that was measured. Keys are board tags and circuit tags."""

    instruments: Mapping[str, Instrument] = field(default_factory=lambda: MappingProxyType({}))
    supply: SupplyReading | None = None
    boards: Mapping[str, BoardReading] = field(default_factory=lambda: MappingProxyType({}))
    circuits: Mapping[str, CircuitReading] = field(default_factory=lambda: MappingProxyType({}))
