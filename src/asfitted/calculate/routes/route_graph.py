"""The containment of a job as a graph in the building: ends, corners, joints and the runs between.

Runs join where the end of one comes within 300 mm of another that allows a common band; runs that
only cross do not join. A declared run is also reached from the runs on the wall it starts at.
"""

from __future__ import annotations

import itertools
from bisect import bisect_left
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from asfitted.calculate.routes.cable_ends import CableEnd, Stretch, reversed_stretches, total_mm
from asfitted.calculate.routes.containment_runs import rooms_of, runs_by_place, runs_of, wall_at
from asfitted.calculate.routes.take_offs import take_offs
from asfitted.calculate.routes.wall_strip import spot_of
from asfitted.geometry import Point3, distance3

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from asfitted.calculate.routes.containment_runs import Piece, Run, RunsByPlace
    from asfitted.resolve.installation import Installation, Wall

# Within this distance two runs are one installation of tray; from the job's rule for joints.
JOINT_MM = 300.0
# A metre clipped to the wall counts as much as this many metres in containment: common practice,
# cables are kept in the containment that was put up for them.
OFF_CONTAINMENT_WEIGHT = 4.0
_START_ON_WALL_MM = 600.0


@dataclass(frozen=True)
class Span:
    """A stretch of a run that a cable lies in, from one distance along it to another, mm."""

    run: str
    from_mm: float
    to_mm: float

    @property
    def length_mm(self) -> float:
        """Length, mm."""
        return abs(self.to_mm - self.from_mm)


@dataclass(frozen=True)
class Edge:
    """A way from one node to the next: along a run, or outside it (then ``run`` is empty)."""

    run: str
    to_node: int
    span: Span | None
    stretches: tuple[Stretch, ...]
    cost_mm: float


@dataclass(frozen=True)
class Node:
    """An end, corner or joint of a run."""

    run: str
    at_mm: float
    place: Point3


@dataclass(frozen=True)
class Joint:
    """Two places on runs that a cable can pass between."""

    run: str
    at_mm: float
    other: str
    other_at_mm: float
    stretches: tuple[Stretch, ...]


@dataclass
class RouteGraph:
    """Nodes along every run and the edges between them. Built once, then only read."""

    runs: Mapping[str, Run]
    places: RunsByPlace
    nodes: list[Node] = field(default_factory=list)
    edges: list[list[Edge]] = field(default_factory=list)
    on_run: dict[str, list[int]] = field(default_factory=dict)  # node numbers along each run
    rank: list[int] = field(default_factory=list)  # order of nodes for ties, by tag and place

    def beside(self, run: str, at_mm: float) -> tuple[int, int]:
        """Return the nodes before and after a place on a run."""
        numbers = self.on_run[run]
        index = bisect_left(numbers, at_mm, key=lambda n: self.nodes[n].at_mm)
        after = min(max(index, 1), len(numbers) - 1)
        return numbers[after - 1], numbers[after]

    def far_end(self, run: str) -> int:
        """Return the node at the far end of a run."""
        return self.on_run[run][-1]


def build_graph(installation: Installation) -> RouteGraph:
    """Return the graph of all containment that is there to be used."""
    runs = runs_of(installation)
    places = runs_by_place(runs, installation.walls)
    joints = [
        *_joints_at_ends(runs, installation.walls),
        *_ways_to_declared(runs, installation.walls, places),
    ]
    graph = RouteGraph(runs, places)
    _add_runs(graph, joints)
    for joint in joints:
        _add_joint(graph, joint)
    order = sorted(
        range(len(graph.nodes)), key=lambda n: (graph.nodes[n].run, graph.nodes[n].place)
    )
    graph.rank = [0] * len(order)
    for rank, number in enumerate(order):
        graph.rank[number] = rank
    return graph


def _add_runs(graph: RouteGraph, joints: list[Joint]) -> None:
    cuts: dict[str, set[float]] = {
        tag: {0.0, *(_tidy(piece.to_mm) for piece in run.pieces)} for tag, run in graph.runs.items()
    }
    for joint in joints:
        cuts[joint.run].add(_tidy(joint.at_mm))
        cuts[joint.other].add(_tidy(joint.other_at_mm))
    for tag, run in graph.runs.items():
        first = len(graph.nodes)
        for at_mm in sorted(cuts[tag]):
            graph.nodes.append(Node(tag, at_mm, run.point_at(at_mm)))
            graph.edges.append([])
        numbers = list(range(first, len(graph.nodes)))
        graph.on_run[tag] = numbers
        for a, b in itertools.pairwise(numbers):
            begin, end = graph.nodes[a].at_mm, graph.nodes[b].at_mm
            graph.edges[a].append(Edge(tag, b, Span(tag, begin, end), (), end - begin))
            graph.edges[b].append(Edge(tag, a, Span(tag, end, begin), (), end - begin))


def _tidy(distance_mm: float) -> float:
    return round(distance_mm, 6)


def _add_joint(graph: RouteGraph, joint: Joint) -> None:
    a = _node_at(graph, joint.run, joint.at_mm)
    b = _node_at(graph, joint.other, joint.other_at_mm)
    cost = OFF_CONTAINMENT_WEIGHT * total_mm(joint.stretches)
    graph.edges[a].append(Edge("", b, None, joint.stretches, cost))
    graph.edges[b].append(Edge("", a, None, reversed_stretches(joint.stretches), cost))


def _node_at(graph: RouteGraph, run: str, at_mm: float) -> int:
    return next(n for n in graph.on_run[run] if graph.nodes[n].at_mm == _tidy(at_mm))


def _open_ends(run: Run) -> tuple[tuple[float, Piece], ...]:
    """Return the ends of a run that are somewhere: not the far end of a declared length."""
    start = (0.0, run.pieces[0])
    return (start,) if run.is_declared else (start, (run.length_mm, run.pieces[-1]))


def _joints_at_ends(runs: Mapping[str, Run], walls: Mapping[str, Wall]) -> Iterator[Joint]:
    seen: set[tuple[str, str, float, float]] = set()
    for run in runs.values():
        for at_mm, piece in _open_ends(run):
            place = run.point_at(at_mm)
            for other in runs.values():
                if other is run or not _share_band(run, other) or other.is_declared:
                    continue
                near = _nearest(other, place)
                if near is None or not _same_room(run, piece, other, near[1], walls):
                    continue
                joint = _joint(run, at_mm, other, near[0])
                key = min(
                    (run.tag, other.tag, _tidy(at_mm), _tidy(near[0])),
                    (other.tag, run.tag, _tidy(near[0]), _tidy(at_mm)),
                )
                if key not in seen:
                    seen.add(key)
                    yield joint


def _share_band(run: Run, other: Run) -> bool:
    return bool(set(run.containment.bands) & set(other.containment.bands))


def _joint(run: Run, at_mm: float, other: Run, other_at_mm: float) -> Joint:
    a, b = run.point_at(at_mm), other.point_at(other_at_mm)
    wall = run.piece_at(at_mm).wall
    gap = Stretch("clipped", wall, a, b)
    stretches = (gap,) if gap.length_mm > 1e-6 else ()
    return Joint(run.tag, at_mm, other.tag, other_at_mm, stretches)


def _nearest(run: Run, place: Point3) -> tuple[float, Piece] | None:
    """Return the place of a run nearest to a point, when it is near enough for a joint."""
    best: tuple[float, float, Piece] | None = None
    for piece in run.pieces:
        if _far_off(piece, place):
            continue
        line = [b - a for a, b in zip(piece.start, piece.end, strict=True)]
        to = [p - a for a, p in zip(piece.start, place, strict=True)]
        share = sum(a * b for a, b in zip(line, to, strict=True)) / piece.length_mm**2
        at_mm = piece.from_mm + min(max(share, 0.0), 1.0) * piece.length_mm
        gap = distance3(piece.point_at(at_mm), place)
        if gap <= JOINT_MM and (best is None or gap < best[0]):
            best = gap, at_mm, piece
    return (best[1], best[2]) if best else None


def _far_off(piece: Piece, place: Point3) -> bool:
    return any(
        p < min(a, b) - JOINT_MM or p > max(a, b) + JOINT_MM
        for a, b, p in zip(piece.start, piece.end, place, strict=True)
    )


def _same_room(
    run: Run, piece: Piece, other: Run, other_piece: Piece, walls: Mapping[str, Wall]
) -> bool:
    """Tell whether two pieces can meet: rooms may be drawn without their place in the building."""
    rooms, others = rooms_of(run, piece, walls), rooms_of(other, other_piece, walls)
    return not rooms or not others or bool(rooms & others)


def declared_start(run: Run, walls: Mapping[str, Wall]) -> CableEnd | None:
    """Return the start of a declared run as an end on the wall it leaves from."""
    place = run.pieces[0].start
    wall = wall_at(walls.values(), place, _START_ON_WALL_MM)
    if wall is None:
        return None
    along, out = spot_of(wall, place)
    is_buried = run.containment.depth_mm is not None or "buried" in run.containment.kind
    return CableEnd(
        tag=run.tag,
        wall=wall,
        along_mm=round(along, 6),
        up_mm=place.z,
        out_mm=0.0,
        outside=is_buried or out < -1.0,
        half_height_mm=0.0,
        end_of="",
        at=place,
    )


def _ways_to_declared(
    runs: Mapping[str, Run], walls: Mapping[str, Wall], places: RunsByPlace
) -> Iterator[Joint]:
    for run in runs.values():
        start = declared_start(run, walls) if run.is_declared else None
        if start is None:
            continue
        for take_off in take_offs(start, places):
            if _share_band(run, runs[take_off.run]):
                yield Joint(run.tag, 0.0, take_off.run, take_off.at_mm, take_off.stretches)
