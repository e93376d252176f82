"""CC-03: picture signal over its cable."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import practice
from asfitted.check.finding import Severity
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="CC-03",
    title="Picture signal over its cable",
    clause=practice("makers' distances for coaxial cable and baluns"),
    severity=Severity.ERROR,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Picture signal over its cable.

    What it checks. The cable of a camera is no longer than its signal carries.

    Why it matters on site. The picture tears and loses colour, and only at night.

    Bad. 150 m of Cat6 through baluns for HD 1080p: 120 m is the design limit.

    Good. 60 m of it.

    To put it right. Use RG59 or RG6, a lower picture size, active baluns, or a network camera.

    Source. Design values below the makers' claims for each signal and cable.
    """
    for result in job.results.data.values():
        device = job.installation.data_devices[result.tag]
        if device.signal:
            yield job.at_most(
                result.tag,
                what=f"length of its {result.medium}",
                found=result.length_m,
                limit_is=f"the design limit for {device.signal}",
                limit=result.signal_limit_m,
                unit="m",
                to_do="Use better cable, active baluns, or a network camera.",
            )
