"""PE-04: poE on balanced cable."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.finding import Severity
from asfitted.check.registry import rule
from asfitted.reference.cables import family

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="PE-04",
    title="PoE on balanced cable",
    clause="BS 7671:2018+A4:2026 Section 716 (clause number not confirmed)",
    severity=Severity.ERROR,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """PoE on balanced cable.

    What it checks. A PoE device hangs on balanced cable of Category 5 or better.

    Why it matters on site. Alarm cable and coax neither carry the data nor the power, and they get
    warm.

    Bad. A PoE camera on coaxial cable.

    Good. The same camera on Cat6.

    To put it right. Pull Cat5e or Cat6 for it.

    Source. BS 7671:2018+A4:2026 Section 716 as taught; BS EN 50173-1.
    """
    cables = job.installation.cables
    for result in job.results.data.values():
        device = job.installation.data_devices[result.tag]
        if device.poe_class is not None and result.cable in cables:
            cable = family(cables[result.cable].family)
            yield job.holds(
                result.tag,
                cable.construction == "data",
                f"PoE over {cable.legend}, which is not balanced data cable.",
                to_do="Pull Cat5e or Cat6 for it.",
                found=cable.legend,
            )
