"""PE-02: poE class gives the load."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.finding import Severity
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="PE-02",
    title="PoE class gives the load",
    clause="IEEE 802.3 clauses 33 and 145",
    severity=Severity.ERROR,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """PoE class gives the load.

    What it checks. The greatest load of a PoE device is within what its class gives it.

    Why it matters on site. It starts, and reboots each time its heater or lamps come on.

    Bad. A 14 W access point on class 3, which gives 12.95 W.

    Good. The same on class 4, which gives 25.5 W.

    To put it right. Use a port of a higher class, or a smaller device.

    Source. IEEE 802.3, power at the device by class.
    """
    for result in job.results.data.values():
        device = job.installation.data_devices[result.tag]
        powered = device.poe_class is not None or (bool(device.port) and device.load_w is not None)
        if powered:
            yield job.at_most(
                result.tag,
                what="its greatest load",
                found=result.load_w,
                limit_is=f"what PoE class {device.poe_class} gives",
                limit=result.poe_class_w,
                unit="W",
                to_do="Use a port of a higher class, or a smaller device.",
            )
