from __future__ import annotations

import pytest

from asfitted.calculate.data.lens import field_of_view_degrees, greatest_distance_m
from asfitted.layout.plan.camera_views import SHOWN, reaches_of


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
