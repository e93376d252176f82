"""SU-05: surge protection decided."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.recorded import is_recorded
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

    What it checks. A surge protective device is on record for the supply, or why there is none.

    Why it matters on site. Recorders, controllers and LED drivers die together after one storm.

    Bad. "not fitted", and not a word why.

    Good. "type 2 at DB1", or "not fitted: owner declined in writing".

    To put it right. Fit one at the origin, or have the owner decline it in writing where that is
    allowed.

    Source. BS 7671 443.4.1 as amended in 2022; the fourth amendment was not read.
    """
    supply = job.installation.supply
    if supply is None:
        return
    if not is_recorded(supply.surge_protection):
        yield job.not_checked(
            "supply",
            "surge protection is not recorded in the spec",
            to_do="Fit one at the origin, or record why it may be left out (443.4.1).",
        )
        return
    fitted, _, why_not = supply.surge_protection.partition(":")
    yield job.holds(
        "supply",
        not fitted.lower().startswith("not fitted") or is_recorded(why_not),
        "No surge protection is fitted, and the reason is not recorded.",
        to_do="Fit one at the origin, or write the reason: not fitted: owner declined in writing.",
        found=supply.surge_protection,
    )
