"""Sheets of invented content that show every primitive, for the tests of drawing."""

from __future__ import annotations

from asfitted.draw.symbols import catalogue
from asfitted.geometry import Point
from asfitted.layout.sheet_layout import Circle, Item, Path, SheetLayout, Stroke, SymbolUse, Text

NARROW, WIDE, BUSBAR = Stroke(0.25), Stroke(0.5), Stroke(1.0)


def box(x0: float, y0: float, x1: float, y1: float) -> tuple[Point, ...]:
    return (Point(x0, y0), Point(x1, y0), Point(x1, y1), Point(x0, y1))


def frame(width: float, height: float) -> Item:
    path = Path(box(20, 10, width - 10, height - 10), Stroke(0.7), closed=True)
    return Item("frame", "frame", (path,))


def wire(ident: str, net: str, *points: tuple[float, float], stroke: Stroke = WIDE) -> Item:
    return Item(ident, "wire", (Path(tuple(Point(*p) for p in points), stroke),), net=net)


def symbol(ident: str, name: str, x: float, y: float, **how: object) -> Item:
    use = SymbolUse(name, Point(x, y), **how)  # type: ignore[arg-type]
    return Item(ident, "symbol", (use,), title=catalogue()[name].legend)


def words(ident: str, x: float, y: float, text: str, cap_mm: float = 2.5, **how: object) -> Item:
    return Item(ident, "text", (Text(Point(x, y), text, cap_mm, **how),))  # type: ignore[arg-type]


def way(number: int, name: str, text: str) -> list[Item]:
    """Return one way that hangs from the busbar at y 80."""
    x, net = 50.0 + 25 * number, f"DB1/{number}"
    return [
        wire(f"{net} head", "DB1 bar", (x, 80), (x, 95)),
        symbol(f"{net} device", name, x - 5, 95),
        wire(net, net, (x, 105), (x, 155)),
        symbol(f"{net} load", "socket", x - 5, 155),
        words(f"{net} tag", x + 7.5, 101, text, 3.5),
        words(f"{net} cable", x - 2.5, 150, "W12 3c × 2.5 mm²", turned=True),
    ]


def example_sheet() -> SheetLayout:
    """Return an A3 sheet with every kind of item and primitive."""
    items = [
        frame(420, 297),
        Item(
            "paper shade", "outline", (Path(box(280, 40, 380, 90), None, closed=True, fill="tint"),)
        ),
        Item(
            "DB1 boundary",
            "outline",
            (Path(box(55, 65, 260, 109), Stroke(0.25, "long_dash_dot"), closed=True),),
        ),
        symbol("Q1", "meter_kwh", 70, 25),
        wire("W01", "tails", (75, 35), (75, 45)),
        symbol("Q2", "switch_disconnector", 70, 45),
        wire("W02", "DB1 bar", (75, 55), (75, 80)),
        Item("DB1 bar", "busbar", (Path((Point(65, 80), Point(250, 80)), BUSBAR),), net="DB1 bar"),
        *way(1, "rcbo", "B32"),
        *way(2, "circuit_breaker", "C16"),
        *way(3, "rcd", "63 A"),
        *way(4, "afdd", "B6"),
        words("DB1 tag", 80, 62, "DB1 Kitchen & utility", 5, bold=True),
        symbol("turned 90", "rcbo", 290, 110, turn=90),
        symbol("turned 180", "rcbo", 310, 110, turn=180),
        symbol("turned 270", "rcbo", 330, 110, turn=270),
        symbol("mirrored", "rcbo", 350, 110, mirrored=True),
        symbol("small", "rcbo", 370, 110, size_mm=7, width_mm=0.25),
        symbol("M1", "motor_3ph", 290, 130, turn=90),
        symbol("M2", "meter_kwh", 310, 130, mirrored=True),
        wire("D1", "data", (300, 150), (370, 150), stroke=Stroke(0.35, "long_dash_double_dot")),
        Item(
            "D1 ends",
            "flag",
            (
                Circle(Point(299, 150), 1, WIDE),
                Circle(Point(371, 150), 1, None, "black"),
            ),
        ),
        Item("far", "dim", (Path((Point(300, 160), Point(370, 160)), Stroke(0.25, "dashed")),)),
        Item("near", "dim", (Path((Point(300, 165), Point(370, 165)), Stroke(0.5, "dotted")),)),
        words("note grey", 300, 180, "existing, not by us", tone="grey"),
        words("signs", 300, 190, "Zs ≤ 1.37 Ω  Δ 3 %  70 °C  → 02/B2"),
        words("end", 380, 200, "ends at the right", anchor="end"),
        words("in tint", 330, 66, "in the tint", 3.5, anchor="middle"),
        Item("label", "frame-label", (Text(Point(22, 285), "Sheet", 1.8),), link="02#Q1"),
    ]
    return SheetLayout("01", "01-example", "Example of every sign", "A3", tuple(items))


def small_sheet(number: str, paper: str) -> SheetLayout:
    """Return a sheet of another size."""
    width, height = (297.0, 210.0) if paper == "A4" else (210.0, 297.0)
    items = (frame(width, height), words("word", 40, 40, f"Schedule {number}", 5))
    return SheetLayout(number, f"{number}-schedule", f"Schedule {number}", paper, items)  # type: ignore[arg-type]


def symbol_sheet() -> SheetLayout:
    """Return every symbol of the catalogue with its name, in a grid."""
    items = [frame(420, 297)]
    for index, (name, info) in enumerate(catalogue().items()):
        x, y = 26 + 42.5 * (index % 9), 14 + 34 * (index // 9)
        items.append(symbol(name, name, x + 14, y + 3))
        dagger = "" if info.standard else " †"
        head, _, tail = name.partition("_") if len(name) > 17 else (name, "", "")
        items.append(words(f"{name} name", x + 19, y + 20, head + dagger, anchor="middle"))
        if tail:
            items.append(words(f"{name} more", x + 19, y + 25, tail, anchor="middle"))
    return SheetLayout("99", "99-symbols", "Symbols", "A3", tuple(items))
