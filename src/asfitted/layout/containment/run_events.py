"""What happens along a run: ends, corners, levels, other runs, cables that leave."""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import pairwise
from typing import TYPE_CHECKING, Literal

from asfitted.fonts import text_width_mm
from asfitted.geometry import distance3
from asfitted.layout.elevation.wall_view import height_words
from asfitted.layout.lettering import BODY, shortened
from asfitted.layout.surveyed_ways import told

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from asfitted.calculate.results import CableRoute, CalculationResults, RouteLeg
    from asfitted.layout.containment.developed_run import CutPiece, DevelopedRun, Stretch
    from asfitted.resolve.installation import Installation

EventKind = Literal["end", "corner", "level", "run", "take-off"]
MOST_CABLES = 3  # more than these at one place are counted: the table names them


@dataclass(frozen=True)
class RunEvent:
    """One thing at a distance along a run. ``reach_mm`` is the height a take-off goes to."""

    along: float
    kind: EventKind
    words: str
    tag: str  # of the thing, the run or the walls; with the distance it names the event
    reach_mm: float | None = None
    shorter: tuple[str, ...] = ()  # other wordings, the shortest last

    def worded(self, most_mm: float) -> RunEvent:
        """Return the event with the first wording that fits a length of paper."""
        wordings = (self.words, *self.shorter)
        fitting = (w for w in wordings if text_width_mm(w, BODY) <= most_mm)
        words = next(fitting, shortened(wordings[-1], most_mm, BODY))
        return replace(self, words=words)


def events_of(
    developed: DevelopedRun, installation: Installation, results: CalculationResults
) -> tuple[RunEvent, ...]:
    """Return all events of a run in order of distance."""
    found = [*_ends(developed), *_turns(developed)]
    found += _leavings(developed, installation, results)
    order = {"end": 0, "corner": 1, "level": 2, "run": 3, "take-off": 4}
    return tuple(sorted(found, key=lambda e: (round(e.along, 1), order[e.kind], e.tag)))


def _ends(developed: DevelopedRun) -> Iterator[RunEvent]:
    first, last = developed.stretches[0], developed.stretches[-1]
    end = developed.run.end_words if developed.is_declared else ""
    begin = _end_level(developed, first, first.up[0])
    yield RunEvent(0.0, "end", f"start {begin}", "start", None, ("start",))
    words = f"end: {end}" if end else f"end {_end_level(developed, last, last.up[1])}"
    yield RunEvent(developed.length_mm, "end", words, "end", None, ("end",))


def _end_level(developed: DevelopedRun, stretch: Stretch, up_mm: float) -> str:
    return height_words(up_mm) if stretch.is_upright else _level(developed, up_mm)


def _level(developed: DevelopedRun, up_mm: float) -> str:
    if developed.is_declared:
        depth = developed.run.depth_mm
        return "depth not recorded" if depth is None else f"{depth:.0f} deep"
    return f"{developed.run.level_of} {height_words(up_mm)}"


def _turns(developed: DevelopedRun) -> Iterator[RunEvent]:
    """Yield corners between walls, and bends up or down."""
    for before, after in pairwise(developed.stretches):
        along = before.along[1]
        if before.wall != after.wall and not (before.is_upright or after.is_upright):
            yield RunEvent(along, "corner", _corner_words(before, after), "corner")
        if before.is_upright != after.is_upright:
            yield RunEvent(along, "level", _bend_words(developed, before, after), "bend")


def _corner_words(before: Stretch, after: Stretch) -> str:
    if not after.wall:
        return f"leaves wall {before.wall}, overhead"
    if not before.wall:
        return f"on to wall {after.wall}"
    return f"corner {before.wall} | {after.wall}"


def _bend_words(developed: DevelopedRun, before: Stretch, after: Stretch) -> str:
    if after.is_upright:
        way = "up" if after.up[1] > after.up[0] else "down"
        return f"bend {way} to {height_words(after.up[1])}"
    return f"bend level at {_level(developed, before.up[1])}"


def _leavings(
    developed: DevelopedRun, installation: Installation, results: CalculationResults
) -> list[RunEvent]:
    """Return where cables come to a run or leave it, those with one goal at one place together."""
    pieces = {piece.section.ident: piece for piece in developed.pieces}
    groups: dict[tuple[float, str, bool], list[str]] = {}
    for tag, route in results.routes.items():
        cable = installation.cables.get(tag)
        if cable is None:
            continue
        ends = (cable.from_end, cable.to_end)
        for along, goal, is_run in _ends_of_stays(route, ends, developed.run.tag, pieces):
            groups.setdefault((round(along, 1), goal, is_run), []).append(told(tag, results))
    return [_leaving(developed, installation, key, tags) for key, tags in sorted(groups.items())]


def _leaving(
    developed: DevelopedRun,
    installation: Installation,
    key: tuple[float, str, bool],
    tags: Sequence[str],
) -> RunEvent:
    along, goal, is_run = key
    named = list(dict.fromkeys(tags))
    count = f"{len(named)} cables" if len(named) > 1 else named[0]
    cables = " ".join(named) if len(named) <= MOST_CABLES else count
    if is_run:
        words = f"{goal} joins"
        return RunEvent(
            along, "run", f"{words}: {cables}", goal, None, (f"{words}: {count}", words)
        )
    height = _height_of(developed, installation, goal)
    at = "" if height is None else f" C/L {height_words(height)}"
    shorter = (f"{goal}{at}: {count}", f"{goal}{at}", goal)
    return RunEvent(along, "take-off", f"{goal}{at}: {cables}", goal, height, shorter)


def _height_of(developed: DevelopedRun, installation: Installation, tag: str) -> float | None:
    cabinet = installation.cabinet
    if cabinet is not None and tag == cabinet.tag:
        return cabinet.position.up_mm
    try:
        position = installation.position_of(tag)
    except KeyError:
        return None
    if position.end_of and position.end_of != developed.run.tag:
        return None
    return None if developed.is_declared else position.up_mm


def _ends_of_stays(
    route: CableRoute,
    ends: tuple[str, str],
    run: str,
    pieces: Mapping[str, CutPiece],
) -> Iterator[tuple[float, str, bool]]:
    """Yield both ends of each stay of a cable in a run: where, to what, whether that is a run."""
    legs = route.legs
    inside = [leg.containment == run and leg.section in pieces for leg in legs]
    for i, leg in enumerate(legs):
        if not inside[i]:
            continue
        before = legs[i - 1] if i else None
        after = legs[i + 1] if i + 1 < len(legs) else None
        come, gone = _way(leg, pieces[leg.section], is_first=before is None)
        if before is None or not inside[i - 1]:
            yield _end_of_stay(come, before, ends[0])
        if after is None or not inside[i + 1]:
            yield _end_of_stay(gone, after, ends[1])


def _end_of_stay(along: float, beyond: RouteLeg | None, goal: str) -> tuple[float, str, bool]:
    if beyond is not None and beyond.containment:
        return along, beyond.containment, True
    return along, goal, False


def _way(leg: RouteLeg, piece: CutPiece, *, is_first: bool) -> tuple[float, float]:
    """Return from where to where along the run a leg goes."""
    section = piece.section
    if section.start == section.end:  # declared: its far end is where a cable starts or ends
        is_forward = not is_first
    else:
        is_forward = distance3(leg.start, section.start) <= distance3(leg.start, section.end)
    return piece.along if is_forward else (piece.along[1], piece.along[0])
