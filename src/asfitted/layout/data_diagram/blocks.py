"""Blocks of the data diagram: a recorder or switch with its rows, and what is said of it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.layout.data_diagram.hard_wrap import hard_wrap
from asfitted.layout.data_diagram.links import cables_by_device, recorder_of
from asfitted.layout.data_diagram.measuring import LINE, MeasuredRow, measured
from asfitted.layout.data_diagram.rows import link_rows
from asfitted.layout.lettering import BODY, TAG, line_pitch_mm

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.calculate.results import EquipmentResult
    from asfitted.layout.data_diagram.columns import Columns
    from asfitted.layout.sheet_model import Model
    from asfitted.resolve.installation import DataDevice

EQUIPMENT_SYMBOLS = {
    "recorder": "recorder",
    "12 V supply": "power_supply",
    "PoE switch": "poe_switch",
}
SIGN_MM = 10.0
FLAG_SIGN_MM = 7.0
NO_EQUIPMENT = "where the cable starts is not recorded"


@dataclass(frozen=True)
class EquipmentWords:
    """A piece of equipment: its sign, and its words in lines that fit the column."""

    tag: str
    symbol: str
    tag_lines: tuple[str, ...]
    kind_lines: tuple[str, ...]
    lines: tuple[str, ...]
    patch: str = ""  # port that its patch lead goes to
    patch_lines: int = 0  # lines that the words on the patch lead need

    @property
    def head_mm(self) -> float:
        """Height of sign, tag and kind."""
        words = len(self.tag_lines) * line_pitch_mm(TAG) + len(self.kind_lines) * LINE
        return max(SIGN_MM, words) + 1.5

    @property
    def height_mm(self) -> float:
        """Height of it all, gap and flag of a patch lead included."""
        return self.head_mm + len(self.lines) * LINE + self.patch_mm + 4.0

    @property
    def patch_mm(self) -> float:
        """Height of the flag of its patch lead with its words, 0 without one."""
        return max(self.patch_lines * LINE + 4.0, FLAG_SIGN_MM + 3.0) if self.patch else 0.0


@dataclass(frozen=True)
class Block:
    """Equipment with the rows that start from it, in order of channel or port."""

    tag: str
    location: str  # what it stands in, in words; blocks that stand together share it
    rows: tuple[MeasuredRow, ...]
    equipment: tuple[EquipmentWords, ...]


def blocks_of(model: Model, columns: Columns) -> tuple[Block, ...]:
    """Return the blocks of the job: recorders, switches, then what starts nowhere known."""
    rows = link_rows(model.installation, model.results)
    devices = model.installation.data_devices
    tags = dict.fromkeys(row.block for row in rows)
    for device in devices.values():  # equipment that nothing is joined to is shown all the same
        if device.kind in {"recorder", "PoE switch"}:
            tags.setdefault(device.tag)
    shown: set[str] = set()
    blocks = []
    for tag in tags:
        mine = [row for row in rows if row.block == tag]
        supplies = dict.fromkeys(supply for row in mine for supply in row.supplies)
        members = [t for t in (tag, *supplies) if t in devices]
        shown.update(members)
        measured_rows = tuple(measured(row, columns) for row in mine)
        equipment = tuple(_words(devices[t], model, columns) for t in members)
        location = _location(devices[tag], model) if tag in devices else NO_EQUIPMENT
        blocks.append(Block(tag, location, measured_rows, equipment))
    return tuple(blocks)


def _location(device: DataDevice, model: Model) -> str:
    """Return what the equipment stands in, where that is and what feeds it."""
    installation = model.installation
    cabinet = installation.cabinet
    if cabinet is None or device.position != cabinet.position:
        return f"{device.position.words}: feed not recorded"
    feed = "feed not recorded"
    if cabinet.fed_from in installation.points:
        point = installation.points[cabinet.fed_from]
        feed = f"fed from {point.tag}, {point.circuit}"
    return f"{cabinet.tag}, {cabinet.position.words}: {feed}"


def _words(device: DataDevice, model: Model, columns: Columns) -> EquipmentWords:
    room = columns.equipment_mm
    beside = room - SIGN_MM - 4.0
    said = [_total(total) for total in model.results.equipment if total.tag == device.tag]
    if spare := spare_places(device, model):
        said.append(spare)
    lines = [line for words in said for line in hard_wrap(words, room, BODY)]
    return EquipmentWords(
        device.tag,
        EQUIPMENT_SYMBOLS[device.kind],
        tuple(hard_wrap(device.tag, beside, TAG, bold=True)),
        tuple(hard_wrap(device.kind, beside, BODY)),
        tuple(lines),
        device.port,
        len(patch_words(device.port, "sheet 000, zone M0", columns)) if device.port else 0,
    )


def patch_words(port: str, there: str, columns: Columns) -> list[str]:
    """Return the words beside the flag of a patch lead, in lines that fit."""
    said = f"patch lead to {port.replace('/', ' port ')}: {there}"
    return hard_wrap(said, columns.equipment_mm - FLAG_SIGN_MM - 2.0, BODY)


def _total(total: EquipmentResult) -> str:
    """Return used and available of one thing in words."""
    of = "not recorded" if total.available is None else f"{total.available:g}"
    unit = "" if total.unit == total.what else total.unit
    return f"{total.what}: {total.used:.3g} of {of} {unit}".rstrip()


def spare_places(device: DataDevice, model: Model) -> str:
    """Return the free channels or ports of a piece of equipment: ``spare ports: 3 to 7``."""
    devices = model.installation.data_devices.values()
    if device.kind == "PoE switch":
        name, count = "ports", device.ports or 0
        used = {
            int(number)
            for d in devices
            for switch, _, number in (d.port.partition("/"),)
            if switch == device.tag and number.isdecimal()
        }
    elif device.kind == "recorder":
        name, count = "channels", device.channels or 0
        cables = cables_by_device(model.installation)
        used = {
            d.channel
            for d in devices
            if d.channel is not None
            and recorder_of(d, cables.get(d.tag), model.installation) == device.tag
        }
    else:
        return ""
    free = [n for n in range(1, count + 1) if n not in used]
    return f"spare {name}: {ranges(free)}" if free else f"no spare {name}"


def ranges(numbers: Sequence[int]) -> str:
    """Return numbers as ranges.

    Example:
        >>> ranges([3, 4, 5, 8])
        '3 to 5, 8'
    """
    runs: list[list[int]] = []
    for number in numbers:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    return ", ".join(str(r[0]) if len(r) == 1 else f"{r[0]} to {r[-1]}" for r in runs)
