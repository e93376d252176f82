"""The data diagram says of each device where it is, what it sees, and what its cable does."""

from __future__ import annotations

import dataclasses
from types import MappingProxyType
from typing import TYPE_CHECKING

from asfitted.layout.data_diagram.columns import columns_for
from asfitted.layout.data_diagram.hard_wrap import hard_wrap
from asfitted.layout.data_diagram.measuring import measured
from asfitted.layout.data_diagram.rows import link_rows
from asfitted.layout.lettering import BODY, fits

if TYPE_CHECKING:
    from asfitted.layout.data_diagram.rows import LinkRow
    from asfitted.layout.sheet_model import Model

    Models = dict[str, Model]


def rows_by_device(model: Model) -> dict[str, LinkRow]:
    return {r.device: r for r in link_rows(model.installation, model.results) if not r.is_patch}


def test_rows_stand_by_equipment_then_channel_or_port(demo_models: Models) -> None:
    model = demo_models["pottery-studio"]
    rows = link_rows(model.installation, model.results)
    assert [(r.block, r.place, r.device) for r in rows] == [
        ("REC1", 1, "CAM1"),
        ("REC1", 2, "CAM2"),
        ("REC1", 3, "CAM3"),
        ("REC1", 4, "CAM4"),
        ("SW1", 1, "D1"),
        ("SW1", 2, "AP1"),
        ("SW1", 8, "REC1"),
    ]
    assert [r.is_patch for r in rows] == [False] * 6 + [True]


def test_a_camera_with_power_has_two_legs_in_one_cable(demo_models: Models) -> None:
    rows = rows_by_device(demo_models["pottery-studio"])
    assert [leg.carries for leg in rows["CAM1"].legs] == ["signal", "supply"]
    assert [leg.carries for leg in rows["AP1"].legs] == ["network"]
    assert rows["CAM3"].legs[0].baluns
    assert not rows["CAM1"].legs[0].baluns


def test_volts_on_the_line_are_those_of_the_calculation(demo_models: Models) -> None:
    model = demo_models["pottery-studio"]
    figures = model.results.data["CAM4"]
    words = rows_by_device(model)["CAM4"].legs[1].below
    assert figures.at_device_v is not None
    assert f"{figures.at_device_v:.1f} V at the camera" in words
    assert f"{figures.at_device_v - 10.8:.1f} V over" in words  # 12 V less 10 %, as the window


def test_the_margin_of_the_reach_is_on_the_line(demo_models: Models) -> None:
    words = rows_by_device(demo_models["pottery-studio"])["CAM1"].legs[0].below
    assert "19.0 m of 250 m reach (231.0 m in hand)" in words  # 250 - 19


def test_a_cable_that_is_too_long_says_by_how_much(demo_models: Models) -> None:
    model = demo_models["pottery-studio"]
    long = dataclasses.replace(model.results.data["D1"], length_m=100.0)
    data = MappingProxyType({**model.results.data, "D1": long})
    results = dataclasses.replace(model.results, data=data)
    rows = {r.device: r for r in link_rows(model.installation, results)}
    assert "100.0 m of 90 m reach (10.0 m too much)" in rows["D1"].legs[0].below


def test_a_network_camera_names_port_and_channel(demo_models: Models) -> None:
    row = rows_by_device(demo_models["shop-cctv"])["CAM2"]
    assert row.legs[0].port == "port 2"
    assert "recorded on REC1 channel 2" in row.facts


def test_a_missing_figure_reads_not_checked(demo_models: Models) -> None:
    model = demo_models["pottery-studio"]
    bare = dataclasses.replace(
        model.results.data["CAM4"], at_device_v=None, density_px_m=None, signal_limit_m=None
    )
    data = MappingProxyType({**model.results.data, "CAM4": bare})
    rows = link_rows(model.installation, dataclasses.replace(model.results, data=data))
    said = next(r for r in rows if r.device == "CAM4")
    assert "not checked" in said.legs[1].below
    assert "not checked" in said.legs[0].below
    assert "picture detail not checked" in said.facts


def test_two_legs_need_more_height_than_one(demo_models: Models) -> None:
    rows = rows_by_device(demo_models["pottery-studio"])
    columns = columns_for("A3")
    assert measured(rows["CAM1"], columns).height_mm > measured(rows["D1"], columns).height_mm


def test_a_word_longer_than_its_line_is_cut_and_nothing_is_lost() -> None:
    tag = "CAMERA-AT-THE-GATEHOUSE-BY-THE-LOWER-MILL-POND"
    lines = hard_wrap(f"at {tag}", 30.0, BODY)
    assert all(fits(line, 30.0, BODY) for line in lines)
    assert "".join(lines).replace(" ", "") == f"at{tag}"
