"""Containment in front of the drops, and everything that leaves the wall, with their callouts."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.callout import Callout
from asfitted.layout.elevation.run_drawing import (
    draw_corner_arrow,
    draw_crossing,
    draw_declared_end,
    draw_passage,
    draw_runs,
    draw_through_wall,
)
from asfitted.layout.elevation.run_tags import (
    crossing_callout,
    declared_callout,
    passage_callout,
)
from asfitted.layout.elevation.runs_on_wall import cables_of_run
from asfitted.layout.elevation.thing_drawing import thing_box
from asfitted.layout.elevation.wall_words import flag_box
from asfitted.layout.surveyed_ways import all_told

if TYPE_CHECKING:
    from asfitted.calculate.results import CalculationResults
    from asfitted.layout.drawing import Drawing
    from asfitted.layout.elevation.references import References
    from asfitted.layout.elevation.wall_content import WallContent
    from asfitted.layout.elevation.wall_view import WallView


def draw_services(
    drawing: Drawing,
    view: WallView,
    content: WallContent,
    results: CalculationResults,
    refs: References,
) -> list[Callout]:
    """Draw containment, then what leaves the wall; return the callouts of the latter."""
    draw_runs(drawing, view, content.pieces)
    waiting = [
        crossing_callout(crossing, draw_crossing(drawing, view, crossing), refs)
        for crossing in content.crossings
    ]
    waiting += [
        passage_callout(passage, draw_passage(drawing, view, passage), refs)
        for passage in content.passages
    ]
    for end in content.declared:
        cables = all_told(cables_of_run(results, end.run.tag), results)
        box = draw_declared_end(drawing, view, end)
        waiting.append(declared_callout(end, cables, box))
    waiting += _draw_marks(drawing, view, content)
    for flag in content.flags:
        draw_corner_arrow(drawing, view, flag, flag_box(view, content, flag))
    return waiting


def _draw_marks(drawing: Drawing, view: WallView, content: WallContent) -> list[Callout]:
    """Draw where cables pass through the wall or leave it into the room, one mark for a place.

    A mark in the outline of a thing needs no words: the cable goes to that thing.
    """
    places: dict[tuple[int, int, str], list[str]] = {}
    serves: dict[tuple[int, int, str], list[str]] = {}
    for s in content.stretches:
        if s.way in ("through-wall", "off-wall"):
            place = (round(s.start.along), round(s.start.up), s.way)
            places.setdefault(place, []).extend(s.told)
            serves.setdefault(place, []).append(s.serves)
    outlines = [thing_box(view, t) for t in content.things]
    outlines += [view.centred(d.at.along, d.at.up, 100.0, 100.0) for d in content.declared]
    callouts = []
    for (along, up, way), cables in places.items():
        ident = f"{way}:{along}:{up}"
        box = draw_through_wall(drawing, ident, view.at(along, up))
        if any(outline.holds(box) or outline.meets(box) for outline in outlines):
            continue
        words = "through wall" if way == "through-wall" else "off the wall"
        names = " ".join(dict.fromkeys(cables))
        to = " ".join(dict.fromkeys(serves[along, up, way]))
        lines = (f"{names} to {to}", f"{words} +{up}")
        if len(dict.fromkeys(cables)) > 4:
            lines = (f"{len(dict.fromkeys(cables))} cables", f"{words} +{up}")
        callouts.append(Callout(f"{ident}:words", "", lines, box))
    return callouts
