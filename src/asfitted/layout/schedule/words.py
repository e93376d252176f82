"""How figures read in schedules. A figure that is not known says so; nothing is left blank."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from asfitted.layout.figures import metres, place_m, rounded
from asfitted.layout.given_words import NOT_RECORDED
from asfitted.layout.table import Column

if TYPE_CHECKING:
    from asfitted.resolve.installation import Cable, Device, Installation, Plate, Position

NOT_CHECKED = "not checked"


def figure(value: float | None, digits: int, unit: str = "", missing: str = NOT_CHECKED) -> str:
    """Return a figure with fixed decimals and its unit, or the words for a missing one."""
    if value is None:
        return missing
    text = rounded(value, digits)
    return f"{text} {unit}" if unit else text


def size(csa_mm2: float | None) -> str:
    """Return a conductor size as written on site: ``2.5 mm²``."""
    return NOT_RECORDED if csa_mm2 is None else f"{csa_mm2:g} mm²"


def place(position: Position) -> str:
    """Return a position in short words: wall, along, height of the centre line."""
    if not position.wall:
        return position.words
    side = " outside" if position.outside else ""
    out = f", {place_m(position.out_mm)} out" if position.out_mm else ""
    return f"wall {position.wall}{side} {place_m(position.along_mm)}, +{position.up_mm:.0f}{out}"


#: Columns of what is read off a rating plate, in the order of ``plate_cells``.
PLATE_COLUMNS = (Column("Make"), Column("Model"), Column("Serial number"))
PLATE_MM = 26.0  # such a column holds "not recorded" in one line


def plate_cells(plate: Plate) -> tuple[str, str, str]:
    """Return make, model and serial number, each "not recorded" where it was not given."""
    return (
        plate.make or NOT_RECORDED,
        plate.model or NOT_RECORDED,
        plate.serial or NOT_RECORDED,
    )


def end_words(installation: Installation, tag: str) -> str:
    """Return the end of a cable: its tag, with the name of the point where it has one."""
    if tag in installation.points:
        point = installation.points[tag]
        return f"{tag} {point.name}".strip()
    return tag


def device_words(device: Device) -> str:
    """Return a device without its residual part: ``RCBO B20 6 kA``, ``C32 TP 6 kA``."""
    if device.rcd is None:
        return device.words
    return re.sub(r"\s*\d+ mA( type \w+)?( delayed)?", "", device.words)


def length_words(cable: Cable, length_m: float | None) -> str:
    """Return a length in metres, marked (m) when it was measured on site."""
    if length_m is None:
        return NOT_RECORDED
    return metres(length_m) + (" (m)" if cable.measured_length_m is not None else "")
