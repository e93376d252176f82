"""The smallest standard size of each cable that meets every criterion, or the check of a given one.

Cables of one circuit that are the same in make, cores and protective conductor get one size.
Sizes grow from the least until capacity, heating under fault, voltage drop and loop impedance all
hold. A size written in the spec is only verified. Nothing is judged here: a cable that cannot
meet a criterion keeps the largest size (or the size given) and its reasons stand in ``tried``.

A feeder whose size is chosen is held to 2 % drop of its own (common practice), so that the
circuits beyond the board keep a share.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Literal

from asfitted.calculate.cable_facts import sizes_made
from asfitted.calculate.results import SizeTried
from asfitted.calculate.ring_sizing import (
    LEAST_RING_MM2,
    layout_of,
    middle_drop_pct,
    middle_node,
    size_ring,
)
from asfitted.calculate.sized_cable import Heating, Problem, Sized, Stretch, size_stretch
from asfitted.errors import OutsideTableError

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from asfitted.resolve.installation import Cable

FEEDER_DROP_PCT = 2.0
SLACK = 1e-9


@dataclass(frozen=True)
class Failure:
    """A criterion that does not hold.

    Attributes:
        place: Which stretch; None for the whole circuit.
        kind: Which criterion.
        reason: In words, with figures.
        excess: How far it fails: needed over had.
    """

    place: int | None
    kind: Literal["table", "capacity", "ring leg", "line heating", "cpc heating", "drop", "loop"]
    reason: str
    excess: float = 1.0


@dataclass
class _Group:
    """Cables that get one size."""

    places: list[int]
    sizes: tuple[float, ...]
    step: int = 0
    tried: list[SizeTried] = field(default_factory=list)

    @property
    def size_mm2(self) -> float:
        return self.sizes[self.step]

    @property
    def can_grow(self) -> bool:
        return self.step + 1 < len(self.sizes)


@dataclass(frozen=True)
class Choice:
    """Sizes of a circuit's cables, what was tried for each, and what does not hold.

    ``sized`` may be shorter than the circuit where the tables do not hold a cable.
    """

    sized: tuple[Sized, ...]
    tried: Mapping[str, tuple[SizeTried, ...]]
    failures: tuple[Failure, ...]


def choose_sizes(problem: Problem) -> Choice:
    """Return the sizes of a circuit's cables."""
    groups = _groups(problem.stretches)
    if any(not group.sizes for group in groups):
        return _no_sizes(problem)
    sized, failures = _attempt(problem, groups)
    while failures:
        growing = _group_to_grow(failures, groups, sized)
        if growing is None:
            break
        growing.tried.append(SizeTried(growing.size_mm2, _reasons(failures, growing)))
        growing.step += 1
        sized, failures = _attempt(problem, groups)
    for group in groups:
        group.tried.append(SizeTried(group.size_mm2, _reasons(failures, group)))
    tried = {
        problem.stretches[place].cable.tag: tuple(group.tried)
        for group in groups
        for place in group.places
    }
    return Choice(sized, tried, failures)


def _no_sizes(problem: Problem) -> Choice:
    failure = Failure(None, "table", "no standard size of this cable is held")
    return Choice((), {s.cable.tag: () for s in problem.stretches}, (failure,))


def _groups(stretches: Sequence[Stretch]) -> list[_Group]:
    found: dict[tuple[str, int, str, float | None], _Group] = {}
    for place, stretch in enumerate(stretches):
        cable = stretch.cable
        key = (cable.family, cable.cores, cable.cpc, cable.csa_mm2)
        if key not in found:
            found[key] = _Group([], _sizes_open(cable))
        found[key].places.append(place)
    return list(found.values())


def _sizes_open(cable: Cable) -> tuple[float, ...]:
    if cable.csa_mm2 is not None:
        return (cable.csa_mm2,)
    try:
        return sizes_made(cable.family, cable.cores)
    except OutsideTableError:
        return ()


def _attempt(
    problem: Problem, groups: Sequence[_Group]
) -> tuple[tuple[Sized, ...], tuple[Failure, ...]]:
    """Size every stretch in order from the board and collect what does not hold."""
    size_of = {place: group.size_mm2 for group in groups for place in group.places}
    if problem.is_ring:
        return _attempt_ring(problem, size_of)
    nodes = {problem.board.tag: problem.board}
    sized: list[Sized] = []
    failures: list[Failure] = []
    for place, stretch in enumerate(problem.stretches):
        near = nodes.get(stretch.cable.from_end, problem.board)
        one = size_stretch(problem, stretch, size_of[place], near)
        if isinstance(one, str):
            return tuple(sized), (*failures, Failure(place, "table", one))
        nodes[stretch.cable.to_end] = one.far
        sized.append(one)
        failures += _failures_of(place, one)
    return tuple(sized), (*failures, *_failures_of_circuit(problem, sized))


def _attempt_ring(
    problem: Problem, size_of: Mapping[int, float]
) -> tuple[tuple[Sized, ...], tuple[Failure, ...]]:
    layout = layout_of(problem.stretches, problem.board.tag)
    if layout is None:
        return (), (Failure(None, "table", "the cables of the ring do not close it"),)
    found = size_ring(problem, layout, size_of)
    if isinstance(found, str):
        return (), (Failure(None, "table", found),)
    failures = [fail for place, one in enumerate(found) for fail in _failures_of(place, one)]
    failures += [fail for place, one in enumerate(found) for fail in _failures_of_ring(place, one)]
    return found, (*failures, *_failures_of_circuit(problem, found))


def _failures_of_ring(place: int, one: Sized) -> list[Failure]:
    found = []
    csa, amps, capacity = one.facts.csa_mm2, one.stretch.current_a, one.rating.capacity_a
    if csa < LEAST_RING_MM2:
        words = f"a ring takes {LEAST_RING_MM2:g} mm² at least (433.1.204), this is {csa:g} mm²"
        found.append(Failure(place, "capacity", words, LEAST_RING_MM2 / csa))
    if one.ring is not None and amps > capacity + SLACK:
        words = f"leg of the ring carries {amps:.1f} A, Iz is {capacity:.1f} A"
        found.append(Failure(place, "ring leg", words, amps / capacity))
    return found


def _failures_of(place: int, one: Sized) -> list[Failure]:
    found = []
    capacity, setting = one.rating.capacity_a, one.stretch.use.setting
    rating_a = setting.rating_a
    if capacity < rating_a - SLACK:
        words = f"Iz {capacity:.1f} A is under {setting.rating_words} {rating_a:g} A"
        found.append(Failure(place, "capacity", words, rating_a / capacity))
    line_has, cpc_has = one.facts.csa_mm2, one.facts.cpc_mm2
    if isinstance(one.line, Heating) and one.line.needed_mm2 > line_has + SLACK:
        needs = f"line conductor needs {one.line.needed_mm2:.2f} mm² under fault"
        words, excess = f"{needs}, has {line_has:g} mm²", one.line.needed_mm2 / line_has
        found.append(Failure(place, "line heating", words, excess))
    if isinstance(one.cpc, Heating) and cpc_has and one.cpc.needed_mm2 > cpc_has + SLACK:
        needs = f"protective conductor needs {one.cpc.needed_mm2:.2f} mm² under fault"
        words, excess = f"{needs}, has {cpc_has:g} mm²", one.cpc.needed_mm2 / cpc_has
        found.append(Failure(place, "cpc heating", words, excess))
    return found


def _failures_of_circuit(problem: Problem, sized: Sequence[Sized]) -> list[Failure]:
    found = []
    worst, own = worst_drop(problem, sized)
    limit = problem.drop_limit_pct
    if limit is not None and (worst if worst is not None else own) > limit + SLACK:
        value = worst if worst is not None else own
        found.append(Failure(None, "drop", f"drop {value:.2f} % is over {limit:g} %"))
    chosen = any(s.cable.csa_mm2 is None for s in problem.stretches)
    if problem.is_feeder and chosen and own > FEEDER_DROP_PCT + SLACK:
        words = f"feeder drop {own:.2f} % is over {FEEDER_DROP_PCT:g} % (common practice)"
        found.append(Failure(None, "drop", words))
    zs = worst_loop(problem, sized)
    greatest = problem.loop.zs_ohm
    if zs is not None and greatest is not None and zs > greatest + SLACK:
        found.append(Failure(None, "loop", f"Zs {zs:.3f} Ω is over {greatest:.3f} Ω"))
    return found


def worst_drop(problem: Problem, sized: Sequence[Sized]) -> tuple[float | None, float]:
    """Return the greatest drop from the origin (None when not known) and from the board, %."""
    own = {problem.board.tag: 0.0}
    for one in sized:
        start = own.get(one.stretch.cable.from_end, 0.0)
        if one.ring is None:
            own[one.stretch.cable.to_end] = start + one.drop_pct
        else:
            middle = middle_drop_pct(problem, one.facts, one.ring.ring_m)
            # a spur starts from the middle of the ring, the safe side
            own[one.stretch.cable.to_end] = middle
    greatest = max(own.values())
    if problem.board.drop_pct is None:
        return None, greatest
    return problem.board.drop_pct + greatest, greatest


def worst_loop(problem: Problem, sized: Sequence[Sized]) -> float | None:
    """Return the greatest Zs at any cable end or ring middle, ohm; None when one is not known."""
    found = [one.far.zs_ohm for one in sized]
    for one in sized:
        if one.ring is not None:
            found.append(middle_node(problem, one.facts, one.ring.ring_m).zs_ohm)
            break
    if not found or any(zs is None for zs in found):
        return None
    return max(zs for zs in found if zs is not None)


def _group_to_grow(
    failures: Sequence[Failure], groups: Sequence[_Group], sized: Sequence[Sized]
) -> _Group | None:
    """Return the group whose growth can cure a failure, or None when nothing can."""
    for failure in failures:
        if failure.place is not None:
            for group in groups:
                if failure.place in group.places and group.can_grow:
                    return group
            continue
        open_groups = [group for group in groups if group.can_grow]
        if open_groups:
            return max(open_groups, key=lambda group: _share(failure, group, sized))
    return None


def _share(failure: Failure, group: _Group, sized: Sequence[Sized]) -> float:
    """Return how much of a circuit's drop or loop a group makes."""
    mine = [sized[place] for place in group.places if place < len(sized)]
    if failure.kind == "drop":
        return sum(one.drop_pct for one in mine)
    return sum(abs(one.facts.loop_hot or 0) * one.stretch.length_m for one in mine)


def _reasons(failures: Sequence[Failure], group: _Group) -> str:
    """Return the reasons that concern a group: the worst of each kind, then the circuit's."""
    own: dict[str, Failure] = {}
    for failure in failures:
        if failure.place in group.places:
            held = own.get(failure.kind)
            if held is None or failure.excess > held.excess:
                own[failure.kind] = failure
    whole = [failure.reason for failure in failures if failure.place is None]
    return "; ".join([*(failure.reason for failure in own.values()), *dict.fromkeys(whole)])
