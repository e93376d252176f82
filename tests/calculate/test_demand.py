"""Design currents, and demand by On-Site Guide Table A2 (small shops and business premises)."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import pytest
from hand_job import CLIPPED, HandJob, Run, device, point

from asfitted.calculate.demand import work_out_demands
from asfitted.calculate.network import voltages

if TYPE_CHECKING:
    from asfitted.calculate.demand import Demands


def _job(*circuits: tuple[str, str, dict[str, Any]], phases: int = 3) -> HandJob:
    job = HandJob()
    job.board("DB1", phases=phases)
    for tag, breaker, changes in circuits:
        job.circuit(tag, device(breaker), changes.pop("points", []), [], **changes)
    return job


def _demands(job: HandJob) -> Demands:
    return work_out_demands(job.installation(), voltages(job.supply))


def test_single_phase_power_over_voltage() -> None:
    # published example A-02: 6 kW at 230 V, 26.09 A
    found = _demands(_job(("DB1/1L1", "B32 SP", {"load_w": 6000})))
    assert found.designs["DB1/1L1"].current_a == pytest.approx(26.087, abs=0.001)


def test_three_phase_power_over_root_three() -> None:
    # published example A-01: 16 kW at 400 V, 23.1 A
    found = _demands(_job(("DB1/1TP", "B32 TP", {"load_w": 16000, "use": "heating"})))
    assert found.designs["DB1/1TP"].current_a == pytest.approx(23.094, abs=0.001)
    assert found.lines["DB1/1TP"] == pytest.approx((23.094, 23.094, 23.094), abs=0.001)


def test_motor_takes_the_typical_full_load_current_of_its_rating() -> None:
    # common practice table of 400 V motors: 5.5 kW 11 A (formula at 0.85: 9.3 A)
    motor = point("M1", "motor", load_w=5500, power_factor=0.85)
    found = _demands(_job(("DB1/1TP", "C16 TP", {"points": [motor], "use": "motor"})))
    assert found.designs["DB1/1TP"].current_a == 11


def test_motor_between_ratings_takes_the_next_larger() -> None:
    motor = point("M1", "motor", load_w=3000, power_factor=0.8)
    found = _demands(_job(("DB1/1TP", "C16 TP", {"points": [motor], "use": "motor"})))
    assert found.designs["DB1/1TP"].current_a == 8.1


def test_13_a_socket_circuit_takes_the_rating_of_its_device() -> None:
    sockets = [point("S1", "13 A socket"), point("S2", "13 A socket")]
    design = _demands(_job(("DB1/1L2", "B32 SP", {"points": sockets}))).designs["DB1/1L2"]
    assert design.current_a == 32
    assert "no diversity" in design.basis


def test_industrial_socket_takes_its_load_or_its_rating() -> None:
    known = point("X1", "5-pin socket", rating_a=32, load_w=6928.2)
    bare = point("X2", "5-pin socket", rating_a=16)
    found = _demands(
        _job(
            ("DB1/1TP", "C32 TP", {"points": [known], "use": "sockets"}),
            ("DB1/2TP", "C32 TP", {"points": [bare], "use": "sockets"}),
        )
    )
    assert found.designs["DB1/1TP"].current_a == pytest.approx(10.0, abs=0.001)
    assert found.designs["DB1/2TP"].current_a == 16


def test_load_that_nobody_gave_counts_as_the_rating_of_the_device() -> None:
    lamp = point("L1", "luminaire")
    design = _demands(_job(("DB1/1L1", "B6 SP", {"points": [lamp]}))).designs["DB1/1L1"]
    assert design.current_a == 6
    assert "not given" in design.basis


def test_existing_circuit_without_a_load_is_not_counted_and_said_so() -> None:
    found = _demands(_job(("DB1/1L1", "B6 SP", {"state": "existing"})))
    assert found.designs["DB1/1L1"].current_a is None
    assert "not counted" in found.boards["DB1"].unknown[0]


def test_diversity_of_each_kind_of_load() -> None:
    # Table A2, small business: lighting 90 %; sockets 100 % X + 50 % (Y+Z); heating 100 % X +
    # 75 % (Y+Z); motors 100 % X + 80 % Y + 60 % Z. On L1:
    # 10 x 0.9 = 9; 32 + 0.5 x (32 + 20) = 58; 20 + 0.75 x 10 = 27.5; 10 + 0.8 x 8 + 0.6 x 5 = 19.4
    loads = [("lighting", 10)]
    loads += [("sockets", 32), ("sockets", 20), ("sockets", 32)]
    loads += [("heating", 10), ("heating", 20)]
    loads += [("motor", 5), ("motor", 10), ("motor", 8)]
    job = _job(
        *[
            (f"DB1/{way}L1", "B32 SP", {"load_a": amps, "use": use})
            for way, (use, amps) in enumerate(loads, 1)
        ]
    )
    board = _demands(job).boards["DB1"]
    assert board.connected_a == pytest.approx((147, 0, 0))
    assert board.demand_a == pytest.approx((9 + 58 + 27.5 + 19.4, 0, 0))


def test_neutral_current_and_balance_of_a_board() -> None:
    # published example J-07: 10/8/6 A at unity power factor, neutral 3.46 A
    job = _job(
        *[
            (f"DB1/{way}L{way}", "B16 SP", {"load_a": amps, "use": "heating"})
            for way, amps in ((1, 10), (2, 8), (3, 6))
        ]
    )
    board = job.results().boards["DB1"]
    assert board.neutral_a == pytest.approx(3.464, abs=0.001)
    assert board.imbalance_pct == pytest.approx(25.0)


def test_feeder_carries_the_most_loaded_line_of_its_board() -> None:
    job = _job(("DB1/1TP", "C40 TP", {"feeds_board": "DB2", "use": "board"}))
    job.board("DB2", fed_by="DB1/1TP")
    job.circuit("DB2/1L2", device("B16 SP"), [], [], load_a=12, use="heating")
    job.circuit("DB2/1L3", device("B16 SP"), [], [], load_a=5, use="heating")
    found = _demands(job)
    assert found.designs["DB1/1TP"].current_a == pytest.approx(12)
    assert "L2" in found.designs["DB1/1TP"].basis
    assert found.boards["DB1"].demand_a == pytest.approx((0, 12, 5))
    assert job.results().max_demand_a == pytest.approx(12)


def test_single_phase_board_puts_its_load_on_the_line_that_feeds_it() -> None:
    job = _job(("DB1/1L3", "C40 SP", {"feeds_board": "CU1", "use": "board"}))
    job.board("CU1", fed_by="DB1/1L3", phases=1)
    job.circuit("CU1/1", device("B16 SP"), [], [], load_a=9, use="heating")
    boards = _demands(job).boards
    assert boards["CU1"].demand_a == pytest.approx((9, 0, 0))
    assert boards["DB1"].demand_a == pytest.approx((0, 0, 9))


def test_boards_that_feed_each_other_do_not_hang() -> None:
    job = _job(("DB1/1TP", "C40 TP", {"feeds_board": "DB2", "use": "board"}))
    job.board("DB2", fed_by="DB1/1TP")
    job.circuit("DB2/1TP", device("C40 TP"), [], [], feeds_board="DB1", use="board")
    found = _demands(job)
    assert any("feeds itself" in why for board in found.boards.values() for why in board.unknown)


def test_current_falls_along_a_circuit_as_points_are_passed() -> None:
    lamps = [point(f"L{n}", "luminaire", load_a=1.0) for n in (1, 2, 3)]
    job = HandJob()
    job.board("DB1")
    flat: dict[str, Any] = {"family": "twin_earth", "cores": 2, "cpc": "core"}
    runs = [Run(f"L{n}", [(5, CLIPPED, 0)], **flat) for n in (1, 2, 3)]
    job.circuit("DB1/1L1", device("B6 SP"), lamps, runs, use="lighting")
    cables = job.results().cables
    assert [cables[f"DB1/1L1-{n}"].design_current_a for n in (1, 2, 3)] == [3, 2, 1]
