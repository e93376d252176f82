from __future__ import annotations

import math

from asfitted.geometry import Box
from asfitted.layout.callout import (
    Callout,
    callout_size,
    callout_texts,
    spots_further_off,
    spots_near,
)
from asfitted.layout.callout_choice import place_together
from asfitted.layout.free_room import FreeRoom, gap_mm, line_meets_box, lines_cross
from asfitted.layout.lettering import box_of
from asfitted.layout.sheet_layout import Circle, Path, Text


def a_room() -> FreeRoom:
    return FreeRoom(Box(0, 0, 200, 120))


def callout(ident: str, target: Box) -> Callout:
    return Callout(ident, ident, ("C/L +1200",), target)


def test_a_free_thing_gets_its_callout_below_without_a_leader() -> None:
    target = Box(90, 50, 96, 56)
    spot = spots_near(a_room(), callout("X1", target))[0]
    assert spot.leader is None
    assert spot.box.y0 > target.y1
    assert spot.box.centre.x == target.centre.x
    items, left = place_together(a_room(), [callout("X1", target)])
    assert [i.kind for i in items] == ["text"]
    assert not left


def test_a_hemmed_in_thing_gets_a_leader_from_its_edge() -> None:
    room = a_room()
    target = Box(90, 50, 96, 56)
    room.take_ink(Box(60, 30, 89.5, 76))
    room.take_ink(Box(96.5, 30, 126, 76))
    room.take_ink(Box(80, 56.5, 106, 76))
    room.take_ink(Box(89.5, 30, 96.5, 49.5))
    items, left = place_together(room, [callout("X1", target)])
    assert not left
    leader = items[0].parts[0]
    assert isinstance(leader, Path)
    start = leader.points[0]
    assert target.grown(0.01).x0 <= start.x <= target.grown(0.01).x1
    assert target.grown(0.01).y0 <= start.y <= target.grown(0.01).y1


def test_words_never_stand_nearer_to_a_rival() -> None:
    target, rival = Box(90, 50, 94, 54), Box(98, 50, 102, 54)
    room = a_room()
    for box in (target, rival):
        room.take_solid(box)
    own = Callout("S1", "S1", ("C/L +1200",), target, rivals=(rival,))
    spots = spots_near(room, own)
    assert spots
    for spot in spots:
        tag = box_of(callout_texts(own, spot)[0])
        assert gap_mm(tag, target) < gap_mm(tag, rival)


def test_a_leader_goes_round_words_rather_than_through_them() -> None:
    room = a_room()
    room.take_solid(Box(70, 56.4, 116, 60))
    room.take_ink(Box(60, 46, 89.8, 56))
    room.take_ink(Box(96.2, 46, 126, 56))
    spots = spots_further_off(room, callout("X1", Box(90, 50, 96, 56)))
    assert spots
    for spot in spots:
        assert spot.leader is not None
        assert not line_meets_box(*spot.leader, Box(70, 56.4, 116, 60))


def test_one_callout_makes_way_where_that_leaves_room_for_two() -> None:
    room = FreeRoom(Box(0, 0, 60, 24))
    first, second = Box(18, 10, 22, 14), Box(40, 10, 44, 14)
    for box in (first, second, Box(0, 15.5, 60, 24), Box(0, 0, 60, 3.4)):
        room.take_solid(box)
    callouts = [Callout(n, n, (), t) for n, t in (("AAA", first), ("BBB", second))]
    items, left = place_together(room, callouts, near_only=True)
    assert not left
    assert {i.ident for i in items} == {"AAA", "BBB"}


def test_a_keynote_is_a_number_in_a_ring() -> None:
    keynote = Callout("X1", "X1", ("C/L +1200",), Box(90, 50, 96, 56), keynote=7)
    items, _ = place_together(a_room(), [keynote])
    ring = next(p for i in items for p in i.parts if isinstance(p, Circle))
    number = next(p for i in items for p in i.parts if isinstance(p, Text))
    assert number.text == "7"
    assert math.dist(number.at, ring.centre) < ring.radius_mm


def test_thirty_things_in_a_row_are_all_named_and_nothing_overlaps() -> None:
    room = a_room()
    targets = [Box(4 + i * 6.4, 60, 8 + i * 6.4, 64) for i in range(30)]
    for target in targets:
        room.take_solid(target)
    tags = [Callout(f"S{i}", f"S{i}", (), t) for i, t in enumerate(targets)]
    items, left = place_together(room, tags)
    assert not left
    leaders = [i.parts[0] for i in items if i.kind == "dim"]
    lines = [p.points for p in leaders if isinstance(p, Path)]
    for i, (a, b) in enumerate(lines):
        assert not any(lines_cross(a, b, c, d) for c, d in lines[i + 1 :])
    words = [i for i in items if i.kind == "text"]
    assert len(words) == 30
    assert callout_size(callout("S1", targets[1]))[0] > 10
    assert not any(line_meets_box(a, b, t.grown(-0.6)) for a, b in lines for t in targets)


def test_a_full_room_says_so() -> None:
    room = FreeRoom(Box(0, 0, 30, 30))
    room.take_ink(Box(0, 0, 30, 30))
    _, left = place_together(room, [callout("X1", Box(10, 10, 14, 14))])
    assert [c.tag for c in left] == ["X1"]
