"""SU-03: as-fitted issue checked and dated."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.as_fitted import is_as_fitted
from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.recorded import is_recorded
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="SU-03",
    title="As-fitted issue checked and dated",
    clause=bs7671("514.9.1 and 644"),
    severity=Severity.ERROR,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """As-fitted issue checked and dated.

    What it checks. An issue with the status "As fitted" names who checked it and its date.

    Why it matters on site. The next electrician works live lines by this paper.

    Bad. Status "As fitted" with the checker not recorded.

    Good. The same with a second name and a date.

    To put it right. Let a second person check it against the site and write the name and date.

    Source. Drawing practice; BS 7671 514.9.1 asks for legible and correct information.
    """
    facts = job.installation.job
    if not is_as_fitted(facts):
        return
    for what, value in (("checker", facts.checker), ("date", facts.date)):
        yield job.holds(
            "job",
            is_recorded(value),
            f'Status is "As fitted" and the {what} is not recorded.',
            to_do="Have it checked against the site by a second person; write name and date.",
            found="not recorded",
        )
