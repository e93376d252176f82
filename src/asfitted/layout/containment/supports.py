"""How far apart the supports of a run may be, and what its fill is held against, in words."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.containment.containment_kinds import kind_of
from asfitted.layout.declared_runs import lay_words
from asfitted.reference import containment as tables

if TYPE_CHECKING:
    from asfitted.calculate.containment.support_spacing import SupportSpacing
    from asfitted.resolve.installation import Containment


def support_words(
    run: Containment, level: SupportSpacing | None, upright: SupportSpacing | None
) -> str:
    """Return the greatest spacing of supports, or that the tables have none for this kind."""
    if run.declared_length_m is not None:
        return lay_words(run)
    if level is None or upright is None:
        return "supports: spacing not in the tables"
    words = f"supports at most {level.spacing_mm} mm apart"
    if level.spacing_mm != upright.spacing_mm:
        words += f", upright {upright.spacing_mm} mm"
    if level.is_closer:
        words += f": closer than {level.tabulated_mm} mm for its load of {level.load_kg_m:.1f} kg/m"
    return words


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
