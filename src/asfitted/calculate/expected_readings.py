"""What an instrument should read on each circuit with its conductors cold, to compare with.

Calculated, never measured: sheets print these in a column of their own. Conductors are taken at
20 °C as during a test; parallel paths through steelwork and pipes make a reading lower.
"""

from __future__ import annotations

from types import MappingProxyType
from typing import TYPE_CHECKING

from asfitted.calculate.cable_facts import cable_facts
from asfitted.calculate.results import ExpectedReading
from asfitted.errors import OutsideTableError

if TYPE_CHECKING:
    from collections.abc import Mapping

    from asfitted.calculate.results import CalculationResults
    from asfitted.resolve.installation import Board, Circuit, Installation


def expected_readings(
    installation: Installation, results: CalculationResults
) -> Mapping[str, ExpectedReading]:
    """Return, by circuit tag, R1 + R2 and Zs at the far end with cold conductors, ohm.

    R1 + R2 is that of the cables on the way to the furthest point, each as worked out hot and
    brought to 20 °C by the ratio of its own conductors; Zs adds what lies before the board.
    Magnitudes are added: below 35 mm² resistance is nearly all of the impedance.
    """
    readings = {}
    for tag, circuit in installation.circuits.items():
        r1r2 = _circuit_cold_ohm(circuit, installation, results)
        before = _board_ohm(installation.boards[circuit.board], installation, results)
        zs = None if r1r2 is None or before is None else before + r1r2
        if r1r2 is not None:
            readings[tag] = ExpectedReading(r1r2, zs)
    return MappingProxyType(readings)


def _circuit_cold_ohm(
    circuit: Circuit, installation: Installation, results: CalculationResults
) -> float | None:
    """Return R1 + R2 to the furthest point of a circuit at 20 °C, ohm; None if not known."""
    found = results.circuits.get(circuit.tag)
    if found is not None and found.ring is not None:
        return found.ring.quarter_ohm
    reached = {circuit.board: 0.0}
    for tag in circuit.cables:
        cable = installation.cables[tag]
        own = _cable_cold_ohm(tag, installation, results)
        if own is None or cable.from_end not in reached:
            return None
        reached[cable.to_end] = reached[cable.from_end] + own
    return max(reached.values()) if circuit.cables else None


def _cable_cold_ohm(
    tag: str, installation: Installation, results: CalculationResults
) -> float | None:
    """Return R1 + R2 of one cable at 20 °C, ohm."""
    figures, cable = results.cables.get(tag), installation.cables[tag]
    if figures is None:
        return None
    loaded = 3 if installation.circuits[cable.circuit].phase == "TP" else 2
    try:
        facts = cable_facts(cable.family, cable.cores, figures.csa_mm2, cable.cpc, loaded)
    except OutsideTableError:
        return None
    if facts.loop_cold is None or facts.loop_hot is None:
        return None
    return figures.r1r2_ohm * abs(facts.loop_cold) / abs(facts.loop_hot)


def _board_ohm(
    board: Board, installation: Installation, results: CalculationResults
) -> float | None:
    """Return Zs at a board with cold conductors: as given, else from what feeds it, ohm."""
    if board.zs_ohm is not None:
        return board.zs_ohm.value
    if board.fed_by not in installation.circuits:
        figures = results.boards.get(board.tag)
        return figures.zs_ohm if figures else None
    feed = installation.circuits[board.fed_by]
    before = _board_ohm(installation.boards[feed.board], installation, results)
    own = _circuit_cold_ohm(feed, installation, results)
    return None if before is None or own is None else before + own
