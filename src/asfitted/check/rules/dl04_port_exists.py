"""DL-04: named ports exist."""

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
    id="DL-04",
    title="Named ports exist",
    clause=practice("BS EN 50174-1 records of ports"),
    severity=Severity.ERROR,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Named ports exist.

    What it checks. The number of each named port is one that the switch has.

    Why it matters on site. The label on the patch lead points nowhere.

    Bad. SW1/9 on an 8-port switch.

    Good. SW1/8.

    To put it right. Correct the port, or fit a larger switch.

    Source. Plain count of what the spec gives.
    """
    devices = job.installation.data_devices
    for device in devices.values():
        tag, _, number = device.port.partition("/")
        switch = devices.get(tag)
        if switch is None or not number.isdigit():
            continue
        yield job.at_most(
            device.tag,
            what=f"number of its port {device.port}",
            found=float(number),
            limit_is=f"the ports of {tag}",
            limit=switch.ports,
            unit="",
            to_do="Correct the port, or fit a larger switch.",
        )
