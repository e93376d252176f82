"""How a strip goes on paper: its two scales, and where a long one is cut into parts."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.containment.developed_run import DevelopedRun
    from asfitted.layout.containment.run_events import RunEvent

SCALES = (20, 50, 100, 200, 500, 1000)  # ISO 5455, from memory
LABEL_MM = 4.4  # from one turned label to the next
HEAD_MM, TAIL_MM = 27.0, 9.0  # left of the strip for the names of rows, right of it for match marks
#: Scales to try for all runs of a job, and how many times the width below the longest may then be.
TRIES = ((20, 1), (50, 1), (100, 1), (100, 1.5), (100, 3), (200, 2), (200, 4), (500, 8))
WISH_MM = 230.0  # a strip so long leaves room for a short one beside it
DECLARED_MM = 100.0  # a run whose way is not known needs no more


@dataclass(frozen=True)
class StripScale:
    """Scale along a run and scale of heights, 50 for 1:50."""

    along: int
    up: int


@dataclass(frozen=True)
class StripPart:
    """A part of a strip from one cut to the next, mm sideways along the run."""

    number: int  # from 1
    of: int
    over: tuple[float, float]

    def holds(self, over: float) -> bool:
        """Tell whether a place is on this part; the start of a part belongs to it, its end too."""
        return self.over[0] - 1e-6 <= over <= self.over[1] + 1e-6


def scale_along(runs: Sequence[DevelopedRun], drawn_mm: float) -> int:
    """Return the scale for all runs that are surveyed: the largest at which the longest goes on.

    Args:
        runs: the runs.
        drawn_mm: how long a part may be on paper, mm.
    """
    longest = max((run.over_mm for run in runs), default=0.0)
    wish = min(WISH_MM, drawn_mm)
    return next((s for s, times in TRIES if longest / s <= wish * times), SCALES[-1])


def scale_of_declared(run: DevelopedRun) -> int:
    """Return the scale for a run of which only the length is known."""
    return next((s for s in SCALES if run.over_mm / s <= DECLARED_MM), SCALES[-1])


def scale_up(highest_mm: float, most_mm: float) -> int:
    """Return the largest scale of heights at which a height takes no more than so much paper."""
    return next((s for s in SCALES if highest_mm / s <= most_mm), SCALES[-1])


def parts_of(
    developed: DevelopedRun, events: Sequence[RunEvent], scale: int, drawn_mm: float
) -> tuple[StripPart, ...]:
    """Cut a run into parts that each go on a sheet with all their labels.

    A cut is made in the longest gap between events near the place where the part is full.
    """
    places = sorted(developed.place(event.along)[0] for event in events)
    middles = sorted(developed.place(sum(piece.along) / 2)[0] for piece in developed.pieces)
    cuts = [0.0]
    while not _fits(developed.over_mm, cuts[-1], (places, middles), (scale, drawn_mm)):
        cuts.append(_next_cut(cuts[-1], places, middles, (scale, drawn_mm)))
    cuts.append(developed.over_mm)
    spans = list(pairwise(cuts))
    return tuple(StripPart(i, len(spans), span) for i, span in enumerate(spans, start=1))


def _fits(
    end: float,
    start: float,
    labels: tuple[Sequence[float], Sequence[float]],
    paper: tuple[int, float],
) -> bool:
    scale, drawn_mm = paper
    counts = [sum(start - 1e-6 <= p <= end + 1e-6 for p in row) for row in labels]
    return (end - start) / scale <= drawn_mm + 1e-6 and max(counts) * LABEL_MM <= drawn_mm


def _next_cut(
    start: float, places: Sequence[float], middles: Sequence[float], paper: tuple[int, float]
) -> float:
    """Return the furthest good place to cut: the middle of a wide gap between events."""
    scale, drawn_mm = paper
    limit = start + drawn_mm * scale
    marks = sorted({start, *(p for p in places if start < p < limit), limit})
    gaps = [
        (a, b)
        for a, b in pairwise(marks)
        if (a + b) / 2 > start + 0.4 * (limit - start)
        and _fits((a + b) / 2, start, (places, middles), paper)
    ]
    if not gaps:
        room = [
            (a, b)
            for a, b in pairwise(marks)
            if _fits((a + b) / 2, start, (places, middles), paper)
        ]
        a, b = room[-1] if room else (start, limit)
        return max((a + b) / 2, start + 1.0)
    widest = max(b - a for a, b in gaps)
    a, b = [gap for gap in gaps if gap[1] - gap[0] > 0.8 * widest][-1]
    return (a + b) / 2
