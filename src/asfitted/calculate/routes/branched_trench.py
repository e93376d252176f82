"""Least length of a branched trench or duct between places on open ground.

On open ground a tee may be dug anywhere, so the shortest layout may branch at points where nothing
stands. Indoors cables follow containment and walls; there ``route_search`` finds the way.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.errors import InputOutOfRangeError
from asfitted.geometry import Point

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

Link = tuple[int, int]
FEWEST_PLACES, MOST_PLACES = 2, 6
_ROUNDS = 2000
_STILL = 1e-10
_TOUCHING = 1e-9


@dataclass(frozen=True)
class Trench:
    """A layout: its length, where it branches (in the unit of the places), and what it joins.

    ``links`` join indices: places first, in the order given, then ``branches``.
    """

    length: float
    branches: tuple[Point, ...]
    links: tuple[Link, ...]


def unbranched_trench(places: Sequence[Point]) -> Trench:
    """Return the shortest layout that branches only at the places themselves.

    Prim's method (Bell System Technical Journal 36, 1957). Source of its check: an encyclopaedia
    article on minimal trees, unit triangle and unit square.

    Args:
        places: Where the trench must reach, in one unit of length.

    Raises:
        InputOutOfRangeError: fewer than 2 places.
    """
    if len(places) < FEWEST_PLACES:
        raise InputOutOfRangeError(f"a trench joins {FEWEST_PLACES} places or more")
    reached, left, links = [0], list(range(1, len(places))), []
    while left:
        link = min(
            ((a, b) for a in reached for b in left),
            key=lambda pair: (_apart(places[pair[0]], places[pair[1]]), pair),
        )
        links.append(link)
        reached.append(link[1])
        left.remove(link[1])
    return Trench(_length(places, links), (), tuple(links))


def branched_trench(places: Sequence[Point]) -> Trench:
    """Return the shortest layout of all, which may branch anywhere.

    Every way of joining the places through three-way branches is tried; each is drawn tight by
    the relaxation of W. D. Smith (Algorithmica 7, 1992). The length of one way of joining is a
    convex function of where its branches stand, so what is drawn tight is shortest.

    Args:
        places: Where the trench must reach, in one unit of length; 2 to 6 of them.

    Raises:
        InputOutOfRangeError: fewer than 2 places or more than 6.
    """
    best = unbranched_trench(places)
    if len(places) > MOST_PLACES:
        raise InputOutOfRangeError(f"worked out for up to {MOST_PLACES} places: part the job")
    for links in _ways_of_joining(len(places)):
        tight = _drawn_tight(places, links)
        if tight.length < best.length * (1 - _TOUCHING):
            best = tight
    return best


def _ways_of_joining(count: int) -> Iterator[tuple[Link, ...]]:
    """Give every tree in which each place is an end and each branch has three arms."""
    if count <= FEWEST_PLACES:
        return
    trees: list[tuple[Link, ...]] = [((0, count), (1, count), (2, count))]
    for place in range(3, count):
        branch = count + place - 2
        trees = [
            (
                *tree[:at],
                *((end, branch) for end in (*tree[at], place)),
                *tree[at + 1 :],
            )
            for tree in trees
            for at in range(len(tree))
        ]
    yield from trees


def _drawn_tight(places: Sequence[Point], links: tuple[Link, ...]) -> Trench:
    """Let each branch move to the weighted middle of its neighbours until nothing moves."""
    middle = Point(
        sum(place.x for place in places) / len(places),
        sum(place.y for place in places) / len(places),
    )
    # a start off any line of symmetry, the same each time
    stand = [
        *places,
        *(
            Point(middle.x + 1e-3 * math.cos(i), middle.y + 1e-3 * math.sin(i))
            for i in range(len(places) - 2)
        ),
    ]
    last = math.inf
    for _ in range(_ROUNDS):
        for branch in range(len(places), len(stand)):
            arms = [b if a == branch else a for a, b in links if branch in (a, b)]
            stand[branch] = _pulled(stand[branch], [stand[arm] for arm in arms])
        length = _length(stand, links)
        if last - length <= _STILL * max(length, 1.0):
            break
        last = length
    return Trench(_length(stand, links), tuple(stand[len(places) :]), links)


def _pulled(branch: Point, arms: Sequence[Point]) -> Point:
    """Return the middle of the arms, each weighing one over its distance (Weiszfeld's step)."""
    weights = [1 / max(_apart(branch, arm), _TOUCHING) for arm in arms]
    whole = sum(weights)
    return Point(
        sum(w * arm.x for w, arm in zip(weights, arms, strict=True)) / whole,
        sum(w * arm.y for w, arm in zip(weights, arms, strict=True)) / whole,
    )


def _length(stand: Sequence[Point], links: Sequence[Link]) -> float:
    return sum(_apart(stand[a], stand[b]) for a, b in links)


def _apart(a: Point, b: Point) -> float:
    return math.hypot(a.x - b.x, a.y - b.y)
