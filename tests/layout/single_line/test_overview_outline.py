"""The overview of forty boards: few sheets, every board once, every cut with both its ends."""

from __future__ import annotations

import itertools
from typing import TYPE_CHECKING

import pytest

from asfitted.dev.generated_jobs import FORTY_BOARDS, generated_job
from asfitted.geometry import Box
from asfitted.layout.frame import usable_box
from asfitted.layout.single_line.overview_parts import FLAG_MM
from asfitted.layout.single_line.overview_places import place_overview
from asfitted.layout.title_block import title_block_box
from asfitted.pipeline import check_job, model_of

if TYPE_CHECKING:
    from pathlib import Path

    from asfitted.layout.sheet_model import Model
    from asfitted.layout.single_line.overview_parts import PlacedOverview

MOST_SHEETS = 4  # boards side by side took nine


@pytest.fixture(scope="module")
def model(tmp_path_factory: pytest.TempPathFactory) -> Model:
    path: Path = tmp_path_factory.mktemp("forty") / "job.yaml"
    path.write_text(generated_job(FORTY_BOARDS), encoding="utf-8")
    return model_of(check_job(path))


@pytest.fixture(scope="module")
def pages(model: Model) -> tuple[PlacedOverview, ...]:
    return place_overview(model)


def test_forty_boards_stand_on_few_sheets_each_once(
    model: Model, pages: tuple[PlacedOverview, ...]
) -> None:
    assert len(pages) <= MOST_SHEETS
    tags = [b.tag for page in pages for b in page.boxes if b.tag in model.installation.boards]
    assert sorted(tags) == sorted(model.installation.boards)


def test_each_board_but_a_cut_one_is_fed_and_each_cut_has_both_ends(
    model: Model, pages: tuple[PlacedOverview, ...]
) -> None:
    flags = {name for page in pages for name in page.flags}
    on = {name.removeprefix("on:") for name in flags if name.startswith("on:")}
    back = {name.removeprefix("back:") for name in flags if name.startswith("back:")}
    assert on == back
    assert on
    fed = [feed.child for page in pages for feed in page.feeds]
    assert sorted(fed) == sorted(model.installation.boards)


def test_feeds_end_on_what_they_join_and_nothing_meets(pages: tuple[PlacedOverview, ...]) -> None:
    for page in pages:
        area, title = usable_box(page.room.paper), title_block_box(page.room.paper)
        boxes = {box.tag: box.box for box in page.boxes}
        spines = {spine.tag: spine.box for spine in page.spines}
        for one, other in itertools.combinations([*boxes.values(), *spines.values()], 2):
            assert not one.meets(other)
        for box in (*boxes.values(), *spines.values()):
            assert area.grown(1e-6).holds(box)
            assert not box.meets(title)
        for feed in page.feeds:
            spine = spines[feed.parent]
            assert feed.x0 == spine.x1
            assert spine.y0 < feed.y < spine.y1
            flag = page.flags.get(f"on:overview/{feed.child}/1")
            if flag is not None:
                assert feed.x1 == pytest.approx(flag.x - FLAG_MM / 2)
            else:
                assert feed.x1 == boxes[feed.child].x0
                assert boxes[feed.child].y0 < feed.y < boxes[feed.child].y1
            line = Box(feed.x0 + 0.1, feed.y - 0.1, feed.x1 - 0.1, feed.y + 0.1)
            assert not any(line.meets(box) for box in (*boxes.values(), *spines.values()))
