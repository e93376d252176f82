"""Which device stands before a thing: read off the tree of boards and circuits."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.finding import Passed

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.calculate.results import CableResult
    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection
    from asfitted.resolve.installation import (
        Board,
        Cable,
        Circuit,
        Device,
        Installation,
        PointServed,
        Rcd,
    )


def rated_as_laid(job: Inspection, verdict: Verdict, result: CableResult | None) -> Verdict:
    """Return a verdict on Iz, "not checked" where it rests on a table that is not for its way.

    The figure for free air can only show that a cable is too small, never that it is right.
    """
    if result is None or not result.capacity_doubt or not isinstance(verdict, Passed):
        return verdict
    return job.not_checked(
        result.tag,
        f"{result.capacity_doubt} (Iz {result.capacity_a:g} A in free air)",
        to_do="Get the capacity as laid from the cable's maker, or lay it in free air.",
    )


def overload_protection(
    installation: Installation, circuit: Circuit, cable: Cable
) -> tuple[float, str]:
    """Return rating (A) and words of the device that guards a cable against overload.

    It is the smallest of the circuit's device and the fuses passed on the way from the board.
    """
    guard = (circuit.device.rating_a, f"{circuit.device.words} at {circuit.tag}")
    for fused in _points_before(installation, circuit, cable):
        if fused.fuse_a is not None and fused.fuse_a < guard[0]:
            guard = (fused.fuse_a, f"fuse in {fused.tag}")
    return guard


def _points_before(
    installation: Installation, circuit: Circuit, cable: Cable
) -> Iterator[PointServed]:
    into = {installation.cables[tag].to_end: installation.cables[tag] for tag in circuit.cables}
    end, passed = cable.from_end, set[str]()
    while end in installation.points and end not in passed:
        passed.add(end)
        yield installation.points[end]
        end = into[end].from_end if end in into else ""


def upstream_circuit(installation: Installation, board: Board) -> Circuit | None:
    """Return the circuit that feeds a board, or None at the origin."""
    return installation.circuits.get(board.fed_by)


def rcds_of_board(installation: Installation, board_tag: str) -> tuple[tuple[str, Rcd], ...]:
    """Return (where, RCD) of the RCDs that guard a whole board, nearest first."""
    found: list[tuple[str, Rcd]] = []
    board, passed = installation.boards.get(board_tag), set[str]()
    while board is not None and board.tag not in passed:
        passed.add(board.tag)
        if board.main_switch and board.main_switch.rcd:
            found.append((f"main switch of {board.tag}", board.main_switch.rcd))
        feed = upstream_circuit(installation, board)
        if feed and feed.device.rcd:
            found.append((f"{feed.device.words} at {feed.tag}", feed.device.rcd))
        board = installation.boards.get(feed.board) if feed else None
    return tuple(found)


def rcds_before(
    installation: Installation, circuit: Circuit, point: PointServed | None = None
) -> tuple[tuple[str, Rcd], ...]:
    """Return (where, RCD) of every RCD between the origin and a point, nearest first."""
    own = [(f"RCD in {point.tag}", point.rcd)] if point and point.rcd else []
    if circuit.device.rcd:
        own.append((f"{circuit.device.words} at {circuit.tag}", circuit.device.rcd))
    return (*own, *rcds_of_board(installation, circuit.board))


def devices_before(installation: Installation, board_tag: str) -> tuple[tuple[str, Device], ...]:
    """Return (where, device) of every overcurrent device before a board, nearest first."""
    found: list[tuple[str, Device]] = []
    board, passed = installation.boards.get(board_tag), set[str]()
    while board is not None and board.tag not in passed:
        passed.add(board.tag)
        feed = upstream_circuit(installation, board)
        if feed is None:
            supply = installation.supply
            if supply is not None and supply.cut_out is not None and board.fed_by == "supply":
                found.append(("the cut-out", supply.cut_out))
            break
        found.append((f"the {feed.device.words} at {feed.tag}", feed.device))
        board = installation.boards.get(feed.board)
    return tuple(found)


def has_its_back_up(installation: Installation, board: Board) -> bool:
    """Tell whether a device before a board is the one that its rating rests on, or a smaller."""
    named = board.back_up
    return named is not None and any(
        device.standard == named.standard and device.rating_a <= named.rating_a
        for _, device in devices_before(installation, board.tag)
    )
