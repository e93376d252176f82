"""Which things of a job have a rating plate to be read, and what was not read of each."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.kinds import is_machine, is_starter

if TYPE_CHECKING:
    from asfitted.resolve.installation import Installation, Plate

#: Data devices that bear a serial number; an outlet has none.
_DATA = frozenset({"recorder", "12 V supply", "PoE switch", "camera", "access point"})


def plates_of(installation: Installation) -> dict[str, Plate]:
    """Return by tag the rating plates of what stays: boards, machines, starters, data devices.

    Accessories such as socket-outlets bear no serial number: none is owed for them.
    """
    found = {b.tag: b.plate for b in installation.boards.values() if b.state != "removed"}
    for point in installation.points.values():
        if point.state != "removed" and (is_machine(point) or is_starter(point)):
            found[point.tag] = point.plate
    for device in installation.data_devices.values():
        if device.state != "removed" and device.kind in _DATA:
            found[device.tag] = device.plate
    return found


def plates_not_read(installation: Installation) -> dict[tuple[str, ...], list[str]]:
    """Return the tags of what was not wholly read, by what is missing of it."""
    found: dict[tuple[str, ...], list[str]] = {}
    for tag, plate in plates_of(installation).items():
        if plate.missing:
            found.setdefault(plate.missing, []).append(tag)
    return found
