"""Properties that every single-line diagram has, on demo jobs and on jobs grown from seeds."""

from __future__ import annotations

import itertools
import re
from collections import Counter
from functools import cache
from pathlib import Path
from types import MappingProxyType
from typing import TYPE_CHECKING

import pytest
from grown_boards import grown_model

from asfitted.calculate.calculate import calculate
from asfitted.draw.symbols import catalogue
from asfitted.geometry import Box, Point
from asfitted.layout.frame import usable_box, zone_of
from asfitted.layout.legend import used_symbols
from asfitted.layout.lettering import BODY, TAG, box_of
from asfitted.layout.sheet_layout import Item, SymbolUse, Text
from asfitted.layout.sheet_layout import Path as Line
from asfitted.layout.sheet_model import Model, Numbers
from asfitted.layout.title_block import title_block_box
from asfitted.resolve.resolve_job import resolve
from asfitted.sheets import distribution_overview, single_line_diagram
from asfitted.spec.load_job import load_job

if TYPE_CHECKING:
    from collections.abc import Iterator

SPECS = Path(__file__).parents[3] / "specs"
#: (seed, boards, ways, boards on the supply, phases)
GROWN = (
    (1, 1, 1, 1, 1),
    (2, 1, 12, 1, 3),
    (3, 5, 8, 1, 3),
    (4, 6, 6, 3, 3),
    (5, 40, 10, 1, 3),
    (6, 40, 4, 9, 1),
    (7, 1, 100, 1, 3),
)
CASES = ("pottery-studio", "community-shed", *GROWN)


@cache
def model_of(case: object) -> Model:
    if isinstance(case, str):
        installation = resolve(load_job(SPECS / f"{case}.yaml"))
        return Model(installation, calculate(installation), None, catalogue())  # type: ignore[arg-type]
    assert isinstance(case, tuple)
    seed, boards, ways, on_supply, phases = case
    return grown_model(seed, boards=boards, ways=ways, on_supply=on_supply, phases=phases)


@cache
def sheets_of(case: object) -> dict[str, tuple[Item, ...]]:
    """Return the items of every sheet by its number."""
    model = model_of(case)
    kinds = (distribution_overview, single_line_diagram)
    planned = [(kind, plan) for kind in kinds for plan in kind.plan(model)]
    keys = {plan.key: f"{i:02d}" for i, (_, plan) in enumerate(planned, start=1)}
    numbers = Numbers(MappingProxyType(keys))
    return {numbers.of(plan.key): kind.build(plan, model, numbers).items for kind, plan in planned}


def texts(items: tuple[Item, ...]) -> Iterator[tuple[str, Text]]:
    return ((i.ident, p) for i in items for p in i.parts if isinstance(p, Text))


def lines(items: tuple[Item, ...], *kinds: str) -> Iterator[tuple[Item, Point, Point]]:
    """Return every straight piece of the items of some kinds."""
    for item in items:
        for part in item.parts:
            if item.kind in kinds and isinstance(part, Line):
                yield from ((item, a, b) for a, b in itertools.pairwise(part.points))


def all_items(case: object) -> list[Item]:
    return [item for items in sheets_of(case).values() for item in items]


@pytest.mark.parametrize("case", CASES, ids=str)
def test_every_text_is_inside_the_usable_area_and_clear_of_the_title_block(case: object) -> None:
    area, title = usable_box("A3").grown(0.2), title_block_box("A3").grown(0.5)
    for items in sheets_of(case).values():
        for ident, text in texts(items):
            box = box_of(text)
            assert area.holds(box), (ident, text.text, box)
            assert not title.meets(box), (ident, text.text, box)
            assert text.cap_mm in {BODY, TAG}


@pytest.mark.parametrize("case", CASES, ids=str)
def test_no_text_meets_another_text_or_a_line(case: object) -> None:
    for items in sheets_of(case).values():
        boxes = sorted(
            ((box_of(t).grown(-0.15), ident, t.text) for ident, t in texts(items)),
            key=lambda found: found[0].x0,
        )
        for i, (box, ident, text) in enumerate(boxes):
            for other, name, words in boxes[i + 1 :]:
                if other.x0 > box.x1:
                    break
                assert not box.meets(other), (ident, text, name, words)
        for item, a, b in lines(items, "wire", "busbar", "outline"):
            if item.ident.startswith("legend:"):
                continue
            thin = Box(min(a.x, b.x), min(a.y, b.y), max(a.x, b.x), max(a.y, b.y)).grown(0.3)
            for box, ident, text in boxes:
                assert not thin.meets(box), (item.ident, ident, text)


@pytest.mark.parametrize("case", CASES, ids=str)
def test_lines_are_upright_or_level_and_those_of_different_nets_do_not_cross(case: object) -> None:
    for items in sheets_of(case).values():
        pieces = list(lines(items, "wire"))
        assert all(abs(a.x - b.x) < 1e-6 or abs(a.y - b.y) < 1e-6 for _, a, b in pieces)
        for (one, a, b), (two, c, d) in itertools.combinations(pieces, 2):
            if one.net == two.net:
                continue
            first = Box(min(a.x, b.x), min(a.y, b.y), max(a.x, b.x), max(a.y, b.y))
            second = Box(min(c.x, d.x), min(c.y, d.y), max(c.x, d.x), max(c.y, d.y))
            assert not first.grown(0.05).meets(second.grown(0.05)), (one.ident, two.ident)


@pytest.mark.parametrize("case", CASES, ids=str)
def test_every_way_is_named_once_and_in_true_order(case: object) -> None:
    model = model_of(case)
    placed: dict[str, list[tuple[int, float, str]]] = {}
    for number, items in sheets_of(case).items():
        for ident, text in texts(items):
            if ident.endswith(":way"):
                placed.setdefault(ident.rsplit("/", 1)[0], []).append(
                    (int(number), text.at.x, ident)
                )
    for tag, board in model.installation.boards.items():
        found = [ident.removesuffix(":way").rsplit("/", 1)[1] for _, _, ident in placed[tag]]
        places = [(number, x) for number, x, _ in placed[tag]]
        assert places == sorted(places)
        named = list(dict.fromkeys(found))
        order = [way.name for way in board.ways]
        assert named == [name for name in order if name in set(named)]
        gathered = set(order) - set(named)
        blank = {way.name for way in board.ways if way.words == "blank"}
        assert gathered <= blank, "only blank ways share a place"


@pytest.mark.parametrize("case", CASES, ids=str)
def test_every_circuit_stands_there_once_with_one_device(case: object) -> None:
    model = model_of(case)
    names = Counter(i.ident for i in all_items(case) if i.ident.endswith(":name"))
    assert names == Counter(f"{tag}:name" for tag in model.installation.circuits)
    devices = Counter(i.ident for i in all_items(case) if i.ident.endswith(":device"))
    assert all(devices[f"{tag}:device"] == 1 for tag in model.installation.circuits)


@pytest.mark.parametrize("case", CASES, ids=str)
def test_every_flag_has_its_twin_which_names_it_by_sheet_and_zone(case: object) -> None:
    sheets = sheets_of(case)
    flags = {
        (number, item.ident): item
        for number, items in sheets.items()
        for item in items
        if item.kind == "flag"
    }
    words = {
        number: {ident: " ".join(t.text for i, t in texts(items) if i == ident)
                 for ident in {i for i, _ in texts(items)}}
        for number, items in sheets.items()
    }  # fmt: skip
    for (number, ident), item in flags.items():
        sheet, other = item.link.split("#")
        twin = flags[sheet, other]
        # a box of the overview names the sheet of its ways, whose own flag names the feeding way
        assert twin.link == f"{number}#{ident}" or ident.startswith("ways:")
        use = twin.parts[0]
        assert isinstance(use, SymbolUse)
        zone = zone_of("A3", use.at.moved(use.size_mm / 2, use.size_mm / 2))
        said = words[number][f"{ident}:words"]
        assert re.search(rf"sheets? {sheet}", said)
        assert f"zone {zone}" in said or f"{sheet}/{zone}" in said


@pytest.mark.parametrize("case", CASES, ids=str)
def test_the_legend_explains_what_is_used_and_nothing_else(case: object) -> None:
    drawn, explained = set[str](), set[str]()
    for items in sheets_of(case).values():
        on_sheet = set(used_symbols(i for i in items if not i.ident.startswith("legend:")))
        in_legend = set(used_symbols(i for i in items if i.ident.startswith("legend:")))
        drawn |= on_sheet
        explained |= in_legend
        says = any(i.ident == "notes:reference" for i in items)
        assert in_legend or says, "a sheet has a legend or names the sheet that has it"
    assert drawn == explained


@pytest.mark.parametrize("case", CASES, ids=str)
def test_devices_of_a_sheet_stand_on_one_line_and_used_ways_at_one_pitch(case: object) -> None:
    for items in sheets_of(case).values():
        uses = [i.parts[0] for i in items if i.ident.endswith(":device")]
        assert len({round(u.at.y, 3) for u in uses if isinstance(u, SymbolUse)}) <= 1
        loads = {
            round(p.at.y, 3)
            for i in items
            if i.ident.endswith(":name")
            for p in i.parts[:1]
            if isinstance(p, Text)
        }
        assert len(loads) <= 1


def test_a_job_without_boards_has_no_single_line_diagram() -> None:
    assert single_line_diagram.plan(model_of("shop-cctv")) == []


def test_the_pottery_diagram_cuts_no_small_board_and_cuts_the_wide_one_evenly() -> None:
    titles = [plan.title for plan in single_line_diagram.plan(model_of("pottery-studio"))]
    assert titles == [
        "Single-line diagram: DB1 part 1",
        "Single-line diagram: DB1 part 2",
        "Single-line diagram: DB1 part 3",
        "Single-line diagram: DB2",
    ]


def test_same_job_gives_the_same_sheets() -> None:
    first = sheets_of((3, 5, 8, 1, 3))
    sheets_of.cache_clear()
    model_of.cache_clear()
    assert sheets_of((3, 5, 8, 1, 3)) == first
