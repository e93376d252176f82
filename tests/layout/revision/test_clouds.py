"""Clouds: round what changed, clear of every word, none where nothing changed."""

from __future__ import annotations

import math

from hypothesis import given, settings
from hypothesis import strategies as st

from asfitted.geometry import Box, Point
from asfitted.layout.revision.clouds import SCALLOPS, clouds_round, outline
from asfitted.layout.revision.triangles import (
    Surroundings,
    place_triangle,
    short_code,
    side_mm,
    triangle,
)
from asfitted.layout.sheet_layout import Text

LIMITS = Box(20, 10, 410, 287)


def row(number: int, *, top: float = 40.0) -> Box:
    """Return the words of one row of a table whose rows are 5.5 mm high."""
    y = top + 5.5 * number
    return Box(30, y, 200, y + 3.45)


def test_radii_are_those_of_common_practice() -> None:
    # arcs of 4 to 6 mm radius: common practice
    assert all(4.0 <= s.radius_mm <= 6.0 for s in SCALLOPS)
    assert [s.reach_mm for s in SCALLOPS] == sorted((s.reach_mm for s in SCALLOPS), reverse=True)


def test_a_cloud_encloses_what_changed() -> None:
    core = Box(100, 100, 130, 110)
    (cloud,) = clouds_round([core], [core], LIMITS)
    xs, ys = zip(*outline(cloud, 0.25).points, strict=True)
    assert min(xs) < core.x0
    assert max(xs) > core.x1
    assert min(ys) < core.y0
    assert max(ys) > core.y1


def test_one_row_of_a_table_is_ringed_without_its_neighbours() -> None:
    rows = [row(n) for n in range(7)]
    (cloud,) = clouds_round([rows[3]], rows, LIMITS)
    assert cloud.core == rows[3]
    path = outline(cloud, 0.25)
    for other in rows:
        assert not any(_inside(p, other) for p in path.points)


def test_rows_that_follow_each_other_share_a_cloud() -> None:
    rows = [row(n) for n in range(7)]
    clouds = clouds_round([rows[2], rows[3]], rows, LIMITS)
    assert [c.core for c in clouds] == [rows[2].joined(rows[3])]


def test_words_too_near_to_pass_between_are_taken_in() -> None:
    core, near = Box(100, 100, 130, 103.4), Box(100, 103.9, 120, 107.3)
    (cloud,) = clouds_round([core], [core, near], LIMITS)
    assert cloud.core.holds(near)


@settings(max_examples=60, deadline=None)
@given(
    st.lists(
        st.tuples(st.integers(0, 30), st.integers(0, 40), st.integers(3, 40)),
        min_size=2,
        max_size=25,
    ),
    st.data(),
)
def test_no_outline_ever_meets_a_word_or_another_cloud(
    spots: list[tuple[int, int, int]], data: st.DataObject
) -> None:
    words = [Box(40 + 10 * x, 30 + 5.5 * y, 40 + 10 * x + w, 33.4 + 5.5 * y) for x, y, w in spots]
    changed = data.draw(st.sets(st.integers(0, len(words) - 1), min_size=1, max_size=4))
    clouds = clouds_round([words[i] for i in sorted(changed)], words, LIMITS)
    for cloud in clouds:
        points = outline(cloud, 0.25).points
        assert not [w for w in words if any(_inside(p, w) for p in points)]
    for i, one in enumerate(clouds):
        assert not any(one.outer.meets(other.outer) for other in clouds[i + 1 :])
    for i in changed:
        assert any(cloud.core.holds(words[i]) for cloud in clouds)


def test_the_code_of_a_revision_is_short() -> None:
    assert [short_code(r) for r in ("P02", "C11", "B", "P01.02", "P01-S")] == [
        "02",
        "11",
        "B",
        "01.02",
        "S",
    ]


def test_the_code_stands_inside_its_triangle() -> None:
    for code in ("02", "B", "11", "S"):
        side = side_mm(code)
        box = Box(50, 50, 50 + side, 50 + side * math.sqrt(3) / 2)
        path, text = triangle(box, code, 0.25)
        assert isinstance(text, Text)
        height = box.y1 - text.at.y + 1.05 * text.cap_mm
        room = side - 2 * height / math.sqrt(3)
        from asfitted.fonts import text_width_mm  # noqa: PLC0415 - beside what it measures

        assert text_width_mm(code, text.cap_mm, bold=True) <= room
        assert len(path.points) == 3


def test_a_triangle_stands_clear_of_words_and_has_a_leader_when_far() -> None:
    core = Box(100, 100, 130, 103.4)
    words = [Box(60, 60 + 5.5 * n, 180, 63.4 + 5.5 * n) for n in range(16)]
    words = [w for w in words if not w.meets(core.grown(1))] + [core]
    clouds = clouds_round([core], words, LIMITS)
    around = Surroundings(tuple(words), (), LIMITS)
    box, leader = place_triangle(clouds[0], "02", around, ())
    assert not any(box.meets(w) for w in words)
    if leader is not None:
        assert math.dist(*leader) > 0.5


def _inside(point: Point, box: Box) -> bool:
    return box.x0 < point.x < box.x1 and box.y0 < point.y < box.y1
