"""LB-04: sign about cameras."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.finding import Severity
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="LB-04",
    title="Sign about cameras",
    clause="UK GDPR and Data Protection Act 2018, the regulator's guidance",
    severity=Severity.NOTE,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Sign about cameras.

    What it checks. A job with cameras is noted for the operator's sign and duties.

    Why it matters on site. The client answers for the pictures and often does not know it.

    Bad. Four cameras: a sign is owed at the way in.

    Good. A job without cameras.

    To put it right. Hand the operator the list: sign, reason, keeping time, views off neighbours'
    homes.

    Source. Regulator's checklist for small operators of cameras.
    """
    devices = job.installation.data_devices.values()
    cameras = [d.tag for d in devices if d.kind == "camera" and d.state != "removed"]
    yield job.holds(
        "job",
        not cameras,
        f"Cameras {', '.join(cameras)}: the operator owes a sign at the way in.",
        to_do="Hand over the operator's duties: sign, reason, keeping time, no neighbours' homes.",
        found=str(len(cameras)),
    )
