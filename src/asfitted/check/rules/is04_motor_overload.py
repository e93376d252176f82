"""IS-04: motors over 0.37 kW."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.full_load import full_load_of
from asfitted.check.kinds import is_motor
from asfitted.check.recorded import is_recorded
from asfitted.check.registry import rule
from asfitted.reference.site_limits import site_limit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection
    from asfitted.resolve.installation import PointServed


@rule(
    id="IS-04",
    title="Motors over 0.37 kW",
    clause=bs7671("552.1.2 and 445"),
    severity=Severity.WARNING,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Motors over 0.37 kW.

    What it checks. A motor over 0.37 kW has an overload device set to no more than 105 % of its
    full-load current, and stays off when power comes back.

    Why it matters on site. A stalled motor burns behind a breaker that sees nothing wrong; restart
    takes fingers.

    Bad. A 4 kW motor (8.1 A) with its overload set to 10 A.

    Good. The same set to 8.1 A, with manual restart; or a 250 W fan, below the limit.

    To put it right. Set the overload to the rating plate; fit a starter that drops out.

    Source. BS 7671 552.1.2 (overload over 0.37 kW) and 445 (loss of voltage); the 105 % is common
    practice.
    """
    limit = site_limit("motor without overload device")
    for _, point in job.points():
        if not is_motor(point):
            continue
        if point.load_w is not None and point.load_w <= limit.value:
            yield job.passes(point.tag)
            continue
        silent = _not_recorded(point)
        if silent:
            yield job.not_checked(
                point.tag,
                f"{' and '.join(silent)} of the motor {'are' if silent[1:] else 'is'} not recorded",
                to_do="Read the starter: its overload setting, and that it stays off when power "
                "comes back.",
            )
        if point.overload_a is not None:
            yield _setting(job, point)
        if is_recorded(point.restart):
            yield job.holds(
                point.tag,
                point.restart == "manual",
                "The motor starts again by itself when power comes back.",
                to_do="Fit a starter that drops out, or show that no one can be hurt by a restart.",
                found=point.restart,
            )


def _not_recorded(point: PointServed) -> list[str]:
    facts = {"overload setting": point.overload_a is not None}
    facts["restart"] = is_recorded(point.restart)
    return [what for what, known in facts.items() if not known]


def _setting(job: Inspection, point: PointServed) -> Verdict:
    share = site_limit("overload setting above full load")
    full_load_a = full_load_of(job, point)
    return job.at_most(
        point.tag,
        what="overload setting",
        found=point.overload_a,
        limit_is=f"{share.value:g} % of its full-load current",
        limit=None if full_load_a is None else full_load_a * share.value / 100,
        unit="A",
        to_do="Set the overload to the full-load current of the rating plate.",
        known_by=share.provenance,
    )
