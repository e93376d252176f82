"""Design current of every circuit and demand of every board, from the last board inward.

Diversity at a board follows On-Site Guide Table A2, small shops, offices and business premises:
line by line, circuit by circuit of one kind of load. Currents of one line are added as numbers,
power factors not counted, which is the safe side. The table is not meant for batteries of
machines: there the designer's own factors belong.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import TYPE_CHECKING

from asfitted.calculate.diversity import diversified_current_a
from asfitted.calculate.point_loads import SOCKET_13A, Design, design
from asfitted.calculate.working import Step
from asfitted.reference.diversity import allowance

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from asfitted.calculate.network import Voltages
    from asfitted.resolve.installation import Circuit, Installation

Lines = tuple[float, float, float]
NOTHING: Lines = (0.0, 0.0, 0.0)
PREMISES = "small_business"
BASIS = "On-Site Guide Table A2, small shops and business premises, line by line"
WHOLE = "whole"
KIND_WORDS = {
    "lighting": "lighting",
    "heating_and_power": "heating and power",
    "motors": "motors",
    "standard_socket_circuits": "standard socket circuits",
    "other_sockets_and_stationary": "other socket-outlets and fixed equipment",
    WHOLE: "feeders to boards, no further diversity",
}
_KIND_BY_USE = {
    "lighting": "lighting",
    "heating": "heating_and_power",
    "motor": "motors",
    "power": "other_sockets_and_stationary",
    "board": WHOLE,
}


@dataclass(frozen=True)
class BoardDemand:
    """Connected load and demand of a board, A on L1, L2, L3.

    ``own_a`` is the demand of its own circuits without the boards it feeds, as vectors behind the
    voltage of each line.
    """

    connected_a: Lines = NOTHING
    demand_a: Lines = NOTHING
    steps: tuple[Step, ...] = ()
    unknown: tuple[str, ...] = ()
    own_a: tuple[complex, complex, complex] = (0j, 0j, 0j)


@dataclass(frozen=True)
class Demands:
    """Designs and line currents by circuit, demands by board."""

    designs: Mapping[str, Design]
    lines: Mapping[str, Lines]
    boards: Mapping[str, BoardDemand]


@dataclass
class _Work:
    installation: Installation
    volts: Voltages
    of_board: dict[str, list[Circuit]]
    designs: dict[str, Design] = field(default_factory=dict)
    lines: dict[str, Lines] = field(default_factory=dict)
    boards: dict[str, BoardDemand] = field(default_factory=dict)
    open_boards: set[str] = field(default_factory=set)

    def board(self, tag: str) -> BoardDemand:
        """Return the demand of a board, working out the boards it feeds first."""
        if tag in self.boards:
            return self.boards[tag]
        if tag in self.open_boards:
            return BoardDemand(unknown=(f"{tag} feeds itself: its demand is not counted twice",))
        self.open_boards.add(tag)
        circuits = self.of_board.get(tag, [])
        for circuit in circuits:
            self.circuit(circuit)
        found = self._added_up(circuits)
        self.open_boards.discard(tag)
        self.boards[tag] = found
        return found

    def circuit(self, circuit: Circuit) -> None:
        """Work out one circuit and the line currents it puts on its board."""
        if circuit.feeds_board in self.installation.boards:
            self._feeder(circuit)
            return
        points = [self.installation.points[tag] for tag in circuit.points]
        found = design(circuit, points, self.volts)
        self.designs[circuit.tag] = found
        self.lines[circuit.tag] = self._on_lines(circuit, found.current_a or 0.0)

    def _feeder(self, circuit: Circuit) -> None:
        fed = circuit.feeds_board
        demand = self.board(fed)
        phases = self.installation.boards[fed].phases
        if phases == 1 or circuit.phase != "TP":
            greatest, line = max(demand.demand_a), ""
            self.lines[circuit.tag] = self._on_lines(circuit, greatest)
        else:
            greatest = max(demand.demand_a)
            line = f" on L{demand.demand_a.index(greatest) + 1}, the most loaded line"
            self.lines[circuit.tag] = demand.demand_a
        basis = f"demand of {fed} after diversity{line}"
        step = Step("Ib", basis, "demand", f"{greatest:.1f} A", greatest, "A", BASIS)
        self.designs[circuit.tag] = Design(
            greatest, 1.0, basis, steps=(step,), unknown=demand.unknown
        )

    def _on_lines(self, circuit: Circuit, amps: float) -> Lines:
        if circuit.phase == "TP":
            return (amps, amps, amps)
        one_phase = self.installation.boards[circuit.board].phases == 1
        place = 1 if one_phase or not circuit.phase else int(circuit.phase[1])
        return (amps * (place == 1), amps * (place == 2), amps * (place == 3))

    def _added_up(self, circuits: list[Circuit]) -> BoardDemand:
        by_kind: dict[str, list[Lines]] = {}
        vectors: dict[str, list[complex]] = {}
        unknown: list[str] = []
        for circuit in circuits:
            lines = self.lines[circuit.tag]
            kind = diversity_kind(circuit, self.installation)
            by_kind.setdefault(kind, []).append(lines)
            found = self.designs[circuit.tag]
            vector = complex(found.power_factor, -math.sqrt(1.0 - found.power_factor**2))
            sums = vectors.setdefault(kind, [0j, 0j, 0j])
            vectors[kind] = [s + amps * vector for s, amps in zip(sums, lines, strict=True)]
            if found.current_a is None:
                unknown.append(f"{circuit.tag}: load not recorded, not counted")
            elif circuit.feeds_board:
                unknown += found.unknown
        connected = _sums(lines for group in by_kind.values() for lines in group)
        kinds = [kind for kind in KIND_WORDS if kind in by_kind]
        shares = [(kind, with_diversity(kind, by_kind[kind])) for kind in kinds]
        demand = _sums(lines for _, lines in shares)
        steps = tuple(_line_step(place, shares) for place in range(3) if connected[place])
        own = _own_vectors(shares, vectors)
        return BoardDemand(connected, demand, steps, tuple(unknown), own)


def work_out_demands(installation: Installation, volts: Voltages) -> Demands:
    """Return the design current of every circuit and the demand of every board."""
    of_board: dict[str, list[Circuit]] = {}
    for circuit in installation.circuits.values():
        of_board.setdefault(circuit.board, []).append(circuit)
    work = _Work(installation, volts, of_board)
    for tag in installation.boards:
        work.board(tag)
    in_order = [tag for tag in installation.circuits if tag in work.designs]
    return Demands(
        designs=MappingProxyType({tag: work.designs[tag] for tag in in_order}),
        lines=MappingProxyType({tag: work.lines[tag] for tag in in_order}),
        boards=MappingProxyType({tag: work.boards[tag] for tag in installation.boards}),
    )


def diversity_kind(circuit: Circuit, installation: Installation) -> str:
    """Return the kind of load of Table A2 that a circuit counts as.

    Socket circuits with 13 A outlets, or existing ones whose outlets are not recorded, are
    standard circuits; circuits with other socket-outlets are not.
    """
    if circuit.feeds_board:
        return WHOLE
    if circuit.use != "sockets":
        return _KIND_BY_USE[circuit.use]
    kinds = {installation.points[tag].kind for tag in circuit.points}
    standard = not kinds or SOCKET_13A in kinds
    return "standard_socket_circuits" if standard else "other_sockets_and_stationary"


def _sums(rows: Iterable[Lines]) -> Lines:
    l1 = l2 = l3 = 0.0
    for a, b, c in rows:
        l1, l2, l3 = l1 + a, l2 + b, l3 + c
    return (l1, l2, l3)


def with_diversity(kind: str, group: list[Lines]) -> Lines:
    """Return the demand of circuits of one kind of load, line by line, A."""
    if kind == WHOLE:
        return _sums(group)
    l1, l2, l3 = (
        diversified_current_a(kind, premises=PREMISES, currents_a=[row[place] for row in group])
        for place in range(3)
    )
    return (l1, l2, l3)


def _own_vectors(
    shares: list[tuple[str, Lines]], vectors: Mapping[str, list[complex]]
) -> tuple[complex, complex, complex]:
    """Return the demand of a board's own circuits as vectors, each kind at its power factor."""
    total = [0j, 0j, 0j]
    for kind, lines in shares:
        for place, (amps, vector) in enumerate(zip(lines, vectors[kind], strict=True)):
            if kind != WHOLE and vector:
                total[place] += amps * vector / abs(vector)
    return (total[0], total[1], total[2])


def _line_step(place: int, shares: list[tuple[str, Lines]]) -> Step:
    used = [(kind, lines[place]) for kind, lines in shares if lines[place]]
    terms = " + ".join(f"{amps:.1f} A {KIND_WORDS[kind]}" for kind, amps in used)
    rules = "; ".join(_rule_words(kind) for kind, _ in used)
    return Step(
        symbol=f"I L{place + 1}",
        words=f"demand of line L{place + 1}",
        formula=f"sum over kinds of load: {rules}",
        substituted=terms,
        value=sum(amps for _, amps in used),
        unit="A",
        source=BASIS,
    )


def _rule_words(kind: str) -> str:
    if kind == WHOLE:
        return "feeders 100 %"
    rule = allowance(kind, PREMISES)
    first, second, others = rule.first_percent, rule.second_percent, rule.others_percent
    words = KIND_WORDS[kind]
    if first == second == others:
        return f"{words} {first:g} %"
    if second == others:
        return f"{words} {first:g} % X + {second:g} % (Y + Z)"
    return f"{words} {first:g} % X + {second:g} % Y + {others:g} % Z"
