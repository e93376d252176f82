"""Choice of size: published examples, the reason of each refusal, and properties that must hold."""

from __future__ import annotations

import random
from dataclasses import replace
from typing import TYPE_CHECKING, Any

import pytest
from hand_job import CLIPPED, CONDUIT, RCD_30, TRAY, HandJob, Run, device, known, point, supply

from asfitted.calculate.cable_facts import sizes_made
from asfitted.resolve.installation import Basis, Device, Known

if TYPE_CHECKING:
    from asfitted.calculate.results import CableResult

FLAT: dict[str, Any] = {"family": "twin_earth", "cores": 2, "cpc": "core"}
INSULATED_WALL = ("conduit in an insulated wall", "A", "bunched")


def _one(breaker: Device, run: Run, *, way: str = "1L1", **changes: Any) -> HandJob:
    job = HandJob()
    job.board("DB1")
    load = changes.pop("load", point("P1", "heating load", load_w=2000))
    job.circuit(f"DB1/{way}", breaker, [load], [run], **changes)
    return job


def _warm(job: HandJob, ambient_c: float) -> HandJob:
    for tag, cable in job.cables.items():
        job.cables[tag] = replace(cable, ambient_c=ambient_c)
    return job


def _cable(job: HandJob) -> CableResult:
    return next(iter(job.results().cables.values()))


def test_boundary_case_34_04_a_does_not_pass_on_34_a() -> None:
    """Published example A-02: 6 kW, B32, 35 C, singles in method A, 18 m: 10 mm2, 2.07 V."""
    run = Run("P1", [(18, INSULATED_WALL, 0)], family="singles", cores=1, cpc="separate")
    job = _one(device("B32 SP"), run, load=point("P1", "heating load", load_w=6000))
    cable = _cable(_warm(job, 35))
    assert cable.required_tabulated_a == pytest.approx(34.04, abs=0.01)
    assert cable.csa_mm2 == 10
    assert cable.tabulated_a == 46
    assert cable.drop_v == pytest.approx(2.07, abs=0.02)
    assert [t.csa_mm2 for t in cable.tried if "Iz" in t.reason][-1] == 6


def test_three_phase_heater_behind_a_rewirable_fuse() -> None:
    """Published example A-01: 16 kW, BS 3036 30 A, 35 C, method C: It 44.0 A, 10 mm2, 2.19 V."""
    fuse = Device("30 A BS 3036 TP", "fuse", "BS 3036", 30, "TP")
    run = Run("P1", [(25, CLIPPED, 0)], family="multicore_pvc", cores=4, cpc="core")
    job = _one(fuse, run, way="1TP", load=point("P1", "heating load", load_w=16000))
    cable = _cable(_warm(job, 35))
    assert cable.design_current_a == pytest.approx(23.1, abs=0.05)
    assert cable.required_tabulated_a == pytest.approx(44.0, abs=0.1)
    assert cable.csa_mm2 == 10
    assert cable.tabulated_a == 57
    assert cable.drop_v == pytest.approx(2.19, abs=0.02)


def test_long_run_grows_for_voltage_drop() -> None:
    # 10 A on 60 m: 4D5 2.5 mm2 18 x 10 x 60 / 1000 = 10.8 V = 4.70 %; 1.5 mm2 29: 7.57 %
    run = Run("P1", [(60, CLIPPED, 0)], **FLAT)
    cable = _cable(_one(device("B10 SP"), run, load=point("P1", "heater", load_a=10)))
    assert cable.csa_mm2 == 2.5
    assert cable.drop_to_end_pct == pytest.approx(4.70, abs=0.01)
    assert "drop 7.57 % is over 5 %" in cable.tried[0].reason


def test_lighting_is_held_to_three_per_cent() -> None:
    # the same run as lighting: 2.5 mm2 4.70 %, 4 mm2 11 x 10 x 60 / 1000 = 6.6 V = 2.87 %
    run = Run("P1", [(60, CLIPPED, 0)], **FLAT)
    job = _one(device("B10 SP"), run, load=point("P1", "luminaire", load_a=10), use="lighting")
    assert _cable(job).csa_mm2 == 4


def test_high_loop_impedance_grows_for_disconnection() -> None:
    # C32, Zs max 0.683 ohm, Ze 0.5: R1 + R2 at most 0.183 ohm; 12 m of flat cable x 1.2:
    # 4/1.5 16.71 -> 0.241, 6/2.5 10.49 -> 0.151 ohm (On-Site Guide Table I1)
    run = Run("P1", [(12, CLIPPED, 0)], **FLAT)
    job = _one(device("C32 SP"), run)
    job.supply = supply(ze_ohm=Known(0.5, "ohm", Basis.MEASURED))
    cable = _cable(job)
    assert cable.csa_mm2 == 6
    assert any("Zs 0.741 Ω is over 0.683 Ω" in one.reason for one in cable.tried)


def test_protective_conductor_grows_for_heating_under_fault() -> None:
    # B20 at 2.1 kA: class 3 up to 3 kA 18 000 A2s, 1.17 mm2; flat 1.5 has 1.0, 2.5 has 1.5 mm2
    run = Run("P1", [(3, CLIPPED, 0)], **FLAT)
    cable = _cable(_one(device("B20 SP", icn_ka=6), run))
    assert cable.csa_mm2 == 2.5
    assert "1.17 mm²" in cable.tried[0].reason


def test_feeder_is_held_to_two_per_cent_of_its_own() -> None:
    job = HandJob(supply=supply(ze_ohm=Known(0.05, "ohm", Basis.MEASURED)))
    job.board("DB1")
    job.board("DB2", fed_by="DB1/1TP")
    job.circuit(
        "DB1/1TP", device("C40 TP"), [], [Run("DB2", [(70, CLIPPED, 0)])], feeds_board="DB2"
    )
    job.circuit("DB2/1TP", device("C40 TP"), [], [], load_a=38, use="heating")
    # 6 mm2: 42 A carries 40; 6.8 x 38 x 70 / 1000 = 18.1 V = 4.52 %; 10: 4.0 -> 2.66 %;
    # 16: 2.5 x 38 x 70 / 1000 = 6.65 V = 1.66 %
    cable = job.results().cables["DB1/1TP-1"]
    assert cable.csa_mm2 == 16
    assert any("feeder drop 2.66 % is over 2 %" in one.reason for one in cable.tried)


def test_size_of_the_spec_is_checked_but_never_changed() -> None:
    run = Run("P1", [(60, CONDUIT, 5)], csa_mm2=1.0, **FLAT)
    results = _one(device("B32 SP"), run).results()
    cable = next(iter(results.cables.values()))
    assert cable.csa_mm2 == 1.0
    assert not cable.size_chosen
    assert len(cable.tried) == 1
    for word in ("Iz", "drop", "protective conductor"):
        assert word in cable.tried[0].reason


def test_nothing_fits_keeps_the_largest_and_gives_the_reason() -> None:
    run = Run("P1", [(500, CLIPPED, 0)], **FLAT)
    results = _one(device("B63 SP"), run, load=point("P1", "heater", load_a=60)).results()
    cable = next(iter(results.cables.values()))
    assert cable.csa_mm2 == sizes_made("twin_earth", 2)[-1]
    assert cable.tried[-1].reason


def test_size_that_no_table_holds_is_not_known_and_does_not_stop_the_job() -> None:
    run = Run("P1", [(5, CLIPPED, 0)], csa_mm2=5.0, **FLAT)
    results = _one(device("B16 SP"), run).results()
    circuit = results.circuits["DB1/1L1"]
    assert not results.cables
    assert circuit.zs_ohm is None
    assert any("5" in why for why in circuit.not_known)


def test_short_hole_in_a_wall_does_not_govern() -> None:
    job = _one(device("B16 SP"), Run("P1", [(5, CLIPPED, 0), (0.3, INSULATED_WALL, 0)], **FLAT))
    (tag,) = job.routes
    legs = job.routes[tag].legs
    hole = replace(legs[1], kind="through-wall")
    job.routes[tag] = replace(job.routes[tag], legs=(legs[0], hole))
    assert _cable(job).method == "C"


def test_armoured_cable_in_conduit_is_read_as_multicore() -> None:
    cable = _cable(_one(device("C16 SP"), Run("P1", [(5, CONDUIT, 0)], cores=3, cpc="core")))
    assert cable.method == "B"
    assert cable.tabulated_a == 16.5  # BS 7671 Table 4D2A, method B, 1.5 mm2
    assert "multicore 70 °C cable" in cable.steps[0].source


def test_armoured_cable_is_read_from_the_70_c_table() -> None:
    cable = _cable(_one(device("C20 TP"), Run("P1", [(5, TRAY, 0)]), way="1TP"))
    assert cable.tabulated_a == 26  # Table 4D4A E 2.5 mm2; Table 4E4A would give 33 A
    assert "4D4A" in cable.steps[0].source


def _failing(csa_mm2: float, length: float, breaker: Device, others: int, family: str) -> bool:
    way = "1TP" if family == "swa" else "1L1"
    extra: dict[str, Any] = {"family": "swa"} if family == "swa" else FLAT
    run = Run("P1", [(length, TRAY, others), (2, CONDUIT, 0)], csa_mm2=csa_mm2, **extra)
    load = point("P1", "heating load", load_a=breaker.rating_a * 0.8)
    cable = _cable(_one(breaker, run, way=way, load=load))
    return bool(cable.tried[-1].reason)


@pytest.mark.parametrize("family", ["swa", "twin_earth"])
def test_bigger_never_fails_where_smaller_passed(family: str) -> None:
    chance = random.Random(7)  # noqa: S311 - test cases
    sizes = sizes_made(family, 4 if family == "swa" else 2)
    for _ in range(25):
        rating = chance.choice((6, 16, 32, 40, 63))
        breaker = device(f"{chance.choice('BC')}{rating} {'TP' if family == 'swa' else 'SP'}")
        case = (chance.uniform(3, 150), breaker, chance.randrange(8), family)
        failing = [_failing(size, *case) for size in sizes]
        assert failing == sorted(failing, reverse=True), case


def test_longer_never_drops_less_nor_gets_a_smaller_cable() -> None:
    chance = random.Random(3)  # noqa: S311 - test cases
    for _ in range(20):
        start = chance.uniform(2, 80)
        more = start + chance.uniform(0, 60)
        cables = [
            _cable(_one(device("C20 SP"), Run("P1", [(length, CLIPPED, 2)], **FLAT)))
            for length in (start, more)
        ]
        assert cables[1].csa_mm2 >= cables[0].csa_mm2
        fixed = [
            _cable(_one(device("C20 SP"), Run("P1", [(length, CLIPPED, 2)], csa_mm2=4.0, **FLAT)))
            for length in (start, more)
        ]
        assert fixed[1].drop_v >= fixed[0].drop_v
        assert known(fixed[1].zs_end_ohm) >= known(fixed[0].zs_end_ohm)


def test_more_company_never_raises_the_capacity() -> None:
    capacities = [
        _cable(
            _one(device("B16 SP"), Run("P1", [(9, CONDUIT, others)], csa_mm2=2.5, **FLAT))
        ).capacity_a
        for others in range(12)
    ]
    assert capacities == sorted(capacities, reverse=True)


def test_rcbo_says_that_its_rcd_protects_as_well_but_gives_the_breaker_limit() -> None:
    results = _one(device("B32 SP", rcd=RCD_30), Run("P1", [(5, CLIPPED, 0)], **FLAT)).results()
    circuit = results.circuits["DB1/1L1"]
    assert circuit.zs_limit_ohm == pytest.approx(1.3656, abs=0.0001)
    assert circuit.zs_limit_measured_ohm == 1.09  # 0.8 x 1.3656, rounded down
    assert "30 mA RCD" in circuit.zs_limit_source


def test_rcd_in_the_outlet_gives_the_cable_before_it_nothing() -> None:
    socket = point("X1", "5-pin socket", rating_a=32, load_w=3000, rcd=RCD_30)
    job = _one(device("C32 TP"), Run("X1", [(5, CLIPPED, 0)]), way="1TP", load=socket)
    assert job.results().circuits["DB1/1TP"].zs_limit_ohm == pytest.approx(0.6828, abs=0.0001)


def test_tt_with_an_rcbo_is_held_to_fifty_volts() -> None:
    job = _one(device("B32 SP", rcd=RCD_30), Run("P1", [(5, CLIPPED, 0)], **FLAT))
    job.supply = supply(system="TT", ze_ohm=Known(80, "ohm", Basis.MEASURED))
    circuit = job.results().circuits["DB1/1L1"]
    assert circuit.zs_limit_ohm == pytest.approx(1667, abs=1)  # BS 7671 Table 41.5
    assert known(circuit.zs_ohm) > 80
    assert circuit.disconnection_limit_s == 0.2  # Table 41.1, TT, 230 V


def test_fault_above_the_breaking_capacity_is_not_known() -> None:
    job = _one(device("B32 SP", icn_ka=3), Run("P1", [(5, CLIPPED, 0)], **FLAT))
    job.supply = supply(ipf_ka=Known(16, "kA", Basis.DECLARED))
    circuit = job.results().circuits["DB1/1L1"]
    assert circuit.cpc_needed_mm2 is None
    assert any("above Icn" in why for why in circuit.not_known)
