"""On which sheet of the brief each wall and each cable is told, several to a line, led there."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from asfitted.fonts import text_width_mm
from asfitted.geometry import Point
from asfitted.layout.brief.flow import AREA, Block
from asfitted.layout.document.references import PLACEHOLDER, link_to
from asfitted.layout.lettering import BODY, line_pitch_mm
from asfitted.layout.sheet_layout import Item, Text

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from asfitted.layout.sheet_model import Numbers

CARD, WALL = "brief-card/", "brief-wall/"  # keys of what the index leads to
WORD_MM = 1.5  # between a name and its sheet
APART_MM = 4.0  # between two entries
LINE_GAP_MM = 0.4
TOGETHER = 12  # lines that stay on one page


@dataclass(frozen=True)
class Entry:
    """A name, and the key of the sheet that tells of it with the item there."""

    ident: str
    name: str
    key: str


def card_key(tag: str) -> str:
    """Return the key under which the page of a card is found."""
    return f"{CARD}{tag}"


def wall_key(name: str) -> str:
    """Return the key under which the page of a wall is found."""
    return f"{WALL}{name}"


def card_entry(tag: str) -> Entry:
    """Return the entry of a cable."""
    return Entry(f"cable:{tag}", tag, f"{card_key(tag)}#card:{tag}:head")


def wall_entry(name: str) -> Entry:
    """Return the entry of a wall."""
    return Entry(f"wall:{name}", f"wall {name}", f"{wall_key(name)}#brief:wall:{name}")


def index_lines(ident: str, *lists: Iterable[Entry]) -> list[Block]:
    """Return some lists of entries, each in columns of one width, a block for each line.

    A short index stays together; a long one is parted between any two of its lines.
    """
    lines = [line for entries in lists for line in _lines(ident, tuple(entries))]
    if len(lines) > TOGETHER:
        return lines
    return [*(replace(line, joined=True) for line in lines[:-1]), *lines[-1:]]


def _lines(ident: str, entries: Sequence[Entry]) -> list[Block]:
    if not entries:
        return []
    widest = max(text_width_mm(one.name, BODY, bold=True) for one in entries)
    column = widest + WORD_MM + text_width_mm(PLACEHOLDER, BODY) + APART_MM
    count = max(1, int((AREA.width + APART_MM) / column))
    share = AREA.width / count if len(entries) > count else column
    rows = [entries[i : i + count] for i in range(0, len(entries), count)]
    return [
        _line(ident, row, share, last=number == len(rows)) for number, row in enumerate(rows, 1)
    ]


def _line(ident: str, entries: Sequence[Entry], share_mm: float, *, last: bool) -> Block:
    def draw(at: Point, numbers: Numbers) -> tuple[Item, ...]:
        return tuple(
            _entry(ident, one, Point(at.x + i * share_mm, at.y + BODY), numbers)
            for i, one in enumerate(entries)
        )

    gap = 2.5 if last else LINE_GAP_MM
    return Block(line_pitch_mm(BODY), draw, gap_mm=gap)


def _entry(ident: str, entry: Entry, at: Point, numbers: Numbers) -> Item:
    """Return a name in bold with the number of its sheet, led to what the sheet tells of it."""
    link = link_to(entry.key, numbers)
    behind = at.moved(dx=text_width_mm(entry.name, BODY, bold=True) + WORD_MM)
    texts = (
        Text(at, entry.name, BODY, bold=True),
        Text(behind, numbers.of(entry.key.partition("#")[0]), BODY),
    )
    return Item(f"{ident}:{entry.ident}", "text", texts, link=link)
