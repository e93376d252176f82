from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

import pytest

from asfitted.geometry import Box
from asfitted.layout.containment.developed_run import developed_runs
from asfitted.layout.containment.run_events import events_of
from asfitted.layout.containment.strip_pages import strip_pages
from asfitted.layout.containment.strip_parts import parts_of
from asfitted.layout.frame import usable_box
from asfitted.layout.title_block import title_block_box

if TYPE_CHECKING:
    from asfitted.layout.containment.developed_run import DevelopedRun
    from asfitted.layout.sheet_model import Model

JOBS = ("pottery-studio", "community-shed", "shop-cctv")


def runs(model: Model) -> dict[str, DevelopedRun]:
    found = developed_runs(model.installation, model.results)
    return {one.run.tag: one for one in found}


@pytest.mark.parametrize("job", JOBS)
def test_stretches_and_pieces_tile_each_run(demo_models: dict[str, Model], job: str) -> None:
    model = demo_models[job]
    for tag, one in runs(model).items():
        assert one.length_mm / 1000 == pytest.approx(model.results.containment[tag].length_m)
        for row in ([s.along for s in one.stretches], [p.along for p in one.pieces]):
            assert row[0][0] == 0.0
            assert row[-1][1] == pytest.approx(one.length_mm)
            for a, b in pairwise(row):
                assert a[1] == pytest.approx(b[0])


def test_an_upright_run_goes_nowhere_sideways(demo_models: dict[str, Model]) -> None:
    riser = runs(demo_models["pottery-studio"])["T4"]
    assert riser.length_mm == pytest.approx(950.0)
    assert riser.over_mm == pytest.approx(0.0)


def test_take_offs_stand_where_the_spec_puts_the_things(demo_models: dict[str, Model]) -> None:
    model = demo_models["pottery-studio"]
    one = runs(model)["T1"]
    events = {e.tag: e for e in events_of(one, model.installation, model.results)}
    # T1 starts at D 1.0 m and runs 5.4 m on wall D and 8 m on wall A; X1 is 1.0 m along wall B
    assert events["X1"].along == pytest.approx(5400 + 8000 + 1000)
    assert events["X1"].reach_mm == pytest.approx(1300)
    # T4 rises 1.0 m before the corner D | A, and carries every cable from DB1 but that of DB2
    assert events["T4"].kind == "run"
    assert events["T4"].along == pytest.approx(5400 - 1000)


def test_every_cable_that_enters_a_run_also_leaves_it(demo_models: dict[str, Model]) -> None:
    model = demo_models["pottery-studio"]
    for tag, one in runs(model).items():
        lying = {c for piece in one.pieces for c in piece.section.cables}
        ends = events_of(one, model.installation, model.results)
        assert len([e for e in ends if e.kind in ("run", "take-off")]) >= (2 if lying else 0), tag


@pytest.mark.parametrize("drawn_mm", [60.0, 120.0, 344.0])
def test_parts_follow_one_another_and_fit(demo_models: dict[str, Model], drawn_mm: float) -> None:
    model = demo_models["pottery-studio"]
    one = runs(model)["T3"]
    events = events_of(one, model.installation, model.results)
    parts = parts_of(one, events, 100, drawn_mm)
    assert parts[0].over[0] == 0.0
    assert parts[-1].over[1] == pytest.approx(one.over_mm)
    for a, b in pairwise(parts):
        assert a.over[1] == b.over[0]
    for part in parts:
        assert (part.over[1] - part.over[0]) / 100 <= drawn_mm + 1e-6


@pytest.mark.parametrize("job", JOBS)
def test_strips_lie_inside_the_sheet_and_clear_of_one_another(
    demo_models: dict[str, Model], job: str
) -> None:
    pages = strip_pages(demo_models[job])
    area, block = usable_box(pages.paper), title_block_box(pages.paper)
    boxes = [
        (
            p.slot.page,
            Box(
                p.slot.at.x,
                p.slot.at.y,
                p.slot.at.x + p.band.width_mm,
                p.slot.at.y + p.band.height_mm,
            ),
        )
        for p in pages.bands
    ]
    assert boxes
    for i, (page, box) in enumerate(boxes):
        assert area.grown(1e-6).holds(box)
        assert not box.meets(block)
        assert not any(page == p and box.meets(b) for p, b in boxes[i + 1 :])


@pytest.mark.parametrize("job", JOBS)
def test_every_piece_stands_in_a_table_once(demo_models: dict[str, Model], job: str) -> None:
    model = demo_models[job]
    pages = strip_pages(model)
    told = [t.fitted.table.rows[i][0] for t in pages.tables for i in t.rows]
    assert sorted(told) == sorted(model.results.sections)
