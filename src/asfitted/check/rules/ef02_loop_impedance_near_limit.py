"""EF-02: loop impedance near the limit for a reading."""

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
    id="EF-02",
    title="Loop impedance near the limit for a reading",
    clause=bs7671("643.7.3 and Appendix 3"),
    severity=Severity.NOTE,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Loop impedance near the limit for a reading.

    What it checks. Zs as worked out hot is also below 80 % of the limit, the mark for a cold
    reading.

    Why it matters on site. A circuit that passes on paper by a hair may fail the tester, and then
    the floor is finished.

    Bad. 1.25 Ω worked out against a limit of 1.37 Ω: the reading must be below 1.09 Ω.

    Good. 0.9 Ω worked out.

    To put it right. Warn whoever tests; think about a larger cpc while it is cheap.

    Source. On-Site Guide Appendix B, 0.8 of the tabulated Zs for a reading taken cold.
    """
    for circuit, result in job.surveyed_circuits():
        if result is None or result.zs_ohm is None or result.zs_limit_measured_ohm is None:
            continue  # EF-01 says what is missing
        yield job.at_most(
            circuit.tag,
            what="Zs worked out hot",
            found=result.zs_ohm,
            limit_is=f"the greatest cold reading for its {circuit.device.words}",
            limit=result.zs_limit_measured_ohm,
            unit="Ω",
            to_do="Tell whoever tests; a larger cpc gives room.",
        )
