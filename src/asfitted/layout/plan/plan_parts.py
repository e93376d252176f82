"""Which plans a job needs: one for each storey and group of rooms, crowded rooms in several parts.

Rooms that touch share a plan as long as it is not crowded. A room too long or too full for one plan
is cut by match lines, always across its longer side and in the middle of what stands there.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.plan.clipping import polygon_in_box

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from asfitted.geometry import Point3
    from asfitted.resolve.installation import Installation, Room

SCALES = (20, 25, 50, 100, 200, 500)
MOST_THINGS = 44  # on one A3 plan: more of them leave no room for their tags
FULL_MM2 = 245.0 * 195.0  # the area of such a plan
FEW_THINGS = 14  # so few may be drawn at the worst scale
TOUCH_MM = 700.0  # rooms nearer than this lie side by side
LEAST_MM = 1800.0  # no part of a room is cut narrower than this
ROW_MM = 1500.0  # what stands by a wall is drawn within so much of it
WORST_SCALE = 100
MARGIN_MM = 21.0  # of paper round a plan, for walls, things outside and tags
OPEN_MARGIN_MM = 11.0  # beyond a match line: its words, and a few tags
LEAST_MARGIN_MM = 6.5  # over and under a plan with nothing outside
ROUND_MM = 100.0


@dataclass(frozen=True)
class Cell:
    """A box of a cut room, mm: with what lies beyond the sides at which nothing was cut off."""

    box: Box
    cut_sides: frozenset[str]

    def holds(self, at: Point3) -> bool:
        """Tell whether a place belongs to this cell."""
        sides, box = self.cut_sides, self.box
        return (
            ("west" not in sides or at.x >= box.x0)
            and ("east" not in sides or at.x < box.x1)
            and ("south" not in sides or at.y >= box.y0)
            and ("north" not in sides or at.y < box.y1)
        )


@dataclass(frozen=True)
class PlanPart:
    """One plan: its rooms, the window of the building it shows (mm, y north), and its match lines.

    ``open_sides`` are the sides of the window where the room goes on: "west", "east", "south",
    "north", each with the number of the part beyond it.
    """

    number: int  # from 1
    storey: str
    rooms: tuple[str, ...]
    window: Box  # x0 west, x1 east, y0 south, y1 north
    open_sides: tuple[tuple[str, int], ...] = ()
    of_room: tuple[int, int] = (1, 1)  # part 2 of 3 of its room
    margin_mm: float = MARGIN_MM  # of paper kept over and under it
    cell: Cell | None = None  # what belongs to it, where its room was cut

    def room(self, area: Box) -> Box:
        """Return the part of an area on the sheet that its window may take, mm."""
        return room_inside(area, self.margin_mm, (side for side, _ in self.open_sides))

    def holds(self, at: Point3) -> bool:
        """Tell whether a place belongs to this part; it may lie outside a closed side."""
        return self.cell is None or self.cell.holds(at)


def scale_of(window: Box, room: Box) -> int:
    """Return the largest scale at which a window goes into the room for it, mm of paper."""
    return next(
        (s for s in SCALES if window.width / s <= room.width and window.height / s <= room.height),
        SCALES[-1],
    )


def room_inside(area: Box, margin_mm: float = MARGIN_MM, open_sides: Iterable[str] = ()) -> Box:
    """Return an area without the margins of a plan: less of them where the room goes on."""
    is_open = set(open_sides)
    wide, high = MARGIN_MM, margin_mm
    return Box(
        area.x0 + (OPEN_MARGIN_MM if "west" in is_open else wide),
        area.y0 + (min(OPEN_MARGIN_MM, high) if "north" in is_open else high),
        area.x1 - (OPEN_MARGIN_MM if "east" in is_open else wide),
        area.y1 - (min(OPEN_MARGIN_MM, high) if "south" in is_open else high),
    )


def plan_parts(installation: Installation, area: Box) -> tuple[PlanPart, ...]:
    """Return the plans of a job, storey by storey, in the order of its rooms."""
    places = _places(installation)
    if len(installation.rooms) == 1 and not _has_outside(installation):
        room = next(iter(installation.rooms.values()))
        window, count = _bounds(installation, [room.name]), len(places[room.name])
        if _is_light(window, count, area, LEAST_MARGIN_MM):
            one = PlanPart(1, room.storey, (room.name,), window, margin_mm=LEAST_MARGIN_MM)
            return (one,)
    found: list[PlanPart] = []
    for group in _groups(installation, places, area):
        window = _bounds(installation, group)
        here = [p for name in group for p in places[name]]
        storey = installation.rooms[group[0]].storey
        if len(group) > 1 or _is_light(window, len(here), area):
            found.append(PlanPart(len(found) + 1, storey, tuple(group), window))
            continue
        corners = [installation.walls[w].start for w in installation.rooms[group[0]].walls]
        stands = _Stands(tuple(here), tuple(corners))
        found += _windows(len(found), storey, group[0], window, stands, area)
    return tuple(found)


def _places(installation: Installation) -> dict[str, list[Point3]]:
    """Return where things stand, by room."""
    found: dict[str, list[Point3]] = {name: [] for name in installation.rooms}
    groups = (installation.boards, installation.points, installation.data_devices)
    for group in groups:
        for thing in group.values():
            wall = installation.walls.get(thing.position.wall)
            if wall is not None:
                found[wall.room].append(thing.position.at)
    return found


def _bounds(installation: Installation, rooms: Iterable[str]) -> Box:
    starts = [installation.walls[w].start for r in rooms for w in installation.rooms[r].walls]
    xs, ys = [p.x for p in starts], [p.y for p in starts]
    return Box(min(xs), min(ys), max(xs), max(ys))


def _has_outside(installation: Installation) -> bool:
    groups = (installation.boards, installation.points, installation.data_devices)
    return any(t.position.outside for g in groups for t in g.values()) or any(
        run.declared_length_m is not None for run in installation.containment.values()
    )


def _is_light(window: Box, count: int, area: Box, margin_mm: float = MARGIN_MM) -> bool:
    most = MOST_THINGS * min(area.width * area.height / FULL_MM2, 1.0)
    worst = WORST_SCALE if count <= FEW_THINGS else WORST_SCALE / 2
    return count <= most and scale_of(window, room_inside(area, margin_mm)) <= worst


def _groups(
    installation: Installation, places: dict[str, list[Point3]], area: Box
) -> list[list[str]]:
    """Return rooms together that share a plan."""
    rooms = list(installation.rooms.values())
    total = sum(len(found) for found in places.values())
    if len({room.storey for room in rooms}) == 1 and _is_light(
        _bounds(installation, installation.rooms), total, area
    ):
        return [list(installation.rooms)]
    groups: list[list[str]] = []
    for room in rooms:
        group = next((g for g in groups if _may_join(installation, places, (g, room), area)), None)
        if group is None:
            groups.append([room.name])
        else:
            group.append(room.name)
    return groups


def _may_join(
    installation: Installation,
    places: dict[str, list[Point3]],
    pair: tuple[list[str], Room],
    area: Box,
) -> bool:
    group, room = pair
    if installation.rooms[group[0]].storey != room.storey:
        return False
    own = _bounds(installation, [room.name]).grown(TOUCH_MM)
    if not any(_bounds(installation, [name]).meets(own) for name in group):
        return False
    count = sum(len(places[name]) for name in (*group, room.name))
    window = _bounds(installation, [*group, room.name])
    others = [name for name in installation.rooms if name not in (*group, room.name)]
    is_apart = not any(
        installation.rooms[name].storey == room.storey
        and _bounds(installation, [name]).grown(-1.0).meets(window)
        for name in others
    )
    return is_apart and _is_light(window, count, area)


@dataclass(frozen=True)
class _Stands:
    """What stands in a room, and its corners, mm."""

    places: tuple[Point3, ...]
    corners: tuple[Point, ...]


def _windows(  # noqa: PLR0917
    before: int, storey: str, room: str, window: Box, stands: _Stands, area: Box
) -> list[PlanPart]:
    """Return the parts of one room that is too long or too full for one plan."""
    cells = [
        Cell(box, frozenset(side for other in boxes if (side := _side_of(box, other))))
        for boxes in [_cut(window, stands, area)]
        for box in boxes
    ]
    shown = [(cell, box) for cell in cells if (box := _shown_of(cell, stands)) is not None]
    parts = []
    for i, (cell, box) in enumerate(shown):
        sides: dict[str, int] = {}
        for j, (_, other) in enumerate(shown):
            if side := _side_of(box, other):
                sides.setdefault(side, before + j + 1)
        of_room = (i + 1, len(shown))
        number, opened = before + i + 1, tuple(sides.items())
        parts.append(PlanPart(number, storey, (room,), box, opened, of_room, cell=cell))
    return parts


def _shown_of(cell: Cell, stands: _Stands) -> Box | None:
    """Return the box round what of the room lies in a cell, or None where nothing does."""
    inside = polygon_in_box(stands.corners, cell.box)
    xs, ys = [p.x for p in inside], [p.y for p in inside]
    has_room = inside and min(max(xs) - min(xs), max(ys) - min(ys)) > ROUND_MM
    here = [p for p in stands.places if cell.holds(p)]
    if not has_room:
        return cell.box if here else None
    xs += [min(max(p.x, cell.box.x0), cell.box.x1) for p in here]
    ys += [min(max(p.y, cell.box.y0), cell.box.y1) for p in here]
    return Box(min(xs), min(ys), max(xs), max(ys))


def _cut(box: Box, stands: _Stands, area: Box) -> list[Box]:
    here = [p for p in stands.places if _in(box, p)]
    is_wide = box.width >= box.height
    length = box.width if is_wide else box.height
    if _is_light(box, len(here), area) or length < 2 * LEAST_MM:
        return [box]
    low = box.x0 if is_wide else box.y0
    along = sorted(p.x if is_wide else p.y for p in here)
    middle = along[len(along) // 2] if len(along) > MOST_THINGS else low + length / 2
    least, most = low + max(length / 4, LEAST_MM), low + max(length * 3 / 4, LEAST_MM)
    walls = [p.x if is_wide else p.y for p in stands.corners]
    middle = _clear_of_walls(min(max(middle, least), most), least, most, walls)
    if is_wide:
        halves = [Box(box.x0, box.y0, middle, box.y1), Box(middle, box.y0, box.x1, box.y1)]
    else:
        halves = [Box(box.x0, middle, box.x1, box.y1), Box(box.x0, box.y0, box.x1, middle)]
    return [part for half in halves for part in _cut(half, stands, area)]


def _clear_of_walls(middle: float, least: float, most: float, walls: Sequence[float]) -> float:
    """Return where to cut, as near to a middle as it lies clear of walls that run along the cut.

    A wall on a match line would have its things on either side of it.
    """
    steps = range(math.ceil(least / ROUND_MM), math.floor(most / ROUND_MM) + 1)
    tried = [i * ROUND_MM for i in steps] or [round(middle / ROUND_MM) * ROUND_MM]

    def crowding(at: float) -> tuple[float, float, float]:
        near = min((abs(at - wall) for wall in walls), default=ROW_MM)
        return max(0.0, ROW_MM - near), abs(at - middle), at

    return min(tried, key=crowding)


def _in(box: Box, at: Point3) -> bool:
    grown = box.grown(TOUCH_MM)
    return grown.x0 <= at.x < grown.x1 and grown.y0 <= at.y < grown.y1


def _side_of(box: Box, other: Box) -> str:
    """Return at which side of a box another one lies that touches it, or nothing."""
    over_x = min(box.x1, other.x1) - max(box.x0, other.x0) > 1.0
    over_y = min(box.y1, other.y1) - max(box.y0, other.y0) > 1.0
    if over_y and abs(box.x1 - other.x0) < 1.0:
        return "east"
    if over_y and abs(box.x0 - other.x1) < 1.0:
        return "west"
    if over_x and abs(box.y1 - other.y0) < 1.0:
        return "north"
    if over_x and abs(box.y0 - other.y1) < 1.0:
        return "south"
    return ""
