"""Cameras and data points: supply drop, signal limits, PoE, picture detail, equipment totals.

Outside figures: the worked lines of the camera supply method (arithmetic of Ohm's law), published
examples I-04 (lens), I-08 (BS EN 62676-4:2015 classes) and I-10 (IEEE 802.3 budgets), ISO/IEC
11801 lengths, and sums on paper.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from hand_job import NOWHERE, HandJob, known, route

from asfitted.calculate.calculate import calculate_along
from asfitted.calculate.data.data_figures import density_class, signal_name
from asfitted.resolve.installation import Cable, DataDevice, State

Make = tuple[str, int, float | None]
COAX: Make = ("coax_power", 2, 0.75)
CAT6: Make = ("cat6", 8, None)


def _device(tag: str, kind: Any, **facts: Any) -> DataDevice:
    return DataDevice(tag, kind, tag, State.NEW, NOWHERE, **facts)


def _link(job: HandJob, device: DataDevice, start: str, make: Make, length_m: float) -> None:
    family, cores, csa = make
    tag = f"D-{device.tag}"
    job.devices[device.tag] = device
    job.cables[tag] = Cable(
        tag, device.tag, "data", family, cores, csa, "none", start, device.tag, State.NEW, None,
        (), None, "clipped", 30,
    )  # fmt: skip
    job.routes[tag] = replace(route(tag, ()), length_m=length_m)


def _camera(make: Make, length_m: float, output_v: float = 12.0, **facts: Any) -> HandJob:
    job = HandJob(supply=None)
    job.devices["REC1"] = _device("REC1", "recorder", channels=4, disk_tb=2, keep_days=31)
    job.devices["PS1"] = _device("PS1", "12 V supply", output_v=output_v, rating_a=2)
    facts = {"load_w": 5, "signal": "HD 1080p", "channel": 1, **facts}
    _link(job, _device("CAM1", "camera", **facts), "REC1", make, length_m)
    return job


def test_longest_run_on_two_cores_of_0_75_mm2() -> None:
    # 5 W / 10.8 V = 0.463 A; 1.2 x 100 / (2 x 2.60 x 0.463) = 49.8 m leaves 10.8 V
    found = _camera(COAX, 49.8).results().data["CAM1"]
    assert found.current_a == pytest.approx(0.463, abs=0.001)
    assert found.at_device_v == pytest.approx(10.8, abs=0.005)
    assert found.window_v == (10.8, 13.2)
    assert found.medium == "RG59+2"


def test_longest_run_on_one_pair_each_way_of_category_6() -> None:
    # 1.2 x 100 x 2 / (2 x 6.68 x 0.463) = 38.8 m
    found = _camera(CAT6, 38.8, baluns=True, power_pairs=2).results().data["CAM1"]
    assert found.at_device_v == pytest.approx(10.8, abs=0.005)
    assert found.medium == "Cat6 with baluns"


def test_more_conductors_in_parallel_bring_more_voltage() -> None:
    volts = [
        known(_camera(CAT6, 60, baluns=True, power_pairs=n).results().data["CAM1"].at_device_v)
        for n in (1, 2, 3)
    ]
    assert volts == sorted(volts)


@pytest.mark.parametrize(
    ("make", "facts", "limit_m"),
    [
        (COAX, {}, 250),
        (COAX, {"signal": "composite"}, 225),
        (CAT6, {"baluns": True, "power_pairs": 2}, 120),
        (CAT6, {"baluns": True, "power_pairs": 2, "signal": "HD 5MP"}, 90),
        (CAT6, {"signal": "", "poe_class": 3, "port": "SW1/1"}, 90),  # ISO/IEC 11801
    ],
)
def test_signal_limit_of_each_medium(make: Make, facts: dict[str, Any], limit_m: float) -> None:
    assert _camera(make, 20, **facts).results().data["CAM1"].signal_limit_m == limit_m


def test_signal_words_of_the_trade() -> None:
    assert signal_name("HD 1080p") == signal_name("1080p") == "HD analogue 1080p"
    assert signal_name("composite") == "composite"


def test_detail_behind_a_published_lens() -> None:
    # published example I-04: 19.2 mm lens, 4.8 mm sensor, 5 m wide at 20 m; 1920 / 5 = 384 px/m
    facts: dict[str, Any] = {"lens_mm": 19.2, "sensor": "1/3", "target_m": 20, "pixels": 1920}
    found = _camera(COAX, 10, **facts).results().data["CAM1"]
    assert found.density_px_m == pytest.approx(384, abs=0.1)
    assert found.density_class == "identify"


@pytest.mark.parametrize(
    ("density", "words"),
    [
        (12.4, "below monitor"),
        (12.5, "monitor"),
        (25, "detect"),
        (62.5, "observe"),
        (125, "recognise"),
        (250, "identify"),
        (1000, "inspect"),
    ],
)
def test_classes_of_bs_en_62676_4(density: float, words: str) -> None:
    assert density_class(density) == words


def _switch_job() -> HandJob:
    job = HandJob(supply=None)
    job.devices["SW1"] = _device("SW1", "PoE switch", ports=8, budget_w=65)
    for tag, kind, facts in (
        ("AP1", "access point", {"poe_class": 4, "load_w": 25.5}),
        ("CAM1", "camera", {"poe_class": 3, "load_w": 12.95}),
        ("CAM2", "camera", {"poe_class": 3}),
        ("D1", "data outlet", {}),
    ):
        device = _device(tag, kind, port=f"SW1/{len(job.devices)}", **facts)
        _link(job, device, "SW1", CAT6, 90)
    return job


def test_power_over_ethernet_classes_and_volts() -> None:
    # IEEE 802.3: class 4 25.5 W, class 3 12.95 W at the device; least 42.5 V and 37 V there
    data = _switch_job().results().data
    assert (data["AP1"].poe_class_w, data["CAM1"].poe_class_w) == (25.5, 12.95)
    # type 2 from 50 V over 6.68 x 0.9 = 6.01 ohm: 0.545 A, 46.7 V
    assert data["AP1"].at_device_v == pytest.approx(46.7, abs=0.05)
    assert data["AP1"].window_v == (42.5, 57.0)
    assert data["D1"].supply == ""
    assert data["D1"].signal_limit_m == 90


def test_budget_of_a_switch_on_paper() -> None:
    # (25.5 + 12.95) / 0.85 = 45.24 W, and the whole 15.4 W of class 3 for the unknown load
    totals = {one.what: one for one in _switch_job().results().equipment}
    assert totals["ports"].used == 4
    assert totals["ports"].available == 8
    assert totals["PoE budget"].used == pytest.approx(45.235 + 15.4, abs=0.01)
    assert totals["PoE budget"].available == 65


def test_supply_current_with_headroom_and_recorder_totals() -> None:
    # 1.25 x 0.463 A = 0.579 A; 4 Mbit/s x 10.8 x 31 days = 1339 GB x 1.1 / 930 = 1.584 TB
    totals = {one.what: one for one in _camera(COAX, 10).results().equipment}
    assert totals["current"].used == pytest.approx(0.5787, abs=0.0001)
    assert totals["channels"].used == 1
    assert totals["storage"].used == pytest.approx(1.584, abs=0.001)
    assert totals["storage"].available == 2


def test_missing_facts_are_none_with_a_reason() -> None:
    found = _camera(COAX, 0, load_w=None, signal="").results().data["CAM1"]
    assert found.at_device_v is None
    assert found.signal_limit_m is None
    assert found.length_m is None
    for word in ("load", "signal", "length", "lens"):
        assert any(word in why for why in found.not_known), word


def test_camera_without_a_cable_or_supply_does_not_stop_the_job() -> None:
    job = HandJob(supply=None)
    job.devices["CAM1"] = _device("CAM1", "camera")
    found = calculate_along(job.installation(), job.ways()).data["CAM1"]
    assert found.cable == ""
    assert "no cable is given" in found.not_known


def test_job_of_cameras_alone_has_no_power_figures() -> None:
    results = _camera(COAX, 10).results()
    assert results.max_demand_a is None
    assert not results.circuits
    assert not results.boards
