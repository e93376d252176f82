"""The shortest permitted way through the containment from one end of a cable to the other.

Dijkstra's method (Numerische Mathematik 1, 1959), spread from one end only as far as is asked.
Metres outside containment weigh more than metres in it; ties go by tag and place, so that the
same job always gives the same way.
"""

from __future__ import annotations

import heapq
from dataclasses import dataclass
from typing import TYPE_CHECKING, NamedTuple

from asfitted.calculate.routes.cable_ends import Stretch, reversed_stretches
from asfitted.calculate.routes.route_graph import OFF_CONTAINMENT_WEIGHT, Span

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.calculate.routes.route_graph import Edge, RouteGraph
    from asfitted.calculate.routes.take_offs import TakeOff

_SAME_MM = 1e-6


class Reached(NamedTuple):
    """A node with the runs that the cable must use and has used so far (one bit each)."""

    node: int
    used: int


@dataclass(frozen=True)
class Way:
    """A cable's way from end to end: pieces outside containment and spans of runs, in order."""

    cost_mm: float
    parts: tuple[Stretch | Span, ...]


@dataclass(frozen=True)
class _Came:
    """How a node was reached: from another node by an edge, or from a take-off."""

    before: Reached | None
    edge: Edge | None
    take_off: TakeOff | None
    span: Span | None


class Spread:
    """Distances from the take-offs of one end, worked out as far as they are asked for."""

    def __init__(
        self,
        graph: RouteGraph,
        starts: Sequence[TakeOff],
        permitted: frozenset[str],
        wanted: tuple[str, ...] = (),
        start_node: int | None = None,
    ) -> None:
        """Start from take-offs, or from the node at the far end of a declared run.

        Args:
            graph: The containment.
            starts: Take-offs of the first end on permitted runs.
            permitted: Tags of the runs that may be used.
            wanted: Tags of the runs that must be used.
            start_node: Node to start from instead.
        """
        self.graph = graph
        self.starts = starts
        self.permitted = permitted
        self.bits = {tag: 1 << index for index, tag in enumerate(wanted)}
        self.all_used = (1 << len(wanted)) - 1
        self._cost: dict[Reached, float] = {}
        self._came: dict[Reached, _Came] = {}
        self._settled: set[Reached] = set()
        self._heap: list[tuple[float, int, int, int]] = []
        for take_off in starts:
            cost = OFF_CONTAINMENT_WEIGHT * take_off.length_mm
            for node, span in graph.entries(take_off.run, take_off.at_mm):
                state = Reached(node, self.used_by(span))
                self._offer(state, cost + span.length_mm, _Came(None, None, take_off, span))
        if start_node is not None:
            self._offer(Reached(start_node, 0), 0.0, _Came(None, None, None, None))

    def used_by(self, span: Span | None) -> int:
        """Return the bit of the run that a span lies in, 0 when it need not be used."""
        if span is None or span.length_mm <= _SAME_MM:
            return 0
        return self.bits.get(span.run, 0)

    def _offer(self, state: Reached, cost: float, came: _Came) -> None:
        """Note a way to a node when it is shorter, or as short by a run of an earlier tag."""
        if state in self._settled:
            return
        known = self._cost.get(state)
        if known is not None:
            if cost > known + _SAME_MM:
                return
            is_tie = abs(cost - known) <= _SAME_MM
            if is_tie and self._order(came) >= self._order(self._came[state]):
                return
        self._cost[state] = cost
        self._came[state] = came
        rank = self.graph.rank[state.node]
        heapq.heappush(self._heap, (round(cost, 6), rank, state.node, state.used))

    def _order(self, came: _Came) -> tuple[str, int]:
        if came.before is None:
            return (came.take_off.run if came.take_off else "", -1)
        return (self.graph.nodes[came.before.node].run, self.graph.rank[came.before.node])

    def cost_of(self, state: Reached, limit_mm: float) -> float | None:
        """Return the cost to a node, or None when it cannot be reached within the limit."""
        while state not in self._settled and self._heap and self._heap[0][0] <= limit_mm:
            _, _, node, used = heapq.heappop(self._heap)
            here = Reached(node, used)
            if here in self._settled:
                continue
            self._settled.add(here)
            for edge in self.graph.edges[node]:
                if edge.run and edge.run not in self.permitted:
                    continue
                there = Reached(edge.to_node, used | self.used_by(edge.span))
                self._offer(there, self._cost[here] + edge.cost_mm, _Came(here, edge, None, None))
        return self._cost[state] if state in self._settled else None

    def parts_to(self, state: Reached) -> list[Stretch | Span]:
        """Return the way from the first end to a settled node, in order."""
        backwards: list[Stretch | Span] = []
        at: Reached | None = state
        while at is not None:
            came = self._came[at]
            if came.edge is not None:
                backwards += reversed(came.edge.stretches)
            span = came.edge.span if came.edge is not None else came.span
            if span is not None:
                backwards.append(span)
            if came.take_off is not None:
                backwards += reversed(came.take_off.stretches)
            at = came.before
        return backwards[::-1]


@dataclass(frozen=True)
class _Best:
    cost_mm: float
    order: tuple[str, int]
    state: Reached | None  # None: both ends leave the same piece
    first: TakeOff | None
    last: TakeOff | None
    span: Span | None


def best_way(spread: Spread, ends: Sequence[TakeOff], end_node: int | None = None) -> Way | None:
    """Return the cheapest way to one of the take-offs of the other end, or to a node.

    Args:
        spread: Spread from the first end.
        ends: Take-offs of the other end on permitted runs.
        end_node: Far end of a declared run to reach instead.
    """
    best: _Best | None = None
    for last in ends:
        for found in (*_along_one_piece(spread, last), *_by_nodes(spread, last, best)):
            best = _better(best, found)
    if end_node is not None:
        cost = spread.cost_of(Reached(end_node, spread.all_used), float("inf"))
        if cost is not None:
            best = _Best(cost, ("", -1), Reached(end_node, spread.all_used), None, None, None)
    return None if best is None else Way(best.cost_mm, tuple(_parts(spread, best)))


def _better(best: _Best | None, found: _Best) -> _Best:
    if best is None or found.cost_mm < best.cost_mm - _SAME_MM:
        return found
    is_tie = abs(found.cost_mm - best.cost_mm) <= _SAME_MM
    return found if is_tie and found.order < best.order else best


def _along_one_piece(spread: Spread, last: TakeOff) -> list[_Best]:
    """Return the ways that leave and arrive between the same two nodes of a run."""
    found: list[_Best] = []
    if last.run in spread.graph.passages:
        return found
    piece = spread.graph.beside(last.run, last.at_mm)
    for first in spread.starts:
        if first.run != last.run or spread.graph.beside(first.run, first.at_mm) != piece:
            continue
        span = Span(last.run, first.at_mm, last.at_mm)
        if spread.used_by(span) != spread.all_used:
            continue
        off = OFF_CONTAINMENT_WEIGHT * (first.length_mm + last.length_mm)
        found.append(_Best(off + span.length_mm, (last.run, -1), None, first, last, span))
    return found


def _by_nodes(spread: Spread, last: TakeOff, best: _Best | None) -> list[_Best]:
    found = []
    limit = best.cost_mm if best is not None else float("inf")
    off = OFF_CONTAINMENT_WEIGHT * last.length_mm
    for node, span in spread.graph.exits(last.run, last.at_mm):
        own = spread.used_by(span)
        for used in {spread.all_used, spread.all_used & ~own}:
            state = Reached(node, used)
            cost = spread.cost_of(state, limit)
            if cost is not None:
                total = cost + span.length_mm + off
                order = (last.run, spread.graph.rank[node])
                found.append(_Best(total, order, state, None, last, span))
    return found


def _parts(spread: Spread, best: _Best) -> list[Stretch | Span]:
    parts: list[Stretch | Span] = []
    if best.state is not None:
        parts += spread.parts_to(best.state)
    elif best.first is not None:
        parts += best.first.stretches
    if best.span is not None:
        parts.append(best.span)
    if best.last is not None:
        parts += reversed_stretches(best.last.stretches)
    return _joined(parts)


def _joined(parts: Sequence[Stretch | Span]) -> list[Stretch | Span]:
    """Join spans that follow each other along one run and leave out those of no length."""
    joined: list[Stretch | Span] = []
    for part in parts:
        if part.length_mm <= _SAME_MM:
            continue
        before = joined[-1] if joined else None
        if isinstance(part, Span) and isinstance(before, Span) and _goes_on(before, part):
            joined[-1] = Span(part.run, before.from_mm, part.to_mm)
        else:
            joined.append(part)
    return joined


def _goes_on(before: Span, part: Span) -> bool:
    meets = before.run == part.run and abs(before.to_mm - part.from_mm) <= _SAME_MM
    return meets and (before.to_mm > before.from_mm) == (part.to_mm > part.from_mm)


def permitted_runs(graph: RouteGraph, band: str, via: Sequence[str]) -> frozenset[str]:
    """Return the runs and passages a cable may use: for its band, and those it is told to use."""
    own = {tag for tag, run in graph.runs.items() if band in run.containment.bands}
    own |= {tag for tag, line in graph.passages.items() if band in line.passage.bands}
    return frozenset(own | {tag for tag in via if tag in graph.runs or tag in graph.passages})
