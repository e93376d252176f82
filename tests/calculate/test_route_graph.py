"""What joins what: ends near another run join, crossings do not, bands and rooms keep apart."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from small_room import declared, installation, place, run, walls

from asfitted.calculate.routes.route_graph import JOINT_MM, OFF_CONTAINMENT_WEIGHT, build_graph
from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from asfitted.resolve.installation import Containment, Wall

ON = walls()
A, B, C, D = (ON[name] for name in "ABCD")
LONG = run("T1", [(A, 1000, 2500), (A, 7000, 2500)], ("A",))


def joints(*runs: Containment, on: dict[str, Wall] = ON) -> list[tuple[str, str]]:
    graph = build_graph(installation(on=on, runs=runs))
    return sorted(
        (graph.nodes[number].run, graph.nodes[edge.to_node].run)
        for number, edges in enumerate(graph.edges)
        for edge in edges
        if not edge.run
    )


@pytest.mark.parametrize(("gap_mm", "joined"), [(0, True), (JOINT_MM, True), (JOINT_MM + 1, False)])
def test_an_end_joins_a_run_within_the_joint_distance(gap_mm: float, joined: bool) -> None:
    branch = run("T2", [(A, 4000, 2500 - gap_mm), (A, 4000, 1200)], ("A",))
    assert bool(joints(LONG, branch)) is joined


def test_a_gap_at_a_joint_costs_as_cable_off_the_containment() -> None:
    branch = run("T2", [(A, 4000, 2300), (A, 4000, 1200)], ("A",))
    graph = build_graph(installation(on=ON, runs=[LONG, branch]))
    costs = {edge.cost_mm for edges in graph.edges for edge in edges if not edge.run}
    assert costs == {OFF_CONTAINMENT_WEIGHT * 200}


def test_runs_that_cross_without_an_end_there_do_not_join() -> None:
    upright = run("T2", [(A, 4000, 2900), (A, 4000, 1200)], ("A",))
    assert joints(LONG, upright) == []


def test_runs_of_different_bands_do_not_join() -> None:
    data = run("T2", [(A, 4000, 2500), (A, 4000, 1200)], ("A",), bands=("data",))
    assert joints(LONG, data) == []
    both = run("T2", [(A, 4000, 2500), (A, 4000, 1200)], ("A",), bands=("power", "data"))
    assert joints(LONG, both)


def test_two_ends_that_meet_join_once() -> None:
    corner = run("T2", [(B, 0, 2500), (B, 3000, 2500)], ("B",))
    to_corner = run("T1", [(A, 1000, 2500), (A, 8000, 2500)], ("A",))
    assert joints(to_corner, corner) == [("T1", "T2"), ("T2", "T1")]


def test_rooms_drawn_at_one_place_keep_their_runs_apart() -> None:
    both = {**ON, **walls(room="Store", names="EFGH")}
    other = run("T2", [(both["E"], 7000, 2500), (both["E"], 8000, 2500)], ("E",))
    assert joints(LONG, other, on=both) == []


def test_a_declared_run_is_reached_from_the_run_on_its_wall_by_a_drop_and_through_the_wall() -> (
    None
):
    duct = declared("U1", place(A, 7000, 300), 40.0)
    graph = build_graph(installation(on=ON, runs=[LONG, duct]))
    way = next(e for e in graph.edges[graph.on_run["U1"][0]] if not e.run)
    # through the wall 300 mm, up from 300 to 2500
    assert [(s.kind, s.length_mm) for s in way.stretches] == [("through-wall", 300), ("drop", 2200)]
    assert graph.runs["U1"].length_mm == 40_000


def test_a_run_that_is_taken_away_is_not_there() -> None:
    gone = run("T1", [(A, 0, 2500), (A, 8000, 2500)], ("A",), state=State.REMOVED)
    assert build_graph(installation(on=ON, runs=[gone])).nodes == []
