"""What a new buried duct is laid with: couplers, slow bend and cover at the wall, tape, cord.

All of it is common practice. Only the end that the spec gives a place has its bend counted; how
the far end comes up is not recorded.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.materials.item_words import run_item
from asfitted.calculate.materials.items import MaterialLine

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from asfitted.resolve.installation import Containment, Installation

BURIED = "buried duct"
_CUSTOM = "common practice"


def duct_lines(installation: Installation, bars_mm: Mapping[str, int]) -> tuple[MaterialLine, ...]:
    """Return what each new buried duct is laid with.

    Args:
        installation: the job.
        bars_mm: length of a bar of each item, mm.
    """
    return tuple(
        line
        for run in installation.containment.values()
        if run.state == "new" and run.kind == BURIED and run.declared_length_m
        for line in _of_duct(run, run.declared_length_m, bars_mm.get(run_item(run), 3000))
    )


def _of_duct(run: Containment, length_m: float, bar_mm: int) -> Iterator[MaterialLine]:
    item, tag = run_item(run), run.tag
    joints = max(-(-round(length_m * 1000) // bar_mm) - 1, 0)
    if joints:
        yield _each(f"coupler, {item}", joints, f"{joints} between bars of {tag}")
    if run.path:
        far = f"its end at {run.end_words}: not recorded"
        yield _each(f"slow bend 90°, {item}", 1, f"where {tag} comes up the wall; {far}")
        up = f"{run.path[0].z:.0f} mm from the ground"
        yield _each(f"cover over the rise of {item}", 1, f"{up} to the hole, {tag}; mouth sealed")
    for what in ("warning tape over duct", "draw cord in duct"):
        basis = f"{_CUSTOM}: the length of {tag}"
        yield MaterialLine("Containment", f"{what} {tag}", length_m, length_m, "m", "", basis)


def _each(item: str, count: int, why: str) -> MaterialLine:
    return MaterialLine("Containment", item, count, count, "each", "", f"{_CUSTOM}: {why}")
