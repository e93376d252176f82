"""Sheets of one series, told together: the numbered parts of a list, the walls of a room."""

from __future__ import annotations

import re
from dataclasses import dataclass
from itertools import groupby
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.sheet_model import SheetPlan

#: "Cut list, part 3 of 21", "Single-line diagram: DB1 part 2", "Commissioning, 1 of 4".
_PART = re.compile(r"(?P<head>.+?)(?:,? part \d+(?: of \d+)?|, \d+ of \d+)")
#: "Elevation A, outside face: Plant", "Elevations D and D outside: Kitchen, Ground floor".
_WALLS = re.compile(r"Elevations? (?P<walls>[^:]+?)(?:: (?P<place>.+))?")
_ELEVATION = "elevation/"


@dataclass(frozen=True)
class Series:
    """Sheets that follow one another and are told in one row."""

    title: str
    sheets: tuple[SheetPlan, ...]

    @property
    def first(self) -> SheetPlan:
        """The sheet that the row leads to."""
        return self.sheets[0]

    @property
    def papers(self) -> str:
        """Every paper of the series, such as ``A3`` or ``A3, A4``."""
        return ", ".join(dict.fromkeys(sheet.paper.split()[0] for sheet in self.sheets))


def series_of(sheets: Sequence[SheetPlan]) -> list[Series]:
    """Return the sheets of a set, those of one series together, in the order of the set.

    The walls of a room are one series only where the job has several rooms with elevations: in a
    job of one room each wall is looked for by its own name.
    """
    by_room = len({_room(sheet) for sheet in sheets if _is_wall(sheet)}) > 1
    together = groupby(sheets, key=lambda sheet: _series_name(sheet, by_room=by_room))
    return [_series(tuple(group)) for _, group in together]


def numbers_of(keys: Sequence[str], every: Sequence[str]) -> str:
    """Return references to sheets, runs of them as ``[[first]] to [[last]]``.

    Args:
        keys: the sheets to name, in the order of ``every``.
        every: the sheets of the set in order, which tells what follows what.
    """
    place = {key: i for i, key in enumerate(every)}
    runs: list[list[str]] = []
    for key in keys:
        if runs and place[key] == place[runs[-1][-1]] + 1:
            runs[-1].append(key)
        else:
            runs.append([key])
    told = [
        f"[[{run[0]}]] to [[{run[-1]}]]" if len(run) > 2 else ", ".join(f"[[{key}]]" for key in run)
        for run in runs
    ]
    return ", ".join(told)


def _is_wall(sheet: SheetPlan) -> bool:
    return sheet.key.startswith(_ELEVATION) and not sheet.title.startswith("Elevations:")


def _room(sheet: SheetPlan) -> str:
    """Return the room of an elevation by its key: ``elevation/Plant A/outside`` is Plant's."""
    return sheet.key.removeprefix(_ELEVATION).partition("/")[0].rpartition(" ")[0]


def _series_name(sheet: SheetPlan, *, by_room: bool) -> tuple[str, str]:
    """Return what the sheets of one series have in common: their part of the set and a name."""
    if by_room and _is_wall(sheet):
        return sheet.section, f"{_ELEVATION}{_room(sheet)}"
    part = _PART.fullmatch(sheet.title)
    return sheet.section, part["head"] if part else sheet.title


def _series(sheets: tuple[SheetPlan, ...]) -> Series:
    if len(sheets) == 1:
        return Series(sheets[0].title, sheets)
    if _is_wall(sheets[0]) and not _same_parts(sheets):
        return Series(_walls_title(sheets), sheets)
    part = _PART.fullmatch(sheets[0].title)
    return Series(part["head"] if part else sheets[0].title, sheets)


def _same_parts(sheets: Sequence[SheetPlan]) -> bool:
    """Tell whether sheets are the numbered parts of one thing."""
    found = [_PART.fullmatch(sheet.title) for sheet in sheets]
    return len({part["head"] if part else None for part in found}) == 1 and found[0] is not None


def _walls_title(sheets: Sequence[SheetPlan]) -> str:
    """Return the walls of a room in one title: ``Elevations A, A outside, B to D: Plant``."""
    walls: list[str] = []
    places = [_room(sheets[0])]
    for sheet in sheets:
        told = _WALLS.fullmatch(sheet.title)
        if told is None:
            continue
        named = re.sub(r", parts? .*", "", told["walls"]).replace(", outside face", " outside")
        walls += re.split(r", | and ", named)
        places.append(told["place"] or "")
    return f"Elevations {_letters(list(dict.fromkeys(walls)))}: {max(places, key=len)}"


def _letters(walls: Sequence[str]) -> str:
    """Return names of walls with three or more letters in a row as ``A to D``."""
    runs: list[list[str]] = []
    for wall in walls:
        last = runs[-1][-1] if runs else ""
        if len(wall) == len(last) == 1 and ord(wall) == ord(last) + 1:
            runs[-1].append(wall)
        else:
            runs.append([wall])
    told = [f"{run[0]} to {run[-1]}" if len(run) > 2 else ", ".join(run) for run in runs]
    return ", ".join(told)
