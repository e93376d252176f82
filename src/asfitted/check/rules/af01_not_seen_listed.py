"""AF-01: what was not seen is listed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.as_fitted import is_as_fitted
from asfitted.check.clause import practice
from asfitted.check.finding import Severity
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="AF-01",
    title="What was not seen is listed",
    clause=practice("Records of as-fitted drawings"),
    severity=Severity.ERROR,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """What was not seen is listed.

    What it checks. An issue with the status "As fitted" lists what could not be seen on site, or
    says that there is none.

    Why it matters on site. A buried duct drawn from memory is dug up where it is not.

    Bad. Status "As fitted" with nothing said of the duct under the yard.

    Good. "not seen: duct U1 between the wall and the post", or "not seen: none".

    To put it right. Write "not seen:" under "job:" with a list, or the word none.

    Source. Drawing practice.
    """
    facts = job.installation.job
    if not is_as_fitted(facts):
        return
    yield job.holds(
        "job",
        facts.not_seen is not None,
        'Status is "As fitted" and it is not said what was not seen.',
        to_do='Write "not seen:" with a list of what could not be seen, or the word none.',
        found="not recorded",
    )
