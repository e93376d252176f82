"""A wall on A4 with only what is to be done: tags on the drawing, figures in the table under it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.brief.flow import AREA, Block
from asfitted.layout.callout import Callout
from asfitted.layout.callout_choice import place_together
from asfitted.layout.drawing import Drawing
from asfitted.layout.elevation.moved_items import moved_items
from asfitted.layout.elevation.run_drawing import draw_runs, piece_box
from asfitted.layout.elevation.stretch_drawing import Outlines, draw_stretches, on_sheet
from asfitted.layout.elevation.thing_drawing import thing_box
from asfitted.layout.elevation.wall_content import walls_with_content
from asfitted.layout.elevation.wall_view import WallView
from asfitted.layout.free_room import FreeRoom
from asfitted.layout.linework import polyline, rectangle, widths_for
from asfitted.layout.revision.ink import ink_box

if TYPE_CHECKING:
    from asfitted.layout.elevation.stretch_drawing import DrawnStretch
    from asfitted.layout.elevation.things_on_wall import Thing
    from asfitted.layout.elevation.wall_content import WallContent
    from asfitted.layout.sheet_layout import Item
    from asfitted.layout.sheet_model import Model, Numbers

W = widths_for("A4")
SCALES = (25, 50, 75, 100, 150, 200, 300, 500)
BAND_MM = 12.0  # above the wall and under it, for tags
SIDE_MM = 4.0
HIGH_MM, LOW_MM = 105.0, 45.0  # of the wall itself, with much and with little on it
LITTLE = 14  # things, runs and drops
CLEAR_MM = 0.5  # over and under the ink
REACH_MM = 30.0  # of a leader


@dataclass(frozen=True)
class WallWork:
    """A wall with what is to be done on it; existing boards stay in sight because they are live."""

    content: WallContent
    scale: int

    @property
    def larger(self) -> WallWork | None:
        """The same wall as large as a page takes it, None where it is so already."""
        scale = _scale(self.content, HIGH_MM)
        return replace(self, scale=scale) if scale < self.scale else None


def walls_to_do(model: Model) -> tuple[WallWork, ...]:
    """Return the walls on which something is to be done, in the order of the elevations."""
    found = []
    for content in walls_with_content(model.installation, model.results):
        work = _only_work(content, model)
        if work is not None:
            found.append(WallWork(work, _scale(work, _height_mm(work))))
    return tuple(found)


def _only_work(content: WallContent, model: Model) -> WallContent | None:
    """Return a wall without what is left alone, None where nothing is to be done."""
    cables = model.installation.cables
    things = tuple(t for t in content.things if t.state != "existing" or t.group == "board")
    pieces = tuple(p for p in content.pieces if p.run.state != "existing")
    stretches = tuple(
        s for s in content.stretches if any(cables[c].state != "existing" for c in s.cables)
    )
    new_things = [t for t in things if t.state != "existing"]
    if not (new_things or pieces or stretches):
        return None
    return replace(content, things=things, pieces=pieces, stretches=stretches)


def _height_mm(content: WallContent) -> float:
    """Return how high a wall is drawn; with little on it, two go on a page."""
    count = len(content.things) + len(content.pieces) + len(content.stretches)
    return HIGH_MM if count > LITTLE else LOW_MM


def _scale(content: WallContent, high_mm: float) -> int:
    """Return the largest scale at which a wall fits the width of the page and a height."""
    wide = AREA.width - 2 * SIDE_MM
    for scale in SCALES:
        fits = content.wall.length_mm / scale <= wide
        if fits and content.wall.height_mm / scale <= high_mm:
            return scale
    return SCALES[-1]


@dataclass(frozen=True)
class Sketch:
    """A wall drawn at the left edge of the page: its ink, from where to where, what it is, mm."""

    items: tuple[Item, ...]
    top_mm: float
    foot_mm: float
    words: str


def sketch_of(work: WallWork) -> Sketch:
    """Return the sketch of a wall, as high as what is drawn and no higher."""
    wall = work.content.wall
    height = 2 * BAND_MM + wall.height_mm / work.scale
    left = AREA.x0 + (AREA.width - wall.length_mm / work.scale) / 2
    view = WallView(wall, work.scale, left, height - BAND_MM)
    items, words = _sketch(work.content, view, Box(AREA.x0, 0.0, AREA.x1, height))
    boxes = [ink_box(part) for item in items for part in item.parts]
    top, foot = min(box.y0 for box in boxes), max(box.y1 for box in boxes)
    return Sketch(items, top - CLEAR_MM, foot + CLEAR_MM, words)


def sketch_block(sketch: Sketch) -> Block:
    """Return the sketch of a wall as one block."""

    def draw(at: Point, _: Numbers) -> tuple[Item, ...]:
        return moved_items(sketch.items, at.x - AREA.x0, at.y - sketch.top_mm)

    return Block(sketch.foot_mm - sketch.top_mm, draw, joined=True, gap_mm=2.0)


def _sketch(content: WallContent, view: WallView, limits: Box) -> tuple[tuple[Item, ...], str]:
    """Return what is drawn of a wall, and the words that say what is shown."""
    drawing = Drawing(FreeRoom(limits))
    name = content.wall.name
    drawing.draw(f"wall:{name}", "outline", rectangle(view.box, width_mm=W.extra_wide))
    _draw_openings(drawing, view)
    boxes = [thing_box(view, t) for t in content.things]
    lengths = on_sheet(view, content.stretches, boxes)
    edges = Outlines((*boxes, *(piece_box(view, p) for p in content.pieces)))
    draw_stretches(drawing, lengths, edges)
    draw_runs(drawing, view, content.pieces)
    for thing, box in zip(content.things, boxes, strict=True):
        _draw_thing(drawing, thing, box)
    things = [_callout(t, b) for t, b in zip(content.things, boxes, strict=True)]
    callouts = [*things, *_run_callouts(content, view), *_drop_callouts(lengths)]
    items, far = place_together(drawing.room, callouts, near_only=True)
    led, bare = place_together(drawing.room, far, reach=REACH_MM)
    drawing.extend((*items, *led))
    # several walls may stand on one page: what is drawn of a wall bears its name
    drawn = tuple(replace(item, ident=f"wall:{name}:{item.ident}") for item in drawing.items)
    return drawn, _shown_words(content, view.scale, len(bare))


def _shown_words(content: WallContent, scale: int, left_out: int) -> str:
    """Return from where a wall is seen, its left corner and scale; what is in the table alone."""
    name = content.wall.name
    before = content.room.walls[content.room.walls.index(name) - 1]
    corner = " | ".join(wall.removeprefix(f"{content.room.name} ") for wall in (before, name))
    words = f"from inside, left end {corner}. 1:{scale} @ A4"
    if left_out:
        words += f". No room for {left_out} tag{'s' * (left_out > 1)}: see the table"
    return words


def _draw_openings(drawing: Drawing, view: WallView) -> None:
    """Draw doors and windows as two narrow outlines, one in the other."""
    for i, opening in enumerate(view.wall.openings):
        box = Box(
            view.x(opening.from_mm),
            view.y(opening.sill_mm + opening.height_mm),
            view.x(opening.from_mm + opening.width_mm),
            view.y(opening.sill_mm),
        )
        foot = box.y1 if opening.sill_mm <= 0 else box.y1 - 1.0
        inner = Box(box.x0 + 1.0, box.y0 + 1.0, box.x1 - 1.0, foot)
        lines = [rectangle(one, width_mm=W.narrow) for one in (box, inner)]
        drawing.draw(f"opening:{i}", "outline", *lines, title=opening.name)


def _draw_thing(drawing: Drawing, thing: Thing, box: Box) -> None:
    """Draw an outline: wide when new, narrow when existing, crossed out when removed."""
    width = W.narrow if thing.state == "existing" or thing.is_outside else W.wide
    pattern = "dashed" if thing.is_outside else "continuous"
    parts = [
        rectangle(
            box,
            width_mm=width,
            pattern=pattern,  # type: ignore[arg-type]
            fill=None if thing.is_outside else "white",
        )
    ]
    if thing.state == "removed":
        parts.append(polyline((box.x0, box.y0), (box.x1, box.y1), width_mm=W.narrow))
        parts.append(polyline((box.x0, box.y1), (box.x1, box.y0), width_mm=W.narrow))
    drawing.draw(f"thing:{thing.tag}", "outline", *parts, title=thing.words)
    drawing.room.take_solid(box)


def _callout(thing: Thing, box: Box) -> Callout:
    words = {"existing": ("existing",), "removed": ("take out",)}.get(str(thing.state), ())
    return Callout(f"callout:{thing.tag}", thing.tag, words, box, weight=3.0)


def _run_callouts(content: WallContent, view: WallView) -> list[Callout]:
    return [
        Callout(f"callout:{p.run.tag}:{p.index}", p.run.tag, (), piece_box(view, p), weight=3.0)
        for p in content.pieces
    ]


def _drop_callouts(lengths: tuple[DrawnStretch, ...]) -> list[Callout]:
    return [
        Callout(f"callout:stretch:{i}", "", _by_two(drawn.stretch.cables), drawn.box)
        for i, drawn in enumerate(lengths)
    ]


def _by_two(tags: tuple[str, ...]) -> tuple[str, ...]:
    """Return tags two to a line."""
    return tuple(" ".join(tags[i : i + 2]) for i in range(0, len(tags), 2))


def keep_clear_words(work: WallWork) -> str:
    """Return where cables may be hidden on a wall, and when it may be drilled there."""
    content = work.content
    levels = [f"{p.run.tag} {p.level}" for p in content.pieces if p.is_level]
    upright = sorted(
        {round(s.start.along) for s in content.stretches if s.is_upright}
        | {round(p.start.along) for p in content.pieces if not p.is_level}
        | {round(t.at.along) for t in content.things}
    )
    parts = []
    if levels:
        parts.append(f"along {', '.join(dict.fromkeys(levels))}")
    if upright:
        parts.append(f"straight above and below {', '.join(map(str, upright))} mm along")
    if not parts:
        return "Scan before you drill."
    return (
        f"Hidden cables may run: {'; '.join(parts)}. Scan first. Drill there only for the fixings "
        "listed, at the marked places, with the circuit dead."
    )
