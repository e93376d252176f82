"""The figures at the busbars of each board."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from asfitted.calculate.neutral_current import neutral_current_a
from asfitted.calculate.phase_balance import unbalance_percent
from asfitted.calculate.results import BoardResult
from asfitted.calculate.working import Step

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.calculate.board_voltages import BoardVolts
    from asfitted.calculate.demand import BoardDemand
    from asfitted.calculate.network import Node
    from asfitted.resolve.installation import Board, Circuit


def board_result(
    board: Board,
    node: Node,
    demand: BoardDemand,
    circuits: Sequence[Circuit],
    *,
    tails: Sequence[Step] = (),
) -> BoardResult:
    """Return the figures of one board.

    Ways are counted by number: a three-phase way with at least one circuit is used.
    """
    three, one = node.fault_max_3ph_a, node.fault_max_1ph_a
    three_phase = board.phases == 3
    neutral = neutral_current_a(*demand.demand_a) if three_phase else demand.demand_a[0]
    return BoardResult(
        tag=board.tag,
        fault_max_3ph_ka=three / 1000 if three is not None and three_phase else None,
        fault_max_1ph_ka=None if one is None else one / 1000,
        zs_ohm=node.zs_ohm,
        drop_pct=node.drop_pct,
        demand_a=demand.demand_a,
        connected_a=demand.connected_a,
        neutral_a=neutral,
        imbalance_pct=_imbalance(demand) if three_phase else 0.0,
        ways_used=_ways_used(board, circuits),
        ways_total=board.way_count,
        steps=(*node.steps, *tails, *_node_steps(board, node), *demand.steps),
        not_known=(*node.unknown, *demand.unknown),
    )


def _imbalance(demand: BoardDemand) -> float:
    return unbalance_percent({f"L{i}": amps for i, amps in enumerate(demand.demand_a, 1)})


def _ways_used(board: Board, circuits: Sequence[Circuit]) -> int:
    if board.ways:
        return len({way.number for way in board.ways if way.circuit})
    return len({circuit.way for circuit in circuits})


def _node_steps(board: Board, node: Node) -> tuple[Step, ...]:
    found = []
    if node.external_ohm is not None and node.loop_ohm is not None:
        start = node.external_words if board.zs_ohm is None else "Zs as given at the board"
        found.append(
            Step(
                symbol="Zs",
                words=f"loop impedance at {board.tag}",
                formula=f"{start} + (R1 + R2) before it",
                substituted=f"{node.external_ohm:g} Ω + {abs(node.loop_ohm):.4f} Ω",
                value=node.zs_ohm or 0.0,
                unit="Ω",
                source="BS 7671 411.4",
            )
        )
    note = f"{node.fault_words}, cold conductors, Cmax 1.1: IEC 60909-0"
    for symbol, words, z, amps in (
        ("Ik3 max", "three-phase", node.line_ohm, node.fault_max_3ph_a),
        ("Ik1 max", "line to neutral, neutral taken like line", node.neutral_loop_ohm,
         node.fault_max_1ph_a),
    ):  # fmt: skip
        if z is not None and amps is not None:
            found.append(
                Step(
                    symbol=symbol,
                    words=f"greatest fault current at {board.tag}, {words}",
                    formula="Cmax × U0 / |Z|",
                    substituted=f"1.1 × {node.u0_v:g} V / {abs(z):.4f} Ω",
                    value=amps / 1000,
                    unit="kA",
                    source=note,
                )
            )
    return tuple(found)


def with_expected(
    result: BoardResult, board: Board, demand: BoardDemand, expected: BoardVolts | None
) -> BoardResult:
    """Return the figures of a board with expected voltages, line currents and neutral current."""
    if expected is None:
        reason = "voltages at the board are not known"
        steps = (*result.steps, *_plain_neutral(board, demand, result.neutral_a))
        unknown = result.not_known or (reason,)
        return replace(result, steps=steps, not_known=unknown)
    return replace(
        result,
        neutral_a=expected.neutral_a if board.phases == 3 else result.neutral_a,
        line_to_neutral_v=expected.volts,
        line_a=expected.amps,
        steps=(*result.steps, *_expected_steps(board, expected)),
    )


def _plain_neutral(board: Board, demand: BoardDemand, neutral: float) -> tuple[Step, ...]:
    if board.phases != 3:
        return ()
    lines = ", ".join(f"{amps:.1f}" for amps in demand.demand_a)
    return (
        Step(
            symbol="IN",
            words="neutral current at equal power factors, harmonics not counted",
            formula="√(a² + b² + c² - ab - bc - ca)",
            substituted=f"a, b, c = {lines} A",
            value=neutral,
            unit="A",
            source="phasor sum",
        ),
    )


def _expected_steps(board: Board, expected: BoardVolts) -> tuple[Step, ...]:
    amps = ", ".join(f"{each:.1f}" for each in expected.amps)
    volts = ", ".join(f"{each:.1f}" for each in expected.volts)
    found = []
    if board.phases == 3:
        found.append(
            Step(
                symbol="IN",
                words="neutral current, each load at its power factor, harmonics not counted",
                formula="|I1 + I2 + I3|",
                substituted=f"vector sum of {amps} A",
                value=expected.neutral_a,
                unit="A",
                source="phasor sum of a four-wire system",
            )
        )
    found.append(
        Step(
            symbol="U",
            words=f"least expected voltage to neutral at {board.tag}, {volts} V by line",
            formula="U0 - I × Z of line and neutral, as vectors",
            substituted=f"{amps} A by line, constant currents",
            value=min(expected.volts),
            unit="V",
            source="backward and forward sweep of the radial network; limits go by mV/A/m",
        )
    )
    return tuple(found)
