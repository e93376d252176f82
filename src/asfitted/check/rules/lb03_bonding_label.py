"""LB-03: label at earth and bonding connections."""

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
    id="LB-03",
    title="Label at earth and bonding connections",
    clause=bs7671("514.13.1"),
    severity=Severity.NOTE,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Label at earth and bonding connections.

    What it checks. Each main bonding connection is noted for its permanent label.

    Why it matters on site. Somebody takes the clamp off to paint the pipe and leaves it off.

    Bad. A bonded water pipe: its label is owed.

    Good. A job that records no bonding.

    To put it right. Fix the label at the clamp and at the earthing conductor.

    Source. BS 7671 514.13.1.
    """
    supply = job.installation.supply
    if supply is None:
        return
    names = ", ".join(what for what, _ in supply.bonds)
    yield job.holds(
        "supply",
        not supply.bonds,
        f"Permanent labels are owed at the bonding of: {names}.",
        to_do="Fix the earth and bonding label at each clamp and at the electrode or earth bar.",
        found=names,
    )
