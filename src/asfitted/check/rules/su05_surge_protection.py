"""SU-05: surge protection decided."""

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
    id="SU-05",
    title="Surge protection decided",
    clause=bs7671("443.4.1"),
    severity=Severity.WARNING,
    provenance="seen",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Surge protection decided.

    What it checks. Whether a surge protective device is fitted is on record for the supply.

    Why it matters on site. Recorders, controllers and LED drivers die together after one storm.

    Bad. A supply of which nothing is said about surge protection.

    Good. A job without a supply of its own, such as cameras on an existing outlet.

    To put it right. Fit one at the origin, or have the owner decline it in writing where that is
    allowed.

    Source. BS 7671 443.4.1 as amended in 2022; the fourth amendment was not read.
    """
    if job.installation.supply is not None:
        yield job.not_checked(
            "supply",
            "surge protection is not recorded in the spec",
            to_do="Fit one at the origin, or record why it may be left out (443.4.1).",
        )
