"""Single-line diagram: boards with all their ways, circuits with their cables and loads.

A job with one board that fits stands on one sheet with its intake; the intake of any other is on
the distribution overview before it.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.layout.sheet_model import Content, SheetPlan
from asfitted.layout.single_line.board_ink import board_items
from asfitted.layout.single_line.intake import board_intake_items
from asfitted.layout.single_line.paper_widths import for_paper
from asfitted.layout.single_line.parts import Shown
from asfitted.layout.single_line.placing import (
    NOTES_KEY,
    PlacedDiagram,
    PlacedSheet,
    place_diagram,
)
from asfitted.layout.single_line.sheet_rooms import whole_room
from asfitted.layout.single_line.side import notes_pages, reference_items, side_items
from asfitted.layout.single_line.way_ink import WayPlace, way_items

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import Item
    from asfitted.layout.sheet_model import Model, Numbers
    from asfitted.layout.single_line.placing import PlacedPart

ORDER = 10
IN_DETAIL = ("second-electrician", "inspector")  # where there is an overview, a client has that


@dataclass(frozen=True)
class DiagramSheet:
    """One sheet with the whole diagram round it, for references between sheets."""

    diagram: PlacedDiagram
    sheet: PlacedSheet


@dataclass(frozen=True)
class NotesSheet:
    """A sheet with notes and legend alone."""

    items: tuple[Item, ...]


def plan(model: Model) -> list[SheetPlan]:
    """Plan the sheets of the diagram: none for a job without a board."""
    if not model.installation.boards:
        return []
    diagram = place_diagram(model)
    boards = [
        SheetPlan(
            sheet.key,
            _title(sheet),
            sheet.fit.room.paper,
            "Drawings",
            DiagramSheet(diagram, sheet),
            readers=IN_DETAIL if diagram.overview else None,
        )
        for sheet in diagram.sheets
    ]
    return [*_notes_plans(model, diagram), *boards]


def _notes_plans(model: Model, diagram: PlacedDiagram) -> list[SheetPlan]:
    """Plan the sheets for notes and legend, where they have no room elsewhere."""
    if diagram.notes_key != NOTES_KEY:
        return []
    paper = whole_room(model).paper
    pages = notes_pages(model, diagram.all_shown, paper)
    titles = ["notes and legend"] if len(pages) == 1 else ["notes", "legend"]
    return [
        SheetPlan(
            NOTES_KEY if i == 0 else f"{NOTES_KEY}-{i + 1}",
            f"Single-line diagram: {title}",
            paper,
            "Drawings",
            NotesSheet(tuple(items)),
        )
        for i, (items, title) in enumerate(zip(pages, titles, strict=True))
    ]


def _title(sheet: PlacedSheet) -> str:
    """Return the title: what is on the sheet."""
    parts = [placed.part for placed in sheet.parts]
    names = [f"{p.tag} part {p.number}" if p.count > 1 else p.tag for p in parts]
    if len(names) > 3:
        names = [f"{names[0]} to {names[-1]}"]
    if sheet.fit.has_intake:
        names.insert(0, "supply")
    return f"Single-line diagram: {', '.join(names)}"


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:
    """Lay out one sheet of the diagram."""
    if isinstance(plan.payload, NotesSheet):
        return Content(tuple(for_paper(plan.payload.items, plan.paper)))
    payload: DiagramSheet = plan.payload
    sheet, diagram = payload.sheet, payload.diagram
    fit = sheet.fit
    items: list[Item] = []
    if fit.has_intake:
        items += board_intake_items(model, sheet)
    for placed in sheet.parts:
        items += board_items(model, placed, sheet.levels, diagram, numbers)
        items += _ways(model, sheet, diagram, numbers, placed)
    if fit.room.has_side:
        items += side_items(model, Shown(fit.parts, has_intake=fit.has_intake))[0]
    else:
        items += reference_items(numbers.of(diagram.notes_key), plan.paper)
    return Content(tuple(for_paper(items, plan.paper)))


def _ways(
    model: Model,
    sheet: PlacedSheet,
    diagram: PlacedDiagram,
    numbers: Numbers,
    placed: PlacedPart,
) -> list[Item]:
    """Return the ways of a board, from left to right."""
    items: list[Item] = []
    for i, column in enumerate(placed.part.columns):
        place = WayPlace(
            model=model,
            diagram=diagram,
            numbers=numbers,
            levels=sheet.levels,
            pitch_mm=sheet.fit.pitch_mm,
            spine=placed.spine(i),
            board=placed.part.tag,
            column=column,
            words=placed.part.words[i],
        )
        items += way_items(place)
    return items
