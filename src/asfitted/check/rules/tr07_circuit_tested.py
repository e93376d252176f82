"""TR-07: every circuit tested, or a reason given."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.readings import owed_readings
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="TR-07",
    title="Every circuit tested, or a reason given",
    clause=bs7671("641.1 and 644"),
    severity=Severity.WARNING,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Every circuit tested, or a reason given.

    What it checks. Once there are readings, or an issue is as fitted, no new circuit lacks its own.

    Why it matters on site. A blank reads as "nobody looked", and later as "it was right".

    Bad. Readings of two circuits, and nothing of the third.

    Good. Readings of all three.

    To put it right. Test the circuit and write the readings, or write why it was not tested.

    Source. BS 7671 641.1 and 644: every installation is tested, results are recorded.
    """
    readings = job.installation.readings
    as_fitted = job.installation.job.status.lower().startswith("as fitted")
    if readings is None and not as_fitted:
        return
    taken = readings.circuits if readings else {}
    to_do = "Test it and write the readings, or write why it was not tested."
    for circuit, _ in job.circuits():
        reading = taken.get(circuit.tag)
        if reading is None:
            if circuit.state == "new":
                yield job.not_checked(circuit.tag, "no test readings are given", to_do=to_do)
            continue
        if reading.not_tested:
            yield job.not_checked(circuit.tag, f"not tested, {reading.not_tested}", to_do=to_do)
            continue
        owed = owed_readings(circuit, reading, job.installation)
        if not owed:
            yield job.passes(circuit.tag)
            continue
        words = "; ".join(f"{what} not read" + (f", {why}" if why else "") for what, why in owed)
        yield job.not_checked(circuit.tag, words, to_do=to_do)
