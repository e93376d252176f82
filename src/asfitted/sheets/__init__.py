"""Sheet kinds, one file each, found by scanning this folder.

A sheet kind is a module with ``ORDER`` (where it stands in the set), ``plan(model)`` and
``build(plan, model, numbers)``; see ``asfitted.layout.sheet_model``. It may say besides:

- ``READERS``: whose packs its sheets go into (all three when left out);
- ``IN_HANDOVER = False``: only in the pack of a reader, not in the whole handover;
- ``LATE = 1`` or more: planned when the sheets of lower ``LATE`` are planned, which it finds in
  ``model.planned``. For kinds that tell of other sheets, such as the drawing list.
"""

from __future__ import annotations

import importlib
import pkgutil
import re
from dataclasses import replace
from types import MappingProxyType
from typing import TYPE_CHECKING, Any, Protocol, cast

from asfitted.layout.foot_line import foot_line_items
from asfitted.layout.frame import frame_items
from asfitted.layout.revision.marks import ALWAYS_NEW
from asfitted.layout.revision.table import untouched
from asfitted.layout.sheet_layout import READERS, SheetLayout
from asfitted.layout.sheet_model import Content, Model, Numbers, SheetPlan
from asfitted.layout.title_block import TitleFacts, revision_items, title_block_items
from asfitted.sheets._cross_links import cross_linked

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from asfitted.layout.sheet_layout import Item

#: Parts of the set, each with the ``ORDER`` at which it begins.
PARTS = (
    (0, "Front"),
    (10, "Drawings"),
    (60, "Schedules"),
    (80, "Calculations"),
    (100, "Tests"),
    (110, "Handover"),
    (130, "Route brief"),
)


def part_of(order: int) -> str:
    """Return the part of the set that a sheet kind of an ``ORDER`` belongs to."""
    return [name for begins, name in PARTS if order >= begins][-1]


class SheetKind(Protocol):
    """What every module of this folder offers."""

    ORDER: int

    def plan(self, model: Model) -> Sequence[SheetPlan]:
        """Say how many sheets of this kind the job needs, on which paper, under which titles."""

    def build(self, plan: SheetPlan, model: Model, numbers: Numbers) -> Content:
        """Lay out one planned sheet."""


def sheet_kinds() -> tuple[SheetKind, ...]:
    """Return every sheet kind in the order of the set."""
    names = sorted(m.name for m in pkgutil.iter_modules(__path__) if not m.name.startswith("_"))
    kinds = [cast("SheetKind", importlib.import_module(f"{__name__}.{n}")) for n in names]
    return tuple(sorted(kinds, key=lambda kind: kind.ORDER))


def lay_out_sheets(
    model: Model, *, progress: Callable[[str], None] | None = None
) -> tuple[SheetLayout, ...]:
    """Plan, number and build every sheet of a job, each with its frame and title block."""
    planned = planned_sheets(model, sheet_kinds(), lambda kind, told: kind.plan(told))
    numbers = numbered(planned)
    sheets = []
    for kind, plan in planned:
        if progress:
            progress(f"sheet {numbers.of(plan.key)} of {numbers.total:02d}: {plan.title}")
        sheet = framed(plan, kind.build(plan, model, numbers), model, numbers)
        readers: Sequence[str] = plan.readers or _of(kind, "READERS", usual=READERS)
        in_handover: bool = _of(kind, "IN_HANDOVER", usual=True)
        sheets.append(replace(sheet, readers=tuple(readers), in_handover=in_handover))
    return cross_linked(sheets, model.installation)


def _of(kind: SheetKind, name: str, *, usual: Any) -> Any:
    """Return what a sheet kind says of itself, or what is usual where it says nothing."""
    return getattr(kind, name, usual)


def planned_sheets(
    model: Model,
    kinds: Sequence[SheetKind],
    plan_of: Callable[[SheetKind, Model], Sequence[SheetPlan]],
) -> list[tuple[SheetKind, SheetPlan]]:
    """Return every plan with its kind, in the order of the kinds; late kinds are planned last.

    Args:
        model: the job.
        kinds: what to plan, in the order of the set.
        plan_of: gives the plans of a kind, from the job with what was planned before it.
    """
    plans: dict[int, Sequence[SheetPlan]] = {}
    for late in sorted({_of(kind, "LATE", usual=0) for kind in kinds}):
        known = tuple(plan for place in sorted(plans) for plan in plans[place])
        told = replace(model, planned=known)
        for place, kind in enumerate(kinds):
            if _of(kind, "LATE", usual=0) == late:
                part = part_of(kind.ORDER)
                readers = tuple(_of(kind, "READERS", usual=READERS))
                plans[place] = [
                    replace(plan, section=part, readers=plan.readers or readers)
                    for plan in plan_of(kind, told)
                ]
    return [(kinds[place], plan) for place in sorted(plans) for plan in plans[place]]


def numbered(planned: Sequence[tuple[SheetKind, SheetPlan]]) -> Numbers:
    """Return the number of every sheet, and of what else is looked for on it, all equally wide."""
    digits = max(2, len(str(len(planned))))
    keys = {
        key: f"{i:0{digits}d}"
        for i, (_, plan) in enumerate(planned, start=1)
        for key in (plan.key, *plan.also)
    }
    return Numbers(MappingProxyType(keys))


def _in_file_name(words: str) -> str:
    """Return words as they stand in a file name on any system."""
    return re.sub(r"[^A-Za-z0-9.]+", "-", words).strip("-.") or "none"


def _is_untouched(plan: SheetPlan, model: Model) -> bool:
    """Tell whether a sheet was compared with the issue before and found the same."""
    if model.concerned is None or plan.section in ALWAYS_NEW:
        return False
    return plan.key not in {sheet.key for sheet in model.concerned}


def framed(plan: SheetPlan, content: Content, model: Model, numbers: Numbers) -> SheetLayout:
    """Return the finished sheet: frame first, content, title block.

    Plain paper, such as label stock, has one line at its foot in place of frame and block.
    """
    number = numbers.of(plan.key)
    job = model.installation.job
    facts = TitleFacts(
        job=untouched(job) if _is_untouched(plan, model) else job,
        supply=model.installation.supply,
        sheet_title=plan.title,
        document_type=plan.section,
        number=number,
        total=numbers.total,
        scale=content.scale,
        paper=plan.paper,
    )
    stem = plan.key.replace("/", "-").replace(" ", "-").lower()
    return SheetLayout(
        number=number,
        name=f"{_in_file_name(facts.job.number)}-{number}-{_in_file_name(facts.job.revision)}-{stem}",
        title=plan.title,
        paper=plan.paper,
        items=_around(content, facts),
        section=plan.section,
        notes=content.notes,
        key=plan.key,
    )


def _around(content: Content, facts: TitleFacts) -> tuple[Item, ...]:
    """Return what a sheet holds with what stands round it."""
    if not content.is_framed:
        return (*content.items, *foot_line_items(facts))
    return (
        *frame_items(facts.paper),
        *content.items,
        *title_block_items(facts),
        *revision_items(facts, content.items),
    )
