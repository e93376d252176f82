"""Proposed moves of circuits between lines: few, within blank poles, existing ones fixed."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hand_job import HandJob, device, point

from asfitted.resolve.installation import State, Way


def _job(loads: list[tuple[str, float]], *, blank: str = "TP", existing: str = "") -> HandJob:
    job = HandJob()
    ways = [Way(f"9{blank}", 9, blank, "", "blank")] if blank else []  # type: ignore[arg-type]
    job.board("DB1", ways=tuple(ways))
    for number, (line, amps) in enumerate(loads, 1):
        tag = f"DB1/{number}{line}"
        state = State.EXISTING if tag == existing else State.NEW
        heater = point(f"P{number}", "heater", load_a=amps)
        job.circuit(tag, device("B32 SP"), [heater], [], use="heating", state=state)
    return job


def test_circuits_move_to_blank_poles() -> None:
    # 3 x 10 A on L1, blank poles on each line: one to L2, one to L3, imbalance nil
    board = _job([("L1", 10), ("L1", 10), ("L1", 10)]).results().boards["DB1"]
    assert board.imbalance_pct == pytest.approx(200)
    assert sorted(move[2] for move in board.moves) == ["L2", "L3"]
    assert board.imbalance_after_pct == pytest.approx(0, abs=20)


def test_circuits_change_places_where_no_pole_is_blank() -> None:
    # L1 20 + 12, L2 8, L3 20: changing 12 and 8 gives 28, 12, 20: 40 %, from 60 %
    board = _job([("L1", 20), ("L1", 12), ("L2", 8), ("L3", 20)], blank="").results().boards["DB1"]
    lines = {move[0]: move[2] for move in board.moves}
    assert len(lines) % 2 == 0
    assert lines
    assert board.imbalance_after_pct is not None
    assert board.imbalance_after_pct < board.imbalance_pct - 5


def test_existing_circuits_stay() -> None:
    board = _job([("L1", 30), ("L1", 3)], existing="DB1/1L1").results().boards["DB1"]
    assert all(move[0] != "DB1/1L1" for move in board.moves)


def test_balanced_board_and_single_phase_board_have_no_moves() -> None:
    assert _job([("L1", 10), ("L2", 10), ("L3", 10)]).results().boards["DB1"].moves == ()
    job = _job([("L1", 10)])
    job.boards["DB1"] = replace(job.boards["DB1"], phases=1)
    assert job.results().boards["DB1"].moves == ()


def test_moves_do_not_depend_on_the_order_of_the_circuits() -> None:
    job = _job([("L1", 16), ("L1", 9), ("L2", 4), ("L3", 2)])
    moves = job.results().boards["DB1"].moves
    job.circuits = dict(reversed(job.circuits.items()))
    after = job.results().boards["DB1"]
    assert {m[0] for m in moves} == {m[0] for m in after.moves}
