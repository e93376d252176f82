"""What starts each motor: a starter drawn before it, or one that the machine brings with it.

The overload relay sits in the starter and protects the motor: it may be written at either, and
both know of it afterwards. What the spec does not say stays empty.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from asfitted.reference.points import point_kind
from asfitted.spec.problem_codes import Code

if TYPE_CHECKING:
    from collections.abc import Mapping

    from asfitted.resolve.installation import Cable, PointServed
    from asfitted.resolve.ledger import Ledger
    from asfitted.spec.load_yaml import SpecPath

STARTER = "motor starter"
BUILT_IN = "built in"
NO_STARTER = "none"
OVERLOAD = ", overload relay "


def with_starters(
    points: Mapping[str, PointServed], cables: Mapping[str, Cable], ledger: Ledger
) -> dict[str, PointServed]:
    """Return the points, motors and starters knowing of each other.

    A motor that has a starter of its own and one before it, or two settings of one relay, is noted.
    """
    before = {cable.to_end: cable.from_end for cable in cables.values()}
    places = _places(ledger)
    found = dict(points)
    for tag, point in points.items():
        if point_kind(point.kind).use != "motor":
            continue
        starter = found.get(_starter_before(tag, points, before))
        if starter is None:
            continue
        _note_contradictions(point, starter, places[tag], ledger)
        overload = point.overload_a if point.overload_a is not None else starter.overload_a
        restart = point.restart or starter.restart
        found[tag] = replace(point, starter=starter.tag, overload_a=overload, restart=restart)
        found[starter.tag] = replace(starter, overload_a=overload, restart=restart)
    return {tag: _with_words(point) for tag, point in found.items()}


def _starter_before(tag: str, points: Mapping[str, PointServed], before: Mapping[str, str]) -> str:
    """Return the nearest starter on the way from a board to a point, "" when there is none."""
    seen = {tag}
    here = before.get(tag, "")
    while here in points and here not in seen:
        if points[here].kind == STARTER:
            return here
        seen.add(here)
        here = before.get(here, "")
    return ""


def _places(ledger: Ledger) -> dict[str, SpecPath]:
    """Return where in the spec each point stands, by tag."""
    return {
        words.tag: ("circuits", index, "points", number)
        for index, circuit in enumerate(ledger.loaded.spec.circuits)
        for number, words in enumerate(circuit.points)
    }


def _note_contradictions(
    point: PointServed, starter: PointServed, path: SpecPath, ledger: Ledger
) -> None:
    if point.starter:
        message = f'{point.tag} says "starter: {point.starter}", and {starter.tag} stands before it'
        ledger.problem(Code.CIRCUIT, message, path, "keep one of the two")
    for what, own, other in (
        ("overload", point.overload_a, starter.overload_a),
        ("restart", point.restart, starter.restart),
    ):
        if own and other and own != other:
            message = f"{point.tag} and its starter {starter.tag} give two figures of {what}"
            ledger.problem(Code.CIRCUIT, message, path, "write it once, at the starter")


def _with_words(point: PointServed) -> PointServed:
    """Return a point whose words tell of the starter and the relay that it holds itself."""
    words = point.words
    if point.starter == BUILT_IN:
        words += ", starter built in"
    if point.overload_a is not None and (point.kind == STARTER or point.starter == BUILT_IN):
        words += f"{OVERLOAD}{point.overload_a:g} A"
    return replace(point, words=words)
