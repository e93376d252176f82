"""What a drawn thing is: words to hover over, and the row of a table that tells more.

A thing is known by the tag in the ident of its item. What a sheet kind says of its own items
stays; this fills what it left open.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping

    from asfitted.resolve.installation import Installation

#: Tables in which a thing of each sort has its row.
_CABLE, _EQUIPMENT, _RUN, _CAMERA = (
    "cable-schedule",
    "equipment-schedule",
    "containment-schedule",
    "camera-schedule",
)
_SEGMENTS = re.compile(r"[:\s]+")
_PARTS = re.compile(r"[:/\s]+")


@dataclass(frozen=True)
class Told:
    """What hovering says of a thing, and the ident of its row ("" for none)."""

    title: str
    row: str


def told_things(installation: Installation) -> Mapping[str, Told]:
    """Return, by tag, what there is to say of each thing of the job."""
    told: dict[str, Told] = {}
    for passage in installation.passages.values():
        told[passage.tag] = Told(f"{passage.tag}: passage through a {passage.through}", "")
    for run in installation.containment.values():
        told[run.tag] = Told(f"{run.tag}: {run.words}", f"{_RUN}:{run.tag}")
    for board in installation.boards.values():
        told[board.tag] = Told(
            f"{board.tag}: {board.name}".rstrip(": "), f"{_EQUIPMENT}:{board.tag}"
        )
    for device in installation.data_devices.values():
        table = _CAMERA if device.kind == "camera" else _EQUIPMENT
        told[device.tag] = Told(f"{device.tag}: {device.kind}", f"{table}:{device.tag}")
    for point in installation.points.values():
        words = f"{point.tag}: {point.words}, circuit {point.circuit}"
        told[point.tag] = Told(words, f"{_EQUIPMENT}:{point.tag}")
    for cable in installation.cables.values():
        words = f"{cable.tag}: cable from {cable.from_end} to {cable.to_end}"
        told[cable.tag] = Told(words, f"{_CABLE}:{cable.tag}")
    for circuit in installation.circuits.values():
        row = f"door-chart/{circuit.board}:{circuit.way}"
        told[circuit.tag] = Told(f"{circuit.tag}: {circuit.name}", row)
    return told


def thing_of(ident: str, told: Mapping[str, Told]) -> Told | None:
    """Return what an item's ident names: the first whole segment that is a tag, else a part."""
    for split in (_SEGMENTS, _PARTS):
        for segment in split.split(ident):
            if segment in told:
                return told[segment]
    return None
