"""What changed of the cables: make and size, way, and length."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.compare.changes import Change
from asfitted.compare.effects import cable_figures, effects
from asfitted.compare.figure_words import figure, rounded
from asfitted.compare.match import match_cables
from asfitted.compare.told import altered, cable_name, sentence
from asfitted.reference.cable_family import family

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from asfitted.calculate.results import CalculationResults, RouteLeg
    from asfitted.compare.changes import Effect, Kind
    from asfitted.resolve.installation import Cable, Installation

LEAST_M = 0.05  # a length that reads the same on paper has not changed


def cable_changes(
    old: Installation,
    old_results: CalculationResults,
    new: Installation,
    new_results: CalculationResults,
) -> Iterator[Change]:
    """Yield the changes of all cables, in the order of the newer job, then those that went."""
    matched = match_cables(old, new)
    before = {theirs: ours for ours, theirs in matched.both}
    for tag, cable in new.cables.items():
        if tag not in before:
            words = f"{cable_make(cable, new_results)}, {_length(tag, new_results)}"
            told = sentence(f"{cable_name(cable)} added: {words}")
            yield Change("added", tag, "cable", "", words, (), told)
            continue
        figures = effects(
            tag, cable_figures(before[tag], old_results), cable_figures(tag, new_results)
        )
        pair = (old.cables[before[tag]], cable)
        found = list(_changes(*pair, old_results, new_results))
        for number, (kind, aspect, was, now) in enumerate(found):
            told = altered(cable_name(cable), aspect, was, now)
            own = _besides(figures, aspect) if number == 0 else ()
            yield Change(kind, tag, "cable", was, now, own, told)
    for tag in matched.removed:
        words = cable_make(old.cables[tag], old_results)
        told = sentence(f"{cable_name(old.cables[tag])} is no longer in the job: {words}")
        yield Change("removed", tag, "cable", words, "", (), told)


def _besides(figures: tuple[Effect, ...], aspect: str) -> tuple[Effect, ...]:
    return tuple(effect for effect in figures if effect.what != aspect)


def cable_make(cable: Cable, results: CalculationResults) -> str:
    """Return make, cores and size of a cable."""
    result = results.cables.get(cable.tag)
    if result is not None:
        return result.words
    size = f" × {cable.csa_mm2:g} mm²" if cable.csa_mm2 is not None else ""
    return f"{cable.cores}c{size} {family(cable.family).words[0]}"


def _length(tag: str, results: CalculationResults) -> str:
    route = results.routes.get(tag)
    return figure(route.length_m if route else None, 1, "m")


def _way(cable: Cable, results: CalculationResults) -> str:
    """Return what a cable runs in, in order: its runs, clipped legs and drops."""
    route = results.routes.get(cable.tag)
    if route is None or not route.legs:
        return "not known" if cable.measured_length_m is None else "not drawn"
    return ", ".join(_told_once(route.legs))


def _told_once(legs: Sequence[RouteLeg]) -> Iterator[str]:
    """Yield runs and, between them, what the cable lies in outside: its levels told once.

    Example: drop, level leg and drop of a clipped cable are one: "clipped direct at +3100".
    """
    outside: list[RouteLeg] = []
    last = ""
    for leg in legs:
        if not leg.containment and (not outside or _held(outside[0]) == _held(leg)):
            outside.append(leg)
            continue
        if outside:
            yield _outside(outside)
        outside = [] if leg.containment else [leg]
        if leg.containment and leg.containment != last:
            yield leg.containment
        last = leg.containment
    if outside:
        yield _outside(outside)


def _held(leg: RouteLeg) -> str:
    """Return what a leg outside the runs lies in; a clipped one is clipped direct."""
    held = leg.enclosure or leg.kind
    return "clipped direct" if held in {"clipped", "drop"} else held


def _outside(legs: Sequence[RouteLeg]) -> str:
    """Return what some legs lie in that follow each other outside the runs, and at what levels."""
    levels = dict.fromkeys(
        f"{leg.start.z:+.0f}" for leg in legs if leg.kind == "clipped" and leg.start.z == leg.end.z
    )
    held = _held(legs[0])
    return f"{held} at {' and '.join(levels)}" if levels else held


def _changes(
    old: Cable, new: Cable, old_results: CalculationResults, new_results: CalculationResults
) -> Iterator[tuple[Kind, str, str, str]]:
    """Yield kind, aspect, what was and what is now, for one cable."""
    if old.tag != new.tag:
        yield "altered", "tag", old.tag, new.tag
    makes = cable_make(old, old_results), cable_make(new, new_results)
    if makes[0] != makes[1]:
        yield "re-sized", "make", *makes
    if old.from_end != new.from_end:
        yield "re-fed", "near end", old.from_end, new.from_end
    if (old.state == "removed") != (new.state == "removed") or old.state != new.state:
        kind: Kind = "removed" if new.state == "removed" else "altered"
        yield kind, "state", str(old.state), str(new.state)
    ways = _way(old, old_results), _way(new, new_results)
    if ways[0] != ways[1]:
        yield "re-routed", "way", *ways
    yield from _length_change(old, new, old_results, new_results)


def _length_change(
    old: Cable, new: Cable, old_results: CalculationResults, new_results: CalculationResults
) -> Iterator[tuple[Kind, str, str, str]]:
    routes = old_results.routes.get(old.tag), new_results.routes.get(new.tag)
    if routes[0] is None or routes[1] is None:
        return
    was, now = routes[0].length_m, routes[1].length_m
    words = [
        rounded(route.length_m, 1) + (" m measured" if route.measured else " m")
        for route in routes
        if route
    ]
    if words[0] == words[1] or (abs(was - now) < LEAST_M and not routes[1].measured):
        return
    kind: Kind = "lengthened" if now > was else "shortened"
    if routes[1].measured:
        kind = "measured"
    yield kind, "length", words[0], words[1]
