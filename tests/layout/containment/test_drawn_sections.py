from __future__ import annotations

import itertools
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from asfitted.layout.containment.cross_section import cross_section
from asfitted.layout.containment.developed_run import developed_runs
from asfitted.layout.containment.packing import clearance_mm
from asfitted.layout.containment.section_pages import section_pages
from asfitted.layout.containment.section_places import section_places
from asfitted.layout.containment.strip_pages import strip_pages
from asfitted.layout.sheet_layout import Circle
from asfitted.layout.sheet_model import Numbers
from asfitted.sheets import containment_sections, containment_strips

if TYPE_CHECKING:
    from asfitted.layout.containment.cross_section import CrossSection
    from asfitted.layout.sheet_model import Model

JOBS = ("pottery-studio", "community-shed", "shop-cctv")


def sections(model: Model) -> list[CrossSection]:
    runs = developed_runs(model.installation, model.results)
    return [cross_section(model, place) for place in section_places(runs)]


@pytest.mark.parametrize("job", JOBS)
def test_each_run_with_cables_is_cut_at_its_fullest_piece(
    demo_models: dict[str, Model], job: str
) -> None:
    model = demo_models[job]
    found = sections(model)
    for tag, result in model.results.containment.items():
        cut = [s for s in found if s.place.developed.run.tag == tag]
        assert bool(cut) == bool(result.fullest)
        for section in cut:
            assert section.place.piece.section.fill_pct == pytest.approx(result.fill_pct)


@pytest.mark.parametrize("job", JOBS)
def test_every_cable_is_there_at_its_true_size_and_none_overlaps(
    demo_models: dict[str, Model], job: str
) -> None:
    for section in sections(demo_models[job]):
        piece = section.place.piece.section
        assert section.fits
        widths = {p.shape.tag: p.shape.width_mm for p in section.packed.laid}
        assert widths == dict(zip(piece.cables, piece.overall_mm, strict=True))
        for a, b in itertools.combinations(section.packed.laid, 2):
            assert clearance_mm(a, b) > -1e-6


def test_cables_are_drawn_to_the_scale_written(demo_models: dict[str, Model]) -> None:
    model = demo_models["pottery-studio"]
    plans = [*containment_strips.plan(model), *containment_sections.plan(model)]
    numbers = Numbers({p.key: f"{i:02d}" for i, p in enumerate(plans, start=1)})
    page = next(p for p in plans if p.key == "containment-sections")
    items = {i.ident: i for i in containment_sections.build(page, model, numbers).items}
    # W05 on T1 is 18.7 mm over all; T1 is 225 mm wide and drawn at 1:2
    (circle,) = [p for p in items["section:1:cable:W05:0"].parts if isinstance(p, Circle)]
    assert circle.radius_mm == pytest.approx(18.7 / 2 / 2)


def test_strips_and_sections_point_at_each_other(demo_models: dict[str, Model]) -> None:
    model = demo_models["pottery-studio"]
    plans = [*containment_strips.plan(model), *containment_sections.plan(model)]
    numbers = Numbers({p.key: f"{i:02d}" for i, p in enumerate(plans, start=1)})
    where = section_pages(model).keys
    strips = [p for p in plans if p.key.startswith("containment-strips")]
    words = {
        i.ident: [getattr(t, "text", "") for t in i.parts]
        for p in strips
        for i in containment_strips.build(p, model, numbers).items
    }
    for number, key in where.items():
        (said,) = [w for name, w in words.items() if name.endswith(f":section:{number}:words")]
        assert said == [str(number), f"sheet {numbers.of(key)}"]


def test_a_table_of_cables_stands_under_its_section(demo_models: dict[str, Model]) -> None:
    pages = section_pages(demo_models["pottery-studio"])
    at = {f"cables:{p.section.place.number}": p.slot for p in pages.sections}
    assert pages.tables
    for table in pages.tables:
        slot = at[table.ident]
        assert table.slot.page == slot.page
        assert table.slot.at.x == slot.at.x
        assert table.slot.at.y > slot.at.y


def test_notes_stand_on_every_paper(demo_models: dict[str, Model]) -> None:
    """On A4 there is no room beside the title block: they stand among the views, once."""
    model = demo_models["pottery-studio"]
    job = replace(model.installation.job, paper="A4")
    small = replace(model, installation=replace(model.installation, job=job))
    for pages in (section_pages(small), strip_pages(small)):
        assert pages.paper == "A4"
        held = [page for page in range(pages.count) if pages.notes.items(page)]
        assert len(held) == 1
    wide = section_pages(model)
    assert all(wide.notes.items(page) for page in range(wide.count))
