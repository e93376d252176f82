"""Ring final circuits: two ways round to every point, and what the farthest place gets.

A point at distance d round a ring of length L sees the two ways in parallel, which is d (L - d) / L
of one cable; at the middle that is a quarter of the ring. For 13 A socket-outlets the load is
taken as 20 A at the middle and the rest of In evenly round the ring, which drops as much as half
of the rest at the middle (On-Site Guide, ring final circuits; memory). Where the loads of the
points are given, they stand where the points are.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.calculate.cable_facts import try_cable_facts
from asfitted.calculate.cable_rating import Needed, try_rate
from asfitted.calculate.network import beyond
from asfitted.calculate.results import RingFigures
from asfitted.calculate.ring_final import (
    cross_connected_ohm,
    leg_currents_a,
    ring_r1_plus_r2_ohm,
)
from asfitted.calculate.sized_cable import RingPlace, Sized, heating, size_stretch
from asfitted.calculate.voltage_drop import (
    drop_per_ampere_metre,
    drop_percent,
    ring_voltage_drop_v,
    voltage_drop_v,
)
from asfitted.reference import conductors

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from asfitted.calculate.cable_facts import CableFacts
    from asfitted.calculate.network import Node
    from asfitted.calculate.point_loads import Design
    from asfitted.calculate.sized_cable import Problem, Stretch
    from asfitted.resolve.installation import Cable, Circuit

RING_DEVICES_A = (30.0, 32.0)
LEAST_CAPACITY_A = 20.0  # BS 7671 433.1.204
LEAST_RING_MM2 = 2.5  # BS 7671 433.1.204, other than mineral insulated cable
RING_SOURCE = "BS 7671 433.1.204: ring final circuit, accessories to BS 1363"


@dataclass(frozen=True)
class Layout:
    """The cables of a ring in order, the rest are spurs; distances to the far ends, m."""

    places: tuple[int, ...]
    ends_m: tuple[float, ...]

    @property
    def length_m(self) -> float:
        """Length from the board round to the board, m."""
        return self.ends_m[-1]


def ring_needs(circuit: Circuit) -> Needed | None:
    """Return the capacity that a ring cable needs in place of In, None where In stands."""
    if not circuit.ring or circuit.device.rating_a not in RING_DEVICES_A:
        return None
    return Needed(LEAST_CAPACITY_A, "Iz min", RING_SOURCE)


def ring_places(ends: Sequence[tuple[str, str]], board: str) -> tuple[int, ...]:
    """Return the cables that form the ring, in order from the board; empty if none closes it.

    Args:
        ends: From and to tag of each cable of the circuit.
        board: Tag of the board where the ring starts and ends.
    """
    into = {end: place for place, (_, end) in enumerate(ends)}
    place = into.get(board)
    found: list[int] = []
    while place is not None and place not in found:
        found.append(place)
        start = ends[place][0]
        if start == board:
            return tuple(reversed(found))
        place = into.get(start)
    return ()


def layout_of(stretches: Sequence[Stretch], board: str) -> Layout | None:
    """Return the ring among the cables of a circuit."""
    ends = [(s.cable.from_end, s.cable.to_end) for s in stretches]
    places = ring_places(ends, board)
    if len(places) < 2:
        return None
    total, marks = 0.0, []
    for place in places:
        total += stretches[place].length_m
        marks.append(total)
    return Layout(places, tuple(marks))


def ring_currents(
    cables: Sequence[Cable], lengths_m: Sequence[float], design: Design, board: str
) -> tuple[tuple[float, float], ...]:
    """Return the current, A, and power factor in each cable of a ring circuit, in order.

    Each load is shared between the two ways by distance; a spur carries what hangs on it.
    """
    ends = [(cable.from_end, cable.to_end) for cable in cables]
    places = ring_places(ends, board)
    own = {tag: load.current_a for tag, load in design.at_points.items()}
    hung = _hung_on(ends, places, own)
    total_m = sum(lengths_m[place] for place in places)
    if not places or total_m <= 0:
        return tuple((design.current_a or 0.0, design.power_factor) for _ in cables)
    at, along = [], 0.0
    for place in places[:-1]:
        along += lengths_m[place]
        at.append((min(along, total_m), hung.get(ends[place][1], 0.0)))
    flowing = leg_currents_a(at, ring_length_m=total_m)[0]
    amps = {place: hung.get(end, 0.0) for place, (_, end) in enumerate(ends)}
    for place, (_, load) in zip(places, [*at, (0.0, 0.0)], strict=True):
        amps[place] = abs(flowing)
        flowing -= load
    return tuple((amps[place], design.power_factor) for place in range(len(ends)))


def _hung_on(
    ends: Sequence[tuple[str, str]], places: Sequence[int], own: Mapping[str, float]
) -> dict[str, float]:
    """Return the load at each point with all spurs beyond it, A."""
    hung = dict(own)
    for place in reversed(range(len(ends))):
        if place not in places:
            start, end = ends[place]
            hung[start] = hung.get(start, 0.0) + hung.get(end, 0.0)
    return hung


def size_ring(
    problem: Problem, layout: Layout, size_of: Mapping[int, float]
) -> tuple[Sized, ...] | str:
    """Return every cable of a ring circuit at its size, or why it cannot be worked out."""
    sizes = {size_of[place] for place in layout.places}
    if len(sizes) > 1:
        return "the cables of a ring differ in size"
    nodes: dict[str, Node] = {problem.board.tag: problem.board}
    found: list[Sized] = []
    marks = dict(zip(layout.places, layout.ends_m, strict=True))
    for place, stretch in enumerate(problem.stretches):
        if place in marks:
            one = _on_ring(
                problem, stretch, size_of[place], RingPlace(marks[place], layout.length_m)
            )
        else:
            near = nodes.get(stretch.cable.from_end, problem.board)
            one = size_stretch(problem, stretch, size_of[place], near)
        if isinstance(one, str):
            return one
        if stretch.cable.to_end != problem.board.tag:
            nodes[stretch.cable.to_end] = one.far
        found.append(one)
    return tuple(found)


def _on_ring(problem: Problem, stretch: Stretch, csa_mm2: float, where: RingPlace) -> Sized | str:
    cable = stretch.cable
    facts = try_cable_facts(cable.family, cable.cores, csa_mm2, cable.cpc, problem.loaded)
    if isinstance(facts, str):
        return facts
    rating = try_rate(stretch.use, csa_mm2)
    if isinstance(rating, str):
        return rating
    per_a_m = _per_a_m(facts, stretch.power_factor)
    own_v = voltage_drop_v(per_a_m, current_a=stretch.current_a, length_m=stretch.length_m)
    share = min(where.end_m, where.ring_m - where.end_m) / (where.ring_m / 2)
    to_end = share * middle_drop_pct(problem, facts, where.ring_m)
    far = beyond(problem.board, cable.to_end, facts, where.two_ways_m, to_end)
    line, cpc = heating(problem, facts, problem.board, middle_node(problem, facts, where.ring_m))
    own_pct = drop_percent(own_v, nominal_v=problem.volts.u0_v)
    return Sized(stretch, facts, rating, own_v, own_pct, problem.board, far, line, cpc, ring=where)


def _per_a_m(facts: CableFacts, power_factor: float) -> float:
    return drop_per_ampere_metre(
        r_mv_a_m=facts.drop.r_mv_a_m, x_mv_a_m=facts.drop.x_mv_a_m, power_factor=power_factor
    )


def middle_drop_pct(problem: Problem, facts: CableFacts, ring_m: float) -> float:
    """Return the drop from the board to the middle of the ring, %: the most of any point."""
    per_a_m = _per_a_m(facts, problem.ring_power_factor)
    volts = ring_voltage_drop_v(per_a_m, current_a=problem.ring_middle_a, ring_length_m=ring_m)
    return drop_percent(volts, nominal_v=problem.volts.u0_v)


def middle_node(problem: Problem, facts: CableFacts, ring_m: float) -> Node:
    """Return the node at the middle of the ring: a quarter of its length of one cable away."""
    drop = middle_drop_pct(problem, facts, ring_m)
    return beyond(problem.board, "middle of the ring", facts, ring_m / 4, drop)


def ring_figures(sized: Sequence[Sized]) -> RingFigures | None:
    """Return end to end resistances of a ring at 20 C and how its ends share the load."""
    legs = [one for one in sized if one.ring is not None]
    if not legs or legs[0].ring is None:
        return None
    facts, length_m = legs[0].facts, legs[0].ring.ring_m
    line = facts.line_cold.real * length_m
    if facts.cpc_cold is None:
        return RingFigures(length_m, line, line, None, None, None, _ends(legs))
    earth = facts.cpc_cold.real * length_m
    rise = conductors.temperature_factor(facts.hot_c).value
    hot = ring_r1_plus_r2_ohm(
        r1_mohm_m=1000 * facts.line_cold.real,
        r2_mohm_m=1000 * facts.cpc_cold.real,
        ring_length_m=length_m,
        temperature_factor=rise,
    )
    quarter = cross_connected_ohm(line, second_end_to_end_ohm=earth)
    return RingFigures(length_m, line, line, earth, quarter, hot, _ends(legs))


def _ends(legs: Sequence[Sized]) -> tuple[float, float]:
    return (legs[0].stretch.current_a, legs[-1].stretch.current_a)
