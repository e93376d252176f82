"""Runs that are declared by their length, told the same on every sheet: new ones to be laid.

A new one is part of the work and only its way is not drawn; an existing one is out of sight.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.materials.duct_fittings import BURIED

if TYPE_CHECKING:
    from asfitted.resolve.installation import Containment

#: Warning tape lies over the duct, the usual way: common practice.
TAPE_OVER_MM = 150


def is_new_and_declared(run: Containment) -> bool:
    """Tell whether a run is to be laid whose way no drawing shows."""
    return run.declared_length_m is not None and run.state == "new"


def way_words(run: Containment) -> str:
    """Return what is known of the way of a declared run."""
    return "new, way not drawn" if is_new_and_declared(run) else "way not surveyed"


def lay_words(run: Containment) -> str:
    """Return what holds a declared run: how deep a new one is laid, nothing for an old one."""
    if not is_new_and_declared(run):
        return "its way and depth were not surveyed"
    if run.kind != BURIED:
        return "set out on site"
    return f"set out on site; laid {depth_words(run)}"


def depth_words(run: Containment) -> str:
    """Return "0.5 m deep", or that no depth is recorded."""
    return "depth not recorded" if run.depth_mm is None else f"{run.depth_mm / 1000:g} m deep"


def trench_step(run: Containment) -> str:
    """Return the step in the order of work that lays a new buried duct (common practice)."""
    return (
        f"Lay {run.tag}, {run.words}, to {run.end_words}: ask for plans of buried services, scan, "
        "set out its way; trench, bed, duct with draw cord, warning tape "
        f"{TAPE_OVER_MM} above it; draw the way as laid, backfill. Where it comes up the wall "
        "(not drawn): slow bend, cover to the hole, seal its mouth (common practice)."
    )


def rise_words(run: Containment) -> str:
    """Return how a cable goes from a wall into a new buried duct, which no drawing shows."""
    new = is_new_and_declared(run) and run.kind == BURIED
    return "; its rise up the wall is not drawn: cover it, seal its mouth" if new else ""
