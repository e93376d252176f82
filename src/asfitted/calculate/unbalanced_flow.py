"""Voltages and currents of a radial four-wire network with any load on any line.

Backward and forward sweep: line currents are added up from the far ends, then voltages are taken
down from the source, until nothing moves. The neutral is a conductor of its own: its drop acts on
every line of the node. Exact for a radial network whose conductors have no mutual impedance.
"""

from __future__ import annotations

from cmath import rect
from dataclasses import dataclass
from math import pi
from typing import TYPE_CHECKING, Literal

from asfitted.errors import InputOutOfRangeError

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

Lines = tuple[complex, complex, complex]
NO_CURRENT: Lines = (0j, 0j, 0j)
SETTLED_V = 1e-9
MOST_SWEEPS = 500
LEAST_SHARE = 0.2  # below this share of its voltage at the source a node has collapsed


@dataclass(frozen=True)
class Branch:
    """One cable between two nodes, complex ohm of one line conductor and of the neutral."""

    near: str
    far: str
    line_ohm: complex
    neutral_ohm: complex


@dataclass(frozen=True)
class LineLoad:
    """A load on one line of a node, to the neutral or to another line.

    Attributes:
        node: Where it is.
        line: 0, 1 or 2 for L1, L2, L3.
        amount: Constant power: P + jQ, VA, lagging Q above 0. Constant current: I (cos phi -
            j sin phi), A, phi behind its own voltage.
        kind: What stays constant when the voltage falls.
        to_line: Other line of a load between lines; None for the neutral.
    """

    node: str
    line: int
    amount: complex
    kind: Literal["power", "current"]
    to_line: int | None = None


@dataclass(frozen=True)
class Flow:
    """The network once settled.

    Attributes:
        volts: Line to neutral voltages of each node at its own neutral, complex V.
        branch_a: Line currents into each branch by its far node, complex A.
        node_a: Line currents that leave each node, loads and branches together, complex A.
    """

    volts: Mapping[str, Lines]
    branch_a: Mapping[str, Lines]
    node_a: Mapping[str, Lines]

    def neutral_a(self, node: str) -> float:
        """Return the neutral current at a node, A: the vector sum of its line currents."""
        return abs(sum(self.node_a[node], 0j))


def source_volts(u0_v: float) -> Lines:
    """Return three voltages of one size, V, 120 degrees apart, L1 first."""
    return (rect(u0_v, 0.0), rect(u0_v, -2 * pi / 3), rect(u0_v, 2 * pi / 3))


def sweep(source: str, volts: Lines, branches: Sequence[Branch], loads: Sequence[LineLoad]) -> Flow:
    """Return the voltages and currents of a radial network.

    Args:
        source: Node that is held at ``volts``.
        volts: Line to neutral voltages at the source, complex V.
        branches: Cables; every node must be reached from the source by one way only.
        loads: Loads; one at a node that is not reached is refused.

    Raises:
        InputOutOfRangeError: not radial, a load at no node, or more load than the network carries.
    """
    ordered = _outward(source, branches)
    at_node: dict[str, list[LineLoad]] = {source: [], **{b.far: [] for b in ordered}}
    for load in loads:
        if load.node not in at_node:
            raise InputOutOfRangeError(f"a load is at {load.node!r}, which is not in the network")
        at_node[load.node].append(load)
    now = dict.fromkeys(at_node, volts)
    for _ in range(MOST_SWEEPS):
        branch_a, node_a = _backward(ordered, at_node, now)
        after = _forward(source, volts, ordered, branch_a)
        moved = max(abs(a - b) for node in now for a, b in zip(now[node], after[node], strict=True))
        now = after
        _refuse_collapse(now, volts)
        if moved < SETTLED_V:
            return Flow(now, branch_a, node_a)
    raise InputOutOfRangeError("the voltages do not settle: more load than the network can carry")


def _outward(source: str, branches: Sequence[Branch]) -> list[Branch]:
    """Return the branches so that each comes after the one that feeds it."""
    leaving: dict[str, list[Branch]] = {}
    for branch in branches:
        leaving.setdefault(branch.near, []).append(branch)
    ordered: list[Branch] = []
    reached, waiting = {source}, [source]
    while waiting:
        for branch in leaving.get(waiting.pop(), ()):
            if branch.far in reached:
                raise InputOutOfRangeError(f"{branch.far!r} is reached twice: not radial")
            reached.add(branch.far)
            waiting.append(branch.far)
            ordered.append(branch)
    if len(ordered) != len(branches):
        raise InputOutOfRangeError("a branch is not joined to the source")
    return ordered


def _load_a(load: LineLoad, volts: Lines) -> complex:
    across = volts[load.line] - (0j if load.to_line is None else volts[load.to_line])
    if load.kind == "power":
        return (load.amount / across).conjugate()
    return load.amount * across / abs(across)


def _backward(
    ordered: Sequence[Branch], at_node: Mapping[str, Sequence[LineLoad]], now: Mapping[str, Lines]
) -> tuple[dict[str, Lines], dict[str, Lines]]:
    node_a = {node: _loads_a(loads, now[node]) for node, loads in at_node.items()}
    branch_a: dict[str, Lines] = {}
    for branch in reversed(ordered):
        branch_a[branch.far] = node_a[branch.far]
        node_a[branch.near] = _plus(node_a[branch.near], node_a[branch.far])
    return branch_a, node_a


def _loads_a(loads: Sequence[LineLoad], volts: Lines) -> Lines:
    total = list(NO_CURRENT)
    for load in loads:
        amps = _load_a(load, volts)
        total[load.line] += amps
        if load.to_line is not None:
            total[load.to_line] -= amps
    return (total[0], total[1], total[2])


def _forward(
    source: str, volts: Lines, ordered: Sequence[Branch], branch_a: Mapping[str, Lines]
) -> dict[str, Lines]:
    after = {source: volts}
    for branch in ordered:
        amps = branch_a[branch.far]
        return_v = branch.neutral_ohm * sum(amps, 0j)
        near = after[branch.near]
        after[branch.far] = (
            near[0] - branch.line_ohm * amps[0] - return_v,
            near[1] - branch.line_ohm * amps[1] - return_v,
            near[2] - branch.line_ohm * amps[2] - return_v,
        )
    return after


def _plus(a: Lines, b: Lines) -> Lines:
    return (a[0] + b[0], a[1] + b[1], a[2] + b[2])


def _refuse_collapse(now: Mapping[str, Lines], volts: Lines) -> None:
    least = LEAST_SHARE * min(abs(v) for v in volts)
    for node, there in now.items():
        if min(abs(v) for v in there) < least:
            raise InputOutOfRangeError(f"the voltage at {node!r} collapses under the load")
