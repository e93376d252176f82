"""Titles of elevation sheets, as in the title block and the drawing list."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.lettering import TAG, wrap

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.elevation.sheet_packing import PlannedSheet
    from asfitted.layout.elevation.wall_content import WallContent

TITLE_MM = 60.0  # width of the title in the title block, where it has two lines


def sheet_title(sheet: PlannedSheet) -> str:
    """Return the title of a sheet, with the room where the title block has room for it."""
    contents = [view.content for view in sheet.views]
    if sheet.is_details:
        return f"Elevations: {_details(contents)}"
    contents = [content for content in contents if not content.detail]
    room = contents[0].room
    place = f"{room.name}, {room.storey}" if room.storey else room.name
    names = _walls(contents)
    for whole in (f"{names}: {place}", f"{names}: {room.name}"):
        if len(wrap(whole, TITLE_MM, TAG, bold=True)) <= 2:
            return whole
    return names


def _details(contents: Sequence[WallContent]) -> str:
    """Return which details a sheet holds: "details A a, A b"."""
    names = [f"{c.letter} {c.detail}" for c in contents]
    words = "detail" if len(names) == 1 else "details"
    listed = ", ".join(names)
    return f"{words} {listed}" if len(listed) <= 24 else f"{words} {names[0]} to {names[-1]}"


def _walls(contents: Sequence[WallContent]) -> str:
    """Return which walls a sheet holds: "Elevation A, part 2 of 3", "Elevations A, B and C"."""
    if len(contents) == 1:
        (content,) = contents
        part, parts = content.part
        face = ", outside face" if content.face == "outside" else ""
        of = f", part {part} of {parts}" if parts > 1 else ""
        return f"Elevation {content.letter}{face}{of}"
    names = [f"{c.letter} outside" if c.face == "outside" else c.letter for c in contents]
    names = list(dict.fromkeys(names))
    if len(names) == 1:
        return f"Elevation {names[0]}, parts {contents[0].part[0]} to {contents[-1].part[0]}"
    return f"Elevations {', '.join(names[:-1])} and {names[-1]}"
