"""Rooms, their walls clockwise on plan, and the openings in them."""

from __future__ import annotations

from pydantic import Field

from asfitted.spec.fields import (
    ExtentMm,
    OpeningKind,
    PositionMm,
    SpecModel,
    Text,
    Turn,
)


class OpeningWords(SpecModel):
    """A door or window; ``from`` counts from the left end of the wall, seen from inside."""

    kind: OpeningKind = Field(alias="is")
    name: Text | None = None
    start: PositionMm = Field(alias="from")
    width: ExtentMm
    sill: PositionMm = 0.0
    height: ExtentMm


class WallWords(SpecModel):
    """One wall; ``turn`` is the turn at its right-hand end (right: an inner corner)."""

    length: ExtentMm
    height: ExtentMm | None = None
    turn: Turn = "right"
    openings: list[OpeningWords] = Field(default_factory=list)


class RoomWords(SpecModel):
    """One room; ``north`` names the wall on its north side."""

    height: ExtentMm
    ceiling: Text | None = None
    north: Text | None = None
    walls: dict[str, WallWords]
