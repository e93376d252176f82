"""All elevations of a job: one scale for a room, long walls in parts, small ones together."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from asfitted.layout.elevation.arrangement import (
    SCHEDULES,
    ElevationSheet,
    PlacedView,
    Surroundings,
    arrange,
    short_name,
    tables_of_wall,
)
from asfitted.layout.elevation.notes import general_notes
from asfitted.layout.elevation.panels import TablePanel
from asfitted.layout.elevation.paper_room import drawing_paper
from asfitted.layout.elevation.references import References, ViewPlace
from asfitted.layout.elevation.run_drawing import is_widened
from asfitted.layout.elevation.schedules import keynote_table
from asfitted.layout.elevation.set_scale import views_at_one_scale
from asfitted.layout.elevation.sheet_packing import (
    PlannedSheet,
    PlannedView,
    on_sheets,
    with_details,
)
from asfitted.layout.elevation.shown_part import outer_face_of
from asfitted.layout.elevation.view_plan import plan_views
from asfitted.layout.elevation.wall_drawing import draw_wall
from asfitted.layout.elevation.wall_view import WallView
from asfitted.layout.sheet_model import Numbers

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from asfitted.calculate.results import CalculationResults
    from asfitted.layout.elevation.wall_content import WallContent
    from asfitted.layout.sheet_layout import Paper, SymbolInfo
    from asfitted.resolve.installation import Installation

DETAILS = "elevation/details"
STAND_IN = "000"


@dataclass(frozen=True)
class ElevationSet:
    """What is common to all elevations of a job.

    ``has_schedules`` tells that notes of all walls stand on sheets of their own, and the tables
    for which the sheet of their wall has no room; ``tables_here`` are the idents of the others.
    ``moved`` are the sheets whose keynotes or own notes stand there too.
    """

    sheets: tuple[PlannedSheet, ...]
    paper: Paper
    has_schedules: bool
    moved: tuple[str, ...]
    legend_moved: bool
    tables_here: frozenset[str] = frozenset()

    def references(self, numbers: Numbers) -> References:
        """Return where every view stands, for true references between them."""
        places = {
            v.content.key: ViewPlace(sheet.key, self.paper, v.drawn.view, v.content.face, v.prefix)
            for sheet in self.sheets
            for v in sheet.views
        }
        return References(numbers, places)


@dataclass(frozen=True)
class Job:
    """What elevations are made from."""

    installation: Installation
    results: CalculationResults
    symbols: Mapping[str, SymbolInfo]

    def around(self, refs: References) -> Surroundings:
        """Return what panels are made from."""
        paper = drawing_paper(self.installation)
        return Surroundings(self.installation, self.results, refs, paper, self.symbols)


def plan_set(contents: tuple[WallContent, ...], job: Job) -> ElevationSet:
    """Choose scales, parts, details and sheets, and whether notes and tables need their own.

    Notes go all together, so that the reader looks in one place; tables stay with their wall
    where its sheet has room.
    """
    refs = References(stand_in_numbers(job.installation))
    around = job.around(refs)
    views, details = _views_by_room(contents, around)
    sheets = _sheets(views, details, around, with_tables=True)
    if all(_arranged(sheet, around, "").all_here for sheet in sheets):
        return ElevationSet(
            tuple(sheets), around.paper, has_schedules=False, moved=(), legend_moved=False
        )
    sheets = _sheets(views, details, around, with_tables=False)
    done = [(sheet, _arranged(sheet, around, STAND_IN)) for sheet in sheets]
    return ElevationSet(
        tuple(sheets),
        around.paper,
        has_schedules=True,
        moved=tuple(sheet.key for sheet, laid in done if not laid.all_here),
        legend_moved=not all(laid.has_legend for _, laid in done),
        tables_here=frozenset(ident for _, laid in done for ident in laid.tables),
    )


def _views_by_room(
    contents: Sequence[WallContent], around: Surroundings
) -> tuple[tuple[PlannedView, ...], tuple[PlannedView, ...]]:
    """Return the views and details of all rooms, each room at one scale."""
    views: list[PlannedView] = []
    details: list[PlannedView] = []
    marks = 1
    for room in dict.fromkeys(content.room.name for content in contents):
        own = _with_outer_faces([c for c in contents if c.room.name == room])
        scale, walls = views_at_one_scale(own, around.paper, marks)
        marks += len(walls) - len(own)
        found = plan_views(walls, scale, around)
        views += found[0]
        details += found[1]
    return tuple(views), tuple(details)


def _with_outer_faces(contents: Sequence[WallContent]) -> tuple[WallContent, ...]:
    """Return every wall, its outer face after it where things are mounted there."""
    return tuple(
        view
        for content in contents
        for view in ((content, outer_face_of(content)) if content.outside_key else (content,))
    )


def _sheets(
    views: tuple[PlannedView, ...],
    details: tuple[PlannedView, ...],
    around: Surroundings,
    *,
    with_tables: bool,
) -> list[PlannedSheet]:
    """Return the sheets of the views, details beside them where they have room."""
    sheets = on_sheets(views, around, with_tables=with_tables)
    done, left = with_details(sheets, details, around, with_tables=with_tables)
    return [*done, *_details(left, around)]


def _details(details: Sequence[PlannedView], around: Surroundings) -> list[PlannedSheet]:
    """Return the sheets of the details, several on one."""
    sheets = on_sheets(details, around, with_tables=False, any_room=True)
    return [
        replace(sheet, key=DETAILS if n == 1 else f"{DETAILS}/{n}", is_details=True)
        for n, sheet in enumerate(sheets, start=1)
    ]


def _arranged(sheet: PlannedSheet, around: Surroundings, schedules: str) -> ElevationSheet:
    return arrange([view.placed for view in sheet.views], around, schedules=schedules)


def stand_in_numbers(installation: Installation) -> Numbers:
    """Return numbers at least as wide as the real ones, for trying a layout before numbering."""
    keys = [f"elevation/{name}" for name in installation.walls]
    return Numbers(dict.fromkeys([*keys, "key-plan", SCHEDULES], STAND_IN))


def draw_sheet(
    sheet: PlannedSheet, walls: ElevationSet, job: Job, numbers: Numbers, links: Mapping[str, str]
) -> ElevationSheet:
    """Draw the views of a sheet with true references, and what stands round them."""
    refs = walls.references(numbers)
    around = job.around(refs)
    views = [_drawn_again(v, job.results, refs, links) for v in sheet.views]
    if not walls.has_schedules:
        return arrange(views, around)
    return arrange(views, around, schedules=numbers.of(SCHEDULES), tables=walls.tables_here)


def _drawn_again(
    planned: PlannedView, results: CalculationResults, refs: References, links: Mapping[str, str]
) -> PlacedView:
    drawn = draw_wall(planned.content, results, refs, planned.frame, links)
    return PlacedView(planned.content, drawn.moved(planned.at, planned.prefix), planned.prefix)


def schedule_words(
    walls: ElevationSet, job: Job, numbers: Numbers
) -> tuple[tuple[str, ...], tuple[TablePanel, ...]]:
    """Return what stands on the schedules sheets: notes of all walls, and what moved there."""
    views = [view for sheet in walls.sheets for view in sheet.views]
    contents = [view.content for view in views]
    widened = any(_is_widened(v) for v in views)
    notes = list(general_notes(contents, job.results, widened=widened))
    tables: list[TablePanel] = []
    for sheet in walls.sheets:
        if sheet.key in walls.moved:
            laid = draw_sheet(sheet, walls, job, numbers, {})
            name = short_name(sheet.views[0].content)
            before = f"{name}: " if len(sheet.views) == 1 else ""
            notes += [f"{before}{note}" for note in laid.moved_notes]
            tables += [
                TablePanel(f"keynotes:{sheet.key}:{title}", title, keynote_table(words))
                for title, words in laid.moved_keynotes
            ]
        for view in sheet.views:
            if view.content.face == "inside" and not view.content.detail:
                every = tables_of_wall(view.content, job.results)
                tables += [table for table in every if table.ident not in walls.tables_here]
    return tuple(notes), tuple(tables)


def _is_widened(planned: PlannedView) -> bool:
    content, scale = planned.content, planned.frame.scale
    view = WallView(content.wall, scale, 0.0, 0.0, content.window)
    return any(is_widened(view, piece) for piece in content.pieces)
