"""Phrases of the single-line diagram, and the lines they are set in."""

from __future__ import annotations

import pytest
from grown_boards import grown_model

from asfitted.fonts import text_width_mm
from asfitted.layout.lettering import BODY
from asfitted.layout.single_line.phrases import least_run_mm, set_phrases, wrapped
from asfitted.layout.single_line.room import column_width_mm, column_words, turned_lines
from asfitted.layout.single_line.signs import abbreviations_in
from asfitted.layout.single_line.tree import STARTER_SIGN, Stage, board_trees, shortened_chain
from asfitted.layout.single_line.words import tags_words, way_words
from asfitted.resolve.installation import Way


@pytest.mark.parametrize(
    ("tags", "words"),
    [
        (["X1"], "X1"),
        (["S1", "S2"], "S1, S2"),
        (["S1", "S2", "S3"], "S1 to S3"),
        (["S1", "S2", "S4"], "S1, S2, S4"),
        (["S1", "L2", "S3"], "S1, L2, S3"),
    ],
)
def test_tags_run_together_only_when_their_numbers_run_on(tags: list[str], words: str) -> None:
    assert tags_words(tags) == words


def test_blank_ways_are_each_named_or_run_from_first_to_last() -> None:
    ways = [Way(f"{n}TP", n, "TP", "", "blank") for n in range(7, 13)]
    assert way_words(ways[:2]) == "7TP, 8TP"
    assert way_words(ways) == "7TP to 12TP"


def test_a_line_never_ends_between_a_figure_and_its_unit() -> None:
    text = "W17-2 3c × 1.5 mm² of some cable L = 14.2 m"
    for room in range(14, 60, 3):
        for line in wrapped(text, room, BODY):
            assert not line.startswith(("mm²", "m ", "×"))
            assert not line.endswith(("×", "1.5", "14.2"))


def test_phrases_keep_their_words_and_their_room() -> None:
    phrases = ("W03 4c × 6 mm²", "XLPE/SWA/PVC", "cpc 2.5 mm² core", "L = 14.2 m", "method E")
    for lines in (2, 3, 4, 5):
        run = least_run_mm(phrases, lines, BODY)
        made = set_phrases(phrases, run, BODY)
        assert len(made) <= lines
        assert all(text_width_mm(line, BODY) <= run for line in made)
        assert " ".join(made).replace(",", "") == " ".join(phrases)
        assert len(set_phrases(phrases, run - 1, BODY)) > lines or any(
            text_width_mm(line, BODY) > run - 1 for line in set_phrases(phrases, run - 1, BODY)
        )


def test_a_wider_column_holds_no_fewer_turned_lines() -> None:
    counts = [turned_lines(pitch) for pitch in range(20, 60)]
    assert counts == sorted(counts)


def test_a_long_chain_is_shortened_to_its_last_sign_and_loses_no_point() -> None:
    stages = tuple(Stage((f"P{i}",), "socket", (f"W1-{i}",)) for i in range(6))
    short = shortened_chain(stages, 3)
    assert [p for s in short for p in s.points] == [f"P{i}" for i in range(6)]
    assert [c for s in short for c in s.cables] == [f"W1-{i}" for i in range(6)]
    assert [s.gathered for s in short] == [False, False, True]
    assert shortened_chain(stages, 6) == stages


def test_abbreviations_are_found_as_whole_words() -> None:
    found = dict(abbreviations_in(["W03 4c × 6 mm²", "XLPE/SWA/PVC", "SP+N", "Ib 12 A"]))
    assert set(found) >= {"c", "XLPE", "SWA", "PVC", "SP+N", "Ib"}
    assert "TP" not in found
    assert "Zs" not in found


def test_each_board_comes_after_the_board_that_feeds_it() -> None:
    installation = grown_model(9, boards=12, ways=6).installation
    order = [tree.tag for tree in board_trees(installation)]
    assert sorted(order) == sorted(installation.boards)
    for board in installation.boards.values():
        feeder = installation.circuits.get(board.fed_by)
        if feeder is not None:
            assert order.index(feeder.board) < order.index(board.tag)


def test_only_blank_ways_are_narrower_than_the_pitch() -> None:
    model = grown_model(2, boards=1, ways=12)
    (tree,) = board_trees(model.installation)
    kinds = {
        column.kind: column_width_mm(column_words(model, column), 40.0) for column in tree.columns
    }
    assert kinds["circuit"] == 40.0
    assert kinds["blank"] < 40.0


def test_a_starter_is_drawn_with_its_motor_however_short_the_chain_is_to_be() -> None:
    signs = ("isolator_enclosed", STARTER_SIGN, "motor_3ph", "light_switch", "fan")
    stages = tuple(Stage((f"P{i}",), sign, (f"W{i}",)) for i, sign in enumerate(signs))
    for most in (1, 2, 3):
        drawn = shortened_chain(stages, most)
        assert [stage.symbol for stage in drawn[:2]] == ["isolator_enclosed", STARTER_SIGN]
        assert drawn[2].points == ("P2", "P3", "P4")
    assert [s.symbol for s in shortened_chain(stages[:3], 1)] == list(signs[:3])
