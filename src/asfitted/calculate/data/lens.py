"""Field of view and detail of a camera, thin lens."""

from __future__ import annotations

import math

from asfitted.calculate.ranges import require_above_zero, require_not_negative


def focal_length_mm(*, sensor_width_mm: float, distance_m: float, width_m: float) -> float:
    """Return the focal length that shows a width at a distance, mm.

    f = w D / W

    Args:
        sensor_width_mm: Width of the image sensor, mm, above 0.
        distance_m: Distance, m, above 0.
        width_m: Width of scene to show there, m, above 0.

    Returns:
        Focal length, mm.

    Raises:
        InputOutOfRangeError: an input is not above 0.

    Source:
        Thin lens geometry; about 15 % out in practice.

    Example:
        >>> round(focal_length_mm(sensor_width_mm=4.8, distance_m=20, width_m=5), 1)
        19.2
    """
    require_above_zero(sensor_width_mm=sensor_width_mm, distance_m=distance_m, width_m=width_m)
    return sensor_width_mm * distance_m / width_m


def scene_width_m(*, sensor_width_mm: float, focal_length_mm: float, distance_m: float) -> float:
    """Return the width of scene shown at a distance, m.

    W = w D / f

    Args:
        sensor_width_mm: Width of the image sensor, mm, above 0.
        focal_length_mm: Focal length, mm, above 0.
        distance_m: Distance, m, above 0.

    Returns:
        Width, m.

    Raises:
        InputOutOfRangeError: an input is not above 0.

    Source:
        Thin lens geometry.

    Example:
        >>> round(scene_width_m(sensor_width_mm=5.4, focal_length_mm=2.8, distance_m=10), 2)
        19.29
    """
    require_above_zero(focal_length_mm=focal_length_mm)
    require_above_zero(sensor_width_mm=sensor_width_mm, distance_m=distance_m)
    return sensor_width_mm * distance_m / focal_length_mm


def field_of_view_degrees(*, sensor_width_mm: float, focal_length_mm: float) -> float:
    """Return the horizontal angle of view, degrees.

    2 atan(w / (2 f))

    Args:
        sensor_width_mm: Width of the image sensor, mm, above 0.
        focal_length_mm: Focal length, mm, above 0.

    Returns:
        Angle, degrees.

    Raises:
        InputOutOfRangeError: an input is not above 0.

    Source:
        Thin lens geometry.

    Example:
        >>> round(field_of_view_degrees(sensor_width_mm=5.4, focal_length_mm=2.8))
        88
    """
    require_above_zero(sensor_width_mm=sensor_width_mm, focal_length_mm=focal_length_mm)
    return math.degrees(2.0 * math.atan(sensor_width_mm / (2.0 * focal_length_mm)))


def width_in_view_m(field_degrees: float, *, distance_m: float) -> float:
    """Return the width of scene across an angle of view at a distance, m.

    W = 2 D tan(angle / 2), D along the middle of the view.

    Args:
        field_degrees: Horizontal angle of view, degrees, above 0 and under 180.
        distance_m: Distance, m, above 0.

    Returns:
        Width, m.

    Raises:
        InputOutOfRangeError: an input lies outside its range.

    Source:
        Geometry.

    Example:
        >>> round(width_in_view_m(90, distance_m=10), 2)
        20.0
    """
    require_above_zero(
        field_degrees=field_degrees, distance_m=distance_m, under_180=180.0 - field_degrees
    )
    return 2.0 * distance_m * math.tan(math.radians(field_degrees) / 2.0)


def pixel_density_px_m(width_px: int, *, width_m: float) -> float:
    """Return the pixels per metre across a width of scene, px/m.

    Args:
        width_px: Picture width, px, above 0.
        width_m: Width of scene, m, above 0.

    Returns:
        Detail, px/m.

    Raises:
        InputOutOfRangeError: an input is not above 0.

    Source:
        BS EN 62676-4:2015.

    Example:
        >>> pixel_density_px_m(1920, width_m=15.36)
        125.0
    """
    require_above_zero(width_px=width_px, width_m=width_m)
    return width_px / width_m


def mm_per_pixel(density_px_m: float) -> float:
    """Return the size of one pixel in the scene, mm.

    Args:
        density_px_m: Detail, px/m, above 0.

    Returns:
        Size, mm.

    Raises:
        InputOutOfRangeError: the detail is not above 0.

    Source:
        BS EN 62676-4:2015.

    Example:
        >>> mm_per_pixel(125)
        8.0
    """
    require_above_zero(density_px_m=density_px_m)
    return 1000.0 / density_px_m


def greatest_distance_m(
    density_px_m: float, *, width_px: int, sensor_width_mm: float, focal_length_mm: float
) -> float:
    """Return the farthest distance at which a class of detail holds, m.

    D = px f / (w ppm)

    Args:
        density_px_m: Detail asked for, px/m, above 0.
        width_px: Picture width, px, above 0.
        sensor_width_mm: Width of the image sensor, mm, above 0.
        focal_length_mm: Focal length, mm, above 0.

    Returns:
        Distance, m.

    Raises:
        InputOutOfRangeError: an input is not above 0.

    Source:
        BS EN 62676-4:2015; thin lens geometry.

    Example:
        >>> round(greatest_distance_m(
        ...     125, width_px=2560, sensor_width_mm=5.4, focal_length_mm=2.8), 1)
        10.6
    """
    require_above_zero(density_px_m=density_px_m, width_px=width_px)
    require_above_zero(sensor_width_mm=sensor_width_mm, focal_length_mm=focal_length_mm)
    return width_px * focal_length_mm / (sensor_width_mm * density_px_m)


def sight_distance_m(plan_m: float, *, camera_height_m: float, target_height_m: float) -> float:
    """Return the distance from camera to target, m.

    D = sqrt(plan^2 + (height of camera - height of target)^2)

    Args:
        plan_m: Distance on plan, m, 0 or more.
        camera_height_m: Height of the camera, m, 0 or more.
        target_height_m: Height of the target, m, 0 or more.

    Returns:
        Distance, m.

    Raises:
        InputOutOfRangeError: an input is below 0.

    Source:
        Geometry.

    Example:
        >>> sight_distance_m(4, camera_height_m=4.5, target_height_m=1.5)
        5.0
    """
    require_not_negative(
        plan_m=plan_m, camera_height_m=camera_height_m, target_height_m=target_height_m
    )
    return math.hypot(plan_m, camera_height_m - target_height_m)
