"""Title block and cautions: the strip at the foot of every sheet.

Fields follow ISO 7200 (from memory) with the additions that UK sheets carry. A fact that was not
given reads "not recorded"; a field is never blank. A3 sheets carry the supply as well; on A4 the
block is lower, so that schedules have room.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.fonts import text_width_mm
from asfitted.geometry import Box, Point
from asfitted.layout.firm_mark import mark_box, mark_item
from asfitted.layout.frame import frame_box
from asfitted.layout.given_words import known, known_fault
from asfitted.layout.lettering import BODY, LABEL, TAG, lines_of_text, shortened, wrap
from asfitted.layout.linework import polyline, rectangle
from asfitted.layout.revision.table import rows_over_block, strip_items
from asfitted.layout.sheet_layout import Item, Paper, Path, Text

if TYPE_CHECKING:
    from collections.abc import Iterable

    from asfitted.resolve.installation import Job, Supply

WIDTH = 180.0
MARK_MM = 14.7  # room for the mark of the firm, behind the caution
CAUTION = (
    "Design aid, not a certificate. For use by a competent person: check against the current "
    "edition of BS 7671 and local rules. Isolate, lock off and prove dead before opening anything."
)


@dataclass(frozen=True)
class Pattern:
    """How the block is ruled: row heights and columns, and which field stands in which cell."""

    revision_mm: float  # 0: no row of the newest revision
    caution_mm: float
    supply_mm: float  # 0: no supply row
    rows_mm: tuple[float, ...]  # one for each row of cells
    columns: tuple[float, ...]  # left edges, as of a block 180 mm wide; the last is its right edge
    cells: tuple[tuple[str, ...], ...]  # by row; the title takes two rows

    @property
    def height_mm(self) -> float:
        """Height of the whole block."""
        return self.revision_mm + self.caution_mm + self.supply_mm + sum(self.rows_mm)


_A3 = Pattern(
    revision_mm=4.6,
    caution_mm=8.8,
    supply_mm=4.8,
    rows_mm=(8.7, 8.7, 7.95, 7.95),
    columns=(0.0, 66.0, 134.0, WIDTH),
    cells=(
        ("Drawn for", "Title", "Number"),
        ("Site", "", "Revision, sheet"),
        ("By, to call", "Document", "Status"),
        ("Designed / checked on site by", "Scale", "Date of issue"),
    ),
)
_A4 = Pattern(
    revision_mm=0.0,
    caution_mm=9.6,
    supply_mm=0.0,
    rows_mm=(8.2, 8.2, 8.2),
    columns=(0.0, 49.2, 113.5, 149.0, WIDTH),
    cells=(
        ("Drawn for", "Title", "Document", "Number"),
        ("Site", "", "Status", "Revision, sheet"),
        ("Designed / checked on site by", "By, to call", "Date of issue", "Scale"),
    ),
)


@dataclass(frozen=True)
class TitleFacts:
    """What the title block of one sheet says."""

    job: Job
    supply: Supply | None
    sheet_title: str
    document_type: str
    number: str
    total: int
    scale: str
    paper: Paper


def _pattern(paper: Paper) -> Pattern:
    return _A3 if paper == "A3" else _A4


def title_block_height_mm(paper: Paper) -> float:
    """Return the height of the title block on a paper, mm."""
    return _pattern(paper).height_mm


def title_block_box(paper: Paper) -> Box:
    """Return the box of the title block: bottom right, inside the frame."""
    frame = frame_box(paper)
    width = min(WIDTH, frame.width)
    return Box(frame.x1 - width, frame.y1 - _pattern(paper).height_mm, frame.x1, frame.y1)


def revision_items(facts: TitleFacts, content: Iterable[Item]) -> tuple[Item, ...]:
    """Return the rows of revisions over the block, where the content of the sheet leaves room."""
    inside = _pattern(facts.paper).revision_mm > 0
    block = title_block_box(facts.paper)
    return rows_over_block(facts.job, block, content, newest_is_inside=inside)


def supply_words(supply: Supply | None) -> str:
    """Return the supply in one line, each figure with how it is known: (m), (d) or (a)."""
    if supply is None:
        return "Supply: not part of this job"
    volts = f"{supply.line_v:g}/{supply.u0_v:g}" if supply.phases == 3 else f"{supply.u0_v:g}"
    phases = "3N~" if supply.phases == 3 else "1N~"
    parts = [f"Supply: {supply.system} {phases} {volts} V"]
    parts.append(f"Ze {known(supply.ze_ohm, 'Ω')}")
    parts.append(f"Ipf {known_fault(supply.ipf_ka, supply.phases)}")
    if supply.cut_out is not None:
        basis = f" ({supply.cut_out_basis[0]})" if supply.cut_out_basis else ""
        parts.append(f"cut-out {supply.cut_out.words}{basis}")
    else:
        parts.append("cut-out not recorded")
    return ", ".join(parts)


def title_block_items(facts: TitleFacts) -> tuple[Item, ...]:
    """Return the ruled block with all its fields."""
    box, pattern = title_block_box(facts.paper), _pattern(facts.paper)
    xs = [box.x0 + c * box.width / WIDTH for c in pattern.columns]
    ys = [box.y1 - sum(pattern.rows_mm[i:]) for i in range(len(pattern.cells) + 1)]
    newest = Box(box.x0, box.y0, box.x1, box.y0 + pattern.revision_mm)
    caution = Box(box.x0, newest.y1, box.x1, newest.y1 + pattern.caution_mm)
    items = [Item("title-block", "outline", _rules(box, pattern, xs, ys))]
    if pattern.revision_mm:
        items += strip_items(facts.job, newest)
    items += _caution(facts.job, caution)
    if pattern.supply_mm:
        line = shortened(supply_words(facts.supply), box.width - 4, BODY)
        at = Point(box.x0 + 2, caution.y1 + 3.6)
        items.append(Item("title-block:supply", "text", (Text(at, line, BODY),)))
    values = _values(facts)
    for row, labels in enumerate(pattern.cells):
        for column, label in enumerate(labels):
            cell = Box(xs[column], ys[row], xs[column + 1], ys[row + 1])
            if label == "Title":
                items.extend(_title(facts, Box(cell.x0, cell.y0, cell.x1, ys[row + 2])))
            elif label:
                items.extend(_field(label, values[label], cell))
    return tuple(items)


def _values(facts: TitleFacts) -> dict[str, str]:
    job = facts.job
    scale = facts.scale if "@" in facts.scale else f"{facts.scale} · {facts.paper.split()[0]}"
    return {
        "Drawn for": job.client,
        "Site": job.site,
        "By, to call": job.installer
        if job.phone in {"", "not recorded"}
        else f"{job.installer}, {job.phone}",
        "Designed / checked on site by": f"{job.designer} / {job.checker}",
        "Document": facts.document_type,
        "Scale": scale,
        "Number": f"{job.number}-{facts.number}",
        "Revision, sheet": f"{job.revision}, {int(facts.number)} of {facts.total}",
        "Status": job.status,
        "Date of issue": job.date,
    }


def _revision_and_sheet(value: str, room_mm: float) -> str:
    """Return the longest way to say which sheet of how many that stands whole in its cell."""
    short = value.replace(" of ", "/")
    ways = (value, short, value.rpartition(", ")[2], short.rpartition(", ")[2])
    return next((way for way in ways if text_width_mm(way, BODY) <= room_mm), ways[-1])


def _rules(box: Box, pattern: Pattern, xs: list[float], ys: list[float]) -> tuple[Path, ...]:
    """Return the lines of the block; none crosses the title, which takes two rows."""
    rules = [rectangle(box, width_mm=0.5)]
    foot = box.y0 + pattern.revision_mm
    heads = [foot, ys[0]] if pattern.revision_mm else [ys[0]]
    if pattern.supply_mm:
        heads.append(foot + pattern.caution_mm)
    rules += [polyline((box.x0, y), (box.x1, y), width_mm=0.25) for y in heads]
    for row, labels in enumerate(pattern.cells[1:], start=1):
        for column, label in enumerate(labels):
            if label:
                ends = ((xs[column], ys[row]), (xs[column + 1], ys[row]))
                rules.append(polyline(*ends, width_mm=0.25))
    rules += [polyline((x, ys[0]), (x, box.y1), width_mm=0.25) for x in xs[1:-1]]
    return tuple(rules)


def _caution(job: Job, box: Box) -> list[Item]:
    """Return the caution, with the mark of the firm behind it where it leaves room."""
    logo = job.firm.logo if job.firm else None
    room = Box(box.x1 - MARK_MM, box.y0 + 1.0, box.x1 - 1.5, box.y1 - 1.0)
    width = box.width - 4
    if logo is not None:
        beside = mark_box(logo, room).x0 - box.x0 - 4.0
        if len(wrap(CAUTION, beside, BODY)) <= 2:
            width = beside
        else:
            logo = None
    lines = lines_of_text(wrap(CAUTION, width, BODY), Point(box.x0 + 2, box.y0 + 3.7))
    items = [Item("title-block:caution", "text", lines)]
    if logo is not None:
        items.append(mark_item("title-block:mark", logo, room, title=job.installer))
    return items


def _title(facts: TitleFacts, box: Box) -> list[Item]:
    """Return the sheet title, on two lines if need be, with the job title under it."""
    lines = wrap(facts.sheet_title, box.width - 4, TAG, bold=True)
    if len(lines) > 2:
        rest = shortened(" ".join(lines[1:]), box.width - 4, TAG, bold=True)
        lines = [lines[0], rest]
    label = Text(Point(box.x0 + 1.5, box.y0 + 2.8), "Title", LABEL)
    at = Point(box.x0 + 2, box.y0 + 7.1)
    words = tuple(Text(at.moved(dy=4.8 * i), line, TAG, bold=True) for i, line in enumerate(lines))
    items = [
        Item("title-block:title:label", "frame-label", (label,)),
        Item("title-block:title", "text", words),
    ]
    if len(lines) == 1 or box.height > 17.0:
        job = shortened(facts.job.title, box.width - 4, BODY)
        under = Text(Point(box.x0 + 2, box.y1 - 1.1), job, BODY)
        items.append(Item("title-block:job", "text", (under,)))
    return items


def _with_whole_number(value: str, room_mm: float) -> str:
    """Return who to call, with the name cut short rather than the number."""
    name, comma, number = value.rpartition(", ")
    if not comma:
        return shortened(value, room_mm, BODY)
    behind = f" {number}"
    return shortened(name, room_mm - text_width_mm(behind, BODY), BODY) + behind


def _field(label: str, value: str, box: Box) -> list[Item]:
    """Return a small label with its value below it."""
    ident = f"title-block:{label.lower()}"
    strong, cap = label == "Status", TAG if label == "Number" else BODY
    if label == "Number" and box.width < 40:
        cap = BODY
    shown = shortened(value or "not recorded", box.width - 3.5, cap, bold=strong)
    if label == "By, to call":
        shown = _with_whole_number(value or "not recorded", box.width - 3.5)
    if label == "Scale" and shown != value:
        shown = value.partition(" · ")[0]  # the drawing list has the paper
    if label == "Revision, sheet":
        shown = _revision_and_sheet(value, box.width - 3.5)
    name = Text(Point(box.x0 + 1.5, box.y0 + 2.8), label, LABEL)
    text = Text(Point(box.x0 + 2, box.y1 - 1.4), shown, cap, bold=strong)
    return [Item(f"{ident}:label", "frame-label", (name,)), Item(ident, "text", (text,))]
