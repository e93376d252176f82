"""SU-04: edition of BS 7671 named."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.finding import Severity
from asfitted.check.registry import rule
from asfitted.reference.site_limits import edition_in_force

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="SU-04",
    title="Edition of BS 7671 named",
    clause="BS 7671:2018+A4:2026, introduction",
    severity=Severity.ERROR,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Edition of BS 7671 named.

    What it checks. The job names the edition in force on its date, and only that one.

    Why it matters on site. Design, drawing and certificate have to name the same book.

    Bad. BS 7671:2018+A2:2022 on a job of November 2026.

    Good. BS 7671:2018+A4:2026 there.

    To put it right. Write the edition in force and go through the design with it.

    Source. The edition before the fourth amendment was withdrawn on 15 October 2026.
    """
    edition, only_from = edition_in_force()
    facts = job.installation.job
    named = "".join(facts.edition.split())
    yield job.holds(
        "job",
        named == "".join(edition.split()) or (bool(named) and facts.date < only_from),
        f'The job of {facts.date} names "{facts.edition}"; {edition} alone is in force '
        f"from {only_from}.",
        to_do=f"Design to {edition} and name it.",
        found=facts.edition,
    )
