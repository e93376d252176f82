"""Places: enclosures side by side, every row at its height, and the points that flags name."""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import accumulate
from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.frame import zone_of
from asfitted.layout.single_line.label import switch_x_mm
from asfitted.layout.single_line.overview_places import place_overview
from asfitted.layout.single_line.parts import BREAK_MM, Shown, direct_board
from asfitted.layout.single_line.room import FLAG_ROW, SIGN, SPINE, WAY_ROW, column_width_mm
from asfitted.layout.single_line.sheet_rooms import WIDE
from asfitted.layout.single_line.side import items_from
from asfitted.layout.single_line.splitting import (
    BOX_GAP,
    BOX_PAD,
    part_width_mm,
    split_over_sheets,
)

if TYPE_CHECKING:
    from collections.abc import Mapping

    from asfitted.layout.sheet_model import Model, Numbers
    from asfitted.layout.single_line.overview_parts import PlacedOverview
    from asfitted.layout.single_line.parts import Part, SheetFit

NOTES_KEY = "single-line-diagram/notes"
NOTES_GAP_MM = 14.0  # under an overview: to the notes and the legend
MOST_STRETCH_MM = 40.0  # a leg is drawn at most so much longer than its text needs


@dataclass(frozen=True)
class Levels:
    """Heights on the sheet that all boards share, mm from the top edge.

    ``leg_tops`` and ``legs`` are the upper and lower ends of the room of the lines' texts,
    ``stages`` the tops of the signs before the last.
    """

    box_top: float
    busbar: float
    device: float
    box_bottom: float
    leg_tops: tuple[float, ...]
    legs: tuple[float, ...]
    stages: tuple[float, ...]
    load: float
    points: float
    names: float
    figures: float


@dataclass(frozen=True)
class PlacedPart:
    """A board, or some of its ways, at its place."""

    part: Part
    box: Box
    column_x: tuple[float, ...]  # left edge of each column
    switch_x: float  # the incoming line
    is_direct: bool

    def spine(self, index: int) -> float:
        """Return the x of the wire of a column."""
        return self.column_x[index] + SPINE


@dataclass(frozen=True)
class PlacedSheet:
    """One sheet of the diagram with everything at its place.

    ``flags`` gives the middle of each off-page flag by what it joins: ``to:DB2`` and ``from:DB2``
    for a feed, ``on:DB1/2`` and ``back:DB1/2`` for the second part of a board that is cut.
    """

    key: str
    fit: SheetFit
    levels: Levels
    parts: tuple[PlacedPart, ...]
    flags: Mapping[str, Point]


@dataclass(frozen=True)
class PlacedDiagram:
    """All sheets of the diagram, so that each can name the others.

    ``notes_key`` names the sheet with the notes and the legend of those sheets that have none: the
    overview when it has room for them, else a sheet of their own, "" when none is needed.
    """

    sheets: tuple[PlacedSheet, ...]
    overview: tuple[PlacedOverview, ...]
    notes_key: str

    def where(self, flag: str, numbers: Numbers) -> tuple[str, str] | None:
        """Return sheet number and zone of a flag, or None when no sheet has it."""
        for sheet in self.sheets:
            if flag in sheet.flags:
                return numbers.of(sheet.key), zone_of(sheet.fit.room.paper, sheet.flags[flag])
        for page in self.overview:
            if flag in page.flags:
                return numbers.of(page.key), zone_of(page.room.paper, page.flags[flag])
        return None

    def sheets_of(self, tag: str) -> tuple[PlacedSheet, ...]:
        """Return the sheets on which ways of a board stand."""
        return tuple(s for s in self.sheets if any(p.part.tag == tag for p in s.parts))

    @property
    def all_shown(self) -> Shown:
        """What a legend of the whole set explains."""
        parts = tuple(part for sheet in self.sheets for part in sheet.fit.parts)
        has_intake = any(sheet.fit.has_intake for sheet in self.sheets)
        return Shown(parts, has_intake=has_intake, has_overview=bool(self.overview))


def place_diagram(model: Model) -> PlacedDiagram:
    """Return every sheet of the single-line diagram of a job with a board."""
    fits = split_over_sheets(model)
    keys = [f"single-line-diagram/{i}" for i in range(1, len(fits) + 1)]
    if len(fits) == 1:
        keys = ["single-line-diagram"]
    sheets = tuple(_place(model, fit, key) for fit, key in zip(fits, keys, strict=True))
    if fits[0].has_intake:
        return PlacedDiagram(sheets, (), "" if fits[0].room.has_side else NOTES_KEY)
    diagram = PlacedDiagram(sheets, place_overview(model), NOTES_KEY)
    last = diagram.overview[-1]
    is_wide = last.room is WIDE and len(diagram.overview) == 1
    if is_wide and items_from(model, diagram.all_shown, last.foot_y + NOTES_GAP_MM) is not None:
        return replace(diagram, notes_key=last.key)
    return diagram


def _place(model: Model, fit: SheetFit, key: str) -> PlacedSheet:
    levels = _levels(fit)
    direct = direct_board(model, fit.parts, has_intake=fit.has_intake)
    placed: list[PlacedPart] = []
    x = fit.room.area.x0
    for part in fit.parts:
        is_direct = part.tag == direct
        width = part_width_mm(part, fit.pitch_mm, is_direct=is_direct)
        box = Box(x, levels.box_top, x + width, levels.box_bottom)
        first = x + BOX_PAD + (BREAK_MM if part.number > 1 else 0.0)
        widths = [column_width_mm(words, fit.pitch_mm) for words in part.words]
        columns = tuple(accumulate([first, *widths[:-1]]))
        switch = x + switch_x_mm(width)
        placed.append(PlacedPart(part, box, columns, switch, is_direct))
        x = box.x1 + BOX_GAP
    flags = {name: at for p in placed for name, at in _flags_of(p, levels).items()}
    return PlacedSheet(key, fit, levels, tuple(placed), flags)


def _levels(fit: SheetFit) -> Levels:
    """Return the rows from the top down; spare height lengthens the legs, equally."""
    rows = fit.rows
    area = fit.room.area
    spare = max(0.0, area.height - fit.band_mm - rows.total)
    stretch = min(MOST_STRETCH_MM, spare / max(1, len(rows.legs)))
    box_top = area.y0 + fit.band_mm
    busbar = box_top + rows.header
    bottom = busbar + rows.device
    heights = [leg + stretch for leg in rows.legs]
    stages = [*rows.stages, 0.0][: len(heights)]
    ends = list(accumulate(h + s for h, s in zip(heights, stages, strict=True)))
    tops = [bottom + end - stage for end, stage in zip(ends, stages, strict=True)]
    load = tops[-1] if tops else bottom
    points = load + rows.signs
    return Levels(
        box_top=box_top,
        busbar=busbar,
        device=busbar + WAY_ROW,
        box_bottom=bottom,
        leg_tops=tuple(top - height for top, height in zip(tops, heights, strict=True)),
        legs=tuple(tops),
        stages=tuple(tops[:-1]),
        load=load,
        points=points,
        names=points + rows.points,
        figures=points + rows.points + rows.names,
    )


def _flags_of(placed: PlacedPart, levels: Levels) -> dict[str, Point]:
    """Return the flags of a part: feeds that leave it, its own feed, and its cut ends."""
    part = placed.part
    flags: dict[str, Point] = {}
    for i, column in enumerate(part.columns):
        for stage in column.stages:
            if stage.feeds:
                flags[f"to:{stage.feeds}"] = Point(placed.spine(i), levels.load + SIGN / 2)
    if part.number == 1 and not placed.is_direct:
        at = Point(placed.switch_x, levels.box_top - FLAG_ROW + SIGN / 2)
        flags[f"from:{part.tag}"] = at
    if part.number > 1:
        flags[f"back:{part.tag}/{part.number}"] = Point(placed.box.x0 + 8.0, levels.busbar)
    if part.number < part.count:
        flags[f"on:{part.tag}/{part.number + 1}"] = Point(placed.box.x1 - 8.0, levels.busbar)
    return flags
