"""Runs that do not meet: how far apart they are, and how a cable is clipped from one to the other.

A cable that is told to use several runs goes along the walls between them where it may be clipped.
"""

from __future__ import annotations

import itertools
from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.calculate.routes.cable_ends import CableEnd
from asfitted.calculate.routes.containment_runs import rooms_of, wall_at
from asfitted.calculate.routes.route_joints import Joint
from asfitted.calculate.routes.take_offs import take_offs, take_offs_round_corners
from asfitted.calculate.routes.wall_strip import spot_of
from asfitted.geometry import Point3, distance3
from asfitted.reference import cable_family

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from asfitted.calculate.routes.containment_runs import Run
    from asfitted.calculate.routes.route_graph import RouteGraph
    from asfitted.calculate.routes.take_offs import TakeOff
    from asfitted.resolve.installation import Cable, Installation

_ON_WALL_MM = 5.0


@dataclass(frozen=True)
class Gap:
    """The nearest that two runs come to each other.

    ``clear_mm`` is the straight distance; ``joint`` the shortest way clipped along the walls of
    one room, None where there is none.
    """

    run: str
    other: str
    clear_mm: float
    joint: Joint | None

    @property
    def words(self) -> str:
        """The gap told: which two runs, and by how far they miss each other."""
        return f"{self.run} and {self.other} do not meet: {self.clear_mm / 1000:.2f} m apart"


def may_be_clipped(cable: Cable) -> bool:
    """Tell whether a cable may leave containment: single cores without a sheath may not."""
    return cable_family.family(cable.family).construction != "single"


def gap_between(installation: Installation, graph: RouteGraph, first: str, second: str) -> Gap:
    """Return how near two runs come, and the way clipped along the walls between them."""
    ways = [
        *_clipped_ways(installation, graph, first, second),
        *_clipped_ways(installation, graph, second, first),
    ]
    joint = min(ways, key=_order, default=None)
    return Gap(first, second, _clear_mm(installation, graph, first, second), joint)


def _order(joint: Joint) -> tuple[float, str, float]:
    length = sum(stretch.length_mm for stretch in joint.stretches)
    return (round(length, 3), joint.run, joint.at_mm)


def _clipped_ways(
    installation: Installation, graph: RouteGraph, run: str, other: str
) -> Iterator[Joint]:
    """Yield ways from the ends, corners and joints of one run to the other, along the walls."""
    for number in graph.on_run.get(run, ()):
        node = graph.nodes[number]
        end = _end_at(installation, graph.runs[run], node.at_mm)
        if end is None:
            continue
        found: list[TakeOff] = [t for t in take_offs(end, graph.places) if t.run == other]
        found += take_offs_round_corners(end, graph.places, installation, {other}, float("inf"))
        for take_off in found:
            yield Joint(run, node.at_mm, other, take_off.at_mm, take_off.stretches)


def _end_at(installation: Installation, run: Run, at_mm: float) -> CableEnd | None:
    """Return a place on a run as an end on the wall that carries it, None off the walls."""
    place = run.point_at(at_mm)
    wall = installation.walls.get(run.piece_at(at_mm).wall)
    if wall is None and not run.is_declared:
        wall = wall_at(installation.walls.values(), place, _ON_WALL_MM)
    if wall is None:
        return None
    along = round(spot_of(wall, place)[0], 6)
    return CableEnd(run.tag, wall, along, place.z, 0.0, False, 0.0, "", place)  # noqa: FBT003


def _clear_mm(installation: Installation, graph: RouteGraph, first: str, second: str) -> float:
    """Return the straight distance between the places of one and the lines of the other."""
    found = [
        _distance_to(place, *line)
        for tag, other in ((first, second), (second, first))
        for place in _places(installation, graph, tag)
        for line in _lines(installation, graph, other)
    ]
    return min(found, default=0.0)


def _places(installation: Installation, graph: RouteGraph, tag: str) -> list[Point3]:
    """Return ends, corners and joints of a run, or both mouths of a passage, in the building."""
    if tag in graph.passages:
        mouths = (mouth for _, mouth in graph.passages[tag].mouths)
        return [_from_room(installation, m.at, m.wall.room if m.wall else "") for m in mouths]
    run = graph.runs[tag]
    return [in_building(installation, run, graph.nodes[n].at_mm) for n in graph.on_run[tag]]


def _lines(installation: Installation, graph: RouteGraph, tag: str) -> list[tuple[Point3, Point3]]:
    if tag in graph.passages:
        return [(place, place) for place in _places(installation, graph, tag)]
    run = graph.runs[tag]
    return [_piece_in_building(installation, run, index) for index in range(len(run.pieces))]


def _from_room(installation: Installation, place: Point3, name: str) -> Point3:
    room = installation.rooms.get(name)
    if room is None:
        return place
    return Point3(place.x - room.storey_east_mm, place.y, place.z + room.level_mm)


def in_building(installation: Installation, run: Run, at_mm: float) -> Point3:
    """Return where in the building a place on a run is, its storey taken into account."""
    piece = run.piece_at(at_mm)
    place = run.point_at(at_mm)
    rooms = sorted(rooms_of(run, piece, installation.walls))
    return _from_room(installation, place, rooms[0] if rooms else "")


def _piece_in_building(installation: Installation, run: Run, index: int) -> tuple[Point3, Point3]:
    piece = run.pieces[index]
    middle = in_building(installation, run, (piece.from_mm + piece.to_mm) / 2)
    own = piece.point_at((piece.from_mm + piece.to_mm) / 2)
    shift = [b - a for a, b in zip(own, middle, strict=True)]
    start, end = (
        Point3(*(value + by for value, by in zip(place, shift, strict=True)))
        for place in (piece.start, piece.end)
    )
    return start, end


def _distance_to(place: Point3, start: Point3, end: Point3) -> float:
    line = [b - a for a, b in zip(start, end, strict=True)]
    to = [p - a for a, p in zip(start, place, strict=True)]
    length2 = sum(a * a for a in line)
    share = sum(a * b for a, b in zip(line, to, strict=True)) / length2 if length2 else 0.0
    share = min(max(share, 0.0), 1.0)
    return distance3(
        place, Point3(*(a + part * share for a, part in zip(start, line, strict=True)))
    )


def joints_over_gaps(
    installation: Installation, graph: RouteGraph, told: Sequence[str]
) -> tuple[Joint, ...]:
    """Return ways clipped along the walls between each two of the runs a cable is told to use."""
    runs = [tag for tag in dict.fromkeys(told) if tag in graph.runs]
    gaps = (gap_between(installation, graph, a, b) for a, b in itertools.combinations(runs, 2))
    return tuple(gap.joint for gap in gaps if gap.joint is not None)


def parts_joined(graph: RouteGraph, permitted: frozenset[str]) -> Mapping[str, int]:
    """Return for each permitted run or passage the number of the joined whole that it is in."""
    number: dict[str, int] = {}
    beside: dict[str, set[str]] = {tag: set() for tag in permitted}
    for here, edges in enumerate(graph.edges):
        for edge in edges:
            a, b = graph.nodes[here].run, graph.nodes[edge.to_node].run
            if a in beside and b in beside:
                beside[a].add(b)
                beside[b].add(a)
    for whole, tag in enumerate(sorted(permitted)):
        waiting = [] if tag in number else [tag]
        while waiting:
            one = waiting.pop()
            number[one] = whole
            waiting += [other for other in beside[one] if other not in number]
    return number


def nearest_gap(
    installation: Installation, graph: RouteGraph, some: Sequence[str], others: Sequence[str]
) -> Gap | None:
    """Return the least gap between two wholes that do not meet, None where one is empty."""
    gaps = [gap_between(installation, graph, a, b) for a in some for b in others]
    return min(gaps, key=lambda gap: (round(gap.clear_mm, 3), gap.run, gap.other), default=None)
