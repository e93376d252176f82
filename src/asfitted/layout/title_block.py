"""Title block and cautions: the strip at the foot of every sheet.

Fields follow ISO 7200 (from memory) with the additions that UK sheets carry. A fact that was not
given reads "not recorded"; a field is never blank. A3 sheets carry the supply as well; on A4 the
block is lower, so that schedules have room.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.frame import frame_box
from asfitted.layout.given_words import known
from asfitted.layout.lettering import BODY, LABEL, TAG, lines_of_text, shortened, wrap
from asfitted.layout.linework import polyline, rectangle
from asfitted.layout.sheet_layout import Item, Paper, Path, Text

if TYPE_CHECKING:
    from asfitted.resolve.installation import Job, Supply

WIDTH = 180.0
CAUTION = (
    "Design aid, not a certificate. For use by a competent person: check against the current "
    "edition of BS 7671 and local rules. Isolate, lock off and prove dead before opening anything."
)


@dataclass(frozen=True)
class Pattern:
    """How the block is ruled: row heights and columns, and which field stands in which cell."""

    caution_mm: float
    supply_mm: float  # 0: no supply row
    row_mm: float
    columns: tuple[float, ...]  # left edges, as of a block 180 mm wide; the last is its right edge
    cells: tuple[tuple[str, ...], ...]  # by row; the title takes two rows

    @property
    def height_mm(self) -> float:
        """Height of the whole block."""
        return self.caution_mm + self.supply_mm + len(self.cells) * self.row_mm


_A3 = Pattern(
    caution_mm=10.0,
    supply_mm=5.5,
    row_mm=9.0,
    columns=(0.0, 66.0, 134.0, WIDTH),
    cells=(
        ("Drawn for", "Title", "Number"),
        ("Site", "", "Revision, sheet"),
        ("By, to call", "Document", "Status"),
        ("Designed / checked on site by", "Scale", "Date of issue"),
    ),
)
_A4 = Pattern(
    caution_mm=9.6,
    supply_mm=0.0,
    row_mm=8.2,
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


def supply_words(supply: Supply | None) -> str:
    """Return the supply in one line, each figure with how it is known: (m), (d) or (a)."""
    if supply is None:
        return "Supply: not part of this job"
    volts = f"{supply.line_v:g}/{supply.u0_v:g}" if supply.phases == 3 else f"{supply.u0_v:g}"
    phases = "3N~" if supply.phases == 3 else "1N~"
    parts = [f"Supply: {supply.system} {phases} {volts} V"]
    parts.append(f"Ze {known(supply.ze_ohm, 'Ω')}")
    parts.append(f"Ipf {known(supply.ipf_ka, 'kA')}")
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
    first = box.y0 + pattern.caution_mm + pattern.supply_mm
    ys = [first + i * pattern.row_mm for i in range(len(pattern.cells) + 1)]
    items = [Item("title-block", "outline", _rules(box, pattern, xs, ys)), _caution(box)]
    if pattern.supply_mm:
        line = shortened(supply_words(facts.supply), box.width - 4, BODY)
        at = Point(box.x0 + 2, box.y0 + pattern.caution_mm + 4.0)
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


def _installer(job: Job) -> str:
    """Return who did the work and, where known, the number to call."""
    return job.installer if job.phone in {"", "not recorded"} else f"{job.installer} {job.phone}"


def _rules(box: Box, pattern: Pattern, xs: list[float], ys: list[float]) -> tuple[Path, ...]:
    """Return the lines of the block; none crosses the title, which takes two rows."""
    rules = [rectangle(box, width_mm=0.5)]
    heads = [box.y0 + pattern.caution_mm, ys[0]] if pattern.supply_mm else [ys[0]]
    rules += [polyline((box.x0, y), (box.x1, y), width_mm=0.25) for y in heads]
    for row, labels in enumerate(pattern.cells[1:], start=1):
        for column, label in enumerate(labels):
            if label:
                ends = ((xs[column], ys[row]), (xs[column + 1], ys[row]))
                rules.append(polyline(*ends, width_mm=0.25))
    rules += [polyline((x, ys[0]), (x, box.y1), width_mm=0.25) for x in xs[1:-1]]
    return tuple(rules)


def _caution(box: Box) -> Item:
    lines = wrap(CAUTION, box.width - 4, BODY)
    return Item(
        "title-block:caution", "text", lines_of_text(lines, Point(box.x0 + 2, box.y0 + 4.0))
    )


def _title(facts: TitleFacts, box: Box) -> list[Item]:
    """Return the sheet title, on two lines if need be, with the job title under it."""
    lines = wrap(facts.sheet_title, box.width - 4, TAG, bold=True)
    if len(lines) > 2:
        rest = shortened(" ".join(lines[1:]), box.width - 4, TAG, bold=True)
        lines = [lines[0], rest]
    label = Text(Point(box.x0 + 1.5, box.y0 + 2.8), "Title", LABEL)
    at = Point(box.x0 + 2, box.y0 + 7.2)
    words = tuple(Text(at.moved(dy=5.0 * i), line, TAG, bold=True) for i, line in enumerate(lines))
    items = [
        Item("title-block:title:label", "frame-label", (label,)),
        Item("title-block:title", "text", words),
    ]
    if len(lines) == 1 or box.height > 17.5:
        job = shortened(facts.job.title, box.width - 4, BODY)
        under = Text(Point(box.x0 + 2, box.y1 - 1.4), job, BODY)
        items.append(Item("title-block:job", "text", (under,)))
    return items


def _field(label: str, value: str, box: Box) -> list[Item]:
    """Return a small label with its value below it."""
    ident = f"title-block:{label.lower()}"
    strong, cap = label == "Status", TAG if label == "Number" else BODY
    if label == "Number" and box.width < 40:
        cap = BODY
    shown = shortened(value or "not recorded", box.width - 3.5, cap, bold=strong)
    name = Text(Point(box.x0 + 1.5, box.y0 + 2.8), label, LABEL)
    text = Text(Point(box.x0 + 2, box.y1 - 1.6), shown, cap, bold=strong)
    return [Item(f"{ident}:label", "frame-label", (name,)), Item(ident, "text", (text,))]
