"""SU-08: Ze and fault current at the origin agree."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.network import fault_of_ipf, line_to_neutral_ka
from asfitted.check.clause import practice
from asfitted.check.finding import Severity
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection

TOLERANCE = 1.3  # common practice: two readings of one loop, with what the instrument may be out
SLACK = 1e-9


@rule(
    id="SU-08",
    title="Ze and fault current agree",
    clause=practice("Guidance Note 3, prospective fault current"),
    severity=Severity.NOTE,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Ze and fault current agree.

    What it checks. On a TN-C-S supply neutral and earth are one conductor up to the origin, so
    U0/Ze and the fault current line to neutral are one figure: they agree within 30 %. A given
    three-phase current is halved for line to neutral. On a TN-S supply U0/Ze is no more than 30 %
    above the current line to neutral, else the greatest fault is one to earth, and is not the one
    given.

    Why it matters on site. One of the two readings is wrong, or the current is of another fault
    than it is taken for: then breaking capacity or disconnection rests on a wrong figure.

    Bad. Ze 0.15 Ω, so 1.5 kA, beside 4.2 kA three-phase, so 2.1 kA, on a TN-C-S supply.

    Good. Ze 0.11 Ω, so 2.1 kA, beside 4.2 kA three-phase.

    To put it right. Measure both again at the origin, and find out which fault the current is of.

    Source. Ohm's law at the origin, 230 V; half of the three-phase current and the tolerance of
    30 % are common practice.
    """
    supply = job.installation.supply
    if supply is None or supply.system == "TT":
        return  # the earth of a TT system is its own electrode
    if supply.ze_ohm is None or supply.ipf_ka is None or supply.ze_ohm.value <= 0:
        return  # SU-01 says what is not recorded
    to_earth = supply.u0_v / supply.ze_ohm.value / 1000
    to_neutral = line_to_neutral_ka(supply.ipf_ka.value, supply.phases)
    most = TOLERANCE * (1 + SLACK)
    agrees = to_earth <= most * to_neutral
    if supply.system == "TN-C-S":
        agrees = agrees and to_neutral <= most * to_earth
    fault = fault_of_ipf(supply.phases)
    halved = f", half of the {supply.ipf_ka.value:g} kA taken as {fault}"
    yield job.holds(
        "supply",
        agrees,
        f"U0/Ze is {to_earth:.2f} kA and the fault current line to neutral {to_neutral:.2f} kA"
        f"{halved if supply.phases == 3 else ''}: at the origin of a {supply.system} supply they "
        "should agree within 30 %.",
        to_do=f"Measure both again, and give the fault current that is {fault}.",
        found=f"{to_earth:.2f} kA beside {to_neutral:.2f} kA",
    )
