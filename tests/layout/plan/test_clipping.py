from __future__ import annotations

from asfitted.geometry import Box, Point
from asfitted.layout.linework import polyline, rectangle
from asfitted.layout.plan.clipping import clipped

BOX = Box(0.0, 0.0, 10.0, 10.0)


def test_a_line_is_cut_at_the_edge() -> None:
    (line,) = clipped(polyline((-5, 5), (5, 5), width_mm=0.5), BOX)
    assert [(round(p.x, 3), round(p.y, 3)) for p in line.points] == [(0.0, 5.0), (5.0, 5.0)]


def test_a_line_that_comes_back_gives_two_pieces() -> None:
    pieces = clipped(polyline((5, 5), (15, 5), (15, 8), (5, 8), width_mm=0.5), BOX)
    assert len(pieces) == 2


def test_a_filled_box_keeps_its_area_and_not_the_cut_edge() -> None:
    area, *edges = clipped(rectangle(Box(5, 5, 15, 8), width_mm=0.5, fill="tint"), BOX)
    assert area.stroke is None
    assert set(area.points) == {Point(5, 5), Point(10, 5), Point(10, 8), Point(5, 8)}
    lines = [pair for edge in edges for pair in zip(edge.points, edge.points[1:], strict=False)]
    assert lines
    assert not any(a.x > 9.99 and b.x > 9.99 for a, b in lines)


def test_what_lies_inside_stays_as_it_is_and_outside_goes() -> None:
    inside = polyline((1, 1), (2, 2), width_mm=0.5)
    assert clipped(inside, BOX) == (inside,)
    assert clipped(polyline((20, 1), (30, 2), width_mm=0.5), BOX) == ()
