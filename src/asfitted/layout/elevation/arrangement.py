"""A whole elevation sheet: the views on it, then what stands beside and below them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.errors import DoesNotFitError
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
    tables: frozenset[str] = frozenset()  # idents of the tables that stand on it


def title_top(paper: Paper = "A3") -> float:
    """Return y above which the title block is clear."""
    return title_room(paper).y0


def arrange(
    views: Sequence[PlacedView],
    around: Surroundings,
    *,
    schedules: str = "",
    tables: frozenset[str] | None = None,
) -> ElevationSheet:
    """Lay out what stands beside and below the views of a sheet.

    Args:
        views: the views at their places, one or more.
        around: the job and the paper.
        schedules: number of the sheet with notes and tables of all walls, "" for all of it here.
        tables: with ``schedules``, idents of the tables that must stand here; None for as many of
            the views' own as find room.

    Raises:
        DoesNotFitError: a table that must stand here finds no room.
    """
    items = tuple(item for view in views for item in view.drawn.items)
    extras: tuple[KeyPanel | LegendPanel, ...] = key_panel(views, around)
    extras += LegendPanel.of(items, around.symbols)
    words = _Words(own_notes(views, around), tuple(keynote_panels(views)), extras)
    room = _Room(free_boxes(views, around.paper), max(view.drawn.box.y1 for view in views))
    every = tables_of(views, around.results)
    if not schedules:
        packed = room.packed([*words.with_general(views, around), *every])
        return ElevationSheet((*items, *packed.items), not packed.left_out, (), (), has_legend=True)
    wanted = every if tables is None else tuple(t for t in every if t.ident in tables)
    choice, laid, here = _fullest(schedules, words, wanted, room, must_hold=tables is not None)
    has_legend = choice.legend or not words.legend
    all_here = (choice.own or not words.own) and (choice.keynotes or not words.keynotes)
    return ElevationSheet(
        (*items, *laid.items),
        all_here and has_legend,
        () if choice.keynotes else tuple((p.title, p.notes) for p in words.keynotes),
        () if choice.own else words.own,
        has_legend=has_legend,
        tables=here,
    )


@dataclass(frozen=True)
class _Room:
    """What the views leave free, and where they end."""

    free: tuple[Box, ...]
    end: float

    def packed(self, panels: Sequence[Panel]) -> PackedPanels:
        """Place panels, the first first."""
        return pack(panels, self.free, self.end)


@dataclass(frozen=True)
class _Words:
    """What belongs to the views of a sheet besides their tables."""

    own: tuple[str, ...]
    keynotes: tuple[NotesPanel, ...]
    extras: tuple[KeyPanel | LegendPanel, ...]

    @property
    def legend(self) -> tuple[LegendPanel, ...]:
        """The legend, where signs were used."""
        return tuple(p for p in self.extras if isinstance(p, LegendPanel))

    def with_general(self, views: Sequence[PlacedView], around: Surroundings) -> list[Panel]:
        """Return all panels where the notes of all walls stand on the sheet, too."""
        widened = any(view.drawn.widened for view in views)
        contents = [view.content for view in views]
        general = general_notes(contents, around.results, widened=widened)
        return [*self.keynotes, NotesPanel((*general, *self.own)), *self.extras]

    def panels(self, first: Sequence[str], choice: _Choice) -> list[Panel]:
        """Return the panels of a choice, the notes that always stay first."""
        more = ((HEIGHTS,) if choice.heights else (), self.own if choice.own else ())
        key = [p for p in self.extras if isinstance(p, KeyPanel) and choice.key]
        legend = self.legend if choice.legend else ()
        keynotes = self.keynotes if choice.keynotes else ()
        return [NotesPanel((*first, *more[0], *more[1])), *keynotes, *key, *legend]


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


def _fullest(
    schedules: str,
    words: _Words,
    tables: tuple[TablePanel, ...],
    room: _Room,
    *,
    must_hold: bool,
) -> tuple[_Choice, PackedPanels, frozenset[str]]:
    """Pack as much as there is room for, where notes and tables of all walls stand elsewhere."""
    some = (SCAN, f"Other notes and tables: sheet {schedules}.")
    for choice in _CHOICES:
        panels = words.panels(some, choice)
        packed = room.packed([*panels, *tables])
        left = {i - len(panels) for i in packed.left_out}
        if any(i < 0 for i in left) and choice is not _CHOICES[-1]:
            continue
        here = frozenset(t.ident for i, t in enumerate(tables) if i not in left)
        if must_hold and len(here) < len(tables):
            continue
        return choice, packed, here
    raise DoesNotFitError("the tables planned for an elevation sheet find no room on it")


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
