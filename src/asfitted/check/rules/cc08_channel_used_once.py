"""CC-08: each recorder channel used once."""

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
    id="CC-08",
    title="Each recorder channel used once",
    clause=practice("BS EN 62676-4 records"),
    severity=Severity.ERROR,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Each recorder channel used once.

    What it checks. No two cameras share one channel of the recorder.

    Why it matters on site. The schedule on the lid shows one camera under the name of another.

    Bad. Two cameras on channel 3.

    Good. Channels 1 to 4 for four cameras.

    To put it right. Give one of them a free channel.

    Source. Plain count of what the spec gives.
    """
    users: dict[int, list[str]] = defaultdict(list)
    for device in job.installation.data_devices.values():
        if device.channel is not None and device.state != "removed":
            users[device.channel].append(device.tag)
    for channel, tags in users.items():
        yield job.holds(
            tags[-1],
            len(tags) == 1,
            f"Channel {channel} is given to {' and '.join(tags)}.",
            to_do="Give one of them a free channel.",
            found=str(channel),
        )
