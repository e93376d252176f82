"""Rooms, their walls clockwise on plan, and the openings in them."""

from __future__ import annotations

from pydantic import Field

from asfitted.spec.fields import (  # noqa: TC001 - pydantic needs them at run time
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
    width: PositionMm
    sill: PositionMm = 0.0
    height: PositionMm


class WallWords(SpecModel):
    """One wall; ``turn`` is the turn at its right-hand end (right: an inner corner)."""

    length: PositionMm
    height: PositionMm | None = None
    turn: Turn = "right"
    openings: list[OpeningWords] = []


class RoomWords(SpecModel):
    """One room; ``north`` names the wall on its north side."""

    height: PositionMm
    ceiling: Text | None = None
    north: Text | None = None
    walls: dict[str, WallWords]
