"""Detail sheets: how outlets, isolators, cameras and armoured ends are connected."""

from __future__ import annotations

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
    from asfitted.layout.sheet_model import Model, Numbers

ORDER = 55
READERS = ("second-electrician", "inspector")
SECTION = "Drawings"
SUBJECTS = (outlets, isolators, camera_ends, armoured_ends)


def plan(model: Model) -> list[SheetPlan]:
    """Plan the details that the job needs; a table that does not fit has sheets of its own."""
    plans = []
    for find in SUBJECTS:
        subject = find(model)
        if subject is not None:
            plans += _plans_of(subject, model)
    return plans


def _plans_of(subject: Subject, model: Model) -> list[SheetPlan]:
    made = _pages_of(subject, model)
    paper = made[0].paper
    key = f"details-{subject.key}"
    many = len(made) > 1
    plans = [
        SheetPlan(f"{key}/{i}" if many else key, subject.title, paper, SECTION, page)
        for i, page in enumerate(made, start=1)
    ]
    if made[-1].table is None:
        plans += plan_table(
            key=f"{key}-table",
            title=f"{subject.title}, table",
            table=subject.table,
            section=SECTION,
            heading=f"{subject.title}: where each figure applies",
            side_notes=(("Caution", subject.caution),),
            papers=("A4", "A3"),
        )
    return plans


def _pages_of(subject: Subject, model: Model) -> list[Page]:
    """Return the sheets on the paper of the job, on A3 where a figure is too large for that."""
    papers = dict.fromkeys((model.installation.job.paper, "A3"))
    for paper in papers:
        whole = Page(
            subject.title, subject.caution, subject.figures, subject.notes, subject.table, paper
        )
        made = pages(whole, model.symbols)
        if all(fits(page, model.symbols) for page in made):
            break
    return made


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:  # noqa: ARG001 - no references
    """Lay out one sheet."""
    if isinstance(plan.payload, Page):
        return Content(compose(plan.payload, model.symbols))
    return build_table(plan)
