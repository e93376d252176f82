"""Measured results, in the job file or in a file of their own. Nothing here is ever filled in."""

from __future__ import annotations

from typing import Annotated, Any

from pydantic import BeforeValidator, Field

from asfitted.spec import reading_words as r  # noqa: TC001 - pydantic needs it at run time
from asfitted.spec.fields import Date, SpecModel, Text


def _left_blank(value: Any) -> Any:
    """Return None for what was left blank: a form that is not yet filled in is no mistake."""
    return None if isinstance(value, str) and not value.strip() else value


def _none_listed(value: Any) -> Any:
    return {} if _left_blank(value) is None else value


TextOrBlank = Annotated[Text | None, BeforeValidator(_left_blank)]
DateOrBlank = Annotated[Date | None, BeforeValidator(_left_blank)]


class InstrumentWords(SpecModel):
    """One instrument, named as it is marked."""

    name: Text
    serial: Text
    checked: DateOrBlank = None


class TakenWords(SpecModel):
    """Who tested, when and with what; left out, the general entry of the file holds."""

    instrument: TextOrBlank = None
    date: DateOrBlank = None
    by: TextOrBlank = None
    remarks: TextOrBlank = None


class SupplyReadings(TakenWords):
    """Readings at the origin."""

    ze: r.LoopReading = Field(None, alias="Ze")
    fault_current: r.FaultReading = None
    electrode: r.LoopReading = None
    polarity: r.RightOrWrong = None


class BoardReadings(TakenWords):
    """Readings at one board."""

    zs: r.LoopReading = Field(None, alias="Zs")
    fault_current: r.FaultReading = None
    polarity: r.RightOrWrong = None
    phase_sequence: r.RightOrWrong = None


class CircuitReadings(TakenWords):
    """Readings of one circuit, by its way: ``DB1/3TP``."""

    r1: r.ContinuityReading = None
    rn: r.ContinuityReading = None
    ring_r2: r.ContinuityReading = Field(None, alias="r2")
    r1_r2: r.ContinuityReading = Field(None, alias="R1+R2")
    r2: r.ContinuityReading = Field(None, alias="R2")
    insulation_voltage: r.TestVolts = None
    insulation_live: r.InsulationReading = None
    insulation_earth: r.InsulationReading = None
    polarity: r.RightOrWrong = None
    zs: r.LoopReading = Field(None, alias="Zs")
    rcd_time: r.TripReading = Field(None, alias="RCD time")
    rcd_button: r.WorksOrFails = Field(None, alias="RCD button")
    afdd_button: r.WorksOrFails = Field(None, alias="AFDD button")
    not_tested: TextOrBlank = None


class MeasuredWords(SpecModel):
    """``test results:`` of a job file; a results file holds the same keys at its top."""

    instruments: Annotated[dict[str, InstrumentWords], BeforeValidator(_none_listed)] = Field(
        default_factory=dict
    )
    instrument: TextOrBlank = None
    date: DateOrBlank = None
    by: TextOrBlank = None
    supply: SupplyReadings | None = None
    boards: dict[str, BoardReadings] = Field(default_factory=dict)
    circuits: dict[str, CircuitReadings] = Field(default_factory=dict)


class ResultsFile(MeasuredWords):
    """A results file: the language version, then the keys of ``test results:``."""

    asfitted: Text
