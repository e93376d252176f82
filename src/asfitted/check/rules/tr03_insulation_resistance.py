"""TR-03: insulation resistance."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.readings import read_circuits
from asfitted.check.registry import rule
from asfitted.reference.reading_limits import least_insulation_mohm

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="TR-03",
    title="Insulation resistance",
    clause=bs7671("643.3 and Table 64"),
    severity=Severity.ERROR,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Insulation resistance.

    What it checks. The lowest insulation reading of a circuit is at least that of Table 64.

    Why it matters on site. Low insulation is a damaged or wet cable, or a load left connected.

    Bad. 0.4 MΩ read at 500 V.

    Good. 200 MΩ read there.

    To put it right. Take off loads and neons, part the circuit and find the section that is low.

    Source. BS 7671 Table 64: 1 MΩ at 500 V, 0.5 MΩ at 250 V.
    """
    for circuit, _, reading in read_circuits(job):
        both = (reading.insulation_live_mohm, reading.insulation_earth_mohm)
        values = [one.value for one in both if one is not None and one.value is not None]
        if not values:
            continue  # TR-07 says what was not read
        least = least_insulation_mohm(reading.insulation_test_v)
        yield job.at_least(
            circuit.tag,
            what="measured insulation resistance",
            found=min(values),
            limit_is=f"the least for it ({least.source})",
            limit=least.value,
            unit="MΩ",
            to_do="Take off loads, part the circuit, find what is low and put it right.",
        )
