"""Single-line diagram: supply, boards with all their ways, circuits with their cables and loads."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.layout.sheet_model import Content, SheetPlan
from asfitted.layout.single_line.board_ink import board_items
from asfitted.layout.single_line.intake import intake_items
from asfitted.layout.single_line.placing import PlacedDiagram, PlacedSheet, place_diagram
from asfitted.layout.single_line.side import side_items
from asfitted.layout.single_line.splitting import PAPER
from asfitted.layout.single_line.way_ink import WayPlace, way_items

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import Item
    from asfitted.layout.sheet_model import Model, Numbers
    from asfitted.layout.single_line.placing import PlacedPart

ORDER = 10


@dataclass(frozen=True)
class DiagramSheet:
    """One sheet with the whole diagram round it, for references between sheets."""

    diagram: PlacedDiagram
    sheet: PlacedSheet


def plan(model: Model) -> list[SheetPlan]:
    """Plan the sheets of the diagram: none for a job without a board."""
    if not model.installation.boards:
        return []
    diagram = place_diagram(model)
    return [
        SheetPlan(sheet.key, _title(sheet), PAPER, "Drawings", DiagramSheet(diagram, sheet))
        for sheet in diagram.sheets
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
    payload: DiagramSheet = plan.payload
    sheet, diagram = payload.sheet, payload.diagram
    fit = sheet.fit
    items: list[Item] = []
    if fit.has_intake:
        items += intake_items(model, sheet, diagram, numbers)
    for placed in sheet.parts:
        items += board_items(model, placed, sheet.levels, diagram, numbers)
        items += _ways(model, sheet, diagram, numbers, placed)
    items += side_items(model, fit.parts, has_intake=fit.has_intake)[0]
    return Content(tuple(items))


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
