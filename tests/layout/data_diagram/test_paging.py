"""The diagram is cut between devices: every one is drawn once, in order, and the cut is flagged."""

from __future__ import annotations

import itertools
import re
import sys
from pathlib import Path
from types import MappingProxyType
from typing import TYPE_CHECKING

import pytest

sys.path.insert(0, str(Path(__file__).parent))  # for the modules beside this file

from grown_data import grown_model

from asfitted.dev.sheet_faults import faults_of_content
from asfitted.layout.data_diagram.blocks import blocks_of, ranges
from asfitted.layout.data_diagram.columns import columns_for
from asfitted.layout.data_diagram.paging import share_out
from asfitted.layout.data_diagram.rows import link_rows
from asfitted.layout.frame import zone_of
from asfitted.layout.sheet_layout import SymbolUse, Text
from asfitted.layout.sheet_model import Numbers
from asfitted.sheets import data_diagram

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import Item, Paper
    from asfitted.layout.sheet_model import Model

SEEDS = (*range(12), 107)  # 107: equipment whose words are higher than A4 has room
FORTY_CAMERAS = 3  # a seed of that many


def drawn(model: Model) -> dict[str, tuple[Paper, tuple[Item, ...]]]:
    plans = data_diagram.plan(model)
    numbers = Numbers(MappingProxyType({p.key: f"{i:02d}" for i, p in enumerate(plans, 1)}))
    return {
        numbers.of(p.key): (p.paper, data_diagram.build(p, model, numbers).items) for p in plans
    }


@pytest.mark.parametrize("paper", ["A3", "A4"])
@pytest.mark.parametrize("seed", SEEDS)
def test_sheets_of_any_size_have_no_faults(seed: int, paper: Paper) -> None:
    for number, (found_paper, items) in drawn(grown_model(seed, paper)).items():
        assert faults_of_content(items, found_paper) == [], number


@pytest.mark.parametrize("seed", SEEDS)
def test_every_device_is_drawn_once(seed: int) -> None:
    model = grown_model(seed)
    rows = link_rows(model.installation, model.results)
    idents = [
        item.ident for _, items in drawn(model).values() for item in items if item.kind == "symbol"
    ]
    for row in rows:
        assert row.is_patch or idents.count(row.device) == 1
    patches = [i for i in idents if i.startswith("patch:") and i.endswith("to-switch:port")]
    assert len(patches) == sum(row.is_patch for row in rows)


@pytest.mark.parametrize("seed", SEEDS)
def test_rows_keep_their_order_and_parts_do_not_overlap(seed: int) -> None:
    model, columns = grown_model(seed), columns_for("A3")
    blocks = blocks_of(model, columns)
    for room_mm in (60.0, 180.0):
        sheets = share_out(blocks, room_mm, columns)
        told = [row.row for parts in sheets for part in parts for row in part.rows]
        assert told == [row.row for block in blocks for row in block.rows]
        for parts in sheets:
            for above, below in itertools.pairwise(parts):
                assert above.y1 <= below.y0
            for part in parts:
                ends = [y + r.height_mm for y, r in zip(part.row_ys, part.rows, strict=True)]
                assert all(a <= b for a, b in zip(ends, part.row_ys[1:], strict=False))
                assert all(end <= part.y1 + 1e-6 for end in ends)


def test_a_row_too_high_for_any_sheet_is_still_drawn() -> None:
    model, columns = grown_model(FORTY_CAMERAS), columns_for("A4")
    blocks = blocks_of(model, columns)
    sheets = share_out(blocks, 10.0, columns)
    assert sum(len(p.rows) for parts in sheets for p in parts) == sum(len(b.rows) for b in blocks)


@pytest.mark.parametrize("seed", SEEDS)
def test_a_flag_names_the_sheet_and_zone_of_its_other_end(seed: int) -> None:
    sheets = drawn(grown_model(seed))
    places = {
        f"{number}#{item.ident}": (number, zone_of(paper, item.parts[0].at), item)
        for number, (paper, items) in sheets.items()
        for item in items
        if item.kind == "flag" and isinstance(item.parts[0], SymbolUse)
    }
    words = {
        f"{number}#{item.ident}": " ".join(p.text for p in item.parts if isinstance(p, Text))
        for number, (_, items) in sheets.items()
        for item in items
        if item.kind == "text"
    }
    for here, (_, _, item) in places.items():
        there_number, there_zone, twin = places[item.link]
        assert twin.link == here
        said = words.get(f"{here}:words") or words[f"{here}:sheet"]
        named = re.search(r"sheet (\d\d), zone ([A-Z]\d)", said)
        assert named is not None
        assert named.groups() == (there_number, there_zone)


def test_the_forty_cameras_of_a_seed_are_forty() -> None:
    devices = grown_model(FORTY_CAMERAS).installation.data_devices.values()
    assert sum(d.kind == "camera" for d in devices) == 40


def test_ranges_of_ports_read_as_a_person_writes_them() -> None:
    assert ranges([1, 2, 3, 5, 7, 8]) == "1 to 3, 5, 7 to 8"


def test_a_job_without_data_has_no_diagram() -> None:
    bare = next(m for m in map(grown_model, range(60)) if not m.installation.data_devices)
    assert data_diagram.plan(bare) == []
