"""Expected readings of cold conductors, against the resistances of On-Site Guide Table I1."""

from __future__ import annotations

from pathlib import Path

import pytest

from asfitted.pipeline import check_job

SPECS = Path(__file__).parent.parent.parent / "specs"
#: r1 + r2 at 20 °C, mΩ/m, copper: On-Site Guide Table I1.
TABLE_I1 = {(1.5, 1.0): 30.20, (2.5, 1.5): 19.51, (4.0, 1.5): 16.71, (6.0, 2.5): 10.49}


def test_r1_r2_is_length_times_the_resistance_of_the_table() -> None:
    job = check_job(SPECS / "community-shed.yaml")
    checked = 0
    for tag, circuit in job.installation.circuits.items():
        cables = [job.results.cables[c] for c in circuit.cables]
        ends = [job.installation.cables[c].from_end for c in circuit.cables]
        chain = ends[0] == circuit.board and len(set(ends)) == len(ends)
        sizes = [(c.csa_mm2, c.cpc_mm2) for c in cables]
        if not chain or not all(size in TABLE_I1 for size in sizes):
            continue
        hand = sum(
            job.results.routes[c.tag].length_m * TABLE_I1[c.csa_mm2, c.cpc_mm2] / 1000
            for c in cables
        )
        assert job.results.expected[tag].r1r2_ohm == pytest.approx(hand, abs=0.005)
        checked += 1
    assert checked >= 3


def test_zs_adds_what_lies_before_the_board() -> None:
    job = check_job(SPECS / "pottery-studio.yaml")
    found = job.results.expected
    feed, own = found["DB1/9TP"], found["DB2/1L1"]
    assert own.zs_ohm is not None
    assert feed.zs_ohm is not None
    # the sub-board hangs on DB1/9TP: its Zs is Ze, the feed, then the circuit, all cold
    assert own.zs_ohm == pytest.approx(feed.zs_ohm + own.r1r2_ohm)
    assert feed.zs_ohm == pytest.approx(0.15 + feed.r1r2_ohm, abs=0.005)  # Ze 0.15 Ω measured


def test_cold_readings_are_below_the_hot_figures() -> None:
    job = check_job(SPECS / "pottery-studio.yaml")
    for tag, expected in job.results.expected.items():
        hot = job.results.circuits[tag].zs_ohm
        assert expected.zs_ohm is not None
        assert hot is not None
        assert expected.zs_ohm < hot, tag


def test_a_circuit_that_was_not_surveyed_has_no_expected_reading() -> None:
    job = check_job(SPECS / "pottery-studio.yaml")
    assert "DB1/1L1" not in job.results.expected
