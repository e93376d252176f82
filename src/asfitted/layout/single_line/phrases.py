"""Phrases set in lines: a line breaks between phrases, and inside one only when it must."""

from __future__ import annotations

import re
from functools import cache
from typing import TYPE_CHECKING

from asfitted.fonts import text_width_mm

if TYPE_CHECKING:
    from collections.abc import Sequence

#: A line may break after a blank, but not between a figure and its unit or round a times sign; and
#: after the hyphen of a compound word.
_BREAK = re.compile(
    r"(?<= )(?<!× )(?!×)(?!(?:mm²|m|A|mA|kA|W|kW|Ω|Hz|V)\b)(?!%)|(?<=[a-z]-)(?=[a-z])"
)


MOST_LETTERS = 24  # of a word that is kept whole


@cache
def width_mm(text: str, cap_mm: float, *, bold: bool = False) -> float:
    """Return the room for one line of text in mm; the same texts are asked for many times."""
    return text_width_mm(text, cap_mm, bold=bold)


def set_phrases(
    phrases: Sequence[str], room_mm: float, cap_mm: float, *, join: str = ", "
) -> list[str]:
    """Return phrases set in lines of a width; a phrase longer than a line is broken at words.

    Args:
        phrases: phrases in order.
        room_mm: width of a line, mm.
        cap_mm: height of capitals, mm.
        join: what stands between two phrases on one line; its blanks do not end a line.

    Returns:
        The lines; none when there are no phrases.
    """
    lines: list[str] = []
    line = ""
    for phrase in phrases:
        trial = f"{line}{join}{phrase}" if line else phrase
        if width_mm(trial, cap_mm) <= room_mm:
            line = trial
            continue
        if line:
            lines.append(line)
        *full, line = wrapped(phrase, room_mm, cap_mm)
        lines.extend(full)
    return [*lines, line] if line else lines


def wrapped(text: str, room_mm: float, cap_mm: float, *, bold: bool = False) -> list[str]:
    """Return text in lines of a width; a word with a hyphen may be broken after it."""
    lines: list[str] = []
    line = ""
    for piece in _pieces(text):
        trial = line + piece
        if line and width_mm(trial.rstrip(), cap_mm, bold=bold) > room_mm:
            lines.append(line.rstrip())
            trial = piece
        line = trial
    return [*lines, line.rstrip()] if line else lines


@cache
def _pieces(text: str) -> tuple[str, ...]:
    """Return what may stand at the end of a line: words with their blank, parts with a hyphen.

    A word longer than any column should be wide is parted, as a name made of code may be.
    """
    pieces = (piece for piece in _BREAK.split(text) if piece)
    return tuple(part for piece in pieces for part in _parted(piece))


def _parted(piece: str) -> list[str]:
    if len(piece) <= MOST_LETTERS or " " in piece.strip():
        return [piece]
    cut = [piece[i : i + MOST_LETTERS] for i in range(0, len(piece), MOST_LETTERS)]
    return cut if len(cut[-1].strip()) > 2 else [*cut[:-2], cut[-2] + cut[-1]]


def widest_word_mm(texts: Sequence[str], cap_mm: float, *, bold: bool = False) -> float:
    """Return the width in mm of the longest unbroken piece: no column may be narrower."""
    pieces = (piece.rstrip() for text in texts for piece in _pieces(text))
    return max((width_mm(piece, cap_mm, bold=bold) for piece in pieces), default=0.0)


@cache
def least_run_mm(phrases: tuple[str, ...], lines: int, cap_mm: float) -> float:
    """Return the shortest run of line, in whole mm, that carries phrases in so many lines."""
    low, high = 10, 400
    while low < high:
        middle = (low + high) // 2
        made = set_phrases(phrases, middle, cap_mm)
        fits = len(made) <= lines and all(width_mm(line, cap_mm) <= middle for line in made)
        low, high = (low, middle) if fits else (middle + 1, high)
    return float(low)
