"""Fittings that the shape of the runs asks for: bends, risers, tees, couplers, end caps, bushes."""

from __future__ import annotations

from collections import defaultdict
from typing import TYPE_CHECKING

from asfitted.calculate.containment.support_spacing import LAID_IN
from asfitted.calculate.materials.bend_radius import radius_words
from asfitted.calculate.materials.conduit_fittings import conduit_fitting_lines
from asfitted.calculate.materials.duct_fittings import duct_lines
from asfitted.calculate.materials.item_words import run_item
from asfitted.calculate.materials.items import MaterialLine

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from asfitted.calculate.materials.run_shape import Joint, RunShape, Straight
    from asfitted.calculate.materials.wanted_pieces import EnclosedLine
    from asfitted.calculate.results import CalculationResults
    from asfitted.resolve.installation import Containment, Installation

BEND_JOINTS = 2  # joints of a bend or riser with the straights beside it


class _Counts:
    """Counts by item with the reasons for them."""

    def __init__(self) -> None:
        self._found: dict[str, dict[str, int]] = defaultdict(dict)

    def add(self, item: str, count: int, why: str) -> None:
        if count:
            reasons = self._found[item]
            reasons[why] = reasons.get(why, 0) + count

    def lines(self, basis: str) -> tuple[MaterialLine, ...]:
        """Return a line for each item: the count with its reasons."""
        return tuple(
            MaterialLine(
                "Containment",
                item,
                sum(reasons.values()),
                sum(reasons.values()),
                "each",
                "",
                f"{basis}: " + ", ".join(f"{n} {why}" for why, n in reasons.items()),
            )
            for item, reasons in self._found.items()
        )


def fitting_lines(
    installation: Installation,
    results: CalculationResults,
    shapes: Sequence[RunShape],
    bars_mm: Mapping[str, int],
    lines: Sequence[EnclosedLine],
) -> tuple[MaterialLine, ...]:
    """Return the fittings of runs and of conduit outside them.

    Args:
        installation: the job.
        results: its figures; sections and sizes are read for the radius of fittings.
        shapes: the new runs.
        bars_mm: length of a bar of each item, mm.
        lines: conduit and trunking outside the runs.
    """
    fittings, joints, ends = _Counts(), _Counts(), _Counts()
    for shape in shapes:
        radius = _radius(shape.run, installation, results)
        _of_run(shape, bars_mm, fittings, joints, ends, radius=radius)
    for shape in shapes:
        radius = _radius(shape.run, installation, results)
        for joint in shape.joints:
            _of_joint(joint, radius, installation, fittings, joints)
    return (
        *fittings.lines("geometry, common practice"),
        *joints.lines("geometry, one pair a joint (common practice)"),
        *ends.lines("geometry"),
        *duct_lines(installation, bars_mm),
        *conduit_fitting_lines(installation, results, lines, bars_mm),
    )


def joints_between_bars(straight: Straight, bar_mm: int) -> int:
    """Return how often a straight is joined: whole bars one after the other, less one."""
    return max(-(-straight.length_mm // bar_mm) - 1, 0)


def _radius(run: Containment, installation: Installation, results: CalculationResults) -> str:
    """Return ", inside radius ≥ 127 mm" for runs whose fittings are ordered by radius."""
    laid_in = run.kind in LAID_IN
    return f", {radius_words(run.tag, installation, results)}" if laid_in else ""


def _of_run(
    shape: RunShape,
    bars_mm: Mapping[str, int],
    fittings: _Counts,
    joints: _Counts,
    ends: _Counts,
    *,
    radius: str,
) -> None:
    run, item = shape.run, run_item(shape.run)
    for corner in shape.corners:
        fittings.add(f"{corner.fitting}, {item}{radius}", 1, f"on {run.tag}")
    inside = sum(joints_between_bars(s, bars_mm.get(item, 3000)) for s in shape.straights)
    joints.add(_coupler(run), inside, f"between bars of {run.tag}")
    joints.add(_coupler(run), BEND_JOINTS * len(shape.corners), f"at bends of {run.tag}")
    ends.add(_end(run), shape.free_ends, f"at open ends of {run.tag}")


def _of_joint(
    joint: Joint, radius: str, installation: Installation, fittings: _Counts, joints: _Counts
) -> None:
    """Count the fitting where a run meets another; two of a tee's joints are on the main run."""
    own, main = installation.containment[joint.run], installation.containment[joint.other]
    where = f"where {own.tag} meets {main.tag}"
    if joint.kind == "open":
        return
    if joint.kind == "coupler":
        joints.add(_coupler(own), 1, where)
        return
    kind = own.kind if own.kind != "wire basket" else "wire basket, formed on site"
    name = f"{joint.words}, {run_item(own)}" if joint.kind == "bend" else f"{joint.words} {kind}"
    faces = ", its branch to the wall" if all(own.walls) else ""
    why = f"{where}{faces}" if joint.riser else where
    fittings.add(f"{name}{radius if joint.kind != 'reducer' else ''}", 1, why)
    if joint.riser:
        given = f", {main.stand_off_mm:g} mm given" if main.stand_off_mm else ""
        off = f"; {main.tag} stands off the wall by that radius{given}" if faces else ""
        why = f"where {own.tag} turns from that tee{off}"
        fittings.add(f"{joint.riser}, {run_item(own)}{radius}", 1, why)
        joints.add(_coupler(own), 1, f"at the riser of {own.tag}")
    joints.add(_coupler(own), 1, where)
    joints.add(_coupler(main), 2 if joint.kind == "tee" and main.state == "new" else 1, where)


def _coupler(run: Containment) -> str:
    pair = "coupler" if "conduit" in run.kind or "trunking" in run.kind else "coupler pair"
    return f"{pair}, {run_item(run)}"


def _end(run: Containment) -> str:
    if "trunking" in run.kind:
        return f"stop end, {run_item(run)}"
    if "conduit" in run.kind:
        return f"bush, {run_item(run)}"
    return f"end cap or edge strip, {run_item(run)}"
