"""The key plan of a larger job: all storeys small, each room with its name and its plan's sheet."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.fonts import text_width_mm
from asfitted.geometry import Box, Point
from asfitted.layout.callout import Callout
from asfitted.layout.callout_choice import place_together
from asfitted.layout.drawing import Drawing
from asfitted.layout.free_room import FreeRoom
from asfitted.layout.lettering import BODY, TAG, box_of, text_item
from asfitted.layout.linework import polyline, rectangle, widths_for
from asfitted.layout.plan.north import north_direction, north_items
from asfitted.layout.plan.plan_foot import plan_foot
from asfitted.layout.plan.plan_sheet import notes_items
from asfitted.layout.plan.plan_view import PlanView, view_of_window
from asfitted.layout.sheet_layout import Item, Text

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.plan.plan_parts import PlanPart
    from asfitted.layout.plan.plan_set import PlanSet
    from asfitted.layout.sheet_model import Model, Numbers
    from asfitted.resolve.installation import Installation

W = widths_for("A3")
SCALES = (50, 100, 200, 500, 1000, 2000)
TITLE_MM, GAP_MM = 9.0, 12.0
BOARD_MM = 2.4
NOTES = (
    (
        "Rooms with the sheet of their floor plan. Dashed with two dots: where a room is cut "
        "into parts."
    ),
    (
        "Black square: distribution board. Walls are drawn 100 mm thick, thickness not recorded, "
        "or as one line."
    ),
    "Rooms whose place is not recorded stand side by side, 3 m apart.",
)


@dataclass(frozen=True)
class Overview:
    """The laid-out key plan of a larger job."""

    items: tuple[Item, ...]
    scale_words: str


@dataclass(frozen=True)
class _Storey:
    name: str
    rooms: tuple[str, ...]
    window: Box  # of the building, mm, y north


def lay_out_overview(model: Model, plans: PlanSet, numbers: Numbers) -> Overview:
    """Lay out all storeys on one sheet at one scale."""
    installation, frame = model.installation, plans.frame
    area = Box(frame.usable.x0, frame.usable.y0, frame.usable.x1, frame.foot - 16.0)
    storeys = _storeys(installation)
    scale, places = _arranged(storeys, area)
    drawing = Drawing(FreeRoom(area))
    callouts: list[Callout] = []
    for storey, box in zip(storeys, places, strict=True):
        view = view_of_window(storey.window, scale, box)
        title = storey.name or "All rooms"
        at = Point(box.x0, box.y0 - 4.0)
        drawing.add(text_item(f"storey:{storey.name}", title, at, TAG, bold=True))
        for name in storey.rooms:
            _draw_room(drawing, view, installation, name)
        here = [p for p in plans.parts if p.storey == storey.name]
        _draw_windows(drawing, view, here)
        callouts += _board_callouts(drawing, view, installation, storey)
        callouts += _part_callouts(drawing, view, installation, (plans, here), numbers)
    tags, left = place_together(drawing.room, callouts)
    drawing.extend(tags)
    at = Point(frame.usable.x0, frame.foot - 2.0)
    width = frame.usable.width - 20.0
    items = [*drawing.items, *plan_foot("Key plan", at, width, scale, frame.paper)]
    first = next(iter(installation.rooms.values()))
    centre = Point(frame.usable.x1 - 8.0, frame.foot - 6.0)
    items += north_items("plan", centre, north_direction(installation, first))
    notes = NOTES + ((f"No room for: {'; '.join(c.words for c in left)}.",) if left else ())
    items += notes_items(frame, notes)
    return Overview(tuple(items), f"1:{scale} @ {frame.paper.split()[0]}")


def _storeys(installation: Installation) -> list[_Storey]:
    """Return the storeys in order, the lowest last, as they stand one over the other."""
    names = dict.fromkeys(room.storey for room in installation.rooms.values())
    levels = {room.storey: room.level_mm for room in installation.rooms.values()}
    found = []
    for name in sorted(names, key=lambda n: -levels[n]):
        rooms = tuple(r.name for r in installation.rooms.values() if r.storey == name)
        starts = [installation.walls[w].start for r in rooms for w in installation.rooms[r].walls]
        xs, ys = [p.x for p in starts], [p.y for p in starts]
        found.append(_Storey(name, rooms, Box(min(xs), min(ys), max(xs), max(ys))))
    return found


def _arranged(storeys: Sequence[_Storey], area: Box) -> tuple[int, list[Box]]:
    """Return the largest scale at which all storeys fit, and the box of each on the sheet."""
    for scale in SCALES:
        places = _shelved(storeys, area, scale)
        if places is not None:
            return scale, places
    whole = Box(area.x0, area.y0 + TITLE_MM, area.x1, area.y1)
    return SCALES[-1], [whole] * len(storeys)


def _shelved(storeys: Sequence[_Storey], area: Box, scale: int) -> list[Box] | None:
    places: list[Box] = []
    x, y, tall = area.x0 + GAP_MM, area.y0, 0.0
    for storey in storeys:
        wide, high = storey.window.width / scale, storey.window.height / scale
        if x > area.x0 + GAP_MM and x + wide + GAP_MM > area.x1:
            x, y, tall = area.x0 + GAP_MM, y + tall + GAP_MM, 0.0
        top = y + TITLE_MM + GAP_MM / 2
        box = Box(x, top, x + wide, top + high)
        if box.x1 + GAP_MM > area.x1 or box.y1 + GAP_MM > area.y1:
            return None
        places.append(box)
        x, tall = box.x1 + 3 * GAP_MM, max(tall, high + TITLE_MM + GAP_MM / 2)
    return places


def _draw_room(drawing: Drawing, view: PlanView, installation: Installation, name: str) -> None:
    """Draw the walls of a room as lines, openings left out."""
    paths = []
    for wall_name in installation.rooms[name].walls:
        wall = installation.walls[wall_name]
        at = 0.0
        for opening in sorted(wall.openings, key=lambda o: o.from_mm):
            if opening.kind != "window":
                a, b = view.on_wall(wall, at, 0.0), view.on_wall(wall, opening.from_mm, 0.0)
                paths.append(polyline(a, b, width_mm=W.wide))
                at = opening.from_mm + opening.width_mm
        a, b = view.on_wall(wall, at, 0.0), view.on_wall(wall, wall.length_mm, 0.0)
        paths.append(polyline(a, b, width_mm=W.wide))
    drawing.draw(f"room:{name}", "outline", *paths, title=name)


def _draw_windows(drawing: Drawing, view: PlanView, parts: Sequence[PlanPart]) -> None:
    """Draw the windows of rooms that are cut into parts."""
    for part in parts:
        if part.of_room[1] > 1:
            box = _on_sheet(view, part.window)
            path = rectangle(box, width_mm=W.narrow, pattern="long_dash_double_dot")
            drawing.draw(f"part:{part.number}", "outline", path)


def _on_sheet(view: PlanView, window: Box) -> Box:
    a, b = view.at(window.x0, window.y1), view.at(window.x1, window.y0)
    return Box(a.x, a.y, b.x, b.y)


def _board_callouts(
    drawing: Drawing, view: PlanView, installation: Installation, storey: _Storey
) -> list[Callout]:
    callouts = []
    for board in installation.boards.values():
        wall = installation.walls.get(board.position.wall)
        if wall is None or wall.room not in storey.rooms:
            continue
        at = view.on_wall(wall, board.position.along_mm, BOARD_MM / 2 + 0.6)
        box = Box(at.x, at.y, at.x, at.y).grown(BOARD_MM / 2)
        drawing.draw(f"board:{board.tag}", "outline", rectangle(box, width_mm=None, fill="black"))
        callouts.append(Callout(f"board-tag:{board.tag}", board.tag, (), box))
    return callouts


def _part_callouts(
    drawing: Drawing,
    view: PlanView,
    installation: Installation,
    plans: tuple[PlanSet, Sequence[PlanPart]],
    numbers: Numbers,
) -> list[Callout]:
    """Write name and sheet in each room or part; return callouts for those too small for it."""
    callouts = []
    for part in plans[1]:
        sheet = numbers.by_key.get(plans[0].key_of(part), "–")
        of = f", part {part.of_room[0]} of {part.of_room[1]}" if part.of_room[1] > 1 else ""
        for name in part.rooms:
            window = part.window if of else _window_of(installation, name)
            box = _on_sheet(view, window)
            link, ident = f"{sheet}#plan:title", f"room-name:{name}:{part.number}"
            texts = _words_inside(box, (name if not of else name + of, f"sheet {sheet}"))
            if texts and all(drawing.room.is_free(box_of(t)) for t in texts):
                drawing.add(Item(ident, "text", texts, link=link))
                continue
            target = Box(box.centre.x, box.centre.y, box.centre.x, box.centre.y).grown(0.5)
            line = f"sheet {sheet}"
            callouts.append(Callout(ident, name + of, (line,), target, link=link, weight=5.0))
    return callouts


def _window_of(installation: Installation, name: str) -> Box:
    starts = [installation.walls[w].start for w in installation.rooms[name].walls]
    xs, ys = [p.x for p in starts], [p.y for p in starts]
    return Box(min(xs), min(ys), max(xs), max(ys))


def _words_inside(box: Box, words: tuple[str, str]) -> tuple[Text, ...]:
    """Return name and sheet in the middle of a box, or nothing where it is too small."""
    wide = max(text_width_mm(words[0], TAG, bold=True), text_width_mm(words[1], BODY))
    tall = TAG + 2.0 + BODY
    if wide + 3.0 > box.width or tall + 3.0 > box.height:
        return ()
    top = box.centre.y - tall / 2
    x = box.centre.x
    return (
        Text(Point(x, top + TAG), words[0], TAG, "middle", bold=True),
        Text(Point(x, top + tall), words[1], BODY, "middle"),
    )
