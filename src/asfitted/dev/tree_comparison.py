"""Compares each single-line diagram with Graphviz ``dot`` on the same tree at the same text size.

Run ``python -m asfitted.dev.tree_comparison`` from the top of the repository. ``dot`` (of the
package graphviz) gets the same boxes of text as nodes and edge labels, and the gaps that we keep.
"""

from __future__ import annotations

import re
import shutil
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path as FilePath
from typing import TYPE_CHECKING

from asfitted.dev.sheet_metrics import crossings
from asfitted.draw.item_boxes import item_boxes
from asfitted.pipeline import check_job, lay_out_job

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from asfitted.geometry import Box
    from asfitted.layout.sheet_layout import SheetLayout

INCH_MM = 25.4
POINTS = 72 / INCH_MM
GAP_MM, RANK_MM = 2.5, 5.0
_LEG = re.compile(r"(?P<way>[^:]+):(?P<leg>\d+):(?P<part>sign|tags|what|cable)(:.*)?")
_WAY = re.compile(r"(?P<way>[^:]+):(?P<part>way|rating|device|name|place|figures)(:.*)?")


@dataclass(frozen=True)
class Node:
    """A box of the tree with the box of the words on the line that leads to it, mm."""

    name: str
    width_mm: float
    height_mm: float
    parent: str
    label_width_mm: float = 0.0
    label_height_mm: float = 0.0


@dataclass(frozen=True)
class Compared:
    """One sheet: what we drew and what dot draws; areas in mm2."""

    sheet: str
    nodes: int
    our_crossings: int
    our_area_mm2: float
    dot_area_mm2: float


def tree_of(sheet: SheetLayout) -> tuple[list[Node], Box | None]:
    """Return the tree of a sheet as boxes, and the box round it as we drew it."""
    boxes = item_boxes(sheet)
    parts: dict[tuple[str, str], list[Box]] = {}
    labels: dict[tuple[str, str], Box] = {}
    for ident, box in boxes.items():
        if leg := _LEG.fullmatch(ident):
            key = (leg["way"], leg["leg"])
            if leg["part"] == "cable":
                labels[key] = _round([box, labels.get(key, box)])
            else:
                parts.setdefault(key, []).append(box)
        elif way := _WAY.fullmatch(ident):
            foot = way["part"] in ("name", "place", "figures")
            parts.setdefault((way["way"], "foot" if foot else "head"), []).append(box)
    if not parts:
        return [], None
    whole = _round([*(b for group in parts.values() for b in group), *labels.values()])
    return _nodes(parts, labels), whole


def _nodes(
    parts: Mapping[tuple[str, str], list[Box]], labels: Mapping[tuple[str, str], Box]
) -> list[Node]:
    """Return busbar, ways and their legs; the words below a way stand under its last leg."""
    nodes = [Node("busbar", 10.0, 1.0, "")]
    for way in dict.fromkeys(way for way, _ in parts):
        legs = sorted((leg for w, leg in parts if w == way and leg.isdigit()), key=int)
        above = "busbar"
        for place in ["head", *legs]:
            stack = list(parts.get((way, place), []))
            size = _stacked(stack)
            if place == (legs[-1] if legs else "head") and (way, "foot") in parts:
                foot = _stacked(parts[way, "foot"])
                size = (max(size[0], foot[0]), size[1] + foot[1])
            label = labels.get((way, place))
            # words along a line stand turned: dot sets them level
            level = (label.height, label.width) if label else (0.0, 0.0)
            nodes.append(Node(f"{way}:{place}", *size, above, *level))
            above = f"{way}:{place}"
    return nodes


def _stacked(boxes: list[Box]) -> tuple[float, float]:
    if not boxes:
        return 10.0, 10.0
    whole = _round(boxes)
    return whole.width, whole.height


def _round(boxes: Iterable[Box]) -> Box:
    first, *rest = boxes
    for box in rest:
        first = first.joined(box)
    return first


def dot_area_mm2(nodes: list[Node]) -> float:
    """Return the area of the drawing that dot makes of a tree.

    Raises:
        FileNotFoundError: dot is not installed.
    """
    found = shutil.which("dot")
    if found is None:
        raise FileNotFoundError("dot")
    told = subprocess.run(  # noqa: S603 - dot as found, fed our own text
        [found, "-Tplain"], input=_source(nodes), capture_output=True, text=True, check=True
    ).stdout
    _, _, width, height = told.splitlines()[0].split()
    return float(width) * float(height) * INCH_MM**2


def _source(nodes: list[Node]) -> str:
    lines = [
        "digraph {",
        f"nodesep={GAP_MM / INCH_MM:.4f}; ranksep={RANK_MM / INCH_MM:.4f}; splines=polyline;",
        'node [shape=box, fixedsize=true, label=""]; edge [arrowhead=none];',
    ]
    for node in nodes:
        size = f"width={node.width_mm / INCH_MM:.4f}, height={node.height_mm / INCH_MM:.4f}"
        lines.append(f'"{node.name}" [{size}];')
        if node.parent:
            lines.append(f'"{node.parent}" -> "{node.name}"{_label(node)};')
    return "\n".join([*lines, "}"])


def _label(node: Node) -> str:
    if not node.label_width_mm:
        return ""
    width, height = (round(mm * POINTS) for mm in (node.label_width_mm, node.label_height_mm))
    cell = f'<TABLE BORDER="0" FIXEDSIZE="TRUE" WIDTH="{width}" HEIGHT="{height}">'
    return f" [label=<{cell}<TR><TD></TD></TR></TABLE>>]"


def compared(sheet: SheetLayout) -> Compared | None:
    """Return a sheet compared, None where it holds no tree."""
    nodes, whole = tree_of(sheet)
    if whole is None:
        return None
    wires = [item for item in sheet.items if item.kind == "wire"]
    ours = whole.width * whole.height
    return Compared(sheet.name, len(nodes), crossings(wires), ours, dot_area_mm2(nodes))


def main() -> int:
    """Run the command."""
    sys.stdout.write(f"{'sheet':<44}{'boxes':>7}{'cross':>7}{'ours cm²':>10}{'dot cm²':>10}\n")
    for spec in sorted(FilePath("specs").glob("*.yaml")):
        for sheet in lay_out_job(check_job(spec)):
            if sheet.key.startswith("single-line") and (one := compared(sheet)) is not None:
                sys.stdout.write(
                    f"{one.sheet:<44}{one.nodes:>7}{one.our_crossings:>7}"
                    f"{one.our_area_mm2 / 100:>10.0f}{one.dot_area_mm2 / 100:>10.0f}\n"
                )
    return 0


if __name__ == "__main__":
    sys.exit(main())
