"""Detail sheets: how outlets, isolators, cameras and armoured ends are connected."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from asfitted.layout.details.armoured_ends import armoured_ends
from asfitted.layout.details.camera_ends import camera_ends
from asfitted.layout.details.composing import Page, compose, fits, pages
from asfitted.layout.details.isolators import isolators
from asfitted.layout.details.outlets import outlets
from asfitted.layout.sheet_model import Content, SheetPlan
from asfitted.sheets._table_pages import build_table, plan_table

if TYPE_CHECKING:
    from asfitted.layout.details.subject import Subject
    from asfitted.layout.sheet_layout import Paper
    from asfitted.layout.sheet_model import Model, Numbers

ORDER = 55
READERS = ("second-electrician", "inspector")
SECTION = "Drawings"
SMALL: tuple[Paper, ...] = ("A4 portrait", "A4")
SUBJECTS = (outlets, isolators, camera_ends, armoured_ends)


def plan(model: Model) -> list[SheetPlan]:
    """Plan the details that the job needs; a table that does not fit has sheets of its own.

    A subject goes whole on the first sheet that has room for it beside others.
    """
    made: list[Page] = []
    tables: list[Subject] = []
    first = 1
    for find in SUBJECTS:
        subject = find(model, first)
        if subject is None:
            continue
        first += len(subject.figures)
        if _joined(subject, made, model):
            continue
        found = _pages_of(subject, model)
        made += found
        if found[-1].parts[0].table is None:
            tables.append(subject)
    return [*_sheets(made), *(plan for subject in tables for plan in _tables(subject))]


def _joined(subject: Subject, made: list[Page], model: Model) -> bool:
    """Put a subject on a sheet that holds others whole, if one has room; tell whether it did."""
    for index, page in enumerate(made):
        if any(part.table is None for part in page.parts):
            continue
        wider = replace(page, parts=(*page.parts, subject))
        if fits(wider, model.symbols):
            made[index] = wider
            return True
    return False


def _sheets(made: list[Page]) -> list[SheetPlan]:
    """Return the plans of the sheets, those that share a subject as its parts."""
    keys = [f"details-{page.parts[0].key}" for page in made]
    plans = []
    for i, page in enumerate(made):
        key, title, many = keys[i], page.title, keys.count(keys[i])
        if many > 1:
            part = keys[: i + 1].count(key)
            key, title = f"{key}/{part}", f"{title}, part {part} of {many}"
        also = tuple(f"details-{part.key}" for part in page.parts[1:])
        plans.append(SheetPlan(key, title, page.paper, SECTION, page, also=also))
    return plans


def _tables(subject: Subject) -> list[SheetPlan]:
    """Return the sheets of a table that has no room beside its figures."""
    if subject.table is None:
        return []
    return plan_table(
        key=f"details-{subject.key}-table",
        title=f"Detail table: {subject.name}",
        table=subject.table,
        section=SECTION,
        heading=f"{subject.title}: where each figure applies",
        side_notes=(("Caution", subject.caution),),
        papers=("A4", "A3"),
    )


def _pages_of(subject: Subject, model: Model) -> list[Page]:
    """Return the sheets of a subject: one A4 if that holds all of it, else on the job's paper.

    Where a figure is too large for that, A3 is taken.
    """
    for paper in SMALL:
        page = Page((subject,), paper)
        if fits(page, model.symbols):
            return [page]
    made: list[Page] = []
    large: Paper
    for large in dict.fromkeys((model.installation.job.paper, "A3")):
        made = pages(subject, large, model.symbols)
        if all(fits(page, model.symbols) for page in made):
            break
    return made


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:  # noqa: ARG001 - no references
    """Lay out one sheet."""
    if isinstance(plan.payload, Page):
        return Content(compose(plan.payload, model.symbols))
    return build_table(plan)
