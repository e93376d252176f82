"""Runs of tray, basket, trunking and conduit, and declared lengths such as a buried duct."""

from __future__ import annotations

from pydantic import Field

from asfitted.spec.fields import (
    Bands,
    ExtentMm,
    KnownLengthM,
    Level,
    Position,
    RunKind,
    Size,
    SoilKmW,
    SpecModel,
    State,
    Text,
    Waypoint,
)


class RunWords(SpecModel):
    """One run: either ``level`` and ``run``, or ``from``, ``to`` and ``length``."""

    kind: RunKind = Field(alias="is")
    size: Size
    bands: Bands = Field(alias="for")
    state: State | None = None
    level: Level | None = None
    run: list[Waypoint] | None = None
    start: Position | None = Field(None, alias="from")
    to: Text | None = None
    length: KnownLengthM | None = None
    depth: ExtentMm | None = None
    soil: SoilKmW | None = None
    stand_off: ExtentMm | None = Field(None, alias="stand-off")
