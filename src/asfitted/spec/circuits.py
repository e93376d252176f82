"""Circuits and the points they serve."""

from __future__ import annotations

from pydantic import Field

from asfitted.spec.fields import (
    CablePhrase,
    Count,
    CurrentA,
    Device,
    ExtentMm,
    Ip,
    KnownLengthM,
    LengthM,
    Load,
    PlateWords,
    Position,
    PowerFactor,
    Restart,
    Route,
    SharePct,
    SpecModel,
    Starter,
    State,
    Text,
    Use,
    YesNo,
)


class PointWords(PlateWords):
    """One point; the cable to it comes from the point before, or from the one named ``after``."""

    tag: Text
    kind: Text = Field(alias="is")
    name: Text | None = None
    at: Position
    state: State | None = None
    rating: CurrentA | None = None
    poles: Count | None = None
    gangs: Count | None = None
    fuse: CurrentA | None = None
    ip: Ip | None = Field(None, alias="IP")
    rcd: Device | None = Field(None, alias="RCD")
    load: Load | None = None
    power_factor: PowerFactor | None = None
    overload: CurrentA | None = None
    restart: Restart | None = None
    starter: Starter | None = None
    cable: CablePhrase | None = None
    drop: Text | None = None
    via: list[Text] | None = None
    route: Route | None = None
    length: KnownLengthM | None = None
    extra: LengthM | None = None
    after: Text | None = None
    insulation: ExtentMm | None = None


class CircuitWords(SpecModel):
    """One circuit: its way, its device, its cable, and its points in order from the board."""

    way: Text
    name: Text
    place: Text | None = None
    state: State | None = None
    use: Use | None = None
    device: Device
    afdd: YesNo | None = Field(None, alias="AFDD")
    cable: CablePhrase | None = None
    drops: Text | None = None
    route: Route | None = None
    via: list[Text] | None = None
    length: KnownLengthM | None = None
    extra: LengthM | None = None
    load: Load | None = None
    power_factor: PowerFactor | None = None
    points_served: Count | None = None
    vulnerable: Text | None = None
    feeds: Text | None = None
    ring: YesNo | None = None
    harmonics: SharePct | None = None
    insulation: ExtentMm | None = None
    points: list[PointWords] = Field(default_factory=list)
