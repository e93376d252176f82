"""Match lines on a plan: their words stand clear of the match lines that cross their ends."""

from __future__ import annotations

import pytest

from asfitted.geometry import Box
from asfitted.layout.drawing import Drawing
from asfitted.layout.free_room import FreeRoom
from asfitted.layout.lettering import box_of
from asfitted.layout.plan.match_lines import MatchWords, draw_match_lines
from asfitted.layout.plan.plan_parts import PlanPart

SHEET = Box(0.0, 0.0, 297.0, 210.0)
KEYS = {2: "floor-plan-2", 3: "floor-plan-3"}


def _words(box: Box, *sides: str) -> dict[str, MatchWords]:
    opened = tuple((side, n) for n, side in enumerate(sides, start=2))
    part = PlanPart(1, "ground", ("hall",), Box(0.0, 0.0, 5000.0, 5000.0), opened)
    made = draw_match_lines(Drawing(FreeRoom(SHEET)), part, box, KEYS)
    return {words.ident.split(":")[1]: words for words in made}


@pytest.mark.parametrize("side", ["east", "west"])
def test_words_over_a_narrow_part_stay_clear_of_the_line_at_its_side(side: str) -> None:
    box = Box(140.0, 50.0, 160.0, 120.0)  # narrower than the words
    over = box_of(_words(box, "north", side)["north"].text("02"))
    if side == "east":
        assert over.x1 < box.x1
    else:
        assert over.x0 > box.x0


def test_words_of_a_line_between_two_others_are_its_sheet_alone_where_it_is_short() -> None:
    box = Box(140.0, 50.0, 165.0, 120.0)
    words = _words(box, "east", "west", "north")["north"]
    assert words.text("07").text == "sheet 07"
    here = box_of(words.text("07"))
    assert box.x0 < here.x0
    assert here.x1 < box.x1


def test_words_along_a_long_line_stand_in_its_middle() -> None:
    box = Box(60.0, 50.0, 200.0, 150.0)
    words = _words(box, "north", "east")
    assert words["north"].text("07").text == "match line: sheet 07"
    assert words["north"].at.x == pytest.approx(130.0)
    assert words["east"].at.y == pytest.approx(100.0)
    assert words["east"].turned
