"""CF-06: bend radius on runs with corners."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.registry import rule
from asfitted.reference.cables import bend_radius_factor, family

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="CF-06",
    title="Bend radius on runs with corners",
    clause=bs7671("522.8.3 and On-Site Guide Table D5"),
    severity=Severity.NOTE,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Bend radius on runs with corners.

    What it checks. Where a run turns and its thickest cable is armoured, the least inside radius is
    said.

    Why it matters on site. A tray elbow is often tighter than an armoured cable may be bent.

    Bad. A run with a corner that carries a 22 mm armoured cable: it needs 132 mm inside.

    Good. A straight run.

    To put it right. Choose fittings with the radius stated, or sweep the cables inside the corner.

    Source. On-Site Guide Table D5, multiples of the overall diameter.
    """
    for run in job.installation.containment.values():
        pieces = job.pieces_of(run.tag)
        widest = max(
            ((mm, tag) for s in pieces for mm, tag in zip(s.overall_mm, s.cables, strict=True)),
            default=None,
        )
        if widest is None:
            continue
        overall_mm, tag = widest
        cable, result = job.installation.cables[tag], job.results.cables.get(tag)
        csa_mm2 = result.csa_mm2 if result else cable.csa_mm2
        if family(cable.family).construction != "armoured":
            yield job.passes(run.tag)
            continue
        if csa_mm2 is None:
            yield job.not_checked(
                run.tag, f"the size of {tag} is not known", to_do="See why that cable has no size."
            )
            continue
        factor = bend_radius_factor(cable.family, cable.cores, csa_mm2)
        yield job.holds(
            run.tag,
            len(run.path) <= 2,
            f"The run turns, and its thickest cable {tag} ({overall_mm:.1f} mm) needs an inside "
            f"radius of {factor.value * overall_mm:.0f} mm ({factor.value:g} × diameter).",
            to_do="Choose fittings with that radius, or sweep the cables inside the corner.",
            found=f"{len(run.path) - 2} corners",
        )
