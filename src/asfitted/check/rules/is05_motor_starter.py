"""IS-05: the starter of a motor."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.full_load import full_load_of
from asfitted.check.kinds import is_motor, is_starter
from asfitted.check.registry import rule
from asfitted.reference.site_limits import site_limit
from asfitted.resolve.starters import NO_STARTER

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection
    from asfitted.resolve.installation import Circuit, PointServed

TO_SAY = 'Draw its "motor starter" before it, or write "starter: built in" once it is seen.'


@rule(
    id="IS-05",
    title="The starter of a motor",
    clause=bs7671("552.1.2 and 552.1.3"),
    severity=Severity.WARNING,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """The starter of a motor.

    What it checks. A motor over 0.37 kW has a starter, drawn before it or built in; one drawn is
    rated for the full-load current of its motor and serves that motor alone.

    Why it matters on site. An overload relay is told on the drawing and nobody orders the starter
    that holds it.

    Bad. A 1.5 kW fan (3.5 A) behind an isolator, with a relay setting and no starter.

    Good. A 9 A direct-on-line starter between them; or a machine that brings its own.

    To put it right. Add the starter before the motor, or say that it is built in.

    Source. BS 7671 552.1.2 (overload over 0.37 kW) and 552.1.3 (no unexpected restart); rated
    operational current of a starter: BS EN 60947-4-1.
    """
    limit = site_limit("motor without overload device")
    for circuit, point in job.points():
        if is_motor(point):
            small = point.load_w is not None and point.load_w <= limit.value
            yield job.passes(point.tag) if small else _motor(job, point)
        elif is_starter(point):
            served = [
                p for _, p in job.points() if p.circuit == circuit.tag and p.starter == point.tag
            ]
            yield _serves_one(job, point, served)
            for motor in served:
                yield _rating(job, point, motor)
    for circuit, _ in job.circuits():
        points = [job.installation.points[tag] for tag in circuit.points]
        told = any(is_motor(point) or point.starter for point in points)
        if circuit.use == "motor" and not told:
            yield _not_drawn(job, circuit, points, limit.value)


def _not_drawn(
    job: Inspection, circuit: Circuit, points: list[PointServed], limit_w: float
) -> Verdict:
    """Judge a circuit that serves a motor which is no point of it."""
    loads = [load for load in (circuit.load_w, *(p.load_w for p in points)) if load is not None]
    if loads and sum(loads) <= limit_w:
        return job.passes(circuit.tag)
    return job.not_checked(
        circuit.tag,
        "its motor is not drawn: what starts it and its overload relay are not recorded",
        to_do="Read the starter, and draw the motor with it.",
    )


def _motor(job: Inspection, point: PointServed) -> Verdict:
    if not point.starter:
        return job.not_checked(
            point.tag,
            "what starts the motor and holds its overload relay is not recorded",
            to_do=TO_SAY,
        )
    return job.holds(
        point.tag,
        point.starter != NO_STARTER,
        "The motor has no starter, so nothing holds an overload relay or drops out.",
        to_do="Fit a starter with an overload relay that drops out when the supply is lost.",
        found=NO_STARTER,
    )


def _serves_one(job: Inspection, starter: PointServed, served: list[PointServed]) -> Verdict:
    tags = ", ".join(p.tag for p in served)
    return job.holds(
        starter.tag,
        len(served) == 1,
        f"One starter serves {tags}: its relay sees their sum and protects neither."
        if served
        else "No motor is drawn behind the starter.",
        to_do="Fit a starter for each motor, and draw each behind its own.",
        found=tags or "none",
    )


def _rating(job: Inspection, starter: PointServed, motor: PointServed) -> Verdict:
    return job.at_least(
        starter.tag,
        what="rating of the starter",
        found=starter.rating_a,
        limit_is=f"the full-load current of {motor.tag}",
        limit=full_load_of(job, motor),
        unit="A",
        to_do="Fit a starter rated for the motor.",
    )
