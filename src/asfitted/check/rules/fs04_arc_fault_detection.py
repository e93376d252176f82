"""FS-04: arc fault detection."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.kinds import is_socket
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection
    from asfitted.resolve.installation import Circuit

#: Where it is required; elsewhere it is recommended.
REQUIRED = frozenset(
    {
        "house in multiple occupation",
        "higher-risk residential building",
        "student accommodation",
        "care home",
    }
)
GREATEST_A = 32.0


@rule(
    id="FS-04",
    title="Arc fault detection",
    clause=bs7671("421.1.7"),
    severity=Severity.ERROR,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Arc fault detection.

    What it checks. In buildings where people sleep and cannot easily get out, new single-phase
    socket circuits up to 32 A have arc fault detection.

    Why it matters on site. A loose or crushed wire arcs for hours without a fault that a breaker
    or an RCD can see, until the wall burns.

    Bad. A B32 RCBO for the bedroom socket-outlets of a care home.

    Good. The same with an AFDD.

    To put it right. Fit an AFDD, or write "AFDD: yes" where there is one.

    Source. BS 7671 421.1.7 from A2:2022 on, by use of the building.
    """
    use = job.installation.job.building_use
    circuits = [circuit for circuit, _ in job.circuits() if _concerned(job, circuit)]
    if circuits and not use:
        yield job.not_checked(
            "job",
            "the use of the building is not recorded, so whether AFDDs are required",
            to_do='Write "building use:" under "job".',
        )
        return
    for circuit in circuits:
        yield job.holds(
            circuit.tag,
            use not in REQUIRED or circuit.device.afdd,
            f"A socket circuit in a {use} needs arc fault detection; "
            f"its {circuit.device.words} has none recorded.",
            to_do='Fit an AFDD, or write "AFDD: yes" where there is one.',
        )


def _concerned(job: Inspection, circuit: Circuit) -> bool:
    """Tell whether a circuit is a new single-phase final one of at most 32 A for sockets."""
    sockets = circuit.use == "sockets" or any(
        is_socket(job.installation.points[tag]) for tag in circuit.points
    )
    single = circuit.phase != "TP" and not circuit.feeds_board
    return sockets and single and circuit.state == "new" and circuit.device.rating_a <= GREATEST_A
