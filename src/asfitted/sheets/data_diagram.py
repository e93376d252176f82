"""CCTV and data diagram sheets."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.data_diagram.placing import (
    LEG_WORDS,
    PATTERNS,
    PORT_MM,
    PORT_X,
    WIDTH,
    place_row,
    row_height_mm,
)
from asfitted.layout.data_diagram.rows import LinkRow, link_rows
from asfitted.layout.frame import usable_box
from asfitted.layout.legend import Legend, LineSample, lay_out_legend, used_symbols
from asfitted.layout.lettering import BODY, TAG, VIEW, line_pitch_mm, lines_of_text, text_item, wrap
from asfitted.layout.linework import rectangle
from asfitted.layout.sheet_layout import Item, SymbolUse
from asfitted.layout.sheet_model import Content, SheetPlan
from asfitted.layout.title_block import title_block_box, title_block_height_mm

if TYPE_CHECKING:
    from asfitted.calculate.results import EquipmentResult
    from asfitted.layout.sheet_model import Model, Numbers
    from asfitted.resolve.installation import DataDevice

ORDER = 50
TOP_MM = 16.0  # view title
EQUIPMENT_SYMBOLS = {
    "recorder": "recorder",
    "12 V supply": "power_supply",
    "PoE switch": "poe_switch",
}
CABINET_PAD = 4.0
MOST_SPREAD_MM = 16.0


def plan(model: Model) -> list[SheetPlan]:
    """Plan as many A3 sheets as the rows need; none for a job without data."""
    rows = link_rows(model.installation, model.results)
    pages: list[list[LinkRow]] = []
    room = _room_mm(usable_box("A3"))
    left = 0.0
    for row in rows:
        need = row_height_mm(row)
        if not pages or need > left:
            pages.append([])
            left = room
        pages[-1].append(row)
        left -= need
    many = len(pages) > 1
    return [
        SheetPlan(
            f"data-diagram/{i}" if many else "data-diagram",
            f"CCTV and data diagram{f', part {i}' if many else ''}",
            "A3",
            "Drawings",
            tuple(page),
        )
        for i, page in enumerate(pages, start=1)
    ]


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:  # noqa: ARG001 - no references
    """Lay out one sheet of rows with the cabinet round their ports."""
    rows: tuple[LinkRow, ...] = plan.payload
    area = usable_box("A3")
    items = [text_item("view-title", plan.title, Point(area.x0, area.y0 + VIEW), VIEW, bold=True)]
    y = area.y0 + TOP_MM
    extra = _spread_mm(rows, area)
    for row in rows:
        items.extend(place_row(row, Point(area.x0, y)))
        y += row_height_mm(row) + extra
    items.extend(_cabinet(model, area, max(y, area.y0 + TOP_MM + 60)))
    items.extend(_foot(items, rows, model, area))
    return Content(tuple(items))


def _room_mm(area: Box) -> float:
    """Return the height for rows: under the title, above title block and legend."""
    return area.height - TOP_MM - title_block_height_mm("A3") - 12.0


def _spread_mm(rows: tuple[LinkRow, ...], area: Box) -> float:
    """Return the extra gap under each row that spreads few rows over the sheet."""
    spare = _room_mm(area) - sum(row_height_mm(row) for row in rows)
    return max(0.0, min(spare / len(rows), MOST_SPREAD_MM))


def _cabinet(model: Model, area: Box, bottom: float) -> list[Item]:
    """Return the enclosure round the ports, and what stands in it."""
    left = area.x0 + PORT_X - CABINET_PAD
    box = Box(left, area.y0 + 4.0, area.x1, bottom)
    items = [Item("cabinet", "outline", (rectangle(box, width_mm=0.25, pattern="long_dash_dot"),))]
    lines = wrap(_cabinet_words(model), box.width - 2 * CABINET_PAD, BODY, bold=True)
    at = Point(box.x0 + CABINET_PAD, box.y0 + 4.2)
    items.append(Item("cabinet:name", "text", lines_of_text(lines[:2], at, bold=True)))
    x = left + CABINET_PAD + PORT_MM + 6.0
    y = area.y0 + TOP_MM
    for device in model.installation.data_devices.values():
        if device.kind in EQUIPMENT_SYMBOLS:
            made, y = _equipment(device, model.results.equipment, Point(x, y), area.x1 - x - 2.0)
            items.extend(made)
    return items


def _cabinet_words(model: Model) -> str:
    """Return what the cabinet is called, where it stands and what feeds it."""
    cabinet = model.installation.cabinet
    if cabinet is None:
        return "Equipment"
    feed = "feed not recorded"
    if cabinet.fed_from in model.installation.points:
        point = model.installation.points[cabinet.fed_from]
        feed = f"fed from {point.tag}, {point.circuit}"
    return f"{cabinet.tag}, {cabinet.position.words}: {feed}"


def _equipment(
    device: DataDevice, totals: tuple[EquipmentResult, ...], at: Point, width_mm: float
) -> tuple[list[Item], float]:
    """Return the symbol of a piece of equipment with what is used of it, and the next y."""
    use = SymbolUse(EQUIPMENT_SYMBOLS[device.kind], at)
    items = [Item(f"{device.tag}:symbol", "symbol", (use,), title=device.tag)]
    items.append(text_item(f"{device.tag}:tag", device.tag, at.moved(14.0, 4.5), TAG, bold=True))
    items.append(text_item(f"{device.tag}:kind", device.kind, at.moved(14.0, 9.0)))
    lines = [f"patch lead to {device.port.replace('/', ' port ')}"] if device.port else []
    for total in totals:
        if total.tag == device.tag:
            of = "not recorded" if total.available is None else f"{total.available:g}"
            words = f"{total.what}: {total.used:.3g} of {of} {total.unit}".rstrip()
            lines.extend(wrap(words, width_mm, BODY))
    y = at.y + 10.0 + line_pitch_mm(BODY) + 0.5
    items.append(Item(f"{device.tag}:totals", "text", lines_of_text(lines, Point(at.x, y))))
    return items, y + len(lines) * line_pitch_mm(BODY) + 5.0


def _foot(
    items: list[Item], rows: tuple[LinkRow, ...], model: Model, area: Box
) -> tuple[Item, ...]:
    """Return the legend, left of the title block."""
    carried = {leg.carries for row in rows for leg in row.legs}
    samples = [
        LineSample(LEG_WORDS[c], WIDTH, PATTERNS[c])
        for c in ("signal", "supply", "network")
        if c in carried
    ]
    samples.append(LineSample("Edge of the cabinet", 0.25, "long_dash_dot"))
    abbreviations = [
        ("C/L", "height of the centre line above floor, mm"),
        ("(m)", "measured"),
        ("Cat6", "23 AWG solid copper, 6.68 Ω/100 m a core; copper-clad cable is not allowed"),
        ("12 V supply", "current with a quarter in hand"),
    ]

    def laid_out(top: float) -> Legend:
        return lay_out_legend(
            at=Point(area.x0, top),
            width_mm=title_block_box("A3").x0 - area.x0 - 6.0,
            columns=3,
            symbols=used_symbols(items),
            catalogue=model.symbols,
            lines=samples,
            abbreviations=abbreviations,
        )

    return laid_out(area.y1 - laid_out(0.0).height_mm).items
