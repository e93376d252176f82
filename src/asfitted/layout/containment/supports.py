"""How far apart the supports of a run may be, and what its fill is held against, in words."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.containment.containment_kinds import kind_of
from asfitted.errors import OutsideTableError
from asfitted.reference import containment as tables

if TYPE_CHECKING:
    from asfitted.resolve.installation import Containment

_TABLE_KINDS = {"perforated tray": "tray", "wire basket": "basket", "cable ladder": "ladder"}


def support_words(run: Containment) -> str:
    """Return the greatest spacing of supports, or that the tables have none for this kind."""
    if run.declared_length_m is not None:
        return "its way and depth were not surveyed"
    kind = _TABLE_KINDS.get(run.kind, run.kind)
    size = run.width_mm * run.height_mm if "trunking" in kind else run.width_mm
    try:
        level = tables.support_spacing(kind, size).value
        upright = tables.support_spacing(kind, size, "vertical").value
    except OutsideTableError:
        return "supports: spacing not in the tables"
    words = f"supports at most {level:.0f} mm apart"
    return words if level == upright else f"{words}, upright {upright:.0f} mm"


def limit_source(run: Containment, *, only_data: bool) -> str:
    """Return where the limit comes from, with its provenance word."""
    if kind_of(run.kind).filling == "width":
        spare = tables.spare_fraction()
        return f"{spare.value:.0%} of the width is kept free at handover ({spare.provenance})"
    if "trunking" in run.kind:
        figure = tables.space_factor_limit("trunking")
    else:
        figure = tables.space_factor_limit("conduit_data" if only_data else "conduit")
    return f"{figure.source} ({figure.provenance})"
