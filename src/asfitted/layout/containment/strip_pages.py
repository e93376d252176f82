"""All strips of a job on as many sheets as they need, with tables of their pieces."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from asfitted.layout.containment.developed_run import developed_runs
from asfitted.layout.containment.piece_table import piece_table
from asfitted.layout.containment.run_events import events_of
from asfitted.layout.containment.section_places import section_places
from asfitted.layout.containment.sheet_notes import place_notes
from asfitted.layout.containment.shelf_flow import ShelfFlow, tables_heading
from asfitted.layout.containment.strip_drawing import StripBand, events_on
from asfitted.layout.containment.strip_parts import (
    HEAD_MM,
    TAIL_MM,
    StripScale,
    parts_of,
    scale_along,
    scale_of_declared,
    scale_up,
)
from asfitted.layout.lettering import BODY, text_item

if TYPE_CHECKING:
    from collections.abc import Mapping

    from asfitted.geometry import Point
    from asfitted.layout.containment.developed_run import DevelopedRun
    from asfitted.layout.containment.sheet_notes import SheetNotes
    from asfitted.layout.containment.shelf_flow import PlacedTable, Slot
    from asfitted.layout.containment.strip_drawing import Mark
    from asfitted.layout.sheet_layout import Item, Paper
    from asfitted.layout.sheet_model import Model, Numbers

KEY = "containment-strips"
TABLE_IDENT = "pieces:"
PROFILE_MM = {"A3": 38.0, "A4": 18.0}  # paper for heights above the floor, at most
BELOW_MM = 2.0
CAPTION_MM = 4.6  # over each part of a table of pieces
TABLES_ALONE = "Containment unfolded: tables of the pieces"
TABLE_COLUMNS = {"A3": 3, "A4": 2}
NOTES = (
    (
        "Each run is unfolded: walls one after another, seen from inside the room. Distances "
        "run along the run from its start, with what goes up or down counted in."
    ),
    (
        "Over the bars: piece, how many cables (c), fill; bars: fill; dashed: its limit; "
        "dark: over it. Heavy line with dot: drop or rise to the thing served, at its height; "
        "what stands out in the room or outside is shown in the same way."
    ),
    ("Diamond: another run joins. Number with arrow: cross-section, seen the way of the arrow."),
    "Containment thinner than 1.25 mm on paper is drawn 1.25 mm thick.",
)


@dataclass(frozen=True)
class PlacedBand:
    """A strip, or a part of one, in its place."""

    band: StripBand
    slot: Slot


@dataclass(frozen=True)
class StripPages:
    """Everything on the sheets of strips, in order."""

    paper: Paper
    bands: tuple[PlacedBand, ...]
    tables: tuple[PlacedTable, ...]
    notes: SheetNotes

    @property
    def count(self) -> int:
        """How many sheets there are."""
        if not self.bands:
            return 0
        slots = [*(b.slot for b in self.bands), *(t.slot for t in self.tables)]
        slots += [self.notes.slot] if self.notes.slot else []
        return max((slot.page for slot in slots), default=-1) + 1

    def on(self, page: int) -> tuple[PlacedBand, ...]:
        """Return the strips on a sheet, from 0."""
        return tuple(b for b in self.bands if b.slot.page == page)

    def place_of(self, tag: str, along: float) -> tuple[int, Point] | None:
        """Return the sheet, from 0, and the place on it of a point of a run."""
        for placed in self.bands:
            band = placed.band
            over = band.developed.place(along)[0]
            if band.developed.run.tag == tag and band.part.holds(over):
                return placed.slot.page, band.view(placed.slot.at).at(along)
        return None

    def items(self, page: int, numbers: Numbers) -> tuple[Item, ...]:
        """Return all items of a sheet."""
        made: list[Item] = []
        for placed in self.on(page):
            made += placed.band.items(placed.slot.at, numbers)
        for table in self.tables:
            if table.slot.page == page:
                made += [self._caption(table, numbers), *table.items()]
        if not self.on(page):
            made.append(tables_heading(TABLES_ALONE, self.paper))
        return (*made, *self.notes.items(page))

    def _caption(self, table: PlacedTable, numbers: Numbers) -> Item:
        """Return whose pieces a part of a table holds and, where it is elsewhere, the strip."""
        tag = table.ident.removeprefix(TABLE_IDENT)
        strips = list(dict.fromkeys(p.slot.page for p in self._bands_of(tag)))
        words, link = f"Pieces of {tag}", ""
        if strips and table.slot.page not in strips:
            found = [numbers.of(page_key(page)) for page in strips]
            words += f"; strip: sheet{'s' * (len(found) > 1)} {', '.join(found)}"
            link = found[0]
        at = table.slot.at.moved(dy=BODY)
        item = text_item(f"{table.ident}:{table.rows.start}:caption", words, at, bold=True)
        return replace(item, link=link)

    def _bands_of(self, tag: str) -> list[PlacedBand]:
        return [b for b in self.bands if b.band.developed.run.tag == tag]


def page_key(page: int) -> str:
    """Return the key of a sheet of strips, from 0."""
    return KEY if page == 0 else f"{KEY}/{page + 1}"


def paper_of(model: Model) -> Paper:
    """Return the paper that the drawings of a job are wanted on."""
    return model.installation.job.paper


def strip_pages(model: Model, section_keys: Mapping[int, str] | None = None) -> StripPages:
    """Lay out the strips of all runs of a job. Same job, same places.

    Args:
        model: the job.
        section_keys: key of the sheet of each cross-section, by its number.

    Raises:
        DoesNotFitError: the words at one strip alone are higher than a sheet.
    """
    paper = paper_of(model)
    runs = developed_runs(model.installation, model.results)
    places = section_places(runs)
    flow = ShelfFlow(paper, TABLE_COLUMNS[paper])
    room = flow.area.width - HEAD_MM - TAIL_MM
    scale = scale_along([run for run in runs if not run.is_declared], room)
    bands: list[PlacedBand] = []
    for developed in runs:
        along = scale_of_declared(developed) if developed.is_declared else scale
        marks = tuple(
            (p.along, p.number, (section_keys or {}).get(p.number, ""))
            for p in places
            if p.developed is developed
        )
        slot = None
        for band in _bands(model, developed, along, marks, flow):
            slot = flow.place(band.width_mm, band.height_mm, after=slot)
            bands.append(PlacedBand(band, slot))
        flow.add_table(
            f"{TABLE_IDENT}{developed.run.tag}",
            piece_table(developed),
            page=slot.page if slot else -1,
            caption_mm=CAPTION_MM,
        )
    notes = place_notes(NOTES, paper, flow)
    flow.finish()
    return StripPages(paper, _with_twins(bands, flow.tables), tuple(flow.tables), notes)


def _bands(
    model: Model,
    developed: DevelopedRun,
    along: int,
    marks: tuple[Mark, ...],
    flow: ShelfFlow,
) -> list[StripBand]:
    paper, most_mm = flow.paper, flow.area.height
    room = flow.area.width - HEAD_MM - TAIL_MM
    events = events_of(developed, model.installation, model.results)
    ups = [up for s in developed.stretches for up in s.up]
    reaches = [e.reach_mm for e in events if e.reach_mm is not None]
    highest, lowest = max([*ups, *reaches, 0.0]), min([*ups, *reaches, 0.0])
    up = max(scale_up(highest - lowest, PROFILE_MM[paper]), min(along, 100))
    found = []
    for part in parts_of(developed, events, along, room):
        here = tuple(m for m in marks if part.holds(developed.place(m[0])[0]))
        heights = (highest / up + 1.0, -lowest / up + BELOW_MM)
        on_it = events_on(developed, part, events)
        scale = StripScale(along, up)
        bare = StripBand(developed, part, scale, (), heights, here, paper)
        most = most_mm - bare.height_mm
        found.append(replace(bare, events=tuple(event.worded(most) for event in on_it)))
    return found


def _with_twins(bands: list[PlacedBand], tables: list[PlacedTable]) -> tuple[PlacedBand, ...]:
    """Tell each part of a strip the sheets of the parts beside it and of its table of pieces."""
    pages = {(p.band.developed.run.tag, p.band.part.number): page_key(p.slot.page) for p in bands}
    made = []
    for placed in bands:
        tag, part = placed.band.developed.run.tag, placed.band.part.number
        twins = (pages.get((tag, part - 1), ""), pages.get((tag, part + 1), ""))
        on = [t.slot.page for t in tables if t.ident == f"{TABLE_IDENT}{tag}"]
        told = tuple(page_key(page) for page in dict.fromkeys(on))
        is_beside = set(on) == {placed.slot.page}
        band = replace(placed.band, twins=twins, pieces_on=told, is_beside=is_beside)
        made.append(replace(placed, band=band))
    return tuple(made)
