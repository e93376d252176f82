"""Lettering: the few heights a sheet may use, wrapping, and ready-made lines of text."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Literal

from asfitted.fonts import text_width_mm
from asfitted.layout.sheet_layout import Item, Kind, Text, Tone, text_box

if TYPE_CHECKING:
    from asfitted.geometry import Box, Point

Anchor = Literal["start", "middle", "end"]

#: Heights of capitals in mm (ISO 3098 series). No sheet uses more than these.
BODY = 2.5  # dimensions, notes, cable texts, tables: the least for anything that must be read
TAG = 3.5  # tags of things, view sub-titles, drawing title
VIEW = 5.0  # titles of views, drawing number
LABEL = 1.8  # field labels of the title block only
PART_OF = re.compile(r", part \d+ of \d+$")  # what tells sheets of one title apart
PITCH = 1.65  # baseline to baseline, as a multiple of the capital height


def line_pitch_mm(cap_mm: float) -> float:
    """Return the distance of baselines of running text in mm."""
    return cap_mm * PITCH


def wrap(text: str, width_mm: float, cap_mm: float, *, bold: bool = False) -> list[str]:
    """Break text into lines that fit a width. A single word that is too long stays whole.

    Args:
        text: words; a newline forces a break.
        width_mm: room for each line, mm.
        cap_mm: height of capitals, mm.
        bold: whether the bold cut is measured.

    Returns:
        The lines, at least one.
    """
    lines: list[str] = []
    for paragraph in text.split("\n"):
        line = ""
        for word in unbroken_words(paragraph):
            trial = f"{line} {word}" if line else word
            if line and text_width_mm(trial, cap_mm, bold=bold) > width_mm:
                lines.append(line)
                line = word
            else:
                line = trial
        lines.append(line)
    return lines


#: A figure stays with its unit: "6 kA" is never parted at the end of a line.
_FIGURE_AND_UNIT = re.compile(
    r"(?<=\d) (?=(?:m?A|kA|mm²?|m|k?V|k?W|TB|Ω|%|°C|px/m|kg/m|days?)\b|Ω|%)|(?<=[Sc×+]) (?=\d)"
    r"|(?<= of) (?=\d)"
)
_GLUE = "\x00"


def unbroken_words(text: str) -> list[str]:
    """Return the words of a text, a figure and its unit counting as one word."""
    glued = _FIGURE_AND_UNIT.sub(_GLUE, text)
    return [word.replace(_GLUE, " ") for word in glued.split()]


def fits(text: str, width_mm: float, cap_mm: float, *, bold: bool = False) -> bool:
    """Tell whether one line of text fits a width in mm."""
    return text_width_mm(text, cap_mm, bold=bold) <= width_mm


def shortened(text: str, width_mm: float, cap_mm: float, *, bold: bool = False) -> str:
    """Return the text, cut with an ellipsis if it is wider than ``width_mm``.

    What tells one of several parts from the others stays: "Kitchen and…, part 2 of 4".
    """
    if fits(text, width_mm, cap_mm, bold=bold):
        return text
    tail = found.group() if (found := PART_OF.search(text)) else ""
    cut = text.removesuffix(tail)
    while cut and not fits(f"{cut}…{tail}", width_mm, cap_mm, bold=bold):
        cut = cut[:-1].rstrip(" ,")
    return f"{cut}…{tail}"


def view_heading(title: str, width_mm: float) -> str:
    """Return the heading of a view that fits a width.

    Where it is too wide it loses what stands before its colon, which the title block says too; a
    heading still too wide is cut.
    """
    if not fits(title, width_mm, VIEW, bold=True):
        title = title.rpartition(": ")[2]
    return shortened(title[:1].upper() + title[1:], width_mm, VIEW, bold=True)


def lines_of_text(
    lines: list[str],
    at: Point,
    cap_mm: float = BODY,
    *,
    anchor: Anchor = "start",
    bold: bool = False,
    tone: Tone = "black",
) -> tuple[Text, ...]:
    """Return one Text for each line, the first baseline at ``at``, going down the sheet."""
    pitch = line_pitch_mm(cap_mm)
    return tuple(
        Text(at.moved(dy=i * pitch), line, cap_mm, anchor=anchor, bold=bold, tone=tone)
        for i, line in enumerate(lines)
        if line
    )


def text_item(
    ident: str,
    text: str,
    at: Point,
    cap_mm: float = BODY,
    *,
    anchor: Anchor = "start",
    bold: bool = False,
    turned: bool = False,
    tone: Tone = "black",
    kind: Kind = "text",
) -> Item:
    """Return an item that is one line of text."""
    part = Text(at, text, cap_mm, anchor=anchor, bold=bold, turned=turned, tone=tone)
    return Item(ident, kind, (part,))


def box_of(text: Text) -> Box:
    """Return the room that a text needs on the sheet, mm."""
    return text_box(text, text_width_mm(text.text, text.cap_mm, bold=text.bold))
