"""A card on paper: short rows beside each other, none over another, none wider than the card."""

from __future__ import annotations

from itertools import combinations

from asfitted.geometry import Point
from asfitted.layout.brief.card import card_block
from asfitted.layout.brief.card_words import CardWords
from asfitted.layout.brief.flow import AREA
from asfitted.layout.lettering import box_of
from asfitted.layout.sheet_layout import Text
from asfitted.layout.sheet_model import Numbers

LONG = "a way of many words along the tray and down the wall to where it is fixed, " * 3


def texts_of(card: CardWords) -> dict[str, list[Text]]:
    items = card_block(card).draw(Point(AREA.x0, 20.0), Numbers({}))
    return {
        item.ident.split(":")[-1]: [part for part in item.parts if isinstance(part, Text)]
        for item in items
    }


def card_of(*rows: tuple[str, str], line: str = "B1/2 to S3") -> CardWords:
    return CardWords("W07", line, "2.5/1.5 mm²", "12.4 m", rows, ("cut", "pulled", "tested"))


def baseline(texts: list[Text], words: str) -> float:
    return next(text.at.y for text in texts if text.text == words)


def test_short_rows_share_a_line_and_long_ones_do_not() -> None:
    words = texts_of(card_of(("From", "S2"), ("To", "S3"), ("Way 1", LONG), ("Cores", "L1 brown")))
    texts = words["words"]
    assert baseline(texts, "From") == baseline(texts, "To")
    assert baseline(texts, "Way 1") > baseline(texts, "To")
    assert baseline(texts, "Cores") > baseline(texts, "Way 1")


def test_nothing_stands_over_anything_or_leaves_the_card() -> None:
    card = card_of(("From", "S2"), ("To", "S3"), ("Way 1", LONG), ("Tails", "150"), ("Cores", "L"))
    block = card_block(card)
    boxes = [box_of(text) for part in texts_of(card).values() for text in part]
    assert not any(one.meets(other) for one, other in combinations(boxes, 2))
    for box in boxes:
        assert AREA.x0 < box.x0 < box.x1 < AREA.x1
        assert 20.0 < box.y0 < box.y1 < 20.0 + block.height_mm


def test_a_head_that_is_too_long_keeps_its_labels_in_a_row() -> None:
    long_line = "DISTRIBUTION-BOARD-01/12L1 to SOCKET-OUTLET-OF-THE-FAR-BENCH-BY-THE-WINDOW-0042"
    told = texts_of(card_of(("From", "S2"), line=long_line))
    assert long_line not in [text.text for text in told["head"]]
    assert long_line in " ".join(text.text for text in told["words"])
    short = texts_of(card_of(("From", "S2")))
    assert "B1/2 to S3" in [text.text for text in short["head"]]
