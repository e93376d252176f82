"""Where a cable leaves a board, point or data device, and how it gets to the face of the wall."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from asfitted.calculate.routes.wall_strip import Flat, place_on
from asfitted.geometry import Point3, distance3
from asfitted.resolve import room_joins

if TYPE_CHECKING:
    from collections.abc import Iterable

    from asfitted.calculate.routes.wall_strip import WallPiece
    from asfitted.resolve.installation import Installation, Position, Wall

# Thickness allowed for a wall that a cable passes through: common practice, not surveyed.
THROUGH_WALL_MM = room_joins.THROUGH_WALL_MM
_IN_CABINET = ("recorder", "12 V supply", "PoE switch")

StretchKind = Literal["drop", "clipped", "off-wall", "through-wall"]


@dataclass(frozen=True)
class Stretch:
    """A straight piece of a cable's way outside containment."""

    kind: StretchKind
    wall: str
    start: Point3
    end: Point3
    outside: bool = False
    run_up_mm: float | None = None  # level of the run that a drop comes from or goes to

    @property
    def length_mm(self) -> float:
        """Length, mm."""
        return distance3(self.start, self.end)

    def reversed(self) -> Stretch:
        """Return the same piece gone the other way."""
        return Stretch(self.kind, self.wall, self.end, self.start, self.outside, self.run_up_mm)


def reversed_stretches(stretches: Iterable[Stretch]) -> tuple[Stretch, ...]:
    """Return a way outside containment gone from its end to its start."""
    return tuple(stretch.reversed() for stretch in reversed(tuple(stretches)))


def total_mm(stretches: Iterable[Stretch]) -> float:
    """Return the length of several pieces together, mm."""
    return sum(stretch.length_mm for stretch in stretches)


@dataclass(frozen=True)
class CableEnd:
    """The place where a cable ends. ``half_height_mm`` is 0 for anything but boards and cabinets.

    ``wall`` is None for the far end of a declared run, which ``end_of`` names.
    """

    tag: str
    wall: Wall | None
    along_mm: float
    up_mm: float
    out_mm: float
    outside: bool
    half_height_mm: float
    end_of: str
    at: Point3

    def leave_mm(self, towards_mm: float) -> float:
        """Return the height at which the cable leaves for a level.

        Top or bottom of a board; at its side where the level passes it; a point's own centre.
        """
        low, high = self.up_mm - self.half_height_mm, self.up_mm + self.half_height_mm
        return min(max(towards_mm, low), high)

    def spot(self, towards_mm: float) -> Flat:
        """Return along and up of the place where the cable leaves."""
        return Flat(self.along_mm, self.leave_mm(towards_mm))

    def to_wall(self, towards_mm: float, *, stay_outside: bool = False) -> tuple[Stretch, ...]:
        """Return the pieces from the end itself to the inner face of its wall.

        Straight in from where it hangs or stands, then through the wall when it is outside.
        With ``stay_outside`` the cable is only brought to the outer face.
        """
        if self.wall is None:
            return ()
        up = self.leave_mm(towards_mm)
        inner = place_on(self.wall, self.along_mm, up)
        if not self.outside:
            out = place_on(self.wall, self.along_mm, up, self.out_mm)
            hung = Stretch("off-wall", self.wall.name, out, inner)
            return (hung,) if self.out_mm > 0 else ()
        outer = place_on(self.wall, self.along_mm, up, -THROUGH_WALL_MM)
        parts = []
        if self.out_mm > 0:
            far = place_on(self.wall, self.along_mm, up, -THROUGH_WALL_MM - self.out_mm)
            parts.append(Stretch("off-wall", self.wall.name, far, outer, outside=True))
        if not stay_outside:
            parts.append(Stretch("through-wall", self.wall.name, outer, inner))
        return tuple(parts)


def cable_end(installation: Installation, tag: str) -> CableEnd:
    """Return where cables of a board, point, data device or cabinet end.

    Raises:
        KeyError: no such tag.
    """
    cabinet = installation.cabinet
    device = installation.data_devices.get(tag)
    in_cabinet = device is not None and device.kind in _IN_CABINET
    if cabinet is not None and (tag == cabinet.tag or in_cabinet):
        return _end(installation, tag, cabinet.position, cabinet.height_mm / 2)
    height = installation.boards[tag].height_mm if tag in installation.boards else 0.0
    return _end(installation, tag, installation.position_of(tag), height / 2)


def _end(installation: Installation, tag: str, position: Position, half_mm: float) -> CableEnd:
    return CableEnd(
        tag=tag,
        wall=installation.walls.get(position.wall),
        along_mm=position.along_mm,
        up_mm=position.up_mm,
        out_mm=position.out_mm,
        outside=position.outside,
        half_height_mm=half_mm,
        end_of=position.end_of,
        at=position.at,
    )


def on_wall(pieces: Iterable[WallPiece], *, outside: bool = False) -> tuple[Stretch, ...]:
    """Return lines on walls as pieces of a cable's way: upright ones are drops."""
    out = -THROUGH_WALL_MM if outside else 0.0
    return tuple(
        Stretch(
            "drop" if piece.is_vertical else "clipped",
            piece.wall.name,
            place_on(piece.wall, piece.along0, piece.up0, out),
            place_on(piece.wall, piece.along1, piece.up1, out),
            outside=outside,
        )
        for piece in pieces
    )
