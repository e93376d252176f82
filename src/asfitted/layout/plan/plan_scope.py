"""What of a job one plan shows: its rooms, and the things and runs in its window."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from types import MappingProxyType
from typing import TYPE_CHECKING, TypeVar

if TYPE_CHECKING:
    from collections.abc import Mapping

    from asfitted.layout.plan.plan_parts import PlanPart
    from asfitted.layout.sheet_model import Model
    from asfitted.resolve.installation import Containment, Installation, Position

SAME_MM = 5.0
Thing = TypeVar("Thing")


def scoped(model: Model, part: PlanPart) -> Model:
    """Return the job as one plan sees it: what lies in its rooms and in its window."""
    whole = model.installation
    rooms = {name: whole.rooms[name] for name in part.rooms}
    walls = {w: whole.walls[w] for room in rooms.values() for w in room.walls}

    def here(position: Position) -> bool:
        if position.end_of:
            return part.number == 1
        return position.wall in walls and part.holds(position.at)

    cabinet = whole.cabinet if whole.cabinet and here(whole.cabinet.position) else None
    installation = replace(
        whole,
        rooms=_frozen(rooms),
        walls=_frozen(walls),
        boards=_frozen({t: b for t, b in whole.boards.items() if here(b.position)}),
        points=_frozen({t: p for t, p in whole.points.items() if here(p.position)}),
        data_devices=_frozen({t: d for t, d in whole.data_devices.items() if here(d.position)}),
        containment=_frozen({t: r for t, r in whole.containment.items() if _is_in(r, whole, part)}),
        cabinet=cabinet,
        passages=_frozen({t: p for t, p in whole.passages.items() if here(p.start) or here(p.end)}),
    )
    return replace(model, installation=installation)


def _frozen(found: Mapping[str, Thing]) -> Mapping[str, Thing]:
    return MappingProxyType(dict(found))


def _is_in(run: Containment, installation: Installation, part: PlanPart) -> bool:
    """Tell whether a run lies in the rooms of a part, and some of it in its window."""
    rooms = {installation.walls[w].room for w in run.walls if w in installation.walls}
    if rooms:
        return bool(rooms & set(part.rooms)) and _reaches(run, part)
    start = run.path[0] if run.path else None
    if start is None:
        return False
    walls = [installation.walls[w] for r in part.rooms for w in installation.rooms[r].walls]
    xs, ys = [w.start.x for w in walls], [w.start.y for w in walls]
    is_near = (
        min(xs) - SAME_MM <= start.x <= max(xs) + SAME_MM
        and min(ys) - SAME_MM <= start.y <= max(ys) + SAME_MM
    )
    return is_near and part.holds(start)


def _reaches(run: Containment, part: PlanPart) -> bool:
    box = part.window.grown(SAME_MM)
    if len(run.path) == 1:
        return part.holds(run.path[0])
    return any(
        min(a.x, b.x) <= box.x1
        and max(a.x, b.x) >= box.x0
        and min(a.y, b.y) <= box.y1
        and max(a.y, b.y) >= box.y0
        for a, b in pairwise(run.path)
    )
