"""Whole jobs: every figure there or a reason why not, the same twice, and fast."""

from __future__ import annotations

from pathlib import Path

import pytest
from hand_job import CONDUIT, RCD_30, HandJob, Run, device, known, point

from asfitted.calculate.calculate import calculate
from asfitted.calculate.results import CalculationResults
from asfitted.resolve.installation import Installation, State
from asfitted.resolve.resolve_job import resolve
from asfitted.spec.load_job import load_job

Studio = tuple[Installation, CalculationResults]
SPECS = Path(__file__).parents[2] / "specs"
RING_LEAST_A = 20.0
JOBS = sorted(path.stem for path in SPECS.glob("*.yaml"))


def _calculated(name: str) -> tuple[Installation, CalculationResults]:
    installation = resolve(load_job(SPECS / f"{name}.yaml"))
    return installation, calculate(installation)


@pytest.fixture(scope="module")
def studio() -> Studio:
    return _calculated("pottery-studio")


@pytest.mark.parametrize("name", JOBS)
def test_every_cable_circuit_board_and_device_has_figures(name: str) -> None:
    installation, results = _calculated(name)
    power = [tag for tag, cable in installation.cables.items() if cable.band == "power"]
    assert list(results.cables) == power
    assert list(results.circuits) == list(installation.circuits)
    assert list(results.boards) == list(installation.boards)
    linked = [
        tag
        for tag, one in installation.data_devices.items()
        if one.kind in ("camera", "data outlet", "access point")
    ]
    assert list(results.data) == linked


@pytest.mark.parametrize("name", JOBS)
def test_a_figure_is_there_or_its_reason_is(name: str) -> None:
    installation, results = _calculated(name)
    for tag, circuit in results.circuits.items():
        figures = (circuit.drop_pct, circuit.zs_ohm, circuit.fault_min_a, circuit.cpc_needed_mm2)
        missing = any(figure is None for figure in figures)
        assert missing == bool(circuit.not_known), tag
        assert missing == (installation.circuits[tag].state == State.EXISTING), tag
    for device_result in results.data.values():
        if device_result.field_of_view_deg is None and device_result.tag.startswith("CAM"):
            assert device_result.not_known


@pytest.mark.parametrize("name", JOBS)
def test_chosen_sizes_meet_every_criterion(name: str) -> None:
    installation, results = _calculated(name)
    for cable in results.cables.values():
        circuit = results.circuits[cable.circuit]
        rating = installation.circuits[cable.circuit].device.rating_a
        assert cable.tried[-1].reason == ""
        assert known(circuit.design_current_a) <= rating
        # a ring on a 30 or 32 A device needs 20 A of each conductor (BS 7671 433.1.204)
        on_a_ring = installation.circuits[cable.circuit].ring
        assert cable.capacity_a >= (RING_LEAST_A if on_a_ring else rating)
        assert cable.tabulated_a >= cable.required_tabulated_a - 1e-9
        assert known(circuit.drop_pct) <= known(circuit.drop_limit_pct)
        assert known(circuit.zs_ohm) <= known(circuit.zs_limit_ohm)
        assert known(circuit.cpc_needed_mm2) <= known(circuit.cpc_has_mm2)
        assert known(circuit.line_energy_a2s) <= known(circuit.line_withstand_a2s)


@pytest.mark.parametrize("name", JOBS)
def test_every_step_names_its_source(name: str) -> None:
    _, results = _calculated(name)
    groups = (
        results.cables.values(),
        results.circuits.values(),
        results.boards.values(),
        results.data.values(),
        results.equipment,
    )
    steps = [step for group in groups for one in group for step in one.steps]
    assert steps
    assert all(step.source and step.words for step in steps)


def test_the_same_job_gives_the_same_figures_twice() -> None:
    assert _calculated("pottery-studio")[1] == _calculated("pottery-studio")[1]


def test_demand_of_the_studio_board_on_paper(studio: Studio) -> None:
    # On-Site Guide Table A2, L1 of DB1. Lighting 0.9 x 4 = 3.6. Heating: kiln 25.98 alone on L1.
    # Motors 8.1 + 0.8 x 3.5 + 0.6 x 3.5 = 13.0. 5-pin sockets at cos phi 0.85: 12.736 +
    # 0.75 x (6.792 + 5.094) = 21.65. CCTV spur 1.087 with them or alone; DB2 sockets 20
    results = studio[1]
    found = results.boards["DB1"].demand_a[0]
    assert found == pytest.approx(3.6 + 25.98 + 13.0 + 21.65 + 20 + 0.75 * 1.087, abs=0.02)
    assert results.max_demand_a == max(results.boards["DB1"].demand_a)


def test_camera_at_the_gate_on_paper(studio: Studio) -> None:
    # 5 W / 10.8 V = 0.46296 A; Cat 6 6.68 ohm/100 m, three cores each way
    camera = studio[1].data["CAM4"]
    loop = 2 * 6.68 * known(camera.length_m) / 300
    assert camera.at_device_v == pytest.approx(13.0 - 0.46296 * loop, abs=0.0005)
    assert known(camera.at_device_v) > 10.8


def test_existing_circuits_count_in_the_demand_and_keep_their_cables_unknown(
    studio: Studio,
) -> None:
    installation, results = studio
    existing = [c.tag for c in installation.circuits.values() if c.state == State.EXISTING]
    assert len(existing) == 4
    for tag in existing:
        assert sum(results.circuits[tag].line_currents_a) > 0
        assert "existing cable not recorded" in results.circuits[tag].not_known


def test_fault_level_falls_and_loop_rises_away_from_the_origin(studio: Studio) -> None:
    boards = studio[1].boards
    near, far = boards["DB1"], boards["DB2"]
    assert known(far.fault_max_3ph_ka) < known(near.fault_max_3ph_ka)
    assert known(far.zs_ohm) > known(near.zs_ohm)
    assert known(far.drop_pct) > known(near.drop_pct)


def test_five_thousand_circuits_are_all_calculated() -> None:
    job = HandJob()
    for number in range(125):
        job.board(f"DB{number}")
        for way in range(40):
            lamp = f"L{number}-{way}"
            job.circuit(
                f"DB{number}/{way}L{1 + way % 3}",
                device("B10 SP", rcd=RCD_30),
                [point(lamp, "luminaire", load_w=100 + way)],
                [
                    Run(
                        lamp,
                        [(5 + way + number / 9, CONDUIT, way % 4)],
                        family="twin_earth",
                        cores=2,
                        cpc="core",
                    )
                ],
                use="lighting",
            )
    results = job.results()
    assert len(results.circuits) == 5000
    assert all(known(c.zs_ohm) > 0 for c in results.circuits.values())
