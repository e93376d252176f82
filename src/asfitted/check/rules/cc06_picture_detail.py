"""CC-06: detail of the picture at its target."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.finding import Severity
from asfitted.check.registry import rule
from asfitted.reference.cctv import pixel_density

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="CC-06",
    title="Detail of the picture at its target",
    clause="BS EN 62676-4:2015",
    severity=Severity.NOTE,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Detail of the picture at its target.

    What it checks. A camera gives enough pixels a metre at its target to recognise a person.

    Why it matters on site. The client thinks that a face can be told; the picture shows a coat.

    Bad. 85 pixels a metre at 10 m: a person is observed, not recognised.

    Good. 213 pixels a metre at 5 m.

    To put it right. Use a longer lens or more pixels, or agree in writing that observing is enough.

    Source. BS EN 62676-4:2015, recognise 125 pixels a metre.
    """
    limit = pixel_density("recognise")
    for result in job.results.data.values():
        if job.installation.data_devices[result.tag].kind == "camera":
            named = f" ({result.density_class})" if result.density_class else ""
            yield job.at_least(
                result.tag,
                what=f"detail at its target{named}",
                found=result.density_px_m,
                limit_is="what recognising a known person takes",
                limit=limit.value,
                unit="px/m",
                to_do="Use a longer lens or more pixels, or agree that this is enough.",
                known_by=limit.provenance,
            )
