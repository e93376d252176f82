"""The heading of a strip: run, size, length, fullest piece, supports, scales with bar."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.containment.containment_kinds import kind_of
from asfitted.fonts import text_width_mm
from asfitted.geometry import Box, Point
from asfitted.layout.containment.supports import support_words
from asfitted.layout.declared_runs import way_words
from asfitted.layout.figures import metres, rounded
from asfitted.layout.given_words import state_before
from asfitted.layout.lettering import BODY, VIEW, text_item
from asfitted.layout.linework import polyline, rectangle, widths_for
from asfitted.layout.sheet_layout import Item
from asfitted.layout.surveyed_ways import MARK, MEANING

if TYPE_CHECKING:
    from asfitted.layout.containment.developed_run import DevelopedRun
    from asfitted.layout.containment.strip_view import StripView
    from asfitted.layout.sheet_layout import Paper

HEADING_MM = 24.4
PIECES_STAND_IN = "; pieces: sheets 000, 000"  # as long as what is written once sheets are numbered
BAR_STEPS_M = {10: 0.2, 20: 0.5, 50: 1.0, 100: 1.0, 200: 2.0, 500: 5.0, 1000: 10.0}


def draw_heading(
    ident: str, view: StripView, at: Point, paper: Paper, pieces: str = ""
) -> list[Item]:
    """Return title, facts, scales and scale bar, from the top left corner.

    ``pieces`` says where the table of the pieces is, behind the supports.
    """
    developed = view.developed
    y = at.y + VIEW
    x = at.x + text_width_mm(_title(view), VIEW, bold=True) + 4.0
    items = [
        text_item(f"{ident}:title", _title(view), Point(at.x, y), VIEW, bold=True),
        text_item(f"{ident}:what", _what(view), Point(x, y)),
    ]
    y += 5.4
    first, second = facts_of(developed)
    for i, fact in enumerate((first, second + pieces)):
        items.append(text_item(f"{ident}:fact:{i}", fact, Point(at.x, y)))
        y += 4.2
    scales = scale_words(view, paper)
    items.append(text_item(f"{ident}:scales", scales, Point(at.x, y + 3.6)))
    bar = Point(at.x + text_width_mm(scales, BODY) + 8.0, y + 3.6)
    return [*items, *_bar(ident, bar, view.scale.along, paper)]


def _title(view: StripView) -> str:
    part = view.part
    return view.developed.run.tag + (f", part {part.number} of {part.of}" if part.of > 1 else "")


def _what(view: StripView) -> str:
    run = view.developed.run
    return f"{state_before(run.state)}{run.words}, for {' and '.join(run.bands)}"


def heading_width(view: StripView, paper: Paper) -> float:
    """Return the width that the longest line of the heading takes, mm."""
    title = text_width_mm(_title(view), VIEW, bold=True) + 4.0
    bar = 3 * BAR_STEPS_M[view.scale.along] * 1000 / view.scale.along + 18.0
    return max(
        title + text_width_mm(_what(view), BODY),
        text_width_mm(scale_words(view, paper), BODY) + bar,
        text_width_mm(facts_of(view.developed)[0], BODY),
        text_width_mm(facts_of(view.developed)[1] + PIECES_STAND_IN, BODY),
    )


def facts_of(developed: DevelopedRun) -> tuple[str, str]:
    """Return length, fullest piece and supports of a run in two lines."""
    run = developed.run
    if developed.is_declared:
        basis = f" ({run.declared_basis[0]})" if run.declared_basis else ""
        first = f"{metres(developed.length_mm / 1000)}{basis}, {way_words(run)}"
    else:
        first = metres(developed.length_mm / 1000)
    second = support_words(run, developed.level, developed.upright)
    if not developed.is_surveyed:
        second += f"; {MARK} {MEANING}"
    return f"{first}; {_fullest(developed)}", second


def _fullest(developed: DevelopedRun) -> str:
    piece = max(developed.pieces, key=lambda p: p.section.fill_pct)
    if not piece.section.cables:
        return "nothing in it"
    if kind_of(developed.run.kind).filling == "length":
        return "fill not checked: its room is not known"
    fill, limit = rounded(piece.section.fill_pct, 0), rounded(piece.section.limit_pct, 0)
    return f"fullest piece {piece.number}: {fill} % of {limit} %"


def scale_words(view: StripView, paper: Paper) -> str:
    """Return the scale along the run and, where it differs, that of heights."""
    sheet = paper.split()[0]
    along, up = view.scale.along, view.scale.up
    if along == up:
        return f"Along and heights 1:{along} @ {sheet}"
    return f"Along 1:{along}, heights 1:{up} @ {sheet}"


def _bar(ident: str, at: Point, scale: int, paper: Paper) -> list[Item]:
    """Return a scale bar of three steps, metres written over it."""
    step_m = BAR_STEPS_M[scale]
    step, width = step_m * 1000 / scale, widths_for(paper).narrow
    paths = [
        rectangle(
            Box(at.x + i * step, at.y - 1.4, at.x + (i + 1) * step, at.y),
            width_mm=width,
            fill="black" if i % 2 == 0 else "white",
        )
        for i in range(3)
    ]
    paths.append(polyline((at.x, at.y - 2.0), (at.x, at.y), width_mm=width))
    items = [Item(f"{ident}:bar", "dim", tuple(paths))]
    for i in (0, 3):
        figure = f"{step_m * i:g}" + (" m" if i else "")
        spot = Point(at.x + i * step, at.y - 2.9)
        items.append(text_item(f"{ident}:bar:{i}", figure, spot, anchor="middle"))
    return items
