"""The cut outlines: tray, basket, ladder, trunking, conduit or duct; and a cable, round or flat."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.linework import polyline, rectangle
from asfitted.layout.sheet_layout import Circle, Path, Stroke

if TYPE_CHECKING:
    from asfitted.layout.containment.cross_section import CrossSection
    from asfitted.layout.containment.packing import CableShape
    from asfitted.layout.linework import Widths

WIRE_MM, MESH_MM = 4.0, 50.0  # nominal wire and mesh of basket
ROUND_STEPS = 12
DATA_RING_MM = 0.8  # inside the outline of a data cable


def outline_paths(
    section: CrossSection, origin: Point, scale: float, widths: Widths
) -> tuple[Path | Circle, ...]:
    """Return the containment cut across; ``origin`` is the inside bottom left corner."""
    if section.form == "layer":
        kind = section.place.developed.run.kind
        if kind == "wire basket":
            return _basket(section, origin, scale)
        return _tray(section, origin, scale, widths, is_ladder=kind == "cable ladder")
    if section.form == "trunking":
        return _trunking(section, origin, scale, widths)
    return _bore(section, origin, scale, widths)


def _tray(
    section: CrossSection, origin: Point, scale: float, widths: Widths, *, is_ladder: bool
) -> tuple[Path, ...]:
    """Return bed and flanges of a tray; of a ladder the rails, with its rung behind."""
    wide, tall = (s * scale for s in section.inside_mm)
    gap = widths.extra_wide / 2
    x0, x1, y = origin.x - gap, origin.x + wide + gap, origin.y + gap
    top = origin.y - tall
    if not is_ladder:
        points = (x0, top), (x0, y), (x1, y), (x1, top)
        return (polyline(*points, width_mm=widths.extra_wide),)
    rails = [polyline((x, top), (x, y), width_mm=widths.extra_wide) for x in (x0, x1)]
    return (*rails, polyline((x0, y), (x1, y), width_mm=widths.narrow))


def _basket(section: CrossSection, origin: Point, scale: float) -> tuple[Path | Circle, ...]:
    """Return a basket: wires that run along as dots, the cross wire under and beside the cables."""
    wide, tall = (s * scale for s in section.inside_mm)
    wire = WIRE_MM * scale
    x0, x1, y = origin.x - wire / 2, origin.x + wide + wire / 2, origin.y + wire / 2
    across = polyline((x0, origin.y - tall), (x0, y), (x1, y), (x1, origin.y - tall), width_mm=wire)
    count = max(round(section.inside_mm[0] / MESH_MM), 1)
    dots = [
        Circle(Point(origin.x + wide * i / count, y + wire), wire / 2, None, fill="black")
        for i in range(count + 1)
    ]
    thin = Path(across.points, Stroke(max(min(wire, 0.7), 0.5)))
    return (thin, *dots)


def _trunking(
    section: CrossSection, origin: Point, scale: float, widths: Widths
) -> tuple[Path, ...]:
    """Return outside and inside of trunking, with the divider where power and data share it."""
    wide, tall = (s * scale for s in section.inside_mm)
    wall = section.wall_mm * scale
    inner = Box(origin.x, origin.y - tall, origin.x + wide, origin.y)
    paths = [
        rectangle(inner.grown(max(wall, 0.7)), width_mm=widths.wide, fill="tint"),
        rectangle(inner, width_mm=widths.narrow, fill="white"),
    ]
    if section.divider_mm is not None:
        x = origin.x + section.divider_mm * scale
        paths.append(
            polyline((x, origin.y - tall), (x, origin.y), width_mm=widths.wide, pattern="dashed")
        )
    return tuple(paths)


def _bore(
    section: CrossSection, origin: Point, scale: float, widths: Widths
) -> tuple[Path | Circle, ...]:
    """Return outside and bore of conduit; of a duct the bore alone, for its wall is not known."""
    radius = section.inside_mm[0] / 2 * scale
    centre = Point(origin.x + radius, origin.y - radius)
    wall = section.wall_mm * scale
    if not wall:
        return (Circle(centre, radius, Stroke(widths.wide), fill="white"),)
    return (
        Circle(centre, radius + max(wall, 0.7), Stroke(widths.wide), fill="tint"),
        Circle(centre, radius, Stroke(widths.narrow), fill="white"),
    )


def cable_path(
    shape: CableShape, centre: Point, scale: float, width_mm: float, *, is_data: bool
) -> tuple[Path | Circle, ...]:
    """Return the outline of a cable at its true size; a data cable has a ring inside."""
    radius, reach = shape.radius_mm * scale, shape.reach_mm * scale
    fill = "white" if is_data else "tint"
    stroke = Stroke(width_mm)
    if not reach:
        parts: list[Path | Circle] = [Circle(centre, radius, stroke, fill=fill)]  # type: ignore[arg-type]
        if is_data and radius > 2 * DATA_RING_MM:
            parts.append(Circle(centre, radius - DATA_RING_MM, Stroke(width_mm / 2)))
        return tuple(parts)
    points = [
        Point(
            centre.x + side * reach + radius * math.sin(turn),
            centre.y + radius * math.cos(turn),
        )
        for side, start in ((1.0, 0.0), (-1.0, math.pi))
        for turn in (start + math.pi * i / ROUND_STEPS for i in range(ROUND_STEPS + 1))
    ]
    return (Path(tuple(points), stroke, closed=True, fill=fill),)  # type: ignore[arg-type]
