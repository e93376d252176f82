"""Lens for a scene."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.data.lens import field_of_view_degrees, focal_length_mm
from asfitted.calculate.working import Step
from asfitted.quantities import LENGTH_M
from asfitted.quick_sums._kinds import DIAMETER_MM
from asfitted.quick_sums._sum import Example, Input, QuickSum

if TYPE_CHECKING:
    from asfitted.quick_sums._sum import Values


def work(given: Values) -> tuple[Step, ...]:
    """Return the angle of view, then the focal length."""
    sensor, distance, width = (given.number(name) for name in ("sensor", "distance", "width"))
    focal = focal_length_mm(sensor_width_mm=sensor, distance_m=distance, width_m=width)
    angle = field_of_view_degrees(sensor_width_mm=sensor, focal_length_mm=focal)
    return (
        Step(
            "HFOV",
            "horizontal angle of view",
            "2 atan(w / 2f)",
            f"2 atan({sensor:g} mm / (2 × {focal:.3g} mm))",
            angle,
            "°",
            "thin lens",
        ),
        Step(
            symbol="f",
            words="focal length that just shows the width",
            formula="w × D / W",
            substituted=f"{sensor:g} mm × {distance:g} m / {width:g} m",
            value=focal,
            unit="mm",
            source="thin lens; real lenses differ by some per cent",
        ),
    )


SUM = QuickSum(
    name="lens",
    title="Focal length for a scene",
    inputs=(
        Input("sensor", "width of the sensor", DIAMETER_MM),
        Input("distance", "distance to the scene", LENGTH_M),
        Input("width", "width of scene to show there", LENGTH_M),
    ),
    work=work,
    example=Example(
        {"sensor": "4.8", "distance": "20 m", "width": "5 m"},
        19.2,
        0.01,
        "security installer's article on lens calculation (seen)",
    ),
)
