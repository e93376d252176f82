"""Which callout gets which place: all of them together, so that leaders stay short and apart.

Each callout has a list of places with their costs (``callout``). Several orders of choosing are
tried, then callouts push one another away as long as the whole gets cheaper. No chance is in it.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.layout.callout import (
    MOST_SPOTS,
    REACH,
    callout_size,
    spots_further_off,
    spots_near,
    write_callout,
)
from asfitted.layout.free_room import CLEAR, line_meets_box, lines_cross

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from asfitted.layout.callout import Callout, Spot
    from asfitted.layout.free_room import FreeRoom
    from asfitted.layout.sheet_layout import Item

UNPLACED_COST = 150.0  # of a callout of weight 1 that finds no place
ROUNDS = 3
MANY, LEAST_SPOTS = 24, 30  # of more callouts each has fewer places to choose from
MOST_PUSHED = 2  # callouts that one may push away from their places
LEADER_CLEAR = 0.5
REACH_MM = 3.0  # beyond this hulls of two places need no closer look
APART_MM = 2.2  # side by side, so that one does not read on into the other

Chosen = list["Spot | None"]


@dataclass(frozen=True)
class _Task:
    """Callouts with the places that each may take, cheapest first."""

    callouts: Sequence[Callout]
    spots: list[list[Spot]]

    def cost_of(self, index: int, spot: Spot | None) -> float:
        weight = self.callouts[index].weight
        return UNPLACED_COST * weight if spot is None else spot.cost

    def total(self, chosen: Chosen) -> float:
        return sum(self.cost_of(i, spot) for i, spot in enumerate(chosen))


def place_together(
    room: FreeRoom, callouts: Sequence[Callout], *, near_only: bool = False, reach: float = REACH
) -> tuple[list[Item], list[Callout]]:
    """Place callouts beside their things or, unless ``near_only``, further off with a leader.

    Returns:
        The items, and the callouts for which there was no room, in their order.
    """
    spots = []
    most = max(LEAST_SPOTS, MOST_SPOTS * MANY // max(len(callouts), MANY))
    for callout in callouts:
        found = spots_near(room, callout)
        if not near_only:
            found += spots_further_off(room, callout, reach, most)
        spots.append(found)
    task = _Task(callouts, spots)
    tries = [_greedily(task, order) for order in _orders(task)]
    chosen = _improved(task, min(tries, key=task.total))
    items: list[Item] = []
    left = []
    for callout, spot in zip(callouts, chosen, strict=True):
        if spot is None:
            left.append(callout)
        else:
            items.extend(write_callout(room, callout, spot))
    return items, left


def _orders(task: _Task) -> list[list[int]]:
    """Return orders to choose in: long words, little choice, left to right, right to left."""
    every = range(len(task.callouts))
    keys: tuple[Callable[[int], tuple[float, ...]], ...] = (
        lambda i: (-task.callouts[i].weight, -callout_size(task.callouts[i])[0]),
        lambda i: (-task.callouts[i].weight, len(task.spots[i])),
        lambda i: (len(task.spots[i]),),
        lambda i: (task.callouts[i].target.centre.x,),
        lambda i: (-task.callouts[i].target.centre.x,),
        lambda i: (task.callouts[i].target.centre.y, task.callouts[i].target.centre.x),
    )
    return [sorted(every, key=lambda i, key=key: (*key(i), i)) for key in keys]  # type: ignore[misc]


def _greedily(task: _Task, order: Sequence[int]) -> Chosen:
    """Give each callout in turn the cheapest place that the earlier ones leave it."""
    chosen: Chosen = [None] * len(task.callouts)
    for i in order:
        chosen[i] = _cheapest(task, i, chosen)
    return chosen


def _cheapest(task: _Task, index: int, chosen: Chosen) -> Spot | None:
    taken = [spot for i, spot in enumerate(chosen) if spot is not None and i != index]
    return next((s for s in task.spots[index] if not _any_clash(s, taken)), None)


def _any_clash(spot: Spot, taken: Sequence[Spot]) -> bool:
    """Tell whether a place clashes with any other; most are told apart by their hulls alone."""
    hull = spot.hull
    x0, y0, x1, y1 = hull.x0 - REACH_MM, hull.y0 - REACH_MM, hull.x1 + REACH_MM, hull.y1 + REACH_MM
    for other in taken:
        far = other.hull
        if far.x0 < x1 and x0 < far.x1 and far.y0 < y1 and y0 < far.y1 and spots_clash(spot, other):
            return True
    return False


def _improved(task: _Task, chosen: Chosen) -> Chosen:
    """Let callouts take better places, pushing others to new ones, while the whole gets cheaper."""
    for _ in range(ROUNDS):
        before = task.total(chosen)
        costly = sorted(range(len(chosen)), key=lambda i: (-task.cost_of(i, chosen[i]), i))
        for i in costly:
            chosen = _with_better_place(task, chosen, i)
        if task.total(chosen) >= before - 1e-9:
            break
    return chosen


def _with_better_place(task: _Task, chosen: Chosen, index: int) -> Chosen:
    """Return the choice with one callout moved to a better place where that helps the whole."""
    best, best_total = chosen, task.total(chosen)
    now = task.cost_of(index, chosen[index])
    others = [(i, other) for i, other in enumerate(chosen) if other is not None and i != index]
    for spot in task.spots[index]:
        if spot.cost >= now - 1e-9:
            break
        pushed = [i for i, other in others if _any_clash(spot, (other,))]
        if len(pushed) > MOST_PUSHED:
            continue
        trial = list(chosen)
        trial[index] = spot
        for i in pushed:
            trial[i] = None
        for i in pushed:
            trial[i] = _cheapest(task, i, trial)
        total = task.total(trial)
        if total < best_total - 1e-9:
            best, best_total = trial, total
    return best


def spots_clash(one: Spot, other: Spot) -> bool:
    """Tell whether two places overlap, or a leader crosses the other's leader or words."""
    own, far = one.box, other.box
    if (
        own.x0 - APART_MM < far.x1
        and far.x0 < own.x1 + APART_MM
        and own.y0 - CLEAR < far.y1
        and far.y0 < own.y1 + CLEAR
    ):
        return True
    if one.leader and line_meets_box(*one.leader, far, LEADER_CLEAR):
        return True
    if other.leader and line_meets_box(*other.leader, own, LEADER_CLEAR):
        return True
    return bool(one.leader and other.leader and lines_cross(*one.leader, *other.leader))
