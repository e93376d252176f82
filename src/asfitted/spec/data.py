"""Data and CCTV: the cabinet, its equipment, cameras and data points."""

from __future__ import annotations

from pydantic import Field

from asfitted.spec.fields import (
    Aim,
    CablePhrase,
    Count,
    CurrentA,
    DataPointKind,
    DiskTb,
    EquipmentKind,
    ExtentMm,
    KnownLengthM,
    LengthM,
    PlateWords,
    Position,
    PowerW,
    Route,
    Size,
    SpecModel,
    State,
    Text,
    TimeDays,
    VoltageV,
)


class CabinetWords(PlateWords):
    """The cabinet or shelf that holds the equipment."""

    tag: Text
    at: Position
    size: Size | None = None
    fed_from: Text | None = None


class EquipmentWords(PlateWords):
    """A recorder, 12 V supply or PoE switch in the cabinet."""

    kind: EquipmentKind = Field(alias="is")
    name: Text | None = None
    state: State | None = None
    at: Position | None = None
    ports: Count | None = None
    budget: PowerW | None = None
    channels: Count | None = None
    disk: DiskTb | None = None
    keep: TimeDays | None = None
    output: VoltageV | None = None
    rating: CurrentA | None = None
    load: PowerW | None = None
    port: Text | None = None


class LinkWords(PlateWords):
    """What a camera and a data point have in common: where it is and how it is wired."""

    name: Text | None = None
    at: Position
    state: State | None = None
    cable: CablePhrase
    drop: Text | None = None
    via: list[Text] | None = None
    route: Route | None = None
    length: KnownLengthM | None = None
    extra: LengthM | None = None
    port: Text | None = None
    poe_class: Count | None = Field(None, alias="PoE class")
    load: PowerW | None = None


class CameraWords(LinkWords):
    """A camera; a coaxial or balun camera is joined to a recorder, a PoE camera to a port."""

    views: Text | None = None
    recorder: Text | None = None
    channel: Count | None = None
    signal: Text | None = None
    power_pairs: Count | None = None
    lens: ExtentMm | None = None
    sensor: Text | None = None
    pixels: Count | None = None
    target: LengthM | None = None
    aim: Aim | None = None


class DataPointWords(LinkWords):
    """A data outlet or access point."""

    kind: DataPointKind = Field(alias="is")


class DataWords(SpecModel):
    """``data:``."""

    cabinet: CabinetWords | None = None
    equipment: dict[str, EquipmentWords] = Field(default_factory=dict)
    cameras: dict[str, CameraWords] = Field(default_factory=dict)
    points: dict[str, DataPointWords] = Field(default_factory=dict)
