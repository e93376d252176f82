"""Where symbols stand on the plan: where they hang, or beside their wall clear of the runs."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.free_room import line_meets_box
from asfitted.layout.plan.plan_things import SIZE_MM, PlacedThing, size_of
from asfitted.layout.plan.plan_view import WALL_MM

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from asfitted.layout.plan.plan_runs import RunBoxes
    from asfitted.layout.plan.plan_things import PlanThing
    from asfitted.layout.plan.plan_view import PlanView
    from asfitted.resolve.installation import Installation, Wall

BETWEEN_MM = 1.2  # clear between symbols
OFF_RUNS_MM = 1.4
ROWS = 10  # rows of symbols beside a wall, the nearest first
SHIFTS = tuple(sorted((i * 1.0 for i in range(-30, 31)), key=lambda s: (abs(s), s)))
ROW_COST, TICK_COST, FULL_COST = 10.0, 30.0, 200.0


Others = tuple["Sequence[PlacedThing]", "RunBoxes", "Box | None"]


def place_things(
    view: PlanView,
    installation: Installation,
    things: Sequence[PlanThing],
    depths: Mapping[str, float],
    runs: RunBoxes,
    *,
    within: Box | None = None,
) -> tuple[PlacedThing, ...]:
    """Return where each symbol stands: where it hangs, or by its wall as near as there is room.

    Things of a wall are placed from its left end and from its right; the better row is taken.

    Args:
        view: the plan on the sheet.
        installation: the job.
        things: what to place.
        depths: for each wall, how much paper the runs beside it take, mm.
        runs: boxes on the sheet that no symbol by a wall may stand on.
        within: box on the sheet that symbols by walls stay inside, where they can.
    """
    placed = [
        PlacedThing(t, _square(view.at(t.position.at.x, t.position.at.y), size_of(t.symbol)))
        for t in things
        if t.hangs
    ]
    for wall in installation.walls.values():
        on = [t for t in things if t.position.wall == wall.name and not t.hangs]
        on.sort(key=lambda t: (t.position.along_mm, t.position.up_mm, t.tag))
        depth = depths.get(wall.name, 0.0)
        tries = [_row(view, wall, row, depth, (placed, runs, within)) for row in (on, on[::-1])]
        placed += min(tries, key=lambda each: each[0])[1]
    return tuple(placed)


def _row(
    view: PlanView,
    wall: Wall,
    things: Sequence[PlanThing],
    depth: float,
    others: Others,
) -> tuple[float, list[PlacedThing]]:
    """Return the things of a wall placed one after another, and how far they are from home."""
    total, made = 0.0, list[PlacedThing]()
    for thing in things:
        from_face = WALL_MM / view.scale if thing.position.outside else depth
        around = ([*others[0], *made], *others[1:])
        cost, one = _best_place(view, wall, thing, from_face + OFF_RUNS_MM, around)
        total += cost
        made.append(one)
    return total, made


def _best_place(
    view: PlanView,
    wall: Wall,
    thing: PlanThing,
    depth: float,
    others: Others,
) -> tuple[float, PlacedThing]:
    """Return what it costs, and a thing at the nearest free place: along its wall or further in."""
    placed, runs, within = others
    size = size_of(thing.symbol)
    side = -1.0 if thing.position.outside else 1.0
    face = -WALL_MM / view.scale if thing.position.outside else 0.0
    true = view.on_wall(wall, thing.position.along_mm, face)
    best: tuple[float, PlacedThing] | None = None
    for row in range(ROWS):
        for shift in SHIFTS:
            cost = abs(shift) + row * ROW_COST
            if best is not None and cost >= best[0]:
                continue
            along = thing.position.along_mm + shift * view.scale
            off = depth + size / 2 + row * (SIZE_MM + BETWEEN_MM)
            box = _square(view.on_wall(wall, along, side * off), size)
            grown = box.grown(BETWEEN_MM)
            inside = 0 <= along <= wall.length_mm
            if not inside or (within is not None and not within.holds(box)):
                continue
            if any(o.box.meets(grown) for o in placed):
                continue
            if any(run.meets(grown) for run in (*runs.beside, *runs.overhead)):
                continue
            passed = (*(o.box for o in placed), *runs.overhead)
            if any(line_meets_box(true, box.centre, each) for each in passed):
                cost += TICK_COST
            if best is None or cost < best[0]:
                best = (cost, PlacedThing(thing, box, is_moved=bool(row or shift)))
    if best is not None:
        return best
    own = view.on_wall(wall, thing.position.along_mm, side * (depth + size / 2))
    return FULL_COST, PlacedThing(thing, _square(own, size), found_room=False)


def _square(centre: Point, size: float) -> Box:
    half = size / 2
    return Box(centre.x - half, centre.y - half, centre.x + half, centre.y + half)
