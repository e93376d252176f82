from __future__ import annotations

import math
from typing import TYPE_CHECKING

import pytest

from asfitted.calculate.data.lens import field_of_view_degrees, greatest_distance_m
from asfitted.layout.plan.camera_views import SHOWN, camera_table, reaches_of
from asfitted.layout.plan.plan_things import plan_things
from asfitted.reference.cctv import pixel_density_classes

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model


def test_classes_hold_as_far_as_their_density_is_reached() -> None:
    # BS EN 62676-4:2015: identify 250, recognise 125, observe 62.5, detect 25 px/m.
    # 2.8 mm lens on a sensor 5.4 mm wide, 1920 pixels: D = px f / (w ppm) = 995.6 / ppm
    field = field_of_view_degrees(sensor_width_mm=5.4, focal_length_mm=2.8)
    found = {reach.name: reach.distance_m for reach in reaches_of(field, 1920)}
    expected = {"identify": 3.98, "recognise": 7.96, "observe": 15.93, "detect": 39.82}
    for name, distance_m in expected.items():
        assert found[name] == pytest.approx(distance_m, abs=0.01)
    assert found["recognise"] == pytest.approx(
        greatest_distance_m(125, width_px=1920, sensor_width_mm=5.4, focal_length_mm=2.8)
    )


def test_finer_classes_end_nearer() -> None:
    reaches = reaches_of(60.0, 2560)
    assert [reach.name for reach in reaches] == list(SHOWN)
    distances = [reach.distance_m for reach in reaches]
    assert distances == sorted(distances)


def test_a_class_is_never_told_to_hold_farther_than_it_does(demo_models: dict[str, Model]) -> None:
    # BS EN 62676-4: the density at the distance told is that of the class or more
    for model in demo_models.values():
        classes = {name: figure.value for name, figure in pixel_density_classes()}
        cameras = [t for t in plan_things(model.installation, model.symbols) if t.looks is not None]
        table = camera_table(model, cameras)
        for row in table.rows if table else ():
            result = model.results.data[row[0]]
            pixels = model.installation.data_devices[row[0]].pixels
            if not pixels or not result.field_of_view_deg:
                continue
            half = math.tan(math.radians(result.field_of_view_deg) / 2)
            for name, told in zip(SHOWN, row[2:], strict=True):
                assert pixels / (2 * half * float(told)) >= classes[name], (row[0], name, told)


def test_the_studio_tells_camera_3_below_8_m(demo_models: dict[str, Model]) -> None:
    # 124.4 px/m at 8.0 m: recognise (125 px/m) holds to 8.0 x 124.4 / 125 = 7.96 m
    model = demo_models["pottery-studio"]
    table = camera_table(
        model, [t for t in plan_things(model.installation, model.symbols) if t.tag == "CAM3"]
    )
    assert table is not None
    assert table.rows[0][2 + SHOWN.index("recognise")] == "7.9"
