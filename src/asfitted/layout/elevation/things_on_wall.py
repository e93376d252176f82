"""Boards, points, cabinet and data devices that stand on a wall, with outline and callout."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Literal

from asfitted.errors import OutsideTableError
from asfitted.layout.elevation.wall_view import WallPoint, height_words
from asfitted.layout.given_words import state_behind
from asfitted.reference.data_devices import data_device_outline
from asfitted.reference.points import point_kind
from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from asfitted.resolve.installation import (
        Board,
        Cabinet,
        DataDevice,
        Installation,
        PointServed,
        Position,
        Wall,
    )

Group = Literal["board", "cabinet", "point", "data"]
IN_CABINET = ("recorder", "12 V supply", "PoE switch")
NEAR_WALL_MM = 300.0  # a thing further out hangs in the room: the key plan shows it
DATA_SYMBOLS = {
    "camera": "camera_fixed",
    "data outlet": "data_outlet",
    "access point": "access_point",
    "recorder": "recorder",
    "12 V supply": "power_supply",
    "PoE switch": "poe_switch",
}
STANDARD_OUTLINE = (100.0, 100.0)


@dataclass(frozen=True)
class Thing:
    """A thing on a wall: centre, true outline in mm, and what its callout says under its tag."""

    tag: str
    group: Group
    words: str
    at: WallPoint
    width_mm: float
    height_mm: float
    state: State
    is_outside: bool
    lines: tuple[str, ...]
    symbol: str
    title: str = ""  # tag, what it is and its circuit in words, shown on hover
    circuit: str = ""  # tag of its circuit or data link


def things_on(installation: Installation, wall: Wall) -> tuple[Thing, ...]:
    """Return what stands on a wall, left to right."""
    found = [_board(b) for b in installation.boards.values() if _is_on(b.position, wall)]
    cabinet = installation.cabinet
    if cabinet is not None and _is_on(cabinet.position, wall):
        found.append(_cabinet(cabinet, in_cabinet(installation)))
    found += [
        _point(p, installation) for p in installation.points.values() if _is_on(p.position, wall)
    ]
    found += [
        _device(d)
        for d in installation.data_devices.values()
        if _is_on(d.position, wall) and not (cabinet is not None and d.kind in IN_CABINET)
    ]
    named = (_named(t, installation) for t in found)
    return tuple(sorted(named, key=lambda t: (t.at.along, t.at.up, t.tag)))


def _named(thing: Thing, installation: Installation) -> Thing:
    """Return a thing with its title: "S1: 13 A socket-outlet, circuit DB1/5L1 Sockets north"."""
    point = installation.points.get(thing.tag)
    board = installation.boards.get(thing.tag)
    circuit = point.circuit if point else board.fed_by if board else ""
    named = installation.circuits.get(circuit)
    words = f"{thing.tag}: {thing.words}{state_behind(thing.state)}"
    if named is not None:
        words += f", {'fed by' if board else 'circuit'} {named.tag} {named.name}"
    return replace(thing, title=words, circuit=named.tag if named else "")


def things_away_from(installation: Installation, wall: Wall) -> tuple[str, ...]:
    """Return the tags of things placed by this wall that hang out in the room."""
    groups = (installation.points, installation.data_devices)
    return tuple(
        tag
        for group in groups
        for tag, thing in group.items()
        if thing.position.wall == wall.name
        and not thing.position.outside
        and thing.position.out_mm > NEAR_WALL_MM
    )


def in_cabinet(installation: Installation) -> tuple[str, ...]:
    """Return the tags of the equipment in the data cabinet."""
    return tuple(d.tag for d in installation.data_devices.values() if d.kind in IN_CABINET)


def name_on_wall(installation: Installation, tag: str) -> str:
    """Return the tag by which a thing is found on a wall: the cabinet for what stands in it."""
    cabinet = installation.cabinet
    return cabinet.tag if cabinet is not None and tag in in_cabinet(installation) else tag


def point_symbol(point: PointServed, installation: Installation) -> str:
    """Return the symbol of a point, as its kind says."""
    kind = point_kind(point.kind)
    circuit = installation.circuits.get(point.circuit)
    three_phase = circuit is not None and circuit.phase == "TP"
    return kind.symbol_for(
        has_rcd=point.rcd is not None, is_three_phase=three_phase, gangs=point.gangs
    )


def point_outline(point: PointServed) -> tuple[float, float]:
    """Return width and height in mm of the outline of a point."""
    try:
        kind = point_kind(point.kind)
    except OutsideTableError:
        return STANDARD_OUTLINE
    return kind.width_mm, kind.height_mm


def _is_on(position: Position, wall: Wall) -> bool:
    return position.wall == wall.name and (position.outside or position.out_mm <= NEAR_WALL_MM)


def _place(position: Position) -> WallPoint:
    out = -position.out_mm - 1.0 if position.outside else position.out_mm
    return WallPoint(position.along_mm, position.up_mm, out)


def _tail(state: State, *, outside: bool) -> list[str]:
    words = [str(state)] if state is not State.NEW else []
    return [*words, "outside face"] if outside else words


def _board(board: Board) -> Thing:
    top = board.position.up_mm + board.height_mm / 2
    centre = height_words(board.position.up_mm)
    lines = [
        f"C/L {centre}, T/O {height_words(top)}",
        *_tail(board.state, outside=board.position.outside),
    ]
    return Thing(
        board.tag,
        "board",
        f"distribution board {board.width_mm:g} × {board.height_mm:g}",
        _place(board.position),
        board.width_mm,
        board.height_mm,
        board.state,
        board.position.outside,
        tuple(lines),
        "distribution_board",
    )


def _cabinet(cabinet: Cabinet, holds: tuple[str, ...]) -> Thing:
    top = cabinet.position.up_mm + cabinet.height_mm / 2
    lines = [f"C/L {height_words(cabinet.position.up_mm)}, T/O {height_words(top)}"]
    lines += [f"{a} {b}".strip() for a, b in zip(holds[::2], (*holds[1::2], ""), strict=False)]
    return Thing(
        cabinet.tag,
        "cabinet",
        f"data cabinet {cabinet.width_mm:g} × {cabinet.height_mm:g}",
        _place(cabinet.position),
        cabinet.width_mm,
        cabinet.height_mm,
        State.NEW,
        cabinet.position.outside,
        tuple(lines),
        "",
    )


def _point(point: PointServed, installation: Installation) -> Thing:
    width, height = point_outline(point)
    position = point.position
    lines = [f"C/L {height_words(position.up_mm)}", *_tail(point.state, outside=position.outside)]
    try:
        symbol = point_symbol(point, installation)
    except OutsideTableError:
        symbol = ""
    return Thing(
        point.tag,
        "point",
        point.words,
        _place(position),
        width,
        height,
        point.state,
        position.outside,
        tuple(lines),
        symbol,
    )


def _device(device: DataDevice) -> Thing:
    width, height = data_device_outline(device.kind)
    position = device.position
    lines = [f"C/L {height_words(position.up_mm)}"]
    lines += _tail(device.state, outside=position.outside)
    words = f"camera: {device.views}" if device.kind == "camera" and device.views else device.kind
    return Thing(
        device.tag,
        "data",
        words,
        _place(position),
        width,
        height,
        device.state,
        position.outside,
        tuple(lines),
        DATA_SYMBOLS[device.kind],
    )
