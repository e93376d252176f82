"""No text or table that runs over several pages leaves its last page nearly empty."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from asfitted.layout.document.flow import THIN
from asfitted.layout.table import Column, Table
from asfitted.sheets import planned_sheets, sheet_kinds
from asfitted.sheets._document_pages import DocumentPage, text_room
from asfitted.sheets._table_pages import TablePage, plan_table, table_room

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import SheetLayout
    from asfitted.layout.sheet_model import Model, SheetPlan

JOBS = ("pottery-studio", "community-shed", "shop-cctv")


def filled(plan: SheetPlan) -> float | None:
    """Return how much of its room a page of text or of a table takes, None for other sheets."""
    page = plan.payload
    if isinstance(page, DocumentPage):
        last = page.placed[-1]
        return (last.top_mm + last.strip.height_mm) / text_room(plan.paper).height
    if isinstance(page, TablePage):
        used = page.fitted.header_mm + sum(page.fitted.row_mm[row] for row in page.rows)
        return used / table_room(plan.paper, page.notes).height
    return None


@pytest.mark.parametrize("job", JOBS)
def test_no_page_of_several_is_less_than_a_third_full(
    demo_models: dict[str, Model], job: str
) -> None:
    plans = [
        plan
        for _, plan in planned_sheets(
            demo_models[job], sheet_kinds(), lambda kind, told: kind.plan(told)
        )
    ]
    looked_at = 0
    for plan in plans:
        share = filled(plan)
        if share is not None and " of " in plan.title:
            assert share >= THIN, f"{plan.title}: {share:.0%}"
            looked_at += 1
    assert looked_at >= 2


@pytest.mark.parametrize("rows", range(20, 120, 7))
def test_a_table_shares_its_rows_over_its_pages(rows: int) -> None:
    cells = tuple((f"W{i:03d}", "a cable") for i in range(rows))
    table = Table((Column("Tag"), Column("What")), cells, tuple(f"W{i:03d}" for i in range(rows)))
    plans = plan_table(
        key="t", title="T", table=table, section="Schedules", heading="T", papers=("A4",)
    )
    assert [row for plan in plans for row in plan.payload.rows] == list(range(rows))
    if len(plans) > 1:
        assert all((filled(plan) or 0.0) >= THIN for plan in plans)


@pytest.mark.parametrize("job", ["pottery-studio", "community-shed"])
def test_symbols_and_sources_come_before_the_working(
    demo_sheets: dict[str, tuple[SheetLayout, ...]], job: str
) -> None:
    keys = [sheet.key for sheet in demo_sheets[job] if sheet.section == "Calculations"]
    working = [i for i, key in enumerate(keys) if key.startswith("calculations")]
    symbols = [i for i, key in enumerate(keys) if key.startswith("calculation-keys")]
    assert symbols
    assert max(symbols) < min(working)


@pytest.mark.parametrize("job", ["pottery-studio", "community-shed"])
def test_who_tested_stands_on_the_first_sheet_of_a_board(
    demo_sheets: dict[str, tuple[SheetLayout, ...]], job: str
) -> None:
    firsts: dict[str, SheetLayout] = {}
    for sheet in demo_sheets[job]:
        if sheet.key.startswith("test-results/"):
            firsts.setdefault(sheet.key.rstrip("0123456789").rstrip("-"), sheet)
    assert firsts
    for sheet in firsts.values():
        idents = {item.ident.partition(":")[0] for item in sheet.items}
        assert {"instruments", "signed"} <= idents, sheet.name
