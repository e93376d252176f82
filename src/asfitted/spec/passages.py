"""Places where cables pass through a wall or a floor, from one room to another."""

from __future__ import annotations

from pydantic import Field

from asfitted.spec.fields import (
    Bands,
    ExtentMm,
    FireResistance,
    FireStopping,
    Position,
    Size,
    SpecModel,
    State,
    Through,
)


class PassageWords(SpecModel):
    """One passage; ``from`` and ``to`` are the two ends of the hole, one in each room."""

    through: Through
    start: Position = Field(alias="from")
    to: Position
    thickness: ExtentMm | None = None
    size: Size | None = None
    bands: Bands | None = Field(None, alias="for")
    state: State | None = None
    fire_resistance: FireResistance | None = None
    fire_stopping: FireStopping | None = Field(None, alias="fire-stopping")
