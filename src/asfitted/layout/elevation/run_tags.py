"""Words on containment and drops: run tags, corner flags, crossings, drop tags along their line."""

from __future__ import annotations

import math
from functools import reduce
from typing import TYPE_CHECKING

from asfitted.fonts import text_width_mm
from asfitted.geometry import Box, Point
from asfitted.layout.callout import Callout
from asfitted.layout.given_words import state_behind
from asfitted.layout.lettering import BODY, TAG, box_of, line_pitch_mm, lines_of_text, wrap
from asfitted.layout.sheet_layout import Item, Text

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from asfitted.layout.drawing import Drawing
    from asfitted.layout.elevation.drops_on_wall import Stretch
    from asfitted.layout.elevation.passages_on_wall import WallPassage
    from asfitted.layout.elevation.references import References
    from asfitted.layout.elevation.runs_on_wall import (
        CornerFlag,
        Crossing,
        DeclaredEnd,
        RunPiece,
    )
    from asfitted.layout.elevation.stretch_drawing import DrawnStretch

MOST_ON_DROP = 6
MOST_LISTED = 4  # more cables than this stand in the table of contents
SHORT_MM = 10.5
OFF_MM = 1.4  # words to the edge of a run
STEP_MM = 3.0
FURTHEST_FLAG_MM = 80  # a corner flag stands no further than this from its corner
NARROW_FLAG_MM = 19.0  # a flag broken into more lines
NARROW_RUN_MM = 24.0
NARROW_COST = 14.0  # of a run's words broken into more lines
FLAG_WEIGHT, RUN_WEIGHT, DROP_WEIGHT = 8.0, 4.0, 2.0  # things have 6, the rest 1


def cable_words(cables: Sequence[str]) -> str:
    """Return the contents of a run as written beside it."""
    if not cables:
        return "empty"
    if len(cables) > MOST_LISTED:
        return f"{len(cables)} cables, see table"
    return " ".join(cables)


def flag_lines(flag: CornerFlag, refs: References) -> tuple[str, ...]:
    """Return the words of a corner flag: tag and wall with sheet, size and level, contents."""
    spot = refs.spot(flag_view(flag, refs), flag.to_along_mm, flag.up_mm)
    sheet = f" (sheet {spot})" if spot else ""
    to = f"{flag.tag} → {flag.to_name}{sheet}"
    size = f"{_size_words(flag.words)} {flag.level}"
    if flag.tag == " ".join(flag.cables):
        return to, size
    return to, size, cable_words(flag.cables)


def flag_view(flag: CornerFlag, refs: References) -> str:
    """Return the key of the view that a flag points at."""
    return refs.view_of(flag.to, flag.to_along_mm)


def _size_words(words: str) -> str:
    """Return the size at the head of a run's words: "150 × 25" of "150 × 25 perforated tray"."""
    size = []
    for word in words.split():
        if not (word in ("×", "mm") or word.replace(".", "").isdigit()):
            break
        size.append(word)
    return " ".join(size) or words


def tag_run(drawing: Drawing, piece: RunPiece, box: Box, cables: Sequence[str]) -> Callout | None:
    """Write the tag of a run beside it; return a callout when there is no such room."""
    head = piece.run.tag
    body = f"{piece.run.words} {piece.level}: {cable_words(cables)}"
    state = state_behind(piece.run.state)
    ident = f"run-tag:{piece.run.tag}:{piece.index}"
    if piece.is_level:
        one = [body + state]
        two = [f"{piece.run.words} {piece.level}{state}", cable_words(cables)]
        three = [piece.run.words, f"{piece.level}{state}", cable_words(cables)]
        for lines in (one, two, three):
            for texts in _beside_level(box, head, lines):
                if _write_if_free(drawing, ident, texts):
                    return None
    else:
        for text in _beside_upright(box, f"{head} {body}{state}"):
            if _write_if_free(drawing, ident, (text,)):
                return None
    words = (f"{piece.run.words}{state}", piece.level, cable_words(cables))
    narrow = tuple(part for line in words for part in wrap(line, NARROW_RUN_MM, BODY))
    return Callout(ident, head, words, box, weight=RUN_WEIGHT, other_lines=((NARROW_COST, narrow),))


def _beside_level(box: Box, head: str, lines: Sequence[str]) -> Iterator[tuple[Text, ...]]:
    """Yield the tag above or below a level run, from its middle outwards."""
    head_mm = text_width_mm(head, TAG, bold=True) + 2.0
    width = head_mm + max(text_width_mm(line, BODY) for line in lines)
    more = (len(lines) - 1) * line_pitch_mm(BODY)
    for x in _slides(box.x0 + 1.0, box.x1 - width - 1.0):
        for baseline in (box.y0 - OFF_MM - 0.33 * TAG - more, box.y1 + OFF_MM + 1.05 * TAG):
            yield (
                Text(Point(x, baseline), head, TAG, bold=True),
                *lines_of_text(list(lines), Point(x + head_mm, baseline)),
            )


def _beside_upright(box: Box, words: str) -> Iterator[Text]:
    """Yield the words turned beside an upright line, from its middle outwards."""
    width = text_width_mm(words, BODY)
    for y in _slides(box.y0 + 1.0, box.y1 - width - 1.0):
        for x in (box.x0 - 1.0 - 0.33 * BODY, box.x1 + 1.0 + 1.05 * BODY):
            yield Text(Point(x, y + width), words, BODY, turned=True)


def _slides(low: float, high: float) -> Iterator[float]:
    """Yield places between two limits: the middle first, then to either side."""
    if high < low:
        return
    middle = (low + high) / 2
    yield middle
    for i in range(1, int((high - low) / 2 / STEP_MM) + 1):
        yield middle - i * STEP_MM
        yield middle + i * STEP_MM


def _write_if_free(drawing: Drawing, ident: str, texts: Sequence[Text]) -> bool:
    if not all(drawing.room.is_free(box_of(text), 0.5) for text in texts):
        return False
    drawing.add(Item(ident, "text", tuple(texts)))
    if not any(text.turned for text in texts):
        boxes = [box_of(text) for text in texts]  # no leader between a tag and its words
        drawing.room.take_solid(reduce(Box.joined, boxes))
    return True


def flag_corner(
    drawing: Drawing,
    flag: CornerFlag,
    box: Box,
    *,
    view_box: Box,
    refs: References,
    reach_mm: float,
) -> Callout | None:
    """Write a corner flag inside the wall by its corner; return a callout when it has no room."""
    ident = f"flag:{flag.side}:{flag.tag}:{round(flag.up_mm)}"
    link = refs.link(flag_view(flag, refs), _twin(flag))
    broad = list(flag_lines(flag, refs))
    furthest = int(min(FURTHEST_FLAG_MM, reach_mm - NARROW_FLAG_MM / 2))
    narrow = _narrow_flag(broad)
    for lines, gaps in (
        (broad, range(0, 12, 3)),
        (narrow, range(0, 12, 3)),
        (broad, range(12, furthest, 3)),
        (narrow, range(12, furthest, 3)),
    ):
        for texts in _by_corner(flag, lines, box, view_box, gaps):
            if all(drawing.room.is_free(box_of(t), 0.5) for t in texts):
                drawing.add(Item(ident, "text", texts, link=link))
                return None
    near = 30.0
    target = (
        Box(view_box.x0, box.y0, view_box.x0 + near, box.y1)
        if flag.side == "left"
        else Box(view_box.x1 - near, box.y0, view_box.x1, box.y1)
    )
    return Callout(ident, "", tuple(narrow), target, link, weight=FLAG_WEIGHT)


def _narrow_flag(broad: Sequence[str]) -> list[str]:
    """Return the words of a flag in more lines; the reference to a sheet stays whole."""
    head, _, sheet = broad[0].partition(" (")
    lines = [head, f"({sheet}"] if sheet else [head]
    return lines + [part for line in broad[1:] for part in wrap(line, NARROW_FLAG_MM, BODY)]


def _by_corner(
    flag: CornerFlag, lines: Sequence[str], box: Box, view_box: Box, gaps: range
) -> Iterator[tuple[Text, ...]]:
    """Yield the words of a flag below and above its run, further and further from the corner."""
    pitch = line_pitch_mm(BODY)
    height = pitch * (len(lines) - 1)
    at_left = flag.side == "left"
    for gap in gaps:
        x = view_box.x0 + 1.8 + gap if at_left else view_box.x1 - 1.8 - gap
        for first in (box.y1 + OFF_MM + 1.05 * BODY, box.y0 - OFF_MM - 0.33 * BODY - height):
            yield tuple(
                Text(
                    Point(x, first + i * pitch),
                    line,
                    BODY,
                    anchor="start" if at_left else "end",
                    bold=i == 0,
                )
                for i, line in enumerate(lines)
            )


def _twin(flag: CornerFlag) -> str:
    side = "right" if flag.side == "left" else "left"
    return f"flag:{side}:{flag.tag}:{round(flag.up_mm)}"


def crossing_callout(crossing: Crossing, box: Box, refs: References) -> Callout:
    """Return the flag of a run that leaves the wall overhead."""
    run = crossing.run
    key = refs.view_of(crossing.to, crossing.to_along_mm)
    spot = refs.spot(key, crossing.to_along_mm, crossing.at.up) if crossing.to else ""
    sheet = f" (sheet {spot})" if spot else ""
    to = f"over to {crossing.to_name}{sheet}" if crossing.to else "overhead"
    lines = (to, f"{run.words} {crossing.level}", cable_words(crossing.cables))
    ident = f"crossing-tag:{run.tag}:{round(crossing.at.along)}"
    narrow = (to, run.words, f"{crossing.level}: {cable_words(crossing.cables)}")
    link = refs.link(key, f"crossing-tag:{run.tag}:{round(crossing.to_along_mm)}") if spot else ""
    return Callout(ident, run.tag, lines, box, link, other_lines=((0.0, narrow),))


def passage_callout(passage: WallPassage, box: Box, refs: References) -> Callout:
    """Return the words of an opening through wall or floor, with the sheet of its other side."""
    key = refs.view_of(passage.to_wall, passage.to_along_mm) if passage.to_wall else ""
    sheet = refs.sheet(key) if key else ""
    to = f"to {passage.to_room}" if passage.to_room else "to a place not recorded"
    if sheet:
        to = f"{to}, sheet {sheet}"
    narrow = tuple(wrap(to, NARROW_RUN_MM, BODY))
    return Callout(
        f"passage-tag:{passage.tag}",
        passage.tag,
        (to, *passage.lines),
        box,
        refs.link(key, f"passage:{passage.tag}") if sheet else "",
        weight=RUN_WEIGHT,
        other_lines=((2.0, (*narrow, *passage.lines)),),
    )


def declared_callout(end: DeclaredEnd, cables: Sequence[str], box: Box) -> Callout:
    """Return the flag of a declared length: what it is, how long, where it ends."""
    run = end.run
    basis = f" ({run.declared_basis[0]})" if run.declared_basis else ""
    length = f"{(run.declared_length_m or 0):g} m{basis}"
    to = f"{length} to {run.end_words}" if run.end_words else f"{length}, end not recorded"
    lines = (f"{run.words} {run.level_of} {_height(end.at.up)}", to, cable_words(cables))
    return Callout(f"declared-tag:{run.tag}", run.tag, (*lines, "outside face"), box)


def _height(up_mm: float) -> str:
    return f"{round(up_mm):+d}"


def stretch_words(stretch: Stretch) -> tuple[tuple[str, ...], ...]:
    """Return what may be written along a length, the fullest first: each in one or two pieces."""
    cables = " ".join(stretch.told)
    holder = stretch.holder + (" outside face" if stretch.is_outside else "")
    holder += state_behind(stretch.state)
    if len(stretch.cables) > MOST_ON_DROP:
        return ((f"{len(stretch.cables)} cables {holder}",), (f"{len(stretch.cables)} cables",))
    return ((f"{cables} {holder}",), (cables, holder), (cables,))


def tag_stretches(drawing: Drawing, lengths: Sequence[DrawnStretch]) -> list[Callout]:
    """Write cables and holder along each length; return callouts for those with no room."""
    callouts = []
    for i, drawn in enumerate(lengths):
        if is_short(drawn):
            continue
        ident = f"tag:{drawn.stretch.way}:{'+'.join(drawn.stretch.cables)}:{i}"
        choices = stretch_words(drawn.stretch)
        if not any(_write_pieces(drawing, ident, drawn, pieces) for pieces in choices):
            callouts.append(Callout(ident, "", choices[-1], drawn.box, weight=DROP_WEIGHT))
    return callouts


def is_short(drawn: DrawnStretch) -> bool:
    """Tell whether a length is too short on paper for words: its thing's callout names it."""
    return math.dist(drawn.a, drawn.b) < SHORT_MM


def words_at_things(lengths: Sequence[DrawnStretch]) -> dict[str, tuple[str, ...]]:
    """Return by tag of the thing what stands in its callout for lengths too short for words."""
    found: dict[str, list[str]] = {}
    for drawn in lengths:
        if is_short(drawn) and drawn.stretch.serves:
            words = f"{' '.join(drawn.stretch.told)} {drawn.stretch.holder}"
            found.setdefault(drawn.stretch.serves, []).append(words)
    return {tag: tuple(dict.fromkeys(lines)) for tag, lines in found.items()}


def _write_pieces(drawing: Drawing, ident: str, drawn: DrawnStretch, pieces: Sequence[str]) -> bool:
    """Write one piece, or two pieces on either side of the line, where there is room for all."""
    first = [t for t in _along(drawn, pieces[0]) if drawing.room.is_free(box_of(t), 0.5)]
    if len(pieces) == 1:
        return _write_if_free(drawing, ident, first[:1]) if first else False
    for one in first:
        for other in _along(drawn, pieces[1]):
            apart = not box_of(one).grown(0.7).meets(box_of(other))
            if apart and _write_if_free(drawing, ident, (one, other)):
                return True
    return False


def _along(drawn: DrawnStretch, words: str) -> Iterator[Text]:
    if drawn.stretch.is_upright:
        yield from _beside_upright(drawn.box, words)
        return
    width = text_width_mm(words, BODY)
    for x in _slides(drawn.box.x0 + 1.0, drawn.box.x1 - width - 1.0):
        for y in (drawn.box.y0 - 0.8 - 0.33 * BODY, drawn.box.y1 + 0.8 + 1.05 * BODY):
            yield Text(Point(x, y), words, BODY)
