"""PE-03: poE current in each conductor."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.data.poe import current_per_conductor_a
from asfitted.check.finding import Severity
from asfitted.check.registry import rule
from asfitted.reference.cctv import poe_conductor_current_limit_ma

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="PE-03",
    title="PoE current in each conductor",
    clause="BS 7671:2018+A4:2026 Section 716 (clause number not confirmed)",
    severity=Severity.ERROR,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """PoE current in each conductor.

    What it checks. The current in each conductor and contact of a PoE link is within 750 mA.

    Why it matters on site. Thin conductors in a bundle warm one another; contacts burn when
    unplugged live.

    Bad. 0.8 A in each conductor.

    Good. 0.3 A in each conductor, as class 4 draws.

    To put it right. Use four-pair power, a higher voltage, or a local supply.

    Source. BS 7671:2018+A4:2026 Section 716 as taught; two pairs up to class 4, four pairs above.
    """
    limit = poe_conductor_current_limit_ma()
    for result in job.results.data.values():
        poe_class = job.installation.data_devices[result.tag].poe_class
        if poe_class is None:
            continue
        each_a = None
        if result.current_a is not None:
            each_a = current_per_conductor_a(result.current_a, pairs=4 if poe_class > 4 else 2)
        yield job.at_most(
            result.tag,
            what="current in each conductor of its link",
            found=each_a * 1000 if each_a is not None else None,
            limit_is="the most for a conductor or contact",
            limit=limit.value,
            unit="mA",
            to_do="Use four-pair power, a higher voltage, or a local supply.",
            known_by=limit.provenance,
        )
