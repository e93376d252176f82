from __future__ import annotations

from asfitted.geometry import Box
from asfitted.layout.callout import Callout, callout_size, place, place_in_turn
from asfitted.layout.free_room import FreeRoom, line_meets_box, lines_cross
from asfitted.layout.sheet_layout import Path


def a_room() -> FreeRoom:
    return FreeRoom(Box(0, 0, 200, 120))


def callout(ident: str, target: Box) -> Callout:
    return Callout(ident, ident, ("C/L +1200",), target)


def test_a_free_thing_gets_its_callout_below_without_a_leader() -> None:
    target = Box(90, 50, 96, 56)
    placed = place(a_room(), callout("X1", target))
    assert placed is not None
    assert [i.kind for i in placed.items] == ["text"]
    assert placed.box.y0 > target.y1
    assert placed.box.centre.x == target.centre.x


def test_a_hemmed_in_thing_gets_a_leader_from_its_edge() -> None:
    room = a_room()
    target = Box(90, 50, 96, 56)
    room.take_ink(Box(60, 30, 89.5, 76))
    room.take_ink(Box(96.5, 30, 126, 76))
    room.take_ink(Box(80, 56.5, 106, 76))
    room.take_ink(Box(89.5, 30, 96.5, 49.5))
    placed = place(room, callout("X1", target))
    assert placed is not None
    leader = placed.items[0].parts[0]
    assert isinstance(leader, Path)
    start = leader.points[0]
    assert target.grown(0.01).x0 <= start.x <= target.grown(0.01).x1
    assert target.grown(0.01).y0 <= start.y <= target.grown(0.01).y1


def test_thirty_things_in_a_row_are_all_named_and_nothing_overlaps() -> None:
    room = a_room()
    targets = [Box(4 + i * 6.4, 60, 8 + i * 6.4, 64) for i in range(30)]
    for target in targets:
        room.take_solid(target)
    tags = [Callout(f"S{i}", f"S{i}", (), t) for i, t in enumerate(targets)]
    items, left = place_in_turn(room, tags)
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
    _, left = place_in_turn(room, [callout("X1", Box(10, 10, 14, 14))])
    assert [c.tag for c in left] == ["X1"]
