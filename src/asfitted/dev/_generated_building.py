"""Rooms, walls, openings and runs of a generated job, and places on its walls.

Shapes are odd on purpose: outer corners, piers, niches, walls of 0.6 m and of 60 m, low and high.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    import random

RIGHT, LEFT = "right", "left"
OPENINGS = ("door", "window", "roller door", "opening")
POWER_KINDS = (
    ("perforated tray", "225 x 25"),
    ("wire basket", "150 x 55"),
    ("cable ladder", "300 x 60"),
    ("steel trunking", "100 x 100"),
    ("plastic trunking", "100 x 50"),
)
ROOM_NAMES = (
    "Store",
    "Hall",
    "Plant room behind the north stair, lower ground floor",
    "Reading room",
    "Kitchen and servery with dry goods store",
    "Loading bay",
    "Upper gallery",
    "Boiler house",
    "Cold room",
)


@dataclass
class GeneratedWall:
    """One wall while things are placed on it; all in m."""

    name: str
    length_m: float
    height_m: float
    turn: str
    openings: list[dict[str, Any]] = field(default_factory=list)
    taken: list[tuple[float, float]] = field(default_factory=list)  # along, up of things on it

    def is_solid(self, along_m: float, up_m: float, clear_m: float) -> bool:
        """Tell whether this spot is clear of openings."""
        for opening in self.openings:
            x0, x1 = opening["from"] - clear_m, opening["from"] + opening["width"] + clear_m
            z0, z1 = opening["sill"] - clear_m, opening["sill"] + opening["height"] + clear_m
            if x0 <= along_m <= x1 and z0 <= up_m <= z1:
                return False
        return True

    def is_free(self, along_m: float, up_m: float) -> bool:
        """Tell whether a small thing may stand here: clear of openings and of other things."""
        near = any(abs(a - along_m) < 0.45 and abs(u - up_m) < 0.45 for a, u in self.taken)
        return not near and self.is_solid(along_m, up_m, 0.25)


@dataclass
class GeneratedRoom:
    """A room with its walls, clockwise on plan."""

    name: str
    height_m: float
    walls: list[GeneratedWall]


@dataclass
class Building:
    """Everything that things can be placed in."""

    dice: random.Random
    rooms: list[GeneratedRoom]

    def place(
        self,
        ups_m: tuple[float, ...],
        *,
        room: GeneratedRoom | None = None,
        wall: GeneratedWall | None = None,
        outside: bool = False,
        out_m: float = 0.0,
    ) -> str:
        """Return a position that is free if one of forty tries finds it so."""
        dice = self.dice
        found = wall or self._wall(room)
        for _ in range(40):
            along = round(dice.uniform(0.0, found.length_m), 2)
            if found.length_m > 1.2:
                along = round(dice.uniform(0.3, found.length_m - 0.3), 2)
            up = round(min(dice.choice(ups_m), found.height_m - 0.15), 2)
            if found.is_free(along, up):
                break
            if wall is None:
                found = self._wall(room)
        if not found.is_solid(along, up, 0.0):
            up = round(found.height_m - 0.1, 2)  # over every opening
        along = min(along, found.length_m)
        found.taken.append((along, up))
        words = f"wall {found.name}{' outside' if outside else ''}, {along:g} m along, {up:g} m up"
        return f"{words}, {out_m:g} m out" if out_m else words

    def _wall(self, room: GeneratedRoom | None) -> GeneratedWall:
        chosen = room or self.dice.choice(self.rooms)
        weights = [wall.length_m for wall in chosen.walls]
        return self.dice.choices(chosen.walls, weights)[0]


def _shape(dice: random.Random) -> list[tuple[float, str]]:
    """Return lengths in m and the turn at the end of each wall, clockwise on plan."""
    kind = dice.choice(("plain", "plain", "long", "corner", "pier", "niche", "tiny"))
    a, b = round(dice.uniform(3, 16), 1), round(dice.uniform(2.4, 14), 1)
    if kind == "long":
        a = round(dice.uniform(30, 60), 1)
    if kind == "tiny":
        b = 0.6
    if kind == "corner":
        a1, b1 = round(a * dice.uniform(0.2, 0.7), 1), round(b * dice.uniform(0.3, 0.6), 1)
        return [
            (a, RIGHT),
            (b1, RIGHT),
            (a1, LEFT),
            (round(b - b1, 1), RIGHT),
            (round(a - a1, 1), RIGHT),
            (b, RIGHT),
        ]
    if kind in ("pier", "niche"):
        n, a1, a2 = 0.6, round(a * dice.uniform(0.2, 0.5), 1), dice.choice((0.6, 1.2))
        turns = (RIGHT, LEFT, LEFT, RIGHT) if kind == "pier" else (LEFT, RIGHT, RIGHT, LEFT)
        middle = list(zip((a1, n, a2, n), turns, strict=True))
        return [(a, RIGHT), (b, RIGHT), *middle, (round(a - a1 - a2, 1), RIGHT), (b, RIGHT)]
    return [(a, RIGHT), (b, RIGHT), (a, RIGHT), (b, RIGHT)]


def _add_openings(dice: random.Random, wall: GeneratedWall, most: int) -> None:
    """Add openings from left to right, none over another."""
    at = round(dice.uniform(0.2, 1.5), 2)
    while len(wall.openings) < most:
        kind = dice.choice(OPENINGS)
        width = round(dice.uniform(0.7, 3.2 if kind == "roller door" else 1.6), 2)
        if at + width > wall.length_m - 0.1:
            return
        sill = round(dice.uniform(0.6, 1.1), 2) if kind == "window" else 0.0
        height = round(min(dice.uniform(1.0, 2.6), wall.height_m - sill - 0.2), 2)
        opening: dict[str, Any] = {"is": kind}
        if dice.random() < 0.4:
            opening["name"] = dice.choice(("entrance door", "fire exit to the rear yard", "hatch"))
        opening |= {"from": at, "width": width, "sill": sill, "height": height}
        wall.openings.append(opening)
        at = round(at + width + dice.uniform(0.3, 4.0), 2)


def building_of(dice: random.Random, rooms: int) -> Building:
    """Return so many rooms."""
    made = []
    names = dice.sample(ROOM_NAMES, min(rooms, len(ROOM_NAMES)))
    for number, name in enumerate(names):
        height = round(dice.choice((2.1, 2.4, 2.7, 3.2, 4.5, 8.0)), 1)
        walls = []
        for i, (length, turn) in enumerate(_shape(dice)):
            letter = "ABCDEFGH"[i] + (str(number + 1) if number else "")
            wall = GeneratedWall(letter, length, height, turn)
            _add_openings(dice, wall, dice.choice((0, 0, 0, 1, 2, 8)))
            walls.append(wall)
        made.append(GeneratedRoom(name, height, walls))
    return Building(dice, made)


def rooms_block(building: Building) -> dict[str, Any]:
    """Return the ``rooms:`` block."""
    return {
        room.name: {
            "height": f"{room.height_m:g} m",
            "walls": {wall.name: _wall_block(wall) for wall in room.walls},
        }
        for room in building.rooms
    }


def _wall_block(wall: GeneratedWall) -> dict[str, Any]:
    block: dict[str, Any] = {"length": f"{wall.length_m:g} m"}
    if wall.turn == LEFT:
        block["turn"] = LEFT
    if wall.openings:
        block["openings"] = [
            {
                key: f"{value:g} m" if isinstance(value, float) else value
                for key, value in opening.items()
                if value != 0.0
            }
            for opening in wall.openings
        ]
    return block


def runs_block(building: Building) -> dict[str, Any]:
    """Return the ``containment:`` block: some power and data runs in each room."""
    dice = building.dice
    runs: dict[str, dict[str, Any]] = {}
    for room in building.rooms:
        top = room.height_m - 0.2
        for band, prefix in (("power", "T"), ("data", "B")):
            for _ in range(dice.choice((0, 1, 1, 2))):
                kind, size = dice.choice(POWER_KINDS if band == "power" else POWER_KINDS[1:])
                level = round(top - (0.3 if band == "data" else 0.0) - dice.choice((0, 0.15)), 2)
                tag = f"{prefix}{len(runs) + 1}"
                runs[tag] = {
                    "is": kind,
                    "size": size,
                    "for": band,
                    "level": f"{level:g} m",
                    "run": _waypoints(dice, room),
                }
                if dice.random() < 0.15:
                    runs[tag]["state"] = "existing"
    return runs


def _waypoints(dice: random.Random, room: GeneratedRoom) -> list[str]:
    """Return a run along one to four walls that follow on each other."""
    walls = room.walls
    first, count = dice.randrange(len(walls)), dice.randint(1, min(4, len(walls) - 1))
    along = [walls[(first + i) % len(walls)] for i in range(count)]
    start = round(dice.uniform(0, along[0].length_m * 0.4), 2)
    if count == 1:
        end = round(dice.uniform(along[0].length_m * 0.6, along[0].length_m), 2)
        return [f"{along[0].name} {start:g} m", f"{along[0].name} {end:g} m"]
    end = round(dice.uniform(along[-1].length_m * 0.3, along[-1].length_m), 2)
    middle = [wall.name for wall in along[1:-1]]
    return [f"{along[0].name} {start:g} m", *middle, f"{along[-1].name} {end:g} m"]
