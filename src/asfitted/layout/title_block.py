"""Title block, revision row and cautions: the strip at the foot of every sheet.

Fields follow ISO 7200 (from memory) with the additions that UK sheets carry. A fact that was not
given reads "not recorded"; a field is never blank.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.frame import frame_box
from asfitted.layout.lettering import BODY, LABEL, TAG, VIEW, lines_of_text, shortened, wrap
from asfitted.layout.linework import polyline, rectangle
from asfitted.layout.sheet_layout import Item, Paper, Path, Text

if TYPE_CHECKING:
    from asfitted.resolve.installation import Job, Known, Supply

WIDTH = 180.0
ROW = 9.0
SUPPLY_ROW = 5.5
CAUTION_ROW = 10.0
HEIGHT = 4 * ROW + SUPPLY_ROW + CAUTION_ROW
#: Left edges of the three columns, from the left of the block.
COLUMNS = (0.0, 62.0, 132.0, WIDTH)

CAUTION = (
    "Design aid, not a certificate. For use by a competent person: check against the current "
    "edition of BS 7671 and local rules. Isolate, lock off and prove dead before opening anything."
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


def title_block_box(paper: Paper) -> Box:
    """Return the box of the title block: bottom right, inside the frame."""
    frame = frame_box(paper)
    width = min(WIDTH, frame.width)
    return Box(frame.x1 - width, frame.y1 - HEIGHT, frame.x1, frame.y1)


def supply_words(supply: Supply | None) -> str:
    """Return the supply in one line, each figure with how it is known: (m), (d) or (a)."""
    if supply is None:
        return "Supply: not part of this job"
    volts = f"{supply.line_v:g}/{supply.u0_v:g}" if supply.phases == 3 else f"{supply.u0_v:g}"
    phases = "3N~" if supply.phases == 3 else "1N~"
    parts = [f"Supply: {supply.system} {phases} {volts} V"]
    parts.append(f"Ze {_known(supply.ze_ohm, 'Ω')}")
    parts.append(f"Ipf {_known(supply.ipf_ka, 'kA')}")
    if supply.cut_out is not None:
        basis = f" ({supply.cut_out_basis[0]})" if supply.cut_out_basis else ""
        parts.append(f"cut-out {supply.cut_out.words}{basis}")
    else:
        parts.append("cut-out not recorded")
    return ", ".join(parts)


def _known(figure: Known | None, unit: str) -> str:
    """Return a supply figure with its basis letter, or "not recorded"."""
    return "not recorded" if figure is None else f"{figure.value:g} {unit} ({figure.basis[0]})"


def title_block_items(facts: TitleFacts) -> tuple[Item, ...]:
    """Return the ruled block with all its fields."""
    box = title_block_box(facts.paper)
    xs = [box.x0 + c * box.width / WIDTH for c in COLUMNS]
    top = box.y0
    rules: list[Path] = [rectangle(box, width_mm=0.5)]
    y = top + CAUTION_ROW
    rules.append(polyline((box.x0, y), (box.x1, y), width_mm=0.25))
    y += SUPPLY_ROW
    rules.append(polyline((box.x0, y), (box.x1, y), width_mm=0.25))
    rows = [y + i * ROW for i in range(4)]
    rules += [polyline((xs[0], r), (xs[1], r), width_mm=0.25) for r in rows[1:]]
    rules += [polyline((xs[1], rows[2]), (xs[3], rows[2]), width_mm=0.25)]
    rules += [polyline((xs[1], rows[3]), (xs[3], rows[3]), width_mm=0.25)]
    rules += [polyline((xs[2], rows[1]), (xs[3], rows[1]), width_mm=0.25)]
    rules += [polyline((x, y), (x, box.y1), width_mm=0.25) for x in xs[1:3]]
    items = [Item("title-block", "outline", tuple(rules))]
    items.append(_caution(box))
    line = shortened(supply_words(facts.supply), box.width - 4, BODY)
    supply = Text(Point(box.x0 + 2, top + CAUTION_ROW + 4.0), line, BODY)
    items.append(Item("title-block:supply", "text", (supply,)))
    items.extend(_fields(facts, xs, rows))
    return tuple(items)


def _caution(box: Box) -> Item:
    lines = wrap(CAUTION, box.width - 4, BODY)
    return Item(
        "title-block:caution", "text", lines_of_text(lines[:2], Point(box.x0 + 2, box.y0 + 4.2))
    )


def _fields(facts: TitleFacts, xs: list[float], rows: list[float]) -> list[Item]:
    """Return the labelled fields, column by column."""
    job = facts.job
    left = (
        ("Drawn for", job.client),
        ("Site", job.site),
        ("By", job.installer),
        ("Designed / checked on site by", f"{job.designer} / {job.checker}"),
    )
    items: list[Item] = []
    for (label, value), y in zip(left, rows, strict=True):
        items.extend(_field(label, value, Box(xs[0], y, xs[1], y + ROW)))
    items.extend(_title(facts, Box(xs[1], rows[0], xs[2], rows[2])))
    items.extend(_field("Document", facts.document_type, Box(xs[1], rows[2], xs[2], rows[3])))
    scale = facts.scale if "@" in facts.scale else f"{facts.scale} · {facts.paper.split()[0]}"
    items.extend(_field("Scale", scale, Box(xs[1], rows[3], xs[2], rows[3] + ROW)))
    number = f"{job.number}-{facts.number}"
    items.extend(_field("Number", number, Box(xs[2], rows[0], xs[3], rows[1]), cap_mm=TAG))
    sheet = f"{job.revision}   sheet {int(facts.number)} of {facts.total}"
    items.extend(_field("Revision", sheet, Box(xs[2], rows[1], xs[3], rows[2])))
    items.extend(_field("Status", job.status, Box(xs[2], rows[2], xs[3], rows[3]), bold=True))
    items.extend(_field("Date of issue", job.date, Box(xs[2], rows[3], xs[3], rows[3] + ROW)))
    return items


def _title(facts: TitleFacts, box: Box) -> list[Item]:
    """Return the sheet title with the job title under it."""
    size = VIEW if len(facts.sheet_title) < 18 else TAG
    lines = wrap(facts.sheet_title, box.width - 4, size, bold=True)
    if size == VIEW and len(lines) > 1:
        size, lines = TAG, wrap(facts.sheet_title, box.width - 4, TAG, bold=True)
    label = Text(Point(box.x0 + 1.5, box.y0 + 2.8), "Title", LABEL)
    words = lines_of_text(lines[:2], Point(box.x0 + 2, box.y0 + 8.0), size, bold=True)
    job = shortened(facts.job.title, box.width - 4, BODY)
    return [
        Item("title-block:title:label", "frame-label", (label,)),
        Item("title-block:title", "text", words),
        Item("title-block:job", "text", (Text(Point(box.x0 + 2, box.y1 - 1.6), job, BODY),)),
    ]


def _field(
    label: str, value: str, box: Box, *, cap_mm: float = BODY, bold: bool = False
) -> list[Item]:
    """Return a small label with its value below it."""
    ident = f"title-block:{label.lower()}"
    shown = shortened(value or "not recorded", box.width - 3.5, cap_mm, bold=bold)
    name = Text(Point(box.x0 + 1.5, box.y0 + 2.8), label, LABEL)
    text = Text(Point(box.x0 + 2, box.y1 - 1.6), shown, cap_mm, bold=bold)
    return [Item(f"{ident}:label", "frame-label", (name,)), Item(ident, "text", (text,))]
