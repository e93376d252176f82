"""The containment of a job as a graph in the building: ends, corners, joints and the runs between.

Runs join where the end of one comes within 300 mm of another that allows a common band; runs that
only cross do not join. A declared run is also reached from the runs on the wall it starts at, and
passages lead from the runs and walls of one room to those of another.
"""

from __future__ import annotations

import itertools
from bisect import bisect_left
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from asfitted.calculate.routes.cable_ends import Stretch, reversed_stretches, total_mm
from asfitted.calculate.routes.containment_runs import runs_by_place, runs_of
from asfitted.calculate.routes.passage_lines import passage_lines, with_mouths
from asfitted.calculate.routes.route_joints import (
    JOINT_MM,
    joints_at_ends,
    joints_at_passages,
    ways_to_declared,
)

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from asfitted.calculate.routes.containment_runs import Run, RunsByPlace
    from asfitted.calculate.routes.passage_lines import PassageLine
    from asfitted.calculate.routes.route_joints import Joint
    from asfitted.geometry import Point3
    from asfitted.resolve.installation import Installation

# A metre clipped to the wall counts as much as this many metres in containment: common practice,
# cables are kept in the containment that was put up for them.
OFF_CONTAINMENT_WEIGHT = 4.0

__all__ = [
    "JOINT_MM",
    "OFF_CONTAINMENT_WEIGHT",
    "Edge",
    "Node",
    "RouteGraph",
    "Span",
    "build_graph",
]


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


@dataclass
class RouteGraph:
    """Nodes along every run and the edges between them. Built once, then only read."""

    runs: Mapping[str, Run]
    places: RunsByPlace
    nodes: list[Node] = field(default_factory=list)
    edges: list[list[Edge]] = field(default_factory=list)
    on_run: dict[str, list[int]] = field(default_factory=dict)  # node numbers along each run
    rank: list[int] = field(default_factory=list)  # order of nodes for ties, by tag and place
    passages: Mapping[str, PassageLine] = field(default_factory=dict)
    into: dict[tuple[str, float], int] = field(default_factory=dict)  # node to enter a mouth by
    out_of: dict[tuple[str, float], int] = field(default_factory=dict)  # node to leave a mouth by

    def beside(self, run: str, at_mm: float) -> tuple[int, int]:
        """Return the nodes before and after a place on a run."""
        numbers = self.on_run[run]
        index = bisect_left(numbers, at_mm, key=lambda n: self.nodes[n].at_mm)
        after = min(max(index, 1), len(numbers) - 1)
        return numbers[after - 1], numbers[after]

    def entries(self, run: str, at_mm: float) -> list[tuple[int, Span]]:
        """Return the nodes that a cable goes on to from a place on a run, with spans.

        A mouth can only be gone into: two things on one wall are not joined by turning in it.
        """
        if run in self.passages:
            return [(self.into[run, at_mm], Span(run, at_mm, at_mm))]
        return [(n, Span(run, at_mm, self.nodes[n].at_mm)) for n in self.beside(run, at_mm)]

    def exits(self, run: str, at_mm: float) -> list[tuple[int, Span]]:
        """Return the nodes that a cable comes from to a place on a run, with spans."""
        if run in self.passages:
            return [(self.out_of[run, at_mm], Span(run, at_mm, at_mm))]
        return [(n, Span(run, self.nodes[n].at_mm, at_mm)) for n in self.beside(run, at_mm)]

    def far_end(self, run: str) -> int:
        """Return the node at the far end of a run."""
        return self.on_run[run][-1]


def build_graph(installation: Installation, extra: Iterable[Joint] = ()) -> RouteGraph:
    """Return the graph of all containment and passages that are there to be used.

    Args:
        installation: The job.
        extra: Further joints, for cables that are told to go from run to run.
    """
    runs, lines = runs_of(installation), passage_lines(installation)
    places = with_mouths(runs_by_place(runs, installation.walls), lines)
    joints = [
        *joints_at_ends(runs, installation.walls),
        *ways_to_declared(runs, installation.walls, places, lines),
        *joints_at_passages(installation, runs, lines, places),
        *extra,
    ]
    graph = RouteGraph(runs, places, passages=lines)
    _add_runs(graph, joints)
    for line in lines.values():
        _add_passage(graph, line)
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
        for tag, at_mm in ((joint.run, joint.at_mm), (joint.other, joint.other_at_mm)):
            if tag in cuts:
                cuts[tag].add(_tidy(at_mm))
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


def _add_passage(graph: RouteGraph, line: PassageLine) -> None:
    """Add both ways through a passage, each from one mouth out of the other."""
    for (at_mm, mouth), (far_mm, far) in (line.mouths, line.mouths[::-1]):
        first = len(graph.nodes)
        graph.nodes += [Node(line.tag, at_mm, mouth.at), Node(line.tag, far_mm, far.at)]
        span = Span(line.tag, at_mm, far_mm)
        graph.edges += [[Edge(line.tag, first + 1, span, (), span.length_mm)], []]
        graph.into[line.tag, at_mm] = first
        graph.out_of[line.tag, far_mm] = first + 1


def _add_joint(graph: RouteGraph, joint: Joint) -> None:
    cost = OFF_CONTAINMENT_WEIGHT * total_mm(joint.stretches)
    here, there = (joint.run, joint.at_mm), (joint.other, joint.other_at_mm)
    forwards = Edge("", _node(graph, *there, graph.into), None, joint.stretches, cost)
    back = reversed_stretches(joint.stretches)
    backwards = Edge("", _node(graph, *here, graph.into), None, back, cost)
    graph.edges[_node(graph, *here, graph.out_of)].append(forwards)
    graph.edges[_node(graph, *there, graph.out_of)].append(backwards)


def _node(
    graph: RouteGraph, tag: str, at_mm: float, mouths: Mapping[tuple[str, float], int]
) -> int:
    if tag in graph.passages:
        return mouths[tag, at_mm]
    return next(n for n in graph.on_run[tag] if graph.nodes[n].at_mm == _tidy(at_mm))
