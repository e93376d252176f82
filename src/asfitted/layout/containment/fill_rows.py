"""Over the profile: which piece, how many cables, how full; and bars of fill against the limit."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.containment.containment_kinds import kind_of
from asfitted.fonts import text_width_mm
from asfitted.geometry import Box, Point
from asfitted.layout.containment.strip_parts import LABEL_MM
from asfitted.layout.elevation.spread import spread
from asfitted.layout.figures import rounded
from asfitted.layout.lettering import BODY, text_item
from asfitted.layout.linework import polyline, rectangle
from asfitted.layout.sheet_layout import Item, Path, Text

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.containment.developed_run import CutPiece, DevelopedRun
    from asfitted.layout.containment.strip_view import StripView

BARS_MM = 10.0  # 100 % is so high
FANS_MM = 5.0
TURNED_MM = 0.9
NARROW, WIDE = 0.25, 0.35


def piece_words(developed: DevelopedRun, piece: CutPiece) -> str:
    """Return number, cables and fill of a piece: "4: 7 c, 51 %"."""
    section = piece.section
    if not section.cables:
        return f"{piece.number}: empty"
    count = len(section.cables)
    if kind_of(developed.run.kind).filling == "length":
        return f"{piece.number}: {count} c"
    return f"{piece.number}: {count} c, {rounded(section.fill_pct, 0)} %"


def numbers_height(developed: DevelopedRun) -> float:
    """Return the height of the row of piece numbers, mm."""
    return max(text_width_mm(piece_words(developed, p), BODY) for p in developed.pieces) + 1.0


def draw_fill(
    ident: str,
    view: StripView,
    pieces: Sequence[int],
    rows: tuple[float, float, float],
    left: float,
) -> list[Item]:
    """Return the numbers of pieces and the bars.

    Args:
        ident: start of the idents.
        view: the strip on the sheet.
        pieces: which pieces of the run lie on this part.
        rows: top of the row of numbers, then the least and greatest x of labels.
        left: where the names of rows start, x.
    """
    developed = view.developed
    top, low, high = rows
    foot = top + numbers_height(developed)
    base = foot + FANS_MM + BARS_MM
    shown = [developed.pieces[i] for i in pieces]
    spans = [_span(view, piece) for piece in shown]
    middles = [(a + b) / 2 for a, b in spans]
    xs = spread(middles, LABEL_MM, low + 1.0, high - 1.0)
    items: list[Item] = []
    fans: list[Path] = []
    for piece, span, middle, x in zip(shown, spans, middles, xs, strict=True):
        text = Text(Point(x + TURNED_MM, foot), piece_words(developed, piece), BODY, turned=True)
        name = f"{ident}:piece:{piece.number}"
        items.append(Item(name, "text", (text,), title=f"{piece.section.ident}: {_hover(piece)}"))
        bar_top = base - BARS_MM * min(piece.section.fill_pct, 100.0) / 100.0
        fans.append(polyline((x, foot + 0.8), (middle, foot + FANS_MM - 0.6), width_mm=NARROW))
        items.append(_bar(name, piece, span, (bar_top, base)))
    items.append(Item(f"{ident}:piece-fans", "dim", tuple(fans)))
    names = ((foot, "Piece"), (base - BARS_MM + BODY, "Fill"))
    words = [
        text_item(f"{ident}:fill-name:{i}", w, Point(left, y)) for i, (y, w) in enumerate(names)
    ]
    return [*items, *words, *_limit(ident, view, shown, base, left)]


def _span(view: StripView, piece: CutPiece) -> tuple[float, float]:
    a, b = (view.x(view.held(view.developed.place(along)[0])) for along in piece.along)
    return (a - 1.5, b + 1.5) if b - a < 0.01 else (a, b)  # upright


def _hover(piece: CutPiece) -> str:
    return " ".join(piece.section.cables) or "empty"


def _bar(name: str, piece: CutPiece, span: tuple[float, float], ys: tuple[float, float]) -> Item:
    box = Box(span[0], ys[0], span[1], ys[1])
    is_over = piece.section.fill_pct > piece.section.limit_pct + 1e-6
    fill = rectangle(box, width_mm=WIDE if is_over else NARROW, fill="grey" if is_over else "tint")
    return Item(f"{name}:bar", "outline", (fill,), title=piece.section.ident)


def _limit(
    ident: str, view: StripView, shown: Sequence[CutPiece], base: float, left: float
) -> list[Item]:
    """Return the line of the limit across the bars with its figure, and the line of no fill."""
    lines, limits = [], []
    for piece in shown:
        a, b = _span(view, piece)
        limit = piece.section.limit_pct
        y = base - BARS_MM * limit / 100.0
        lines.append(polyline((a, y), (b, y), width_mm=WIDE, pattern="dashed"))
        limits.append(rounded(limit, 0))
    if kind_of(view.developed.run.kind).filling == "length":
        return []
    told = " or ".join(sorted(set(limits), key=float))
    words = text_item(f"{ident}:limit", f"limit {told} %", Point(left, base - 0.8))
    return [Item(f"{ident}:limits", "dim", tuple(lines)), words]
