"""A cable card: framed, with its tag and cut length large, never parted over two pages.

Short rows stand beside each other, so that more cards go on a page; the lettering keeps its size.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.fonts import text_width_mm
from asfitted.geometry import Box, Point
from asfitted.layout.brief.flow import AREA, Block
from asfitted.layout.lettering import BODY, TAG, line_pitch_mm, lines_of_text, wrap
from asfitted.layout.linework import polyline, rectangle
from asfitted.layout.sheet_layout import Item, Text

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.brief.card_words import CardWords
    from asfitted.layout.sheet_model import Numbers

PAD_MM = 1.7
HEAD_MM = TAG + 2.8
LABEL_MM = 11.0
FOOT_MM = BODY + 2.8
ROW_GAP_MM = 0.2
BESIDE_MM = 5.0  # between two rows that share a line
STEP_MM = 10.0  # rows that share a line begin at steps, so that they stand under each other
CARD_GAP_MM = 1.8  # under a card
WORD_GAP_MM = 3.0  # between the parts of the head


@dataclass(frozen=True)
class _Row:
    """A labelled row of a card: where it begins across, and its words broken into lines."""

    label: str
    x_mm: float
    words_x_mm: float
    lines: tuple[str, ...]


def card_block(card: CardWords) -> Block:
    """Return a card as one block."""
    card = card if _head_fits(card) else _with_label_row(card)
    rows = _side_by_side(card)
    count = sum(max(len(row.lines) for row in line) for line in rows)
    body = count * line_pitch_mm(BODY) + len(rows) * ROW_GAP_MM + 1.4
    height = HEAD_MM + body + FOOT_MM

    def draw(at: Point, _: Numbers) -> tuple[Item, ...]:
        box = Box(at.x, at.y, AREA.x1, at.y + height)
        name = f"card:{card.tag}"
        return (
            Item(f"{name}:frame", "outline", _frame(box)),
            Item(f"{name}:head", "text", _head(card, box)),
            Item(f"{name}:words", "text", _texts(rows, box)),
            Item(f"{name}:ticks", "text", _ticks(card, box)),
        )

    return Block(height, draw, gap_mm=CARD_GAP_MM)


def label_width_mm(card: CardWords) -> float:
    """Return the width of the labels' column of a card."""
    widest = max(text_width_mm(label, BODY, bold=True) for label, _ in card.rows)
    return max(LABEL_MM, widest + 2.0)


def _head_fits(card: CardWords) -> bool:
    """Tell whether tag, line, kind and length to cut stand beside each other in the head."""
    tag, line, kind = _head_widths(card)
    cut = text_width_mm(card.cut, TAG, bold=True)
    return tag + line + kind + cut + 3 * WORD_GAP_MM <= AREA.width - 2 * PAD_MM


def _head_widths(card: CardWords) -> tuple[float, float, float]:
    return (
        text_width_mm(card.tag, TAG, bold=True),
        text_width_mm(card.line, BODY, bold=True),
        text_width_mm(card.kind, BODY),
    )


def _with_label_row(card: CardWords) -> CardWords:
    """Return a card whose head is too long with from and to in a row of their own."""
    rows = (*card.rows, ("Labels", f"both ends: {card.tag}, {card.line}"))
    return type(card)(card.tag, "", card.kind, card.cut, rows, card.ticks)


def _side_by_side(card: CardWords) -> list[list[_Row]]:
    """Return the rows line by line: a row of one line is followed by others that find room."""
    left, width = label_width_mm(card), AREA.width - 2 * PAD_MM
    lines: list[list[_Row]] = []
    for label, words in card.rows:
        beside = _beside(lines[-1], label, words, width) if lines else None
        if beside is not None:
            lines[-1].append(beside)
        else:
            lines.append([_Row(label, 0.0, left, tuple(wrap(words, width - left, BODY)))])
    return lines


def _beside(line: Sequence[_Row], label: str, words: str, width_mm: float) -> _Row | None:
    """Return a row that stands beside those of a line, None where it finds no room there."""
    last = line[-1]
    if len(last.lines) > 1:
        return None
    end = last.words_x_mm + text_width_mm(last.lines[0], BODY) + BESIDE_MM
    x = -(-end // STEP_MM) * STEP_MM
    words_x = x + text_width_mm(label, BODY, bold=True) + 2.0
    if words_x + text_width_mm(words, BODY) > width_mm:
        return None
    return _Row(label, x, words_x, (words,))


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
    """Return tag, from and to, and kind, as on the labels, with the length to cut at the end."""
    y = box.y0 + (HEAD_MM + TAG) / 2
    tag_mm, line_mm, _ = _head_widths(card)
    at = Point(box.x0 + PAD_MM, y)
    texts = [Text(at, card.tag, TAG, bold=True)]
    x = at.x + tag_mm + WORD_GAP_MM
    if card.line:
        texts.append(Text(Point(x, y), card.line, BODY, bold=True))
        x += line_mm + WORD_GAP_MM
    texts.append(Text(Point(x, y), card.kind, BODY))
    cut = Text(Point(box.x1 - PAD_MM, y), card.cut, TAG, anchor="end", bold=True)
    return (*texts, cut)


def _texts(rows: Sequence[Sequence[_Row]], box: Box) -> tuple[Text, ...]:
    texts: list[Text] = []
    x, y = box.x0 + PAD_MM, box.y0 + HEAD_MM + line_pitch_mm(BODY) - 0.3
    for line in rows:
        for row in line:
            texts.append(Text(Point(x + row.x_mm, y), row.label, BODY, bold=True))
            texts += lines_of_text(list(row.lines), Point(x + row.words_x_mm, y))
        y += max(len(row.lines) for row in line) * line_pitch_mm(BODY) + ROW_GAP_MM
    return tuple(texts)


def _ticks(card: CardWords, box: Box) -> tuple[Text, ...]:
    """Return the boxes to tick, in equal shares of the width."""
    share = (box.width - 2 * PAD_MM) / len(card.ticks)
    y = box.y1 - (FOOT_MM - BODY) / 2
    return tuple(
        Text(Point(box.x0 + PAD_MM + i * share, y), f"☐ {word}", BODY)
        for i, word in enumerate(card.ticks)
    )
