"""Sheet kinds, one file each, found by scanning this folder.

A sheet kind is a module with ``ORDER`` (where it stands in the set), ``plan(model)`` and
``build(plan, model, numbers)``; see ``asfitted.layout.sheet_model``.
"""

from __future__ import annotations

import importlib
import pkgutil
from types import MappingProxyType
from typing import TYPE_CHECKING, Protocol, cast

from asfitted.layout.frame import frame_items
from asfitted.layout.sheet_layout import SheetLayout
from asfitted.layout.sheet_model import Content, Model, Numbers, SheetPlan
from asfitted.layout.title_block import TitleFacts, title_block_items

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence


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
    planned = [(kind, plan) for kind in sheet_kinds() for plan in kind.plan(model)]
    keys = {plan.key: f"{i:02d}" for i, (_, plan) in enumerate(planned, start=1)}
    numbers = Numbers(MappingProxyType(keys))
    sheets = []
    for kind, plan in planned:
        if progress:
            progress(f"sheet {numbers.of(plan.key)} of {numbers.total:02d}: {plan.title}")
        sheets.append(_framed(plan, kind.build(plan, model, numbers), model, numbers))
    return tuple(sheets)


def _framed(plan: SheetPlan, content: Content, model: Model, numbers: Numbers) -> SheetLayout:
    """Return the finished sheet: frame first, content, title block."""
    number = numbers.of(plan.key)
    facts = TitleFacts(
        job=model.installation.job,
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
        name=f"{number}-{stem}",
        title=plan.title,
        paper=plan.paper,
        items=(*frame_items(plan.paper), *content.items, *title_block_items(facts)),
        section=plan.section,
        notes=content.notes,
    )
