"""DL-02: each switch port used once."""

from __future__ import annotations

from collections import defaultdict
from typing import TYPE_CHECKING

from asfitted.check.clause import practice
from asfitted.check.finding import Severity
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="DL-02",
    title="Each switch port used once",
    clause=practice("BS EN 50174-1 records of ports"),
    severity=Severity.ERROR,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Each switch port used once.

    What it checks. No two devices share one port of a switch.

    Why it matters on site. The second cable is found without a hole to go in, and the wrong camera
    goes dark.

    Bad. Two cameras on SW1/3.

    Good. One on SW1/3, one on SW1/4.

    To put it right. Give one of them a free port.

    Source. Plain count of what the spec gives.
    """
    users: dict[str, list[str]] = defaultdict(list)
    for device in job.installation.data_devices.values():
        if device.port and device.state != "removed":
            users[device.port].append(device.tag)
    for port, tags in users.items():
        yield job.holds(
            tags[-1],
            len(tags) == 1,
            f"Port {port} is given to {' and '.join(tags)}.",
            to_do="Give one of them a free port.",
            found=port,
        )
