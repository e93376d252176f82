"""DXF of every demo sheet, opened again and counted against the layout."""

from __future__ import annotations

import io
import subprocess
import sys
from collections import Counter
from pathlib import Path as FilePath
from typing import TYPE_CHECKING, Any

import ezdxf
import pytest
from ezdxf import bbox
from ezdxf.filemanagement import read

from asfitted.draw.disciplines import layer_of
from asfitted.draw.dxf import APPLICATION, write_dxf
from asfitted.draw.placed_symbol import symbol_texts
from asfitted.layout.sheet_layout import Circle, Path, SymbolUse, Text

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.layout.sheet_layout import SheetLayout

SPECS = FilePath(__file__).parents[2] / "specs"
HALF_A_LINE_MM = 0.4
DISCIPLINES = {"power", "data", "containment", "building", "notes", "sheet", "tables"}


def _opened(sheet: SheetLayout) -> Any:
    document = read(io.StringIO(write_dxf(sheet)))
    auditor = document.audit()
    assert not auditor.errors
    assert not auditor.fixes
    return document


def _texts(sheet: SheetLayout) -> Iterator[Text]:
    for item in sheet.items:
        for part in item.parts:
            if isinstance(part, Text):
                yield part
            elif isinstance(part, SymbolUse):
                yield from symbol_texts(part)


def _wanted(sheet: SheetLayout) -> Counter[str]:
    count: Counter[str] = Counter()
    for item in sheet.items:
        for part in item.parts:
            if isinstance(part, Path | Circle):
                shape = "LWPOLYLINE" if isinstance(part, Path) else "CIRCLE"
                count[shape] += part.stroke is not None or part.fill is None
                count["HATCH"] += part.fill is not None
            elif isinstance(part, SymbolUse):
                count["INSERT"] += 1
    count["TEXT"] = len(list(_texts(sheet)))
    return +count


@pytest.mark.parametrize("job", ["pottery-studio", "community-shed", "shop-cctv"])
def test_every_sheet_opens_again_with_the_same_words_and_things(
    job: str, demo_sheets: dict[str, tuple[SheetLayout, ...]]
) -> None:
    for sheet in demo_sheets[job]:
        document = _opened(sheet)
        space = document.modelspace()
        assert Counter(entity.dxftype() for entity in space) == _wanted(sheet), sheet.name
        assert Counter(entity.dxf.text for entity in space.query("TEXT")) == Counter(
            text.text for text in _texts(sheet)
        )
        assert document.units == ezdxf.units.MM
        inside = bbox.extents(space, fast=True)
        width, height = sheet.size_mm
        assert inside.extmin.x >= -HALF_A_LINE_MM
        assert inside.extmin.y >= -HALF_A_LINE_MM
        assert inside.extmax.x <= width + HALF_A_LINE_MM
        assert inside.extmax.y <= height + HALF_A_LINE_MM


def test_things_lie_where_the_layout_puts_them(
    demo_sheets: dict[str, tuple[SheetLayout, ...]],
) -> None:
    sheet = demo_sheets["pottery-studio"][0]
    space = _opened(sheet).modelspace()
    height = sheet.size_mm[1]
    for item in sheet.items:
        drawn = [
            entity
            for entity in space
            if entity.has_xdata(APPLICATION)
            and (1000, f"id={item.ident}"[:250]) in entity.get_xdata(APPLICATION)
        ]
        assert drawn, item.ident
        for part in item.parts:
            if isinstance(part, Text):
                places = [e.get_placement()[1] for e in drawn if e.dxftype() == "TEXT"]
                assert any(
                    abs(at.x - part.at.x) < 0.01 and abs(height - at.y - part.at.y) < 0.01
                    for at in places
                )


def test_layers_are_by_discipline_and_every_entity_is_on_one(
    demo_sheets: dict[str, tuple[SheetLayout, ...]],
) -> None:
    used: set[str] = set()
    for sheet in demo_sheets["pottery-studio"]:
        document = _opened(sheet)
        known = {layer.dxf.name for layer in document.layers}
        on = {entity.dxf.layer for entity in document.modelspace()}
        assert on <= known
        used |= {layer.split("-")[0] for layer in on}
        wanted = {layer_of(sheet, item, part) for item in sheet.items for part in item.parts}
        assert on == wanted
    assert used == DISCIPLINES


def test_a_turned_and_mirrored_symbol_keeps_its_ink_inside_its_box(
    demo_sheets: dict[str, tuple[SheetLayout, ...]],
) -> None:
    turned = 0
    for sheet in demo_sheets["pottery-studio"]:
        inserts = [e for e in _opened(sheet).modelspace() if e.dxftype() == "INSERT"]
        uses = [p for i in sheet.items for p in i.parts if isinstance(p, SymbolUse)]
        for use, insert in zip(uses, inserts, strict=True):
            turned += use.turn != 0
            assert insert.dxf.rotation == -use.turn % 360
            middle = use.at.moved(use.size_mm / 2, use.size_mm / 2)
            assert insert.dxf.insert.x == pytest.approx(middle.x, abs=0.002)
            assert insert.dxf.insert.y == pytest.approx(sheet.size_mm[1] - middle.y, abs=0.002)
    assert turned > 0


SAME = """
from pathlib import Path
import hashlib, sys
from asfitted.pipeline import check_job, lay_out_job
from asfitted.draw.dxf import write_dxf
sheets = lay_out_job(check_job(Path(sys.argv[1])))
print(hashlib.sha256("".join(map(write_dxf, sheets)).encode()).hexdigest())
"""


def test_same_bytes_from_two_processes() -> None:
    told = [
        subprocess.run(
            [sys.executable, "-c", SAME, str(SPECS / "shop-cctv.yaml")],
            capture_output=True,
            text=True,
            check=True,
            env={"PYTHONHASHSEED": seed},
        ).stdout
        for seed in ("1", "2")
    ]
    assert told[0] == told[1]
    assert len(told[0].strip()) == 64
