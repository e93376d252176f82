"""The shortest way: a published graph, ties, runs that must or may not be used."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from asfitted.calculate.routes.containment_runs import RunsByPlace
from asfitted.calculate.routes.route_graph import Edge, Node, RouteGraph, Span
from asfitted.calculate.routes.route_search import Reached, Spread
from asfitted.geometry import Point3

if TYPE_CHECKING:
    from collections.abc import Sequence

# Six-node graph of the encyclopaedia illustration of Dijkstra's method (memory): shortest 1 to 5
# is 1-3-6-5 with 9 + 2 + 9 = 20; distances from 1 to 2..6 are 7, 9, 20, 20, 11.
PUBLISHED = [
    (1, 2, 7), (1, 3, 9), (1, 6, 14), (2, 3, 10), (2, 4, 15),
    (3, 4, 11), (3, 6, 2), (4, 5, 6), (5, 6, 9),
]  # fmt: skip


def graph_of(
    edges: Sequence[tuple[int, int, float]], runs: dict[tuple[int, int], str] | None = None
) -> RouteGraph:
    count = max(max(a, b) for a, b, _ in edges) + 1
    graph = RouteGraph({}, RunsByPlace({}, {}))
    graph.nodes = [Node("R", float(n), Point3(float(n), 0.0, 0.0)) for n in range(count)]
    graph.edges = [[] for _ in range(count)]
    graph.rank = list(range(count))
    for a, b, length in edges:
        run = (runs or {}).get((a, b), "R")
        graph.edges[a].append(Edge(run, b, Span(run, 0.0, length), (), length))
        graph.edges[b].append(Edge(run, a, Span(run, length, 0.0), (), length))
    return graph


def lengths_to(spread: Spread, node: int) -> list[float]:
    return [part.length_mm for part in spread.parts_to(Reached(node, spread.all_used))]


def test_published_shortest_path() -> None:
    spread = Spread(graph_of(PUBLISHED), (), frozenset("R"), (), 1)
    found = [spread.cost_of(Reached(node, 0), float("inf")) for node in range(2, 7)]
    assert found == [7, 9, 20, 20, 11]
    assert lengths_to(spread, 5) == [9, 2, 9]  # 1-3-6-5


def test_stops_at_the_limit_and_goes_on_from_there() -> None:
    spread = Spread(graph_of(PUBLISHED), (), frozenset("R"), (), 1)
    assert spread.cost_of(Reached(5, 0), 15.0) is None
    assert spread.cost_of(Reached(5, 0), float("inf")) == 20


def test_a_run_that_is_not_permitted_is_gone_round() -> None:
    graph = graph_of(PUBLISHED, {(3, 6): "X"})
    spread = Spread(graph, (), frozenset("R"), (), 1)
    # without 3-6: 1-6-5 is 14 + 9 = 23, 1-3-4-5 is 9 + 11 + 6 = 26
    assert spread.cost_of(Reached(5, 0), float("inf")) == 23


def test_a_wanted_run_is_used_even_when_longer() -> None:
    graph = graph_of(PUBLISHED, {(2, 4): "V"})
    spread = Spread(graph, (), frozenset("RV"), ("V",), 1)
    # by 2-4: 7 + 15 + 6 = 28
    assert spread.cost_of(Reached(5, spread.all_used), float("inf")) == 28
    assert lengths_to(spread, 5) == [7, 15, 6]


def test_of_two_equal_ways_the_same_one_is_always_taken() -> None:
    square = [(0, 1, 5.0), (0, 2, 5.0), (1, 3, 5.0), (2, 3, 5.0)]
    ways = []
    for edges in (square, square[::-1]):
        graph = graph_of(edges)
        for node, (x, y) in enumerate([(0.0, 0.0), (5.0, 0.0), (0.0, 5.0), (5.0, 5.0)]):
            graph.nodes[node] = Node("R", 0.0, Point3(x, y, 0.0))
        spread = Spread(graph, (), frozenset("R"), (), 0)
        assert spread.cost_of(Reached(3, 0), float("inf")) == 10
        came = spread._came[Reached(3, 0)].before
        assert came is not None
        ways.append(came.node)
    assert ways == [1, 1]


def test_what_cannot_be_reached_has_no_cost() -> None:
    graph = graph_of([(0, 1, 5.0), (2, 3, 5.0)])
    assert Spread(graph, (), frozenset("R"), (), 0).cost_of(Reached(3, 0), float("inf")) is None


@pytest.mark.parametrize("used", [0, 1])
def test_a_touch_without_length_does_not_count_as_using_a_run(used: int) -> None:
    spread = Spread(graph_of([(0, 1, 5.0)]), (), frozenset("R"), ("R",), 0)
    assert spread.used_by(Span("R", 3.0, 3.0 + used)) == used
