"""The shape of a run of containment: straight pieces, corners, joints with other runs, free ends.

Straights go from corner to corner and are parted where another run joins. The length that a
fitting takes up is left in them, to be trimmed on site.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import TYPE_CHECKING, Literal

from asfitted.calculate.containment.support_spacing import LAID_IN
from asfitted.calculate.routes.route_graph import JOINT_MM
from asfitted.geometry import Point3, distance3

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.resolve.installation import Containment, Installation, Wall

Heading = Literal["level", "upright", "sloping"]
JointKind = Literal["tee", "coupler", "reducer", "bend", "open"]
AT_BOARD_MM = 100.0
STRAIGHT_DEG = 1.0


@dataclass(frozen=True)
class Straight:
    """A straight piece of a run, mm; ``wall`` is "" overhead."""

    run: str
    wall: str
    start: Point3
    end: Point3

    @property
    def length_mm(self) -> int:
        """Length from corner to corner."""
        return round(distance3(self.start, self.end))

    @property
    def heading(self) -> Heading:
        """Whether it lies level, stands upright or slopes."""
        rise = abs(self.end.z - self.start.z)
        if rise < 1.0:
            return "level"
        return "upright" if self.length_mm - rise < 1.0 else "sloping"


@dataclass(frozen=True)
class Corner:
    """A change of direction of a run and the fitting that makes it."""

    run: str
    fitting: str  # "flat bend 90°", "inside riser"
    at: Point3


@dataclass(frozen=True)
class Joint:
    """Where the end of one run meets another run."""

    run: str
    other: str
    kind: JointKind
    at: Point3
    words: str
    riser: str = ""  # what turns the branch of a tee up or down: "outside riser 90°"


@dataclass(frozen=True)
class RunShape:
    """A run as it is built."""

    run: Containment
    straights: tuple[Straight, ...]
    corners: tuple[Corner, ...]
    joints: tuple[Joint, ...]  # of its own ends
    free_ends: int


def run_shapes(installation: Installation) -> tuple[RunShape, ...]:
    """Return the shape of every new run that has a drawn path, in the order of the spec."""
    runs = {
        tag: _straights(run)
        for tag, run in installation.containment.items()
        if run.state != "removed" and run.declared_length_m is None and len(run.path) > 1
    }
    joints = {tag: _joints(tag, runs, installation) for tag in runs}
    shapes = []
    for tag, straights in runs.items():
        run = installation.containment[tag]
        if run.state != "new":
            continue
        meets = [j for own in joints.values() for j in own if j.other == tag and j.kind == "tee"]
        met_ends = sum(
            1
            for end in _ends(straights)
            if any(distance3(end, j.at) <= JOINT_MM for j in _touching(tag, joints))
            or _is_at_board(end, run, installation)
        )
        shapes.append(
            RunShape(
                run,
                _parted(straights, [joint.at for joint in meets]),
                _corners(run, straights, installation),
                joints[tag],
                2 - met_ends,
            )
        )
    return tuple(shapes)


def _touching(tag: str, joints: dict[str, tuple[Joint, ...]]) -> list[Joint]:
    return [j for own in joints.values() for j in own if tag in (j.run, j.other)]


def _straights(run: Containment) -> tuple[Straight, ...]:
    """Return the pieces of a run; pieces in one line on one wall are one."""
    found: list[Straight] = []
    for wall, start, end in zip(run.walls, run.path, run.path[1:], strict=False):
        if distance3(start, end) < 1.0:
            continue
        piece = Straight(run.tag, wall, start, end)
        if found and found[-1].wall == wall and turn_deg(found[-1], piece) < STRAIGHT_DEG:
            found[-1] = replace(found[-1], end=end)
        else:
            found.append(piece)
    return tuple(found)


def direction(piece: Straight) -> tuple[float, float, float]:
    """Return the unit vector along a piece."""
    length = distance3(piece.start, piece.end)
    return (
        (piece.end.x - piece.start.x) / length,
        (piece.end.y - piece.start.y) / length,
        (piece.end.z - piece.start.z) / length,
    )


def turn_deg(first: Straight, second: Straight) -> float:
    """Return by how much the direction changes from one piece to the next, degrees."""
    dot = sum(a * b for a, b in zip(direction(first), direction(second), strict=True))
    return math.degrees(math.acos(max(-1.0, min(1.0, dot))))


def _turned_round(piece: Straight) -> Straight:
    return replace(piece, start=piece.end, end=piece.start)


def _ends(straights: Sequence[Straight]) -> tuple[Point3, ...]:
    return (straights[0].start, straights[-1].end) if straights else ()


def _end_pieces(straights: Sequence[Straight]) -> tuple[tuple[Point3, Straight], ...]:
    """Return both ends of a run, each with the piece that it ends, seen as leaving the end."""
    if not straights:
        return ()
    last = straights[-1]
    return (
        (straights[0].start, straights[0]),
        (last.end, _turned_round(last)),
    )


def room_of(run: Containment, installation: Installation) -> str:
    """Return the room of a run, "" where none is known.

    It is that of the walls the run is on; of one that is wholly overhead, the room whose walls are
    nearest to both its ends.
    """
    walls = [name for name in run.walls if name in installation.walls]
    if walls:
        return installation.walls[walls[0]].room
    if not run.path or run.declared_length_m is not None:
        return ""
    away: dict[str, float] = {}
    for room in installation.rooms.values():
        own = [installation.walls[name] for name in room.walls]
        ends = (run.path[0], run.path[-1])
        away[room.name] = sum(min(_from_wall_mm(wall, end) for wall in own) for end in ends)
    return min(away, key=lambda name: away[name], default="")


def _from_wall_mm(wall: Wall, place: Point3) -> float:
    """Return how far a place is from the face of a wall on plan, mm."""
    dx, dy = place.x - wall.start.x, place.y - wall.start.y
    along = dx * wall.direction.x + dy * wall.direction.y
    beyond = along - max(0.0, min(wall.length_mm, along))
    out = dx * wall.inward.x + dy * wall.inward.y
    return math.hypot(beyond, out)


def _joints(
    tag: str, runs: dict[str, tuple[Straight, ...]], installation: Installation
) -> tuple[Joint, ...]:
    """Return where the ends of a run meet other runs; end to end is told of the later run only."""
    order = list(runs)
    rooms = {name: room_of(installation.containment[name], installation) for name in runs}
    found = []
    for end, own in _end_pieces(runs[tag]):
        for other, straights in runs.items():
            if other == tag or rooms[other] != rooms[tag]:
                continue
            joint = _joint(end, own, straights, installation)
            if joint is None or (joint.kind != "tee" and order.index(other) > order.index(tag)):
                continue
            found.append(joint)
            break
    return tuple(found)


def _joint(
    end: Point3, own: Straight, straights: Sequence[Straight], installation: Installation
) -> Joint | None:
    """Return how the end of a run meets another run; None where it does not reach it."""
    tag, other = own.run, straights[0].run
    one, two = installation.containment[tag], installation.containment[other]
    piece, gap, along = min(((s, *_nearest(s, end)) for s in straights), key=lambda found: found[1])
    if gap > JOINT_MM:
        return None
    sizes = f"{max(one.width_mm, two.width_mm):g}/{min(one.width_mm, two.width_mm):g}"
    if one.kind != two.kind:
        return Joint(tag, other, "open", end, f"{tag} ends at {other}: cables cross over")
    met = [e for e, _ in _end_pieces(straights) if distance3(end, e) <= JOINT_MM]
    if not met:
        same = one.width_mm == two.width_mm
        words, riser = _tee(one.kind, own, piece)
        words = f"equal {words} {one.width_mm:g}" if same else f"unequal {words} {sizes}"
        return Joint(tag, other, "tee", _point_on(piece, along), words, riser)
    arriving = piece if distance3(piece.end, met[0]) < 1.0 else _turned_round(piece)
    if turn_deg(arriving, own) >= STRAIGHT_DEG:
        reduced = "" if one.width_mm == two.width_mm else f", reduced {sizes}"
        words = f"{_fitting(one.kind, arriving, own, installation)}{reduced}"
        return Joint(tag, other, "bend", end, words)
    if one.width_mm != two.width_mm:
        return Joint(tag, other, "reducer", end, f"reducer {sizes}")
    return Joint(tag, other, "coupler", end, f"coupler pair {one.width_mm:g}")


def _tee(kind: str, branch: Straight, main: Straight) -> tuple[str, str]:
    """Return the tee where a run leaves the middle of another, and the riser on its branch.

    Tray, basket and ladder lie flat along a level run and on the wall as an upright: a flat tee
    alone leaves the branch level. Off a level run its branch faces the wall and a riser turns it
    down or up the wall; off an upright the branch of a vertical tee stands out of the tray's face.
    Conduit has a tee box; trunking lies on the wall both ways. Trade custom.
    """
    if "conduit" in kind:
        return "tee box", ""
    if kind not in LAID_IN or main.heading == branch.heading == "level":
        return "tee", ""
    if main.heading == "level":
        rise = direction(branch)[2]
        angle = f"{math.degrees(math.asin(abs(rise))):.0f}°"
        return "flat tee", f"{'inside' if rise > 0 else 'outside'} riser {angle}"
    return "vertical tee" if branch.heading == "level" else "tee", ""


def _nearest(piece: Straight, place: Point3) -> tuple[float, float]:
    """Return how far a place is from a piece, and how far along the nearest point is, mm."""
    unit, length = direction(piece), distance3(piece.start, piece.end)
    off = (place.x - piece.start.x, place.y - piece.start.y, place.z - piece.start.z)
    along = max(0.0, min(length, sum(a * b for a, b in zip(off, unit, strict=True))))
    return distance3(place, _point_on(piece, along)), along


def _point_on(piece: Straight, along_mm: float) -> Point3:
    unit = direction(piece)
    return Point3(
        piece.start.x + along_mm * unit[0],
        piece.start.y + along_mm * unit[1],
        piece.start.z + along_mm * unit[2],
    )


def _parted(straights: Sequence[Straight], places: Sequence[Point3]) -> tuple[Straight, ...]:
    """Return the pieces, parted where other runs join in."""
    found: list[Straight] = []
    for piece in straights:
        marks = [(*_nearest(piece, place), place) for place in places]
        cuts = sorted({round(along) for gap, along, _ in marks if gap < 1.0})
        inner = [c for c in cuts if JOINT_MM < c < piece.length_mm - JOINT_MM]
        stations = [
            piece.start,
            *(_point_on(piece, float(cut)) for cut in inner),
            piece.end,
        ]
        found += [replace(piece, start=a, end=b) for a, b in pairwise(stations)]
    return tuple(found)


def _corners(
    run: Containment, straights: Sequence[Straight], installation: Installation
) -> tuple[Corner, ...]:
    return tuple(
        Corner(run.tag, _fitting(run.kind, a, b, installation), b.start)
        for a, b in pairwise(straights)
        if turn_deg(a, b) >= STRAIGHT_DEG
    )


def _fitting(kind: str, first: Straight, second: Straight, installation: Installation) -> str:
    """Return the fitting for a change of direction; the rules are trade custom."""
    angle = f"{turn_deg(first, second):.0f}°"
    if "conduit" in kind:
        return f"bend {angle}"
    both_level = first.heading == second.heading == "level"
    if kind in LAID_IN:
        if both_level:
            return f"flat bend {angle}"
        # an upright piece seen from the level one: up turns towards the cables, down away
        up = direction(second)[2] if first.heading == "level" else -direction(first)[2]
        return f"inside riser {angle}" if up > 0 else f"outside riser {angle}"
    if not both_level or not (first.wall and second.wall):
        return f"flat bend {angle}"
    inward = installation.walls[first.wall].inward
    ahead = direction(second)
    inside = ahead[0] * inward.x + ahead[1] * inward.y > 0
    return f"inside bend {angle}" if inside else f"outside bend {angle}"


def _is_at_board(end: Point3, run: Containment, installation: Installation) -> bool:
    """Tell whether an end of a run meets the outline of a board or the data cabinet."""
    outlines = [(b.position, b.width_mm, b.height_mm) for b in installation.boards.values()]
    cabinet = installation.cabinet
    if cabinet is not None:
        outlines.append((cabinet.position, cabinet.width_mm, cabinet.height_mm))
    walls = set(run.walls)
    for position, width_mm, height_mm in outlines:
        if position.wall not in walls:
            continue
        beside = math.hypot(end.x - position.at.x, end.y - position.at.y)
        if (
            beside <= width_mm / 2 + AT_BOARD_MM
            and abs(end.z - position.up_mm) <= height_mm / 2 + AT_BOARD_MM
        ):
            return True
    return False
