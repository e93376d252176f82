"""How far apart the supports of a run may be, and what its fill is held against, in words."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.containment.containment_kinds import kind_of
from asfitted.calculate.containment.support_spacing import support_spacing_mm
from asfitted.reference import containment as tables

if TYPE_CHECKING:
    from asfitted.resolve.installation import Containment


def support_words(run: Containment) -> str:
    """Return the greatest spacing of supports, or that the tables have none for this kind."""
    if run.declared_length_m is not None:
        return "its way and depth were not surveyed"
    level, upright = support_spacing_mm(run), support_spacing_mm(run, "vertical")
    if level is None or upright is None:
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
