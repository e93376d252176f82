"""Sheets of a set of plans: each plan, the tables that find no room on it, on A4 the legend."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Point
from asfitted.layout.elevation.panels import NotesPanel
from asfitted.layout.plan.camera_views import camera_table
from asfitted.layout.plan.out_in_room import out_table
from asfitted.layout.plan.plan_legend import legend_of
from asfitted.layout.plan.plan_sheet import KEYNOTES, OUT, VIEWS, LaidOutPlan
from asfitted.layout.plan.plan_things import plan_things
from asfitted.layout.sheet_model import Content, SheetPlan
from asfitted.layout.table import Column, Table
from asfitted.sheets._table_pages import TablePage, build_table, plan_table

if TYPE_CHECKING:
    from asfitted.layout.plan.plan_frame import PlanFrame
    from asfitted.layout.plan.plan_set import PlanSet
    from asfitted.layout.sheet_model import Model, Numbers

LEGEND_KEY, TABLES_KEY = "plan-legend", "plan-tables"
OUT_KEY = f"{TABLES_KEY}/{OUT}"
HEIGHTS = "Heights and lengths along walls stand on the elevations"


@dataclass(frozen=True)
class LegendPage:
    """The legend and notes of all plans, where the plans leave no room for them."""

    frame: PlanFrame
    notes: tuple[str, ...]
    has_legend: bool = True


def plan_pages(model: Model, plans: PlanSet) -> list[SheetPlan]:
    """Return the sheets of a set of plans, each plan laid out; tables without room follow them."""
    paper = plans.frame.paper
    laid_out = [plans.laid_out(model, part) for part in plans.parts]
    made = [
        SheetPlan(plans.key_of(one.part), one.title, paper, "Drawings", one) for one in laid_out
    ]
    for name, heading, table in _tables(model, laid_out):
        title = f"Plans: {heading}"
        made += plan_table(
            key=f"{TABLES_KEY}/{name}", title=title, table=table, section="Drawings", heading=title
        )
    if not plans.frame.has_column:
        notes = dict.fromkeys(note for one in laid_out for note in one.notes)
        made += _legend_pages(model, plans.frame, tuple(notes))
    return made


def _tables(model: Model, laid_out: list[LaidOutPlan]) -> list[tuple[str, str, Table]]:
    """Return the tables that found no room on one plan or another, each once for the whole job.

    What stands out in the room is not among them: see :func:`out_left_over`.
    """
    names = {name for one in laid_out for name, _ in one.left_over}
    found: list[tuple[str, str, Table | None]] = []
    if KEYNOTES in names:
        found.append((KEYNOTES, "tags by number", _keynotes(laid_out)))
    if VIEWS in names:
        things = plan_things(model.installation, model.symbols)
        found.append((VIEWS, "picture detail of cameras", camera_table(model, things)))
    return [(name, heading, table) for name, heading, table in found if table is not None]


def out_left_over(model: Model) -> Table | None:
    """Return the table of what stands out in the room where a planned plan had no room for it.

    The sheets that follow the plans take it: with the schedules of the elevations, or alone.
    """
    plans = [one.payload for one in model.planned if isinstance(one.payload, LaidOutPlan)]
    if not any(name == OUT for plan in plans for name, _ in plan.left_over):
        return None
    return out_table(model.installation, model.results)


def _keynotes(laid_out: list[LaidOutPlan]) -> Table:
    """Return the keynotes of all plans that had no room for them, with the name of the plan."""
    rows: list[tuple[str, ...]] = []
    columns: tuple[Column, ...] = ()
    for one in laid_out:
        for name, table in one.left_over:
            if name == KEYNOTES:
                columns = (Column("Plan"), *table.columns)
                rows += [(one.title, *row) for row in table.rows]
    return Table(columns, tuple(rows), tuple(f"keynote:{i}" for i in range(len(rows))))


def build_plan(plan: SheetPlan, model: Model, numbers: Numbers) -> Content | None:
    """Return what is on one of these sheets, or None where it is none of them."""
    payload = plan.payload
    if isinstance(payload, TablePage):
        return build_table(plan)
    if isinstance(payload, LegendPage):
        return _legend(payload, model)
    if isinstance(payload, LaidOutPlan):
        items = payload.finished(numbers, (_where(plan, numbers),))
        return Content(items, payload.scale_words)
    return None


def _where(plan: SheetPlan, numbers: Numbers) -> str:
    """Return the note that says where heights stand, and tables that are not on this sheet."""
    prefix = f"{TABLES_KEY}/"
    sheets = [n for key, n in numbers.by_key.items() if key.startswith(prefix)]
    if not isinstance(plan.payload, LaidOutPlan) or not plan.payload.left_over:
        sheets = []
    legend = numbers.by_key.get(LEGEND_KEY)
    words = HEIGHTS
    if sheets:
        which = "sheet" if len(sheets) == 1 else "sheets"
        words += f"; tables on {which} {', '.join(sheets)}"
    if legend:
        words += f"; legend on sheet {legend}"
    return f"{words}."


def _legend_pages(model: Model, frame: PlanFrame, notes: tuple[str, ...]) -> list[SheetPlan]:
    """Return one sheet for legend and notes, or one for each where they are long."""
    box = frame.usable
    half = (box.width - 10.0) / 2
    limit = frame.foot - box.y0
    legend_mm = legend_of(model, Point(box.x0, box.y0), half).height_mm
    notes_mm = NotesPanel(notes).height(half) or 0.0
    if max(legend_mm, notes_mm) <= limit:
        page = LegendPage(frame, notes)
        return [SheetPlan(LEGEND_KEY, "Plans: legend and notes", frame.paper, "Drawings", page)]
    rest = LegendPage(frame, notes, has_legend=False)
    return [
        SheetPlan(LEGEND_KEY, "Plans: legend", frame.paper, "Drawings", LegendPage(frame, ())),
        SheetPlan(f"{LEGEND_KEY}/notes", "Plans: notes", frame.paper, "Drawings", rest),
    ]


def _legend(page: LegendPage, model: Model) -> Content:
    box = page.frame.usable
    half = (box.width - 10.0) / 2
    at = Point(box.x0, box.y0)
    if not page.has_legend:
        return Content(NotesPanel(page.notes).items(at, box.width), "Not to scale")
    if not page.notes:
        return Content(legend_of(model, at, box.width, columns=4).items, "Not to scale")
    legend = legend_of(model, at, half)
    notes = NotesPanel(page.notes)
    return Content(
        (*legend.items, *notes.items(Point(box.x1 - half, box.y0), half)), "Not to scale"
    )
