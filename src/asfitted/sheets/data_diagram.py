"""CCTV and data diagram sheets."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Point
from asfitted.layout.data_diagram.blocks import blocks_of
from asfitted.layout.data_diagram.columns import LEG_WORDS, PATTERNS, columns_for
from asfitted.layout.data_diagram.equipment_ink import SheetInk, spots_of
from asfitted.layout.data_diagram.paging import share_out
from asfitted.layout.frame import usable_box
from asfitted.layout.legend import LineSample, lay_out_legend, used_symbols
from asfitted.layout.lettering import VIEW, text_item
from asfitted.layout.linework import widths_for
from asfitted.layout.sheet_model import Content, SheetPlan
from asfitted.layout.title_block import title_block_box

if TYPE_CHECKING:
    from collections.abc import Iterable

    from asfitted.geometry import Box
    from asfitted.layout.data_diagram.blocks import Block
    from asfitted.layout.data_diagram.paging import Part
    from asfitted.layout.legend import Legend
    from asfitted.layout.sheet_layout import Paper
    from asfitted.layout.sheet_model import Model, Numbers

ORDER = 50
TOP_MM = 8.0  # title
KEY = "data-diagram"
MOST_A4_FOR_EACH_A3 = 2
ABBREVIATIONS = (
    ("C/L", "height of the centre line above floor, mm; (m): measured"),
    ("Cat6", "23 AWG solid copper, 6.68 Ω/100 m a core; copper-clad cable is not allowed"),
    ("12 V supply", "current with a quarter in hand"),
)


@dataclass(frozen=True)
class DiagramSheet:
    """One sheet of the diagram, and all of them: flags name places on the others."""

    index: int
    sheets: tuple[tuple[Part, ...], ...]


def plan(model: Model) -> list[SheetPlan]:
    """Plan as many sheets as the rows need; none for a job without data."""
    paper, sheets = _sheets(model)
    many = len(sheets) > 1
    return [
        SheetPlan(
            _key(i, many=many),
            f"CCTV and data diagram{f', part {i + 1} of {len(sheets)}' if many else ''}",
            paper,
            "Drawings",
            DiagramSheet(i, sheets),
        )
        for i in range(len(sheets))
    ]


def _sheets(model: Model) -> tuple[Paper, tuple[tuple[Part, ...], ...]]:
    """Return the paper and what stands on each sheet.

    The paper is that of the job; A3 where A4 would need more than twice as many sheets, or where
    the words on a piece of equipment alone are higher than A4 has room.
    """
    found: dict[Paper, tuple[tuple[Part, ...], ...]] = {}
    papers: tuple[Paper, ...] = ("A3", "A4")
    for paper in papers:
        columns = columns_for(paper)
        blocks = blocks_of(model, columns)
        if not blocks:
            return paper, ()
        room = _room_mm(blocks, model, paper)
        found[paper] = share_out(blocks, room, columns)
        deepest = max(part.y1 for parts in found[paper] for part in parts)
    wish = model.installation.job.paper
    small = (
        wish == "A4"
        and deepest <= room
        and len(found["A4"]) <= MOST_A4_FOR_EACH_A3 * len(found["A3"])
    )
    paper = "A4" if small else "A3"
    return paper, found[paper]


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:
    """Lay out one sheet of rows with the equipment round their ports."""
    sheet: DiagramSheet = plan.payload
    area, columns = usable_box(plan.paper), columns_for(plan.paper)
    top = area.y0 + TOP_MM
    many = len(sheet.sheets) > 1

    def number_of(index: int) -> str:
        return numbers.of(_key(index, many=many))

    spots = spots_of(sheet.sheets, plan.paper, columns, top, number_of)
    ink = SheetInk(plan.paper, columns, top, spots)
    title = text_item("view-title", plan.title, Point(area.x0, area.y0 + VIEW), VIEW, bold=True)
    drawn = ink.sheet(sheet.sheets[sheet.index], _links(model, numbers))
    carried = {
        leg.leg.carries
        for part in sheet.sheets[sheet.index]
        for row in part.rows
        for leg in row.legs
    }
    legend = _legend(used_symbols(drawn), carried, model, plan.paper)
    return Content((title, *drawn, *legend.items))


def _key(index: int, *, many: bool) -> str:
    return f"{KEY}/{index + 1}" if many else KEY


def _links(model: Model, numbers: Numbers) -> dict[str, str]:
    """Return for each camera the place of its row in the camera schedule, where it is one sheet."""
    key = "camera-schedule"
    if key not in numbers.by_key:
        return {}
    cameras = (d.tag for d in model.installation.data_devices.values() if d.kind == "camera")
    return {tag: f"{numbers.of(key)}#{key}:{tag}" for tag in cameras}


def _legend_box(paper: Paper) -> Box:
    """Return the room for the legend: left of the title block on A3, above it on A4."""
    area, block = usable_box(paper), title_block_box(paper)
    if paper == "A3":
        return type(area)(area.x0, area.y0, block.x0 - 6.0, area.y1)
    return type(area)(area.x0, area.y0, area.x1, block.y0 - 3.0)


def _legend(symbols: Iterable[str], carried: Iterable[str], model: Model, paper: Paper) -> Legend:
    """Return the legend at the foot of its room."""
    widths, box, carried = widths_for(paper), _legend_box(paper), set(carried)
    samples = [
        LineSample(LEG_WORDS[c], widths.symbol, PATTERNS[c]) for c in PATTERNS if c in carried
    ]
    samples.append(
        LineSample("Edge of what the equipment stands in", widths.narrow, "long_dash_dot")
    )

    def laid_out(top: float) -> Legend:
        return lay_out_legend(
            at=Point(box.x0, top),
            width_mm=box.width,
            columns=3 if paper == "A3" else 4,
            symbols=tuple(symbols),
            catalogue=model.symbols,
            lines=samples,
            abbreviations=ABBREVIATIONS,
            width_of_symbol_lines_mm=widths.symbol,
        )

    return laid_out(box.y1 - laid_out(0.0).height_mm)


def _room_mm(blocks: tuple[Block, ...], model: Model, paper: Paper) -> float:
    """Return the height for rows: under the title, above title block and the longest legend."""
    area, block = usable_box(paper), title_block_box(paper)
    symbols = {one.symbol for b in blocks for one in b.equipment}
    symbols |= {row.row.symbol for b in blocks for row in b.rows if row.row.symbol}
    if any(leg.leg.baluns for b in blocks for row in b.rows for leg in row.legs):
        symbols.add("balun")
    symbols.add("off_page")
    carried = {leg.leg.carries for b in blocks for row in b.rows for leg in row.legs}
    legend = _legend(sorted(symbols), carried, model, paper)
    foot = min(_legend_box(paper).y1 - legend.height_mm, block.y0)
    return foot - 4.0 - (area.y0 + TOP_MM)
