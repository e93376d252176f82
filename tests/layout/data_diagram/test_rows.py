"""The data diagram says of each device where it is, what it sees, and what its cable does."""

from __future__ import annotations

import dataclasses
from types import MappingProxyType
from typing import TYPE_CHECKING

from asfitted.layout.data_diagram.placing import row_height_mm
from asfitted.layout.data_diagram.rows import link_rows

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model

    Models = dict[str, Model]


def test_rows_stand_in_order_of_channel_then_port(demo_models: Models) -> None:
    model = demo_models["pottery-studio"]
    rows = link_rows(model.installation, model.results)
    assert [r.device for r in rows] == ["CAM1", "CAM2", "CAM3", "CAM4", "D1", "AP1"]


def test_a_camera_with_power_has_two_legs_in_one_cable(demo_models: Models) -> None:
    model = demo_models["pottery-studio"]
    rows = {r.device: r for r in link_rows(model.installation, model.results)}
    assert [leg.carries for leg in rows["CAM1"].legs] == ["signal", "supply"]
    assert [leg.carries for leg in rows["AP1"].legs] == ["network"]
    assert rows["CAM3"].legs[0].baluns
    assert not rows["CAM1"].legs[0].baluns


def test_volts_on_the_line_are_those_of_the_calculation(demo_models: Models) -> None:
    model = demo_models["pottery-studio"]
    rows = {r.device: r for r in link_rows(model.installation, model.results)}
    volts = model.results.data["CAM4"].at_device_v
    assert f"{volts:.1f} V at the camera" in rows["CAM4"].legs[1].below


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
    model = demo_models["pottery-studio"]
    rows = {r.device: r for r in link_rows(model.installation, model.results)}
    assert row_height_mm(rows["CAM1"]) > row_height_mm(rows["D1"])
