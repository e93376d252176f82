"""The sweep of an unbalanced four-wire network, on paper; the library comparison stands apart."""

from __future__ import annotations

import math

import pytest
from hand_job import CLIPPED, HandJob, Run, device, known, point

from asfitted.calculate.unbalanced_flow import Branch, LineLoad, source_volts, sweep
from asfitted.errors import InputOutOfRangeError

ONE = [Branch("A", "B", 0.1 + 0j, 0.2 + 0j)]


def test_single_line_load_drops_in_line_and_neutral() -> None:
    # 10 A at unity: 230 - 10 x (0.1 + 0.2) = 227 V; the neutral drop lifts the other two:
    # |230 at -120 - (10 x 0.2)| = |(-115 - 2) - j199.19| = 231.01 V
    flow = sweep("A", source_volts(230), ONE, [LineLoad("B", 0, 10 + 0j, "current")])
    volts = [abs(v) for v in flow.volts["B"]]
    assert volts == pytest.approx([227.0, 231.01, 231.01], abs=0.01)
    assert flow.neutral_a("B") == pytest.approx(10)


def test_constant_power_solves_the_quadratic() -> None:
    # P = 2300 W at R = 0.3: V = (230 + sqrt(230^2 - 4 x 0.3 x 2300)) / 2 = 226.96 V
    flow = sweep("A", source_volts(230), ONE, [LineLoad("B", 0, 2300 + 0j, "power")])
    exact = (230 + math.sqrt(230**2 - 4 * 0.3 * 2300)) / 2
    assert abs(flow.volts["B"][0]) == pytest.approx(exact, abs=1e-6)


def test_balanced_load_leaves_the_neutral_idle() -> None:
    loads = [LineLoad("B", line, 8 - 6j, "current") for line in range(3)]
    flow = sweep("A", source_volts(230), ONE, loads)
    assert flow.neutral_a("B") == pytest.approx(0, abs=1e-9)


def test_load_between_lines_needs_no_neutral() -> None:
    loads = [LineLoad("B", 0, 4000 + 0j, "power", to_line=1)]
    flow = sweep("A", source_volts(230), ONE, loads)
    assert flow.neutral_a("B") == pytest.approx(0, abs=1e-9)
    assert abs(flow.branch_a["B"][0]) == pytest.approx(abs(flow.branch_a["B"][1]))


def test_neutral_is_the_vector_sum_with_power_factors() -> None:
    # 10 A lagging 60 degrees on L1 and 5 A on L2: sqrt(175), as for the plain formula; no drop
    loads = [
        LineLoad("B", 0, complex(5, -10 * math.sin(math.pi / 3)), "current"),
        LineLoad("B", 1, 5 + 0j, "current"),
    ]
    flow = sweep("A", source_volts(230), [Branch("A", "B", 0j, 0j)], loads)
    assert flow.neutral_a("B") == pytest.approx(math.sqrt(175))


def test_what_is_no_radial_network_is_refused() -> None:
    volts = source_volts(230)
    ring = [*ONE, Branch("A", "C", 1j, 1j), Branch("C", "B", 1j, 1j)]
    for branches, loads in (
        (ring, []),
        ([Branch("X", "Y", 1j, 1j)], []),
        (ONE, [LineLoad("Z", 0, 1 + 0j, "power")]),
        (ONE, [LineLoad("B", 0, 1e6 + 0j, "power")]),
    ):
        with pytest.raises(InputOutOfRangeError):
            sweep("A", volts, branches, loads)


def test_depth_has_no_limit() -> None:
    chain = [Branch(str(n), str(n + 1), 1e-4 + 0j, 1e-4 + 0j) for n in range(2000)]
    flow = sweep("0", source_volts(230), chain, [LineLoad("2000", 2, 10 + 0j, "current")])
    assert abs(flow.volts["2000"][2]) == pytest.approx(230 - 10 * 0.4, abs=1e-6)


def test_boards_show_line_voltages_and_stay_above_the_tabulated_drop() -> None:
    job = HandJob()
    job.board("A")
    job.board("B", fed_by="A/1TP")
    runs = [Run("B", [(40, CLIPPED, 0)], csa_mm2=10)]
    job.circuit("A/1TP", device("C40 TP"), [], runs, feeds_board="B", use="board")
    lamp = point("P1", "heating load", load_w=4600)
    job.circuit("B/1L2", device("B32 SP"), [lamp], [], use="heating")
    board = job.results().boards["B"]
    # 20 A on L2: 2 x 1.83 x 1.28 x 40 / 1000 x 20 = 3.748 V
    assert board.line_to_neutral_v[1] == pytest.approx(230 - 3.748, abs=0.005)
    assert board.line_a == pytest.approx((0, 20, 0), abs=1e-9)
    assert board.neutral_a == pytest.approx(20)
    # tabulated: 4.0 mV/A/m line to line x 20 A x 40 m = 0.8 % for a balanced load
    assert known(board.drop_pct) == pytest.approx(0.8, abs=0.01)
