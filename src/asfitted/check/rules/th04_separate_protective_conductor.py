"""TH-04: separate protective conductor strong enough."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.registry import rule
from asfitted.reference.site_limits import site_limit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="TH-04",
    title="Separate protective conductor strong enough",
    clause=bs7671("543.1.1"),
    severity=Severity.ERROR,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Separate protective conductor strong enough.

    What it checks. A cpc that is not part of a cable is at least 2.5 mm².

    Why it matters on site. A lone thin wire is pulled or cut without anybody noticing.

    Bad. A 1.5 mm² green-and-yellow single beside the cable.

    Good. 2.5 mm² in conduit, or 4 mm² where nothing guards it.

    To put it right. Use 2.5 mm² in conduit or trunking, else 4 mm².

    Source. BS 7671 543.1.1: 2.5 mm² with mechanical protection, 4 mm² without.
    """
    limit = site_limit("least separate cpc")
    for _, cable, result in job.power_cables():
        if cable.cpc == "separate":
            yield job.at_least(
                cable.tag,
                what="size of the separate cpc",
                found=result.cpc_mm2 if result else None,
                limit_is="the least with mechanical protection",
                limit=limit.value,
                unit="mm²",
                to_do="Use 2.5 mm² in conduit or trunking, else 4 mm².",
            )
