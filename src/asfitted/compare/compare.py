"""Lays two checked jobs side by side and says what changed, thing by thing."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any

from asfitted.compare import aspects, effects, told
from asfitted.compare.cable_changes import cable_changes
from asfitted.compare.changes import Change, Changes, Issue
from asfitted.compare.match import Matched, match_circuits, match_tags

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence

    from asfitted.calculate.results import CalculationResults
    from asfitted.compare.aspects import Aspect
    from asfitted.compare.changes import Effect, Kind, Subject
    from asfitted.resolve.installation import Circuit, Installation, Job, PointServed


@dataclass(frozen=True)
class Side:
    """One of the two jobs: what it means and what was calculated."""

    installation: Installation
    results: CalculationResults


@dataclass(frozen=True)
class _Sort:
    """How things of one kind are called, described and judged."""

    what: Subject
    aspects: Sequence[Aspect]
    name: Callable[[Any], str]
    facts: Callable[[Any], str]
    figures: Callable[[str, CalculationResults], dict[str, str]]


def _none(_: str, __: CalculationResults) -> dict[str, str]:
    return {}


_BOARD = _Sort("board", aspects.BOARD, told.board_name, told.board_facts, effects.board_figures)
_CIRCUIT = _Sort(
    "circuit", aspects.CIRCUIT, told.circuit_name, told.circuit_facts, effects.circuit_figures
)
_POINT = _Sort("point", aspects.POINT, told.point_name, told.point_facts, _none)
_RUN = _Sort("run", aspects.RUN, told.run_name, told.run_facts, effects.run_figures)
_DEVICE = _Sort(
    "device", aspects.DEVICE, told.device_name, told.device_facts, effects.device_figures
)
_ROOM = _Sort("building", aspects.ROOM, lambda r: f"room {r.name}", lambda r: r.name, _none)
_WALL = _Sort("building", aspects.WALL, lambda w: f"wall {w.name}", lambda w: w.room, _none)


def compare(old: Side, new: Side) -> Changes:
    """Return what changed from one job to the other, in plain words, by tag.

    The order in which a file tells its things makes no difference.
    """
    found = list(_all_changes(old, new))
    found += _figures_alone(old, new, found)
    return Changes(_issue(old.installation.job), _issue(new.installation.job), tuple(found))


def _issue(job: Job) -> Issue:
    return Issue(job.number, job.title, job.revision, job.status, job.date)


def _all_changes(old: Side, new: Side) -> Iterator[Change]:
    ours, theirs = old.installation, new.installation
    yield from _alone("job", aspects.JOB, ours.job, theirs.job)
    if ours.supply and theirs.supply:
        yield from _alone("supply", aspects.SUPPLY, ours.supply, theirs.supply)
    elif ours.supply or theirs.supply:
        kind: Kind = "added" if theirs.supply else "removed"
        yield Change(kind, "supply", "supply", "", "", (), f"The supply was {kind}")
    yield from _of_sort(_ROOM, match_tags(ours.rooms, theirs.rooms), old, new)
    yield from _of_sort(_WALL, match_tags(ours.walls, theirs.walls), old, new)
    yield from _of_sort(_BOARD, match_tags(ours.boards, theirs.boards), old, new)
    yield from _of_sort(_RUN, match_tags(ours.containment, theirs.containment), old, new)
    circuits = match_circuits(ours.circuits, theirs.circuits)
    yield from _of_sort(_CIRCUIT, circuits, old, new)
    for change in _of_sort(_POINT, match_tags(ours.points, theirs.points), old, new):
        yield _with_cable_effects(change, old, new)
    yield from _cabinet(old, new)
    yield from _of_sort(_DEVICE, match_tags(ours.data_devices, theirs.data_devices), old, new)
    yield from cable_changes(ours, old.results, theirs, new.results)


def _alone(what: Subject, judged: Sequence[Aspect], old: Any, new: Any) -> Iterator[Change]:
    """Yield the changes of a thing that a job has once."""
    for aspect in judged:
        if aspect.differs(old, new):
            was, now = aspect.words(old), aspect.words(new)
            words = told.altered(what, aspect.name, was, now)
            yield Change(aspect.kind, what, what, was, now, (), words)


def _cabinet(old: Side, new: Side) -> Iterator[Change]:
    ours, theirs = old.installation.cabinet, new.installation.cabinet
    if ours and theirs:
        for change in _alone("cabinet", aspects.CABINET, ours, theirs):
            yield replace(change, tag=theirs.tag)
    elif ours or theirs:
        there = theirs or ours
        kind: Kind = "added" if theirs else "removed"
        tag = there.tag if there else "cabinet"
        yield Change(kind, tag, "cabinet", "", "", (), f"Cabinet {tag} {kind}")


def _of_sort(sort: _Sort, matched: Matched[Any], old: Side, new: Side) -> Iterator[Change]:
    for was, now in matched.both:
        figures = effects.effects(
            _tag(now), sort.figures(_tag(was), old.results), sort.figures(_tag(now), new.results)
        )
        for change in _altered(sort, was, now):
            yield replace(change, effects=figures)
            figures = ()
    for thing in matched.added:
        words = f"{sort.name(thing)} added: {sort.facts(thing)}"
        yield _whole("added", sort, thing, told.sentence(words))
    for thing in matched.removed:
        words = f"{sort.name(thing)} is no longer in the job: {sort.facts(thing)}"
        yield _whole("removed", sort, thing, told.sentence(words))


def _tag(thing: Any) -> str:
    return str(getattr(thing, "tag", "") or thing.name)


def _whole(kind: Kind, sort: _Sort, thing: Any, words: str) -> Change:
    facts = sort.facts(thing)
    before, after = ("", facts) if kind == "added" else (facts, "")
    return Change(kind, _tag(thing), sort.what, before, after, (), words, sort.name(thing))


def _altered(sort: _Sort, was: Any, now: Any) -> Iterator[Change]:
    for aspect in sort.aspects:
        if not aspect.differs(was, now):
            continue
        before, after = aspect.words(was), aspect.words(now)
        name, kind = sort.name(now), aspect.kind
        words = told.altered(name, aspect.name, before, after)
        if aspect.name == "state" and after == "removed":
            kind, words = "removed", told.sentence(f"{name} is now marked as removed")
        yield Change(kind, _tag(now), sort.what, before, after, (), words, name)


def _with_cable_effects(change: Change, old: Side, new: Side) -> Change:
    """Return the change of a point with what it does to its cables and its circuit."""
    point: PointServed | None = new.installation.points.get(change.tag)
    before = old.installation.points.get(change.tag)
    if point is None or before is None:
        return change
    lengths = [
        effect
        for tag, cable in new.installation.cables.items()
        if change.tag in (cable.from_end, cable.to_end) and tag in old.installation.cables
        for effect in effects.effects(
            tag,
            effects.cable_figures(tag, old.results),
            effects.cable_figures(tag, new.results),
        )
        if effect.what == "length"
    ]
    circuit = effects.effects(
        point.circuit,
        effects.circuit_figures(before.circuit, old.results),
        effects.circuit_figures(point.circuit, new.results),
    )
    return replace(change, effects=(*lengths, *circuit))


def _figures_alone(old: Side, new: Side, found: Sequence[Change]) -> Iterator[Change]:
    """Yield what nobody wrote differently but whose figures follow from what was."""
    told_of = {(e.tag, e.what) for change in found for e in change.effects}
    went = {change.tag for change in found if change.kind == "added"}
    ours, theirs = old.installation, new.installation
    circuits: Matched[Circuit] = match_circuits(ours.circuits, theirs.circuits)
    sorts = (
        (_BOARD, match_tags(ours.boards, theirs.boards)),
        (_RUN, match_tags(ours.containment, theirs.containment)),
        (_CIRCUIT, circuits),
        (_DEVICE, match_tags(ours.data_devices, theirs.data_devices)),
    )
    total = effects.effects(
        "supply", effects.supply_figures(old.results), effects.supply_figures(new.results)
    )
    if total:
        yield _follow("supply", "supply", "supply", total)
    for sort, matched in sorts:
        for was, now in matched.both:
            tag = _tag(now)
            figures = effects.effects(
                tag, sort.figures(_tag(was), old.results), sort.figures(tag, new.results)
            )
            left = tuple(e for e in figures if (tag, e.what) not in told_of)
            if left and tag not in went:
                yield _follow(sort.what, tag, sort.name(now), left)


def _follow(what: Subject, tag: str, name: str, figures: tuple[Effect, ...]) -> Change:
    words = told.sentence(f"{name}: figures follow from the changes above")
    return Change("figures", tag, what, "", "", figures, words, name)
