"""A cable card: framed, with its tag and cut length large, never parted over two pages."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.fonts import text_width_mm
from asfitted.geometry import Box, Point
from asfitted.layout.brief.flow import AREA, Block
from asfitted.layout.lettering import BODY, TAG, line_pitch_mm, lines_of_text, wrap
from asfitted.layout.linework import polyline, rectangle
from asfitted.layout.sheet_layout import Item, Text

if TYPE_CHECKING:
    from asfitted.layout.brief.card_words import CardWords
    from asfitted.layout.sheet_model import Numbers

PAD_MM = 2.0
HEAD_MM = TAG + 2 * PAD_MM
LABEL_MM = 21.0
FOOT_MM = BODY + 2 * PAD_MM + 0.6
ROW_GAP_MM = 0.5


def card_block(card: CardWords) -> Block:
    """Return a card as one block."""
    broken = _broken(card)
    lines = sum(len(words) for _, words in broken)
    body = lines * line_pitch_mm(BODY) + len(broken) * ROW_GAP_MM + PAD_MM
    height = HEAD_MM + body + FOOT_MM

    def draw(at: Point, _: Numbers) -> tuple[Item, ...]:
        box = Box(at.x, at.y, AREA.x1, at.y + height)
        name = f"card:{card.tag}"
        return (
            Item(f"{name}:frame", "outline", _frame(box)),
            Item(f"{name}:head", "text", _head(card, box)),
            Item(f"{name}:words", "text", _rows(broken, box)),
            Item(f"{name}:ticks", "text", _ticks(card, box)),
        )

    return Block(height, draw)


def label_width_mm(card: CardWords) -> float:
    """Return the width of the labels' column of a card."""
    widest = max(text_width_mm(label, BODY, bold=True) for label, _ in card.rows)
    return max(LABEL_MM, widest + 3.0)


def _broken(card: CardWords) -> list[tuple[tuple[str, float], list[str]]]:
    """Return each label with the place of its words, and the words broken into lines."""
    left = label_width_mm(card)
    width = AREA.width - left - 2 * PAD_MM
    return [((label, left), wrap(words, width, BODY)) for label, words in card.rows]


def _frame(box: Box) -> tuple:  # type: ignore[type-arg]
    head = Box(box.x0, box.y0, box.x1, box.y0 + HEAD_MM)
    foot = box.y1 - FOOT_MM
    return (
        rectangle(head, width_mm=None, fill="tint"),
        polyline((box.x0, head.y1), (box.x1, head.y1), width_mm=0.18),
        polyline((box.x0, foot), (box.x1, foot), width_mm=0.18),
        rectangle(box, width_mm=0.5),
    )


def _head(card: CardWords, box: Box) -> tuple[Text, ...]:
    y = box.y0 + PAD_MM + TAG
    at = Point(box.x0 + PAD_MM, y)
    kind_x = at.x + text_width_mm(card.tag, TAG, bold=True) + 4.0
    return (
        Text(at, card.tag, TAG, bold=True),
        Text(Point(kind_x, y), card.kind, BODY),
        Text(Point(box.x1 - PAD_MM, y), f"cut {card.cut}", TAG, anchor="end", bold=True),
    )


def _rows(broken: list[tuple[tuple[str, float], list[str]]], box: Box) -> tuple[Text, ...]:
    texts: list[Text] = []
    y = box.y0 + HEAD_MM + line_pitch_mm(BODY)
    for (label, left), lines in broken:
        texts.append(Text(Point(box.x0 + PAD_MM, y), label, BODY, bold=True))
        texts += lines_of_text(lines, Point(box.x0 + PAD_MM + left, y))
        y += len(lines) * line_pitch_mm(BODY) + ROW_GAP_MM
    return tuple(texts)


def _ticks(card: CardWords, box: Box) -> tuple[Text, ...]:
    """Return the boxes to tick, in equal shares of the width."""
    share = (box.width - 2 * PAD_MM) / len(card.ticks)
    y = box.y1 - PAD_MM - 0.6
    return tuple(
        Text(Point(box.x0 + PAD_MM + i * share, y), f"☐ {word}", BODY)
        for i, word in enumerate(card.ticks)
    )
