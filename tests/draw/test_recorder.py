"""The recorder tells each primitive in one line."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from asfitted.draw.recorder import record
from asfitted.geometry import Point
from asfitted.layout.sheet_layout import Circle, Item, Path, Stroke, SymbolUse, Text

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from asfitted.layout.sheet_layout import SheetLayout


def test_example_sheet_is_as_agreed(
    golden: Callable[[str, Sequence[str]], None], example: SheetLayout
) -> None:
    golden("draw/example_sheet", record(example))


def test_each_primitive_is_told_in_one_line(example: SheetLayout) -> None:
    parts = (
        Path((Point(0, 0), Point(-0.01, 12.345)), Stroke(0.35, "dashed", "grey")),
        Path((Point(0, 0), Point(1, 0), Point(1, 1)), None, closed=True, fill="tint"),
        Circle(Point(3, 4), 0.5, Stroke(0.25), "white"),
        Text(Point(5, 6), "B32", 3.5, "end", bold=True, turned=True, tone="grey"),
        SymbolUse("rcbo", Point(7, 8), 7, 90, mirrored=True, width_mm=0.25),
    )
    item = Item("DB1/1", "wire", parts, net="L1")
    assert record(replace(example, items=(item,), notes=("mind the gap",)))[1:] == [
        "note mind the gap",
        "wire DB1/1 net=L1 line 0,0 0,12.3 w0.35 dashed grey",
        "wire DB1/1 net=L1 polygon 0,0 1,0 1,1 fill=tint",
        "wire DB1/1 net=L1 circle 3,4 r0.5 w0.25 fill=white",
        "wire DB1/1 net=L1 text 5,6 end h3.5 bold turned grey 'B32'",
        "wire DB1/1 net=L1 use rcbo 7,8 size7 w0.25 turn90 mirrored",
    ]
