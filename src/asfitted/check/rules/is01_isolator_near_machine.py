"""IS-01: an isolator near every machine."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.kinds import can_isolate, is_machine
from asfitted.check.registry import rule
from asfitted.geometry import distance3
from asfitted.reference.site_limits import site_limit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="IS-01",
    title="An isolator near every machine",
    clause=bs7671("462, 464 and 537.3.2"),
    severity=Severity.ERROR,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """An isolator near every machine.

    What it checks. A motor or fixed machine has an isolator before it, within 2 m on the same wall.

    Why it matters on site. Whoever clears a jam must hold the switch that keeps it still.

    Bad. A pug mill on wall D whose only isolator is round the corner on wall A.

    Good. An isolator 0.7 m along the same wall.

    To put it right. Fit an isolator within reach; else a lockable one, and waive this with the
    reason.

    Source. BS 7671 464.1 and 537.3.2; 2 m is trade practice for "near".
    """
    limit = site_limit("isolator from machine")
    for circuit, point in job.points():
        if not is_machine(point):
            continue
        before = circuit.points[: circuit.points.index(point.tag)]
        passed = map(job.installation.points.__getitem__, before)
        isolators = [p for p in passed if can_isolate(p)]
        near = [p for p in isolators if p.position.wall == point.position.wall]
        if not near:
            where = f"only {isolators[-1].tag}, on another wall" if isolators else "none"
            yield job.fails(
                point.tag,
                f"No isolator before it on {point.position.wall or 'its wall'}: {where}.",
                to_do="Fit one within 2 m on the same wall, or a lockable one and a waiver.",
                found=where,
            )
            continue
        apart_mm, nearest = min((distance3(p.position.at, point.position.at), p.tag) for p in near)
        yield job.at_most(
            point.tag,
            what=f"distance to its isolator {nearest}",
            found=apart_mm / 1000,
            limit_is="within reach",
            limit=limit.value,
            unit="m",
            to_do="Move the isolator nearer, or make it lockable and waive this.",
            known_by=limit.provenance,
        )
