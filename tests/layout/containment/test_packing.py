from __future__ import annotations

import itertools
import math

import pytest

from asfitted.layout.containment.packing import (
    Bore,
    CableShape,
    Laid,
    Packed,
    Trough,
    clearance_mm,
    lay_in_a_layer,
    pack,
)


def circles(*diameters: float) -> list[CableShape]:
    return [CableShape(f"W{i}", d, d) for i, d in enumerate(diameters, start=1)]


def least_clearance(packed: Packed) -> float:
    return min(clearance_mm(a, b) for a, b in itertools.combinations(packed.laid, 2))


def test_two_circles_of_half_the_bore_just_go_in() -> None:
    # geometry: two equal circles fit a circle when their diameter is at most half of it
    assert not pack(Bore(10.0), circles(10.0, 10.0)).left_out
    assert pack(Bore(10.0), circles(10.1, 10.1)).left_out


def test_three_equal_circles_need_2_155_times_their_diameter() -> None:
    # geometry: D/d = 1 + 2/sqrt(3) = 2.1547 for three equal circles in a circle
    ratio = 1 + 2 / math.sqrt(3)
    assert not pack(Bore(10.0 * ratio / 2 + 0.4), circles(10.0, 10.0, 10.0)).left_out
    assert pack(Bore(10.0 * ratio / 2 - 0.05), circles(10.0, 10.0, 10.0)).left_out


@pytest.mark.parametrize(
    "shapes",
    [
        circles(12.0, 5.0, 9.0, 7.0, 7.0, 3.0),
        [CableShape("A", 13.5, 6.0), CableShape("B", 10.3, 5.0), *circles(12.6, 12.6)],
        circles(*[6.2] * 20),
    ],
)
def test_nothing_in_trunking_overlaps_or_sticks_out(shapes: list[CableShape]) -> None:
    packed = pack(Trough(0.0, 48.0, 48.0), shapes)
    assert not packed.left_out
    assert len(packed.laid) == len(shapes)
    assert least_clearance(packed) > -1e-6
    for piece in packed.laid:
        assert piece.shape.width_mm / 2 - 1e-6 <= piece.x <= 48.0 - piece.shape.width_mm / 2 + 1e-6
        assert piece.shape.radius_mm - 1e-6 <= piece.y <= 48.0 - piece.shape.radius_mm + 1e-6


def test_what_finds_no_room_is_left_out_and_the_rest_stays_true_to_size() -> None:
    packed = pack(Trough(0.0, 20.0, 20.0), circles(15.0, 15.0, 4.0))
    assert len(packed.left_out) == 1
    assert {p.shape.width_mm for p in packed.laid} <= {15.0, 4.0}
    assert least_clearance(packed) > -1e-6


def test_a_layer_has_power_from_the_left_edge_and_data_from_the_right() -> None:
    packed = lay_in_a_layer(100.0, 10.0, circles(20.0, 10.0), [CableShape("D1", 6.0, 6.0)])
    assert [(p.shape.tag, p.x, p.y) for p in packed.laid] == [
        ("W1", 20.0, 10.0),
        ("W2", 35.0, 5.0),
        ("D1", 87.0, 3.0),
    ]


def test_a_layer_that_is_too_wide_leaves_cables_out() -> None:
    packed = lay_in_a_layer(50.0, 10.0, circles(20.0, 15.0), [])
    assert [shape.tag for shape in packed.left_out] == ["W2"]


def test_an_empty_layer_is_empty() -> None:
    assert lay_in_a_layer(50.0, 10.0, [], []) == Packed((), ())


def test_clearance_of_a_flat_cable_is_taken_to_its_rounded_end() -> None:
    flat, round_ = CableShape("F", 10.0, 4.0), CableShape("R", 4.0, 4.0)
    # the middle of the rounded end lies at x = 3; the circle at x = 10: 7 - 2 - 2 = 3
    assert clearance_mm(Laid(flat, 0.0, 2.0), Laid(round_, 10.0, 2.0)) == pytest.approx(3.0)


def test_the_same_cables_always_lie_the_same_way() -> None:
    shapes = circles(9.0, 5.0, 7.0, 7.0)
    assert pack(Bore(14.0), shapes) == pack(Bore(14.0), shapes)
