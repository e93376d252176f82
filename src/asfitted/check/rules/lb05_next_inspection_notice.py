"""LB-05: notice of the next inspection."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="LB-05",
    title="Notice of the next inspection",
    clause=bs7671("514.12.1"),
    severity=Severity.NOTE,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Notice of the next inspection.

    What it checks. An "As fitted" issue is noted for the notice of the next inspection.

    Why it matters on site. The client cannot know when to call again.

    Bad. Status "As fitted": the notice is owed.

    Good. Status "For construction".

    To put it right. Fix the notice at the origin with the date agreed on the certificate.

    Source. BS 7671 514.12.1.
    """
    facts = job.installation.job
    if job.installation.supply is None:
        return
    yield job.holds(
        "job",
        facts.status.lower().replace("-", " ") != "as fitted",
        "The notice of the next inspection is owed at the origin.",
        to_do="Fix it with the date that stands on the certificate.",
        found=facts.status,
    )
