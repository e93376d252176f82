"""HT-04: height of cameras."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import practice
from asfitted.check.finding import Severity
from asfitted.check.heights import judge_height
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="HT-04",
    title="Height of cameras",
    clause=practice("trade practice for cameras"),
    severity=Severity.WARNING,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Height of cameras.

    What it checks. Cameras sit above easy reach and low enough for faces.

    Why it matters on site. Too low and it is turned to the wall; too high and it sees hats.

    Bad. An outside camera 1.9 m up.

    Good. The same 3.0 m up.

    To put it right. Move it within the range, or waive it with the reason.

    Source. Trade range: outside 2.5 to 4 m, inside 2.4 to 3.2 m.
    """
    for device in job.installation.data_devices.values():
        if device.kind != "camera" or device.position.end_of or device.state == "removed":
            continue
        where = "outside" if device.position.outside else "inside"
        yield from judge_height(job, device.tag, f"camera {where}", device.position.up_mm)
