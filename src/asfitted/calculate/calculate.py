"""The whole calculation: an installation gives every figure of the job.

Boards are walked from the origin outward. At each board the feeders and circuits are sized with
the impedance and drop found there; a feeder's far end is where the next board starts.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from types import MappingProxyType
from typing import TYPE_CHECKING, Literal, TypeVar

from asfitted.calculate.board_figures import board_result, with_expected
from asfitted.calculate.board_voltages import ORIGIN, expected_volts, feeder_branch
from asfitted.calculate.cable_facts import sizes_made
from asfitted.calculate.cable_rating import Needed, cable_use
from asfitted.calculate.circuit_figures import cable_results, circuit_result
from asfitted.calculate.containment.drop_fill import drop_fills
from asfitted.calculate.containment.leg_groups import companions
from asfitted.calculate.containment.passage_fill import passage_fills
from asfitted.calculate.containment.sections import fill_sections
from asfitted.calculate.data.data_figures import data_results
from asfitted.calculate.demand import Demands, work_out_demands
from asfitted.calculate.equipment_figures import equipment_results
from asfitted.calculate.expected_readings import expected_readings
from asfitted.calculate.fault_protection import loop_limit
from asfitted.calculate.light_cables import lightly_loaded, sharing
from asfitted.calculate.materials.take_off import take_off
from asfitted.calculate.network import (
    Node,
    Voltages,
    after_tails,
    not_reached,
    origin,
    origin_result,
    tails_ohm,
    voltages,
    with_readings,
)
from asfitted.calculate.neutral_current import harmonic_neutral_a
from asfitted.calculate.phase_moves import propose_moves
from asfitted.calculate.point_loads import currents_along
from asfitted.calculate.results import (
    BoardResult,
    CableResult,
    CalculationResults,
    CircuitResult,
)
from asfitted.calculate.ring_sizing import ring_currents, ring_needs
from asfitted.calculate.routes.cable_routes import find_paths
from asfitted.calculate.sized_cable import Problem, Stretch
from asfitted.calculate.sizing import choose_sizes
from asfitted.calculate.unbalanced_flow import Branch
from asfitted.errors import OutsideTableError
from asfitted.reference.cable_family import family
from asfitted.reference.factors import (
    third_harmonic,
    voltage_drop_extra_percent,
    voltage_drop_limit_percent,
)

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from asfitted.calculate.point_loads import Design
    from asfitted.calculate.results import CableRoute
    from asfitted.calculate.working import Step
    from asfitted.resolve.installation import Board, Circuit, Installation


Figures = TypeVar("Figures")


@dataclass(frozen=True)
class Ways:
    """Routes by cable, and for each leg of each how many others share it and in what lay.

    ``ignored`` counts the lightly loaded companions of each leg that are not among those others.
    """

    routes: Mapping[str, CableRoute]
    sharing: Mapping[str, Sequence[tuple[int, str]]]
    ignored: Mapping[str, Sequence[int]] = field(default_factory=dict)


@dataclass
class _Walk:
    installation: Installation
    ways: Ways
    volts: Voltages
    demands: Demands
    of_board: dict[str, list[Circuit]]
    reached: dict[str, Node] = field(default_factory=dict)
    cables: dict[str, CableResult] = field(default_factory=dict)
    circuits: dict[str, CircuitResult] = field(default_factory=dict)
    boards: dict[str, BoardResult] = field(default_factory=dict)
    branches: list[Branch] = field(default_factory=list)

    def from_origin(self) -> None:
        """Walk every board that the supply reaches, then those it does not."""
        start, boards = origin(self.installation.supply), self.installation.boards
        for board in boards.values():
            if board.fed_by == "supply":
                self._board_at_origin(board, start)
        for board in boards.values():
            if board.tag not in self.boards:
                why = f"what feeds {board.tag} is not known"
                self._board(board, not_reached(board, why, self.volts.u0_v))

    def _board_at_origin(self, board: Board, start: Node) -> None:
        supply = self.installation.supply
        ohm = tails_ohm(supply) if supply else 0j
        self.branches.append(Branch(ORIGIN, board.tag, ohm, ohm))
        if supply is None:
            self._board(board, with_readings(start, board))
            return
        demand = max(self.demands.boards[board.tag].demand_a)
        node, steps = after_tails(start, supply, demand)
        self._board(board, with_readings(node, board), steps)

    def _board(self, board: Board, node: Node, tails: Sequence[Step] = ()) -> None:
        if board.tag in self.boards:
            return
        circuits = self.of_board.get(board.tag, [])
        demand = self.demands.boards[board.tag]
        self.boards[board.tag] = board_result(board, node, demand, circuits, tails=tails)
        for circuit in circuits:
            far = self._circuit(circuit, node)
            fed = self.installation.boards.get(circuit.feeds_board)
            if fed is not None:
                self._board(fed, with_readings(far, fed))

    def _circuit(self, circuit: Circuit, node: Node) -> Node:
        """Work out one circuit and return the node at its far end."""
        problem = self._problem(circuit, node)
        choice = choose_sizes(problem)
        for cable in cable_results(problem, choice):
            self.cables[cable.tag] = cable
        self.circuits[circuit.tag] = circuit_result(
            circuit,
            self.demands.designs[circuit.tag],
            self.demands.lines[circuit.tag],
            problem,
            choice,
        )
        fed = self.installation.boards.get(circuit.feeds_board)
        branch = feeder_branch(choice.sized, circuit.board, fed.tag) if fed else None
        if branch is not None:
            self.branches.append(branch)
        if fed is not None and (not choice.sized or choice.sized[-1].far.tag != fed.tag):
            return not_reached(fed, f"the cable to {fed.tag} is not known", self.volts.u0_v)
        return choice.sized[-1].far if choice.sized else node

    def expected(self) -> dict[str, BoardResult]:
        """Return the boards with the voltages and currents to expect at each."""
        at = expected_volts(self.installation, self.demands, self.volts, self.branches)
        boards = self.installation.boards
        found = {}
        for tag, result in self.boards.items():
            whole = with_expected(result, boards[tag], self.demands.boards[tag], at.get(tag))
            better = propose_moves(
                self.installation, boards[tag], self.of_board.get(tag, []), self.demands
            )
            if better is not None:
                after = better.imbalance_pct
                whole = replace(whole, moves=better.moves, imbalance_after_pct=after)
            found[tag] = whole
        return found

    def _problem(self, circuit: Circuit, node: Node) -> Problem:
        loaded: Literal[2, 3] = 3 if circuit.phase == "TP" else 2
        return Problem(
            device=circuit.device,
            stretches=self._stretches(circuit, loaded),
            board=node,
            loop=loop_limit(circuit, self.installation),
            drop_limit_pct=self._drop_limit(circuit),
            volts=self.volts,
            loaded=loaded,
            is_feeder=bool(circuit.feeds_board),
            is_ring=circuit.ring and bool(circuit.points),
            ring_middle_a=_ring_middle_a(self.demands.designs[circuit.tag]),
            ring_power_factor=self.demands.designs[circuit.tag].power_factor,
        )

    def _stretches(self, circuit: Circuit, loaded: Literal[2, 3]) -> tuple[Stretch, ...]:
        """Return the cables of a circuit in order; none if the way of one is not known."""
        cables = [self.installation.cables[tag] for tag in circuit.cables]
        routes = [self.ways.routes.get(cable.tag) for cable in cables]
        design = self.demands.designs[circuit.tag]
        if circuit.ring:
            lengths = [route.length_m if route else 0.0 for route in routes]
            currents = ring_currents(cables, lengths, design, circuit.board)
        else:
            currents = currents_along([(c.from_end, c.to_end) for c in cables], design)
        found = []
        for cable, route, (amps, power_factor) in zip(cables, routes, currents, strict=True):
            if route is None or route.length_m <= 0:
                return ()
            use = cable_use(
                cable,
                route,
                self.ways.sharing.get(cable.tag, ()),
                device=circuit.device,
                loaded=loaded,
                containment=self.installation.containment,
                ignored=self.ways.ignored.get(cable.tag, ()),
                needed=_needed(circuit, design),
                third_harmonic_pct=circuit.third_harmonic_pct,
            )
            found.append(Stretch(cable, use, route.length_m, amps, power_factor))
        return tuple(found)

    def _drop_limit(self, circuit: Circuit) -> float:
        """Return the limit of drop, %: for a feeder that of the strictest circuit it feeds."""
        fed = self.of_board.get(circuit.feeds_board, []) if circuit.feeds_board else []
        lighting = any(one.use == "lighting" for one in (circuit, *fed))
        limit = voltage_drop_limit_percent("lighting" if lighting else "other").value
        routes = (self.ways.routes.get(tag) for tag in circuit.cables)
        length = sum(route.length_m for route in routes if route is not None)
        return limit + voltage_drop_extra_percent(length)


def calculate_along(installation: Installation, ways: Ways) -> CalculationResults:
    """Return every figure except the fill of containment, along routes already found."""
    volts = voltages(installation.supply)
    demands = work_out_demands(installation, volts)
    of_board: dict[str, list[Circuit]] = {}
    for circuit in installation.circuits.values():
        of_board.setdefault(circuit.board, []).append(circuit)
    walk = _Walk(installation, ways, volts, demands, of_board)
    walk.from_origin()
    data = data_results(installation, ways.routes)
    greatest, basis = _at_origin(installation, demands)
    return CalculationResults(
        routes=ways.routes,
        cables=_in_order(installation.cables, walk.cables),
        circuits=_in_order(installation.circuits, walk.circuits),
        boards=_in_order(installation.boards, walk.expected()),
        data=data,
        equipment=equipment_results(installation, data),
        max_demand_a=greatest,
        demand_basis=basis,
        origin=origin_result(origin(installation.supply), installation.supply),
    )


def calculate(installation: Installation) -> CalculationResults:
    """Return every figure of a job.

    Args:
        installation: The job as resolved. A job without a supply or without circuits is allowed;
            what cannot be worked out is None and its reason stands in ``not_known``.

    Raises:
        OutsideTableError: a cable in containment is in no table of dimensions.
    """
    paths = find_paths(installation)
    results = _with_light_cables_left_out(installation, paths)
    sizes = _sizes(installation, results)
    sections, containment = fill_sections(installation, paths, sizes)
    drops = drop_fills(installation, paths, sizes)
    found = replace(results, sections=sections, containment=containment, drop_fills=drops)
    found = replace(found, passages=passage_fills(installation, paths, sizes))
    found = replace(found, expected=expected_readings(installation, found))
    return replace(found, take_off=take_off(installation, found))


def _with_light_cables_left_out(
    installation: Installation, paths: Mapping[str, CableRoute]
) -> CalculationResults:
    """Size with every companion counted, then again without those that carry next to nothing.

    The set of those can only shrink from pass to pass, so that this ends.
    """
    groups = companions(installation, paths)
    plain = sharing(groups, frozenset())
    results = calculate_along(installation, Ways(paths, plain.counted))
    light = lightly_loaded(installation, results, groups)
    while light:
        company = sharing(groups, light)
        again = calculate_along(installation, Ways(paths, company.counted, company.ignored))
        still = light & lightly_loaded(installation, again, groups)
        if still == light:
            return again
        light = still
    return results


def _ring_middle_a(design: Design) -> float:
    """Return the load at the middle of a ring that drops as much; all of it if not known."""
    return design.ring_middle_a or design.current_a or 0.0


def _needed(circuit: Circuit, design: Design) -> Needed | None:
    """Return what stands in place of In where a cable of the circuit is chosen, None for In.

    With much third harmonic the neutral is the most loaded conductor and the cable is chosen by it.
    """
    if circuit.ring:
        return ring_needs(circuit)
    if circuit.phase != "TP" or circuit.third_harmonic_pct is None or not design.current_a:
        return None
    if not third_harmonic(circuit.third_harmonic_pct)[1]:
        return None
    neutral = harmonic_neutral_a(
        design.current_a, third_harmonic_percent=circuit.third_harmonic_pct
    )
    if neutral <= circuit.device.rating_a:
        return None
    return Needed(neutral, "IN", "5.5: chosen on the neutral current, 3 × h3 × Ib")


def _sizes(installation: Installation, results: CalculationResults) -> dict[str, float]:
    """Return a size for every power cable; one that could not be sized fills as the largest."""
    found = {tag: cable.csa_mm2 for tag, cable in results.cables.items()}
    for tag, cable in installation.cables.items():
        if cable.band == "power" and tag not in found and cable.csa_mm2 is None:
            # singles are made and laid one by one
            cores = 1 if family(cable.family).construction == "single" else cable.cores
            try:
                found[tag] = sizes_made(cable.family, cores)[-1]
            except OutsideTableError:
                continue
    return found


def _in_order(order: Mapping[str, object], found: dict[str, Figures]) -> Mapping[str, Figures]:
    return MappingProxyType({tag: found[tag] for tag in order if tag in found})


def _at_origin(installation: Installation, demands: Demands) -> tuple[float | None, str]:
    """Return the demand of the most loaded line at the origin, A, and its basis."""
    heads = [board.tag for board in installation.boards.values() if board.fed_by == "supply"]
    if not heads:
        return None, ""
    lines = [sum(demands.boards[tag].demand_a[place] for tag in heads) for place in range(3)]
    greatest = max(lines)
    where = f"L{lines.index(greatest) + 1}"
    words = " and ".join(heads)
    return greatest, f"demand of {words} on {where}, On-Site Guide Table A2 at each board"
