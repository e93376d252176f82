"""A whole elevation sheet: the views on it, then what stands beside and below them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Point
from asfitted.layout.elevation.free_boxes import without
from asfitted.layout.elevation.key_inset import ShownWall
from asfitted.layout.elevation.notes import HEIGHTS, SCAN, general_notes, wall_notes
from asfitted.layout.elevation.panels import (
    KeyPanel,
    NotesPanel,
    PackedPanels,
    TablePanel,
    pack,
)
from asfitted.layout.elevation.paper_room import above_title, room_on, title_room
from asfitted.layout.elevation.schedules import drop_table, run_table
from asfitted.layout.elevation.sheet_legend import LegendPanel

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from asfitted.calculate.results import CalculationResults
    from asfitted.geometry import Box
    from asfitted.layout.elevation.panels import Panel
    from asfitted.layout.elevation.references import References
    from asfitted.layout.elevation.wall_content import WallContent
    from asfitted.layout.elevation.wall_drawing import WallDrawing
    from asfitted.layout.sheet_layout import Item, Paper, SymbolInfo
    from asfitted.resolve.installation import Installation

USABLE = room_on("A3")
VIEW_GAP_MM = 5.0
DROPS, RUNS = "drops", "run-contents"
SCHEDULES = "elevation/schedules"


@dataclass(frozen=True)
class PlacedView:
    """A view at its place on a sheet."""

    content: WallContent
    drawn: WallDrawing
    prefix: str


@dataclass(frozen=True)
class Surroundings:
    """What panels beside the views are made from."""

    installation: Installation
    results: CalculationResults
    refs: References
    paper: Paper
    symbols: Mapping[str, SymbolInfo]


@dataclass(frozen=True)
class ElevationSheet:
    """A laid-out elevation: its items, and what of its words has to stand on the schedules."""

    items: tuple[Item, ...]
    all_here: bool  # key plan, notes, keynotes, legend and tables all found room
    moved_keynotes: tuple[tuple[str, tuple[str, ...]], ...]  # by name of the view
    moved_notes: tuple[str, ...]
    has_legend: bool


def title_top(paper: Paper = "A3") -> float:
    """Return y above which the title block is clear."""
    return title_room(paper).y0


def arrange(
    views: Sequence[PlacedView], around: Surroundings, *, schedules: str = ""
) -> ElevationSheet:
    """Lay out what stands beside and below the views of a sheet.

    Args:
        views: the views at their places, one or more.
        around: the job and the paper.
        schedules: number of the sheet with notes and tables of all walls, "" for all of it here.
    """
    items = tuple(item for view in views for item in view.drawn.items)
    key = key_panel(views, around)
    own = own_notes(views, around)
    keynotes = tuple(keynote_panels(views))
    legend = LegendPanel.of(items, around.symbols)
    free = free_boxes(views, around.paper)
    end = max(view.drawn.box.y1 for view in views)
    if not schedules:
        widened = any(view.drawn.widened for view in views)
        general = general_notes([view.content for view in views], widened=widened)
        panels: list[Panel] = [*keynotes, NotesPanel((*general, *own)), *key, *legend]
        packed = pack([*panels, *tables_of(views, around.results)], free, end)
        return ElevationSheet((*items, *packed.items), not packed.left_out, (), (), has_legend=True)
    packed, choice = _fullest(schedules, own, keynotes, (*key, *legend), free, end)
    moved_keynotes = () if choice.keynotes else tuple((p.title, p.notes) for p in keynotes)
    moved_notes = () if choice.own else own
    return ElevationSheet(
        (*items, *packed.items),
        not (moved_notes or moved_keynotes or (legend and not choice.legend)),
        moved_keynotes,
        moved_notes,
        has_legend=choice.legend or not legend,
    )


@dataclass(frozen=True)
class _Choice:
    """What of its panels a sheet holds where tables stand elsewhere."""

    heights: bool
    own: bool
    keynotes: bool
    key: bool
    legend: bool


#: What a sheet holds, from the fullest. The two notes that always stay are in all of them.
_CHOICES = tuple(
    _Choice(heights, own, keynotes, key, legend)
    for key in (True, False)
    for own, keynotes in ((True, True), (False, True), (True, False), (False, False))
    for legend in (True, False)
    for heights in (True, False)
)


def _fullest(  # noqa: PLR0917 - each is another sort of words
    schedules: str,
    own: tuple[str, ...],
    keynotes: tuple[NotesPanel, ...],
    extras: tuple[KeyPanel | LegendPanel, ...],
    free: Sequence[Box],
    end: float,
) -> tuple[PackedPanels, _Choice]:
    """Pack as much as there is room for, where notes and tables of all walls stand elsewhere."""
    least = (SCAN, f"Notes and schedules: sheet {schedules}.")
    packed, choice = PackedPanels((), ()), _CHOICES[-1]
    for choice in _CHOICES:
        notes = (*least, *((HEIGHTS,) if choice.heights else ()), *(own if choice.own else ()))
        wanted = [p for p in extras if isinstance(p, KeyPanel) and choice.key]
        more = [p for p in extras if isinstance(p, LegendPanel) and choice.legend]
        here = keynotes if choice.keynotes else ()
        packed = pack([NotesPanel(notes), *here, *wanted, *more], free, end)
        if not packed.left_out:
            break
    return packed, choice


def key_panel(views: Sequence[PlacedView], around: Surroundings) -> tuple[KeyPanel, ...]:
    """Return the key plan of the room that the sheet shows; none for views of several rooms."""
    rooms = {view.content.room.name for view in views}
    if len(rooms) != 1 or not views:
        return ()
    shown = []
    whole = [view for view in views if not view.content.detail]
    for view in whole or views:
        window, wall = view.content.window, around.installation.walls[view.content.wall.name]
        ends = (window.from_mm, window.to_mm)
        if view.content.face == "outside":
            ends = (wall.length_mm - ends[1], wall.length_mm - ends[0])
        shown.append(ShownWall(wall, *ends, view.content.face))
    is_low = around.paper != "A3"
    return (KeyPanel(around.installation, views[0].content.room, tuple(shown), is_low=is_low),)


def own_notes(views: Sequence[PlacedView], around: Surroundings) -> tuple[str, ...]:
    """Return the notes of the views alone, each with its wall where there are several."""
    notes = []
    for view in views:
        drawn = view.drawn
        found = wall_notes(
            view.content, around.results, around.refs, drawn.left_over, drawn.not_dimensioned
        )
        before = f"{short_name(view.content)}: " if len(views) > 1 else ""
        notes += [f"{before}{note}" for note in found]
    return tuple(dict.fromkeys(notes))


def keynote_panels(views: Sequence[PlacedView]) -> Iterator[NotesPanel]:
    """Yield the words of the numbered rings of each view."""
    for view in views:
        words = view.drawn.left_over.keynotes
        if words:
            name = short_name(view.content)
            title = f"Keynotes: {name[0].lower()}{name[1:]}"
            yield NotesPanel(words, title, f"{view.prefix}keynote")


def short_name(content: WallContent) -> str:
    """Return how notes and tables name a view: "Wall A", "Wall A part 2", "Detail a of wall A"."""
    wall = f"all {content.wall.name}"
    if content.detail:
        return f"Detail {content.detail} of w{wall}"
    if content.face == "outside":
        return f"W{wall} outside"
    part, parts = content.part
    return f"W{wall} part {part}" if parts > 1 else f"W{wall}"


def tables_of(views: Sequence[PlacedView], results: CalculationResults) -> tuple[TablePanel, ...]:
    """Return the tables of the views: drops, and what lies in runs. Details repeat none."""
    return tuple(
        table
        for view in views
        if view.content.face == "inside" and not view.content.detail
        for table in tables_of_wall(view.content, results)
    )


def tables_of_wall(content: WallContent, results: CalculationResults) -> Iterator[TablePanel]:
    """Yield the tables of one view."""
    name = short_name(content)
    name = f"{name[0].lower()}{name[1:]}"
    drops = drop_table(content)
    if drops is not None:
        yield TablePanel(f"{DROPS}:{name}", f"Drops on {name}", drops)
    runs = run_table(content, results)
    if runs is not None:
        yield TablePanel(f"{RUNS}:{name}", f"What lies in the runs on {name}", runs)


def free_boxes(views: Sequence[PlacedView], paper: Paper) -> tuple[Box, ...]:
    """Return the greatest rectangles that the views and the title block leave free."""
    free = without((room_on(paper),), title_room(paper))
    for view in views:
        free = without(free, view.drawn.box.grown(VIEW_GAP_MM))
    return free


def upper_left(paper: Paper) -> Point:
    """Return the corner where the first view stands."""
    box = above_title(paper)
    return Point(box.x0, box.y0)
