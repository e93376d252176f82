"""Impedances and fault currents along a network.

The outside figures: `ppnet-01` of the published examples (a 400/230 V intake, main board and two
distribution boards, short-circuit currents by a general network-analysis library after
IEC 60909), and sums on paper.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from hand_job import CLIPPED, HandJob, Run, device, known, supply

from asfitted.calculate.cable_facts import cable_facts
from asfitted.calculate.network import (
    after_tails,
    beyond,
    origin,
    source_power_factor,
    with_readings,
)
from asfitted.resolve.installation import Basis, Known

if TYPE_CHECKING:
    from asfitted.calculate.network import Node

# Ik3 max with c 1.10 of the network-analysis library, kA
LIBRARY_KA = {"MSB": 14.5298, "DB1": 9.1089, "DB2": 4.5136}


def _node(ipf_ka: float = 16.0) -> Node:
    return origin(supply(ipf_ka=Known(ipf_ka, "kA", Basis.DECLARED)))


def test_three_phase_currents_stay_close_above_those_of_a_network_library() -> None:
    """The source is taken more reactive than the library's (R/X 0.5): never less, a little more."""
    intake = _node()
    msb = beyond(intake, "MSB", cable_facts("swa", 4, 95, "armour", 3), 10, 0)
    boards = {
        "MSB": msb,
        "DB1": beyond(msb, "DB1", cable_facts("swa", 4, 35, "armour", 3), 25, 0),
        "DB2": beyond(msb, "DB2", cable_facts("swa", 4, 25, "armour", 3), 60, 0),
    }
    assert intake.fault_max_3ph_a == pytest.approx(16_000)
    for tag, library_ka in LIBRARY_KA.items():
        ours_ka = known(boards[tag].fault_max_3ph_a) / 1000
        assert library_ka <= ours_ka * 1.002, tag
        assert ours_ka == pytest.approx(library_ka, rel=0.04), tag


def test_fault_currents_at_a_sub_board_on_paper() -> None:
    # Z at origin 1.1 x 230 / 4200 = 0.06024 ohm, cos phi 0.7 (BS EN 61439-1 Table 7, up to 5 kA):
    # 0.04217 + j0.04302; 18 m of 10 mm2 cold 1.83 x 18 / 1000 = 0.03294
    # |0.07511 + j0.04302| = 0.08656 ohm; 253 / 0.08656 = 2923 A; to neutral half
    node = beyond(_node(4.2), "DB2", cable_facts("swa", 4, 10, "armour", 3), 18, 0)
    assert node.fault_max_3ph_a == pytest.approx(2923, abs=1)
    assert node.fault_max_1ph_a == pytest.approx(1461.5, abs=1)


def test_neutral_current_at_the_origin_is_half_of_the_three_phase_current() -> None:
    # published example F-05: ratio exactly 2 for equal line and neutral impedance
    node = _node(4.2)
    assert known(node.fault_max_3ph_a) / known(node.fault_max_1ph_a) == pytest.approx(2.0)


@pytest.mark.parametrize(
    ("ipf_ka", "cosine"), [(4.2, 0.7), (5, 0.7), (5.1, 0.5), (16, 0.3), (25, 0.25), (60, 0.2)]
)
def test_source_power_factors_are_those_of_bs_en_61439_1_table_7(
    ipf_ka: float, cosine: float
) -> None:
    assert source_power_factor(ipf_ka) == cosine


def test_loop_impedance_of_a_shower_circuit() -> None:
    # published example C-01: Ze 0.15, 6.0/2.5 mm2 flat cable, 30 m, x1.2: Zs 0.5276 ohm
    node = beyond(_node(), "shower", cable_facts("twin_earth", 2, 6, "core", 2), 30, 0)
    assert node.zs_ohm == pytest.approx(0.5276, abs=0.0005)


def test_tails_add_to_the_loop_but_not_to_the_greatest_fault_current() -> None:
    # 25 mm2 and 16 mm2, 2 m: (0.727 + 1.15) x 2 x 1.2 / 1000 = 0.00450 ohm
    given = supply(tails_mm2=25, tails_m=2, earthing_conductor_mm2=16)
    node, steps = after_tails(origin(given), given, 85)
    assert node.zs_ohm == pytest.approx(0.15450, abs=0.00001)
    assert node.fault_max_3ph_a == pytest.approx(4200)
    # 0.727 x 1.2 x 2 / 1000 x 85 A = 0.1483 V of 230 V
    assert node.drop_pct == pytest.approx(0.0645, abs=0.0001)
    assert steps[0].value == pytest.approx(0.0045, abs=0.00001)


def test_highest_fault_current_is_never_made_from_ze() -> None:
    node = origin(supply(ipf_ka=None))
    assert node.fault_max_3ph_a is None
    assert node.fault_max_1ph_a is None
    assert node.zs_ohm == pytest.approx(0.15)
    assert any("prospective fault current" in why for why in node.unknown)


def test_readings_taken_at_a_board_replace_the_sums() -> None:
    job = HandJob()
    job.board(
        "DB1", zs_ohm=Known(0.31, "ohm", Basis.MEASURED), ipf_ka=Known(1.8, "kA", Basis.MEASURED)
    )
    node = with_readings(_node(4.2), job.boards["DB1"])
    assert node.zs_ohm == pytest.approx(0.31)
    assert node.fault_max_3ph_a == pytest.approx(1800)


def test_single_phase_supply_has_no_three_phase_current() -> None:
    node = origin(supply(phases=1, line_v=230))
    assert node.fault_max_3ph_a is None
    assert node.fault_max_1ph_a == pytest.approx(4200)


def test_board_behind_an_unrecorded_feeder_knows_only_what_was_read_there() -> None:
    job = HandJob()
    job.board("DB1")
    job.board("DB2", fed_by="DB1/1TP", zs_ohm=Known(0.4, "ohm", Basis.MEASURED))
    job.circuit("DB1/1TP", device("C63 TP"), [], [], feeds_board="DB2", state="existing")
    board = job.results().boards["DB2"]
    assert board.zs_ohm == pytest.approx(0.4)
    assert board.fault_max_3ph_ka is None
    assert board.drop_pct is None
    assert any("DB2" in why for why in board.not_known)


def test_three_boards_in_a_chain_add_their_feeders() -> None:
    job = HandJob()
    job.board("A")
    job.board("B", fed_by="A/1TP")
    job.board("C", fed_by="B/1TP")
    for way, fed, length in (("A/1TP", "B", 10), ("B/1TP", "C", 15)):
        runs = [Run(fed, [(length, CLIPPED, 0)], csa_mm2=10)]
        job.circuit(way, device("C40 TP"), [], runs, feeds_board=fed, use="board")
    boards = job.results().boards
    # 1.83 x 1.28 + 3.7 x 1.27 x 1.1 = 7.5113 mohm/m (IEC 60228, BS 5467)
    assert boards["B"].zs_ohm == pytest.approx(0.15 + 0.075113, abs=1e-5)
    assert boards["C"].zs_ohm == pytest.approx(0.15 + 0.075113 + 0.112670, abs=1e-5)
