"""What a text page is made of: the blocks a sheet kind writes, before anything is measured.

Words may hold ``[[key]]`` or ``[[key#item]]``: the number of a sheet, filled in when sheets have
numbers, and a link to that sheet or to that item on it.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping

    from asfitted.layout.table import Table


@dataclass(frozen=True)
class Heading:
    """A heading; it never stands alone at the foot of a page."""

    text: str
    level: int = 1  # 1: of a part, 2: within a part


@dataclass(frozen=True)
class Paragraph:
    """Running text. ``large`` is the height of tags: for the one thing that must be found.

    ``leads`` keeps it on the page of the block it speaks of, which follows.
    """

    text: str
    bold: bool = False
    large: bool = False
    leads: bool = False


@dataclass(frozen=True)
class Bullets:
    """A list; ``mark`` stands before each entry ("•", or "☐" for what is to be ticked)."""

    entries: tuple[str, ...]
    mark: str = "•"


@dataclass(frozen=True)
class Facts:
    """Labels with what is known of each, in two columns."""

    rows: tuple[tuple[str, str], ...]
    label_mm: float = 46.0


@dataclass(frozen=True)
class Ruled:
    """A ruled table over the whole width; its header is repeated on each page.

    ``links`` gives rows, by ident, the ``key`` or ``key#item`` they lead to.
    """

    ident: str
    table: Table
    links: Mapping[str, str] = field(default_factory=dict)
    least_row_mm: float = 0.0  # room for handwriting


@dataclass(frozen=True)
class Boxed:
    """A heading and a few lines in a heavy box: what nobody may overlook. It is never split."""

    heading: str
    lines: tuple[str, ...]


@dataclass(frozen=True)
class PageBreak:
    """What follows begins a new page."""


Block = Heading | Paragraph | Bullets | Facts | Ruled | Boxed | PageBreak
