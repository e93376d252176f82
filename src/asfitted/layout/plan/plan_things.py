"""Boards, points, cameras and other devices on the plan, each with its symbol and callout."""

from __future__ import annotations

import math
from dataclasses import dataclass
from types import MappingProxyType
from typing import TYPE_CHECKING, Literal

from asfitted.errors import OutsideTableError
from asfitted.geometry import Box, Point
from asfitted.layout.callout import Callout
from asfitted.layout.elevation.things_on_wall import (
    DATA_SYMBOLS,
    IN_CABINET,
    NEAR_WALL_MM,
    in_cabinet,
    point_symbol,
)
from asfitted.layout.free_room import line_meets_box
from asfitted.layout.linework import polyline, rectangle, widths_for
from asfitted.layout.plan.plan_view import WALL_MM
from asfitted.layout.sheet_layout import SymbolUse

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from asfitted.layout.drawing import Drawing
    from asfitted.layout.plan.plan_view import PlanView
    from asfitted.layout.sheet_layout import SymbolInfo
    from asfitted.resolve.installation import Installation, Position, State, Wall

W = widths_for("A3")
SIZE_MM, GREAT_MM = 7.0, 10.0
#: Symbols whose letters need more room than 7 mm give.
GREAT = frozenset(
    {
        "afdd",
        "generator",
        "meter_kwh",
        "motor_1ph",
        "motor_3ph",
        "poe_switch",
        "recorder",
        "router",
        "socket_interlocked",
    }
)
#: Symbols with a letter or figure inside: a leader to them ends at their box.
LETTERED = GREAT | {"socket_twin", "data_outlet", "socket_three_phase_rcd", "power_supply"}
HOLE = 0.28  # a run overhead is drawn up to so much of the box of a symbol that hangs by it
CORE = 0.3  # of its box: every symbol has ink so near to its middle
TAG_WEIGHT = 6.0  # of a tag against words on runs and openings
Turn = Literal[0, 90, 180, 270]


@dataclass(frozen=True)
class PlanThing:
    """A thing to be drawn on the plan: its position, symbol ("" for a plain box) and words."""

    tag: str
    position: Position
    symbol: str
    lines: tuple[str, ...]
    looks: float | None = None  # camera: degrees clockwise on plan from straight out of the wall

    @property
    def hangs(self) -> bool:
        """Whether it hangs out in the room instead of standing on its wall."""
        return not self.position.outside and self.position.out_mm > NEAR_WALL_MM


@dataclass(frozen=True)
class PlacedThing:
    """A thing with the box of its symbol on the sheet, and whether it left its true place."""

    thing: PlanThing
    box: Box
    is_moved: bool = False
    found_room: bool = True


def size_of(symbol: str) -> float:
    """Return the side of a symbol on the plan, mm."""
    return GREAT_MM if symbol in GREAT else SIZE_MM


def plan_things(
    installation: Installation, symbols: Mapping[str, SymbolInfo]
) -> tuple[PlanThing, ...]:
    """Return everything that has a place on the plan, in the order of the job."""

    def known(name: str) -> str:
        return name if name in symbols else ""

    found = [
        PlanThing(b.tag, b.position, known("distribution_board"), _state(b.state))
        for b in installation.boards.values()
    ]
    cabinet = installation.cabinet
    if cabinet is not None:
        holds = " ".join(in_cabinet(installation))
        found.append(PlanThing(cabinet.tag, cabinet.position, "", ("cabinet", holds)))
    for point in installation.points.values():
        try:
            symbol = known(point_symbol(point, installation))
        except OutsideTableError:
            symbol = ""
        found.append(PlanThing(point.tag, point.position, symbol, _state(point.state)))
    for device in installation.data_devices.values():
        if cabinet is not None and device.kind in IN_CABINET:
            continue
        lines = _state(device.state)
        looks = None
        if device.kind == "camera":
            looks = device.aim_deg or 0.0
            lines = (device.views, *lines) if device.views else lines
        symbol = known(DATA_SYMBOLS[device.kind])
        found.append(PlanThing(device.tag, device.position, symbol, lines, looks))
    return tuple(thing for thing in found if thing.position.wall)


def things_off_plan(installation: Installation) -> tuple[str, ...]:
    """Return words for what has no place on the plan: the far ends of declared runs."""
    groups = (installation.boards, installation.points, installation.data_devices)
    return tuple(
        f"{tag}: {thing.position.words}, at the end of {thing.position.end_of}"
        for group in groups
        for tag, thing in group.items()
        if thing.position.end_of
    )


def _state(state: State) -> tuple[str, ...]:
    return () if state == "new" else (str(state),)


def draw_things(
    drawing: Drawing,
    view: PlanView,
    installation: Installation,
    placed: Sequence[PlacedThing],
    depths: Mapping[str, float] = MappingProxyType({}),
) -> list[Callout]:
    """Draw symbols, each with a tick to its place along the wall, and return their callouts.

    ``depths`` says how much paper the runs beside each wall take: a tick ends at the first of them,
    for what stands under them is not in their way.
    """
    callouts = []
    for one in placed:
        thing, box = one.thing, one.box
        wall = installation.walls[thing.position.wall]
        if one.is_moved:
            _draw_tick(drawing, view, (wall, depths.get(wall.name, 0.0)), one, placed)
        if thing.symbol:
            hole = box.grown(-HOLE * box.width) if thing.hangs else box
            ground = rectangle(hole, width_mm=None, fill="white")
            drawing.draw(f"plan-ground:{thing.tag}", "outline", ground)
        if thing.symbol:
            turn = _camera_turn(wall, thing) if thing.looks is not None else _turn(wall, thing)
            at = Point(box.x0, box.y0)
            use = SymbolUse(thing.symbol, at, box.width, turn, width_mm=W.symbol)
            drawing.draw(f"plan-thing:{thing.tag}", "symbol", use, title=thing.tag)
        else:
            outline = rectangle(box.grown(-0.6), width_mm=W.wide)
            drawing.draw(f"plan-thing:{thing.tag}", "symbol", outline, title=thing.tag)
            drawing.room.take_solid(box.grown(-0.6))
        callouts.append(_callout(one, [o.box for o in placed if o is not one]))
    return callouts


def _callout(one: PlacedThing, rivals: Sequence[Box]) -> Callout:
    """Return the callout of a thing; where its words are many, they may share a line."""
    thing = one.thing
    lines = (*thing.lines, *(("outside",) if thing.position.outside else ()))
    others: tuple[tuple[float, tuple[str, ...]], ...] = ()
    if len(lines) > 2:
        others = ((0.0, (lines[0], ", ".join(lines[1:]))),)
    elif len(lines) == 2:
        others = ((0.0, (", ".join(lines),)),)
    return Callout(
        f"plan-tag:{thing.tag}",
        thing.tag,
        lines,
        one.box,
        weight=TAG_WEIGHT,
        rivals=tuple(rivals),
        other_lines=others,
        core_mm=CORE * one.box.width if thing.symbol and thing.symbol not in LETTERED else 0.0,
    )


def _draw_tick(
    drawing: Drawing,
    view: PlanView,
    beside: tuple[Wall, float],
    one: PlacedThing,
    placed: Sequence[PlacedThing],
) -> None:
    """Draw the short line from a symbol to its true place, as far as the runs beside the wall."""
    position = one.thing.position
    wall, runs_mm = beside
    depth = -WALL_MM / view.scale if position.outside else runs_mm + 0.4 * bool(runs_mm)
    true = view.on_wall(wall, position.along_mm, depth)
    side = -1.0 if position.outside else 1.0
    towards = (-wall.inward.x * side, wall.inward.y * side)
    edge = one.box.centre.moved(towards[0] * one.box.width / 2, towards[1] * one.box.width / 2)
    blocked = any(line_meets_box(true, edge, o.box) for o in placed if o is not one)
    if math.dist(true, edge) > 0.3 and not blocked:
        line = polyline((true.x, true.y), (edge.x, edge.y), width_mm=W.narrow)
        drawing.draw(f"plan-tick:{one.thing.tag}", "dim", line)


def _turn(wall: Wall, thing: PlanThing) -> Turn:
    """Return the turn that puts the symbol's supply side to its wall."""
    if thing.hangs:
        return 0
    side = -1.0 if thing.position.outside else 1.0
    out = (-wall.inward.x * side, wall.inward.y * side)  # on the sheet, y down
    return _quarter(out[0], out[1])


def _quarter(x: float, y: float) -> Turn:
    """Return the clockwise turn that takes the top of a symbol to a direction on the sheet."""
    if abs(x) > abs(y):
        return 90 if x > 0 else 270
    return 180 if y > 0 else 0


def look_direction(wall: Wall, thing: PlanThing) -> Point:
    """Return the unit vector on the sheet along which a camera looks."""
    side = -1.0 if thing.position.outside else 1.0
    x, y = wall.inward.x * side, -wall.inward.y * side
    turn = math.radians(thing.looks or 0.0)  # clockwise on plan is clockwise on the sheet
    return Point(x * math.cos(turn) - y * math.sin(turn), x * math.sin(turn) + y * math.cos(turn))


def _camera_turn(wall: Wall, thing: PlanThing) -> Turn:
    """Return the quarter turn nearest to where the camera looks; its lens points right unturned."""
    look = look_direction(wall, thing)
    turns: dict[Turn, Turn] = {0: 270, 90: 0, 180: 90, 270: 180}
    return turns[_quarter(look.x, look.y)]
