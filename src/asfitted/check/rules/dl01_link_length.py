"""DL-01: length of data links."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.finding import Severity
from asfitted.check.registry import rule
from asfitted.reference.cctv import channel_length_limit_m

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="DL-01",
    title="Length of data links",
    clause="BS EN 50173-1 and ISO/IEC 11801",
    severity=Severity.ERROR,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Length of data links.

    What it checks. A network link to an outlet, access point or PoE camera is within its length.

    Why it matters on site. A link that is a little too long works on the day and drops out when it
    is warm.

    Bad. A 96 m fixed link: 90 m is the limit, cords not counted.

    Good. A 40 m link.

    To put it right. Put a switch nearer, or use fibre.

    Source. ISO/IEC 11801 and BS EN 50173-1: fixed link 90 m, channel 100 m.
    """
    for result in job.results.data.values():
        device = job.installation.data_devices[result.tag]
        if device.kind == "camera" and not device.port:
            continue
        yield job.at_most(
            result.tag,
            what=f"length of its {result.medium} link",
            found=result.length_m,
            limit_is="the longest fixed link",
            limit=channel_length_limit_m("permanent link").value,
            unit="m",
            to_do="Put a switch nearer, or use fibre.",
        )
