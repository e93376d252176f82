"""Readings of the hand-built job in which everything was tested and is right."""

from __future__ import annotations

from types import MappingProxyType

from asfitted.calculate.results import ExpectedReading
from asfitted.resolve import readings as r

TAKEN = r.Taken(by="A. Tester", date="2026-11-21", instrument="A")
CIRCUITS = ("DB1/1L1", "DB1/2TP", "DB1/3TP", "DB1/4TP", "DB2/1L1", "DB2/1L2")
WITH_RCD = ("DB1/1L1", "DB1/4TP", "DB2/1L1", "DB2/1L2")


def figure(value: float) -> r.Reading:
    """Return a reading that the instrument showed so."""
    return r.Reading(value, f"{value:g}")


def circuit_reading(tag: str) -> r.CircuitReading:
    """Return readings of a circuit, all within their limits."""
    return r.CircuitReading(
        taken=TAKEN,
        r1r2_ohm=figure(0.2),
        insulation_test_v=500.0,
        insulation_live_mohm=r.Reading(999.0, ">999", beyond=True),
        insulation_earth_mohm=figure(299.0),
        polarity="correct",
        zs_ohm=figure(0.4),
        rcd_ms=figure(28.0) if tag in WITH_RCD else None,
        rcd_button="works" if tag in WITH_RCD else None,
    )


def readings() -> r.Readings:
    """Return the readings of the whole job."""
    return r.Readings(
        instruments=MappingProxyType({"A": r.Instrument("A", "tester", "1234", "2026-03-02")}),
        supply=r.SupplyReading(TAKEN, figure(0.15), figure(4.0), polarity="correct"),
        boards=MappingProxyType(
            {
                tag: r.BoardReading(
                    TAKEN, figure(0.2), polarity="correct", phase_sequence="correct"
                )
                for tag in ("DB1", "DB2")
            }
        ),
        circuits=MappingProxyType({tag: circuit_reading(tag) for tag in CIRCUITS}),
    )


def expected() -> MappingProxyType[str, ExpectedReading]:
    """Return what was calculated for cold conductors of each circuit."""
    return MappingProxyType({tag: ExpectedReading(0.2, 0.4) for tag in CIRCUITS})
