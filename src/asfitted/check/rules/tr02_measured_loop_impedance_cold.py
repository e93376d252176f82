"""TR-02: measured loop impedance leaves room for warm conductors."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.readings import read_circuits
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="TR-02",
    title="Measured loop impedance leaves room for warm conductors",
    clause=bs7671("411.4.4 and Appendix 3"),
    severity=Severity.WARNING,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Measured loop impedance leaves room for warm conductors.

    What it checks. A Zs read with cold conductors is not more than 80 % of what the device allows.

    Why it matters on site. A warm cable has more resistance than the one that was tested.

    Bad. 0.9 Ω read cold where the limit is 1.0 Ω.

    Good. 0.7 Ω read there.

    To put it right. Correct the reading for temperature by its true share of cable, or lower Zs.

    Source. BS 7671 Appendix 3: the 0.8 rule for readings at about 10 to 20 °C.
    """
    for circuit, result, reading in read_circuits(job):
        found = reading.zs_ohm.value if reading.zs_ohm else None
        limit = result.zs_limit_ohm if result else None
        if found is None or (limit is not None and found > limit):
            continue  # TR-07 says what was not read, TR-01 what is past the limit itself
        yield job.at_most(
            circuit.tag,
            what="measured loop impedance Zs",
            found=found,
            limit_is=f"the most to be read cold for its {circuit.device.words}",
            limit=result.zs_limit_measured_ohm if result else None,
            unit="Ω",
            to_do="Correct the reading for temperature, or lower the loop impedance.",
        )
