"""The equipment schedule: boards, points, data equipment and cabinet, one row each."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from asfitted.layout.breakable_words import with_breakable_words
from asfitted.layout.given_words import NOT_RECORDED, state_word
from asfitted.layout.schedule.words import PLATE_COLUMNS, PLATE_MM, place, plate_cells
from asfitted.layout.table import Column, Table
from asfitted.reference.points import point_kind

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.layout.sheet_model import Model
    from asfitted.resolve.installation import (
        Board,
        Cabinet,
        DataDevice,
        Installation,
        PointServed,
    )

COLUMNS = (
    Column("Tag", wraps=False),
    Column("What it is"),
    Column("Name"),
    Column("Place, height above floor (mm)"),
    Column("Rating"),
    Column("IP", wraps=False),
    Column("Fed from"),
    *(replace(column, least_mm=PLATE_MM) for column in PLATE_COLUMNS),
    Column("State"),
)
#: Headings of the kinds of point, in the order in which the schedule lists them.
GROUPS = ("Isolators and switches", "Socket-outlets", "Accessories", "Lighting", "Machines")


def equipment_schedule(model: Model) -> Table:
    """Return one row for each board, point, cabinet and piece of data equipment; no cameras.

    Cameras have a schedule of their own.
    """
    rows = tuple(_rows(model.installation))
    return with_breakable_words(Table(COLUMNS, rows, tuple(row[0] for row in rows)))


def _rows(installation: Installation) -> Iterator[tuple[str, ...]]:
    for board in installation.boards.values():
        yield _board(board)
    for point in sorted(installation.points.values(), key=_group):
        yield _point(point, installation)
    if installation.cabinet is not None:
        yield _cabinet(installation.cabinet)
    for device in installation.data_devices.values():
        if device.kind != "camera":
            yield _device(device, installation)


def _group(point: PointServed) -> int:
    """Return the place of a point's heading; the sort keeps the order of the spec within it."""
    heading = point_kind(point.kind).legend
    return GROUPS.index(heading) if heading in GROUPS else len(GROUPS)


def _board(board: Board) -> tuple[str, ...]:
    phases = "three-phase" if board.phases == 3 else "single-phase"
    switch = "" if board.main_switch is None else f", main switch {board.main_switch.words}"
    rating = NOT_RECORDED if board.rating_a is None else f"{board.rating_a:g} A"
    return (
        board.tag,
        f"{phases} board, {board.way_count} ways",
        "–" if board.name in {board.tag, ""} else board.name,
        place(board.position),
        rating + switch,
        board.ip or NOT_RECORDED,
        board.fed_by or NOT_RECORDED,
        *plate_cells(board.plate),
        state_word(board.state) or "new",
    )


def _point(point: PointServed, installation: Installation) -> tuple[str, ...]:
    return (
        point.tag,
        point.words,
        "–" if point.name in {point.tag, point.kind, ""} else point.name,
        place(point.position),
        _rating(point),
        point.ip or NOT_RECORDED,
        _fed_from(point, installation),
        *plate_cells(point.plate),
        state_word(point.state) or "new",
    )


def _rating(point: PointServed) -> str:
    """Return rating, fuse and load of a point, as far as they are given."""
    parts = [] if point.rating_a is None else [f"{point.rating_a:g} A"]
    if point.fuse_a is not None:
        parts.append(f"fuse {point.fuse_a:g} A")
    if point.load_w is not None:
        load = f"{point.load_w / 1000:g} kW" if point.load_w >= 1000 else f"{point.load_w:g} W"
        parts.append(f"load {load}")
    elif point.load_a is not None:
        parts.append(f"load {point.load_a:g} A")
    return ", ".join(parts) if parts else NOT_RECORDED


def _fed_from(point: PointServed, installation: Installation) -> str:
    """Return the circuit, and the thing next before the point where it is not the board."""
    cable = next((c for c in installation.cables.values() if c.to_end == point.tag), None)
    if cable is None or cable.from_end in installation.boards:
        return point.circuit
    return f"{point.circuit} through {cable.from_end}"


def _cabinet(cabinet: Cabinet) -> tuple[str, ...]:
    return (
        cabinet.tag,
        f"data cabinet {cabinet.width_mm:g} × {cabinet.height_mm:g} mm",
        "–",
        place(cabinet.position),
        "–",
        NOT_RECORDED,
        cabinet.fed_from or NOT_RECORDED,
        *plate_cells(cabinet.plate),
        "new",  # a job file that shows an older cabinet has no word for it: what is given comes new
    )


def _device(device: DataDevice, installation: Installation) -> tuple[str, ...]:
    cable = next((c for c in installation.cables.values() if c.to_end == device.tag), None)
    feed = device.port.replace("/", " port ") or (cable.from_end if cable else "")
    is_equipment = device.kind in {"recorder", "12 V supply", "PoE switch"}
    if is_equipment:
        feed = installation.cabinet.fed_from if installation.cabinet else ""
    return (
        device.tag,
        device.kind,
        "–" if device.name in {device.tag, device.kind, ""} else device.name,
        place(device.position),
        _capacity(device),
        NOT_RECORDED,
        feed or NOT_RECORDED,
        *plate_cells(device.plate),
        state_word(device.state) or "new",
    )


def _capacity(device: DataDevice) -> str:
    """Return what a piece of data equipment is rated for."""
    parts = [
        f"{value:g}{unit}"
        for value, unit in (
            (device.channels, " channels"),
            (device.disk_tb, " TB"),
            (device.ports, " ports"),
            (device.budget_w, " W PoE budget"),
            (device.output_v, " V d.c."),
            (device.rating_a, " A"),
        )
        if value is not None
    ]
    if device.poe_class is not None:
        parts.append(f"PoE class {device.poe_class}")
    return ", ".join(parts) if parts else "–"
