"""Rooms, their walls clockwise on plan, and the openings in them."""

from __future__ import annotations

from pydantic import Field

from asfitted.spec.fields import (
    ExtentMm,
    FloorLevelMm,
    OpeningKind,
    PlanPlace,
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
    """One room; ``north`` names the wall on its north side.

    ``storey`` names its floor of the building and ``level`` how high its finished floor lies above
    that of the ground floor. How rooms lie to each other comes from the passages between them, or
    from ``on plan``.
    """

    storey: Text | None = None
    level: FloorLevelMm | None = None
    on_plan: PlanPlace | None = None
    height: ExtentMm
    ceiling: Text | None = None
    north: Text | None = None
    walls: dict[str, WallWords]
