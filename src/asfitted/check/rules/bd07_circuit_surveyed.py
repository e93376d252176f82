"""BD-07: circuits not surveyed."""

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
    id="BD-07",
    title="Circuits not surveyed",
    clause=bs7671("132.16 and 514.9.1"),
    severity=Severity.WARNING,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Circuits not surveyed.

    What it checks. The cables of every circuit are known, so that its figures could be worked out.

    Why it matters on site. What was not looked at is not thereby right; the reader must see which
    circuits those are.

    Bad. An existing way of which only the device was read.

    Good. A circuit with its cable and points in the spec.

    To put it right. Survey it: cable, length, way and points; or limit the work to the rest in
    writing.

    Source. BS 7671 132.16: an addition needs the existing installation to be good enough.
    """
    for circuit, _ in job.circuits():
        if circuit.cables:
            yield job.passes(circuit.tag)
        else:
            yield job.not_checked(
                circuit.tag,
                f"{circuit.state} circuit with no cable on record: capacity, voltage drop, loop "
                "impedance and withstand were not worked out",
                to_do="Survey it, or limit the work to the rest in writing.",
            )
