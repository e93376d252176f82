"""Boards, devices, accessories, boxes, data equipment, labels and sealing."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from asfitted.calculate.materials.items import MaterialLine

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from asfitted.calculate.materials.items import Group
    from asfitted.calculate.results import CalculationResults
    from asfitted.resolve.installation import Installation

#: Kinds of point that sit on a box of their own: common practice.
_BOXED = ("13 A socket", "fused spur", "light switch")
_GANGS = {1: "single", 2: "twin", 3: "triple"}
#: Kinds of point that come with the machine or load, not from the electrician's list.
_BY_OTHERS = ("motor", "heating load", "fan", "equipment")


def accessory_lines(
    installation: Installation, results: CalculationResults
) -> tuple[MaterialLine, ...]:
    """Return everything that is counted by the piece and named in the spec."""
    return (
        *_counted("Boards and accessories", _boards(installation)),
        *_counted("Boards and accessories", _devices(installation)),
        *_counted("Boards and accessories", _points(installation)),
        *_counted("Boards and accessories", _boxes(installation)),
        *_counted("Cameras and data", _equipment(installation)),
        *_counted("Cameras and data", _patch_leads(installation)),
        *_counted("Labels and sealing", _labels(installation)),
        *_counted("Labels and sealing", _sealing(installation, results)),
    )


def _counted(group: Group, found: Iterable[tuple[str, str]]) -> Iterator[MaterialLine]:
    """Yield one line for each item and basis."""
    for (item, basis), count in Counter(found).items():
        yield MaterialLine(group, item, count, count, "each", "", basis)


def _boards(installation: Installation) -> Iterator[tuple[str, str]]:
    for board in installation.boards.values():
        if board.state == "new":
            phases = "three-phase" if board.phases == 3 else "single-phase"
            switch = f", main switch {board.main_switch.words}" if board.main_switch else ""
            item = f"board, {board.way_count} ways {phases}, {board.ip}{switch}"
            yield item, "named in the spec"


def _devices(installation: Installation) -> Iterator[tuple[str, str]]:
    for circuit in installation.circuits.values():
        if circuit.state == "new":
            yield circuit.device.words, "one for each new circuit"


def _points(installation: Installation) -> Iterator[tuple[str, str]]:
    for point in installation.points.values():
        if point.state != "new":
            continue
        if point.kind in _BY_OTHERS:
            continue
        ip = f", {point.ip}" if point.ip and point.ip != "not recorded" else ""
        yield f"{point.words}{ip}", "named in the spec"


def _boxes(installation: Installation) -> Iterator[tuple[str, str]]:
    for point in installation.points.values():
        if point.state == "new" and point.kind in _BOXED:
            gangs = _GANGS.get(point.gangs, f"{point.gangs}-gang")
            yield f"surface box, {gangs}", "one for each accessory, common practice"
    for device in installation.data_devices.values():
        if device.state == "new" and device.kind == "data outlet":
            yield "surface box, single", "one for each accessory, common practice"


def _equipment(installation: Installation) -> Iterator[tuple[str, str]]:
    for device in installation.data_devices.values():
        if device.state == "new":
            parts: list[str] = [device.kind]
            if device.ports:
                parts.append(f"{device.ports} ports")
            if device.channels:
                parts.append(f"{device.channels} channels")
            if device.disk_tb:
                parts.append(f"{device.disk_tb:g} TB")
            if device.rating_a:
                parts.append(f"{device.rating_a:g} A")
            if device.kind == "camera":
                parts += [device.signal] if device.signal else []
                lens = f"{device.lens_mm:g} mm lens" if device.lens_mm else "lens not recorded"
                parts.append(lens)
            yield ", ".join(parts), "named in the spec"
    cabinet = installation.cabinet
    if cabinet is not None:
        size = f"{cabinet.width_mm:g} × {cabinet.height_mm:g}"
        yield f"data cabinet, {size}", "named in the spec"


def _patch_leads(installation: Installation) -> Iterator[tuple[str, str]]:
    """Yield the lead from a recorder to its switch port, which is no cable of the schedule."""
    for device in installation.data_devices.values():
        if device.kind == "recorder" and device.port and device.state == "new":
            switch = device.port.partition("/")[0]
            basis = (
                f"{device.tag} to {device.port}: in the cabinet, length to suit (common practice)"
            )
            yield f"patch lead, RJ45 both ends, {device.tag} to {switch}", basis


def _labels(installation: Installation) -> Iterator[tuple[str, str]]:
    for cable in installation.cables.values():
        if cable.state == "new":
            yield from [("cable label", "two for each new cable")] * 2
    for circuit in installation.circuits.values():
        if circuit.state == "new":
            yield "way label", "one for each new circuit"
    states = (
        *(board.state for board in installation.boards.values()),
        *(point.state for point in installation.points.values()),
        *(device.state for device in installation.data_devices.values()),
    )
    for state in states:
        if state == "new":
            yield "device label", "one for each new board, point and device"


def _sealing(installation: Installation, results: CalculationResults) -> Iterator[tuple[str, str]]:
    """Yield a seal for each hole through a wall, those that cables share once, and passages."""
    holes = set()
    for tag, route in results.routes.items():
        if installation.cables[tag].state != "new":
            continue
        for leg in route.legs:
            if leg.kind == "through-wall":
                ends = sorted((leg.start, leg.end))
                holes.add((leg.wall, *(round(v) for end in ends for v in end)))
    for _ in holes:
        yield "hole through a wall made good", "each hole; rating of the wall, BS 7671 527.2"
    for passage in installation.passages.values():
        if passage.state == "new" and passage.fire_stopping != "no":
            rating = passage.fire_resistance_min
            words = "rating not recorded" if rating is None else f"{rating:g} min"
            yield f"passage through a {passage.through} sealed, {words}", "each passage, 527.2"
