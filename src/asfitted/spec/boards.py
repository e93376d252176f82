"""Distribution boards and consumer units."""

from __future__ import annotations

from pydantic import Field

from asfitted.spec.fields import (
    Count,
    CurrentA,
    Device,
    FaultKa,
    Ip,
    KnownKa,
    KnownOhm,
    Phases,
    PlateWords,
    Position,
    Size,
    State,
    Text,
)


class BoardWords(PlateWords):
    """One board. ``ways`` of a three-phase board are rows of three poles."""

    name: Text | None = None
    state: State | None = None
    at: Position
    size: Size | None = None
    ways: Count
    phases: Phases
    rating: CurrentA | None = None
    main_switch: Device | None = None
    fed_from: Text | None = None
    ip: Ip | None = Field(None, alias="IP")
    short_circuit_rating: FaultKa | None = Field(None, alias="short-circuit rating")
    back_up: Device | None = Field(None, alias="back-up")
    zs: KnownOhm | None = Field(None, alias="Zs")
    fault_current: KnownKa | None = None
    make_group: Text | None = None
    spares: dict[str, Text] = Field(default_factory=dict)
