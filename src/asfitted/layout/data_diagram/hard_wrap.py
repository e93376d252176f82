"""Wrapping that never runs over: a word longer than the line is cut, never left out."""

from __future__ import annotations

from asfitted.layout.lettering import fits, wrap


def hard_wrap(text: str, width_mm: float, cap_mm: float, *, bold: bool = False) -> list[str]:
    """Break text into lines none of which is wider than ``width_mm``.

    Args:
        text: words; words that do not fit a line are cut where they must.
        width_mm: room for each line, mm; at least one letter wide.
        cap_mm: height of capitals, mm.
        bold: whether the bold cut is measured.

    Returns:
        The lines, at least one.
    """
    lines = []
    for line in wrap(text, width_mm, cap_mm, bold=bold):
        rest = line
        while len(rest) > 1 and not fits(rest, width_mm, cap_mm, bold=bold):
            cut = len(rest) - 1
            while cut > 1 and not fits(rest[:cut], width_mm, cap_mm, bold=bold):
                cut -= 1
            lines.append(rest[:cut].rstrip())
            rest = rest[cut:].lstrip()
        lines.append(rest)
    return lines
