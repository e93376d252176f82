"""What sort of thing a point is, by the words of its kind."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.resolve.starters import STARTER

if TYPE_CHECKING:
    from asfitted.resolve.installation import Installation, PointServed

_MOTORS = frozenset({"motor", "fan"})
_MACHINES = _MOTORS | {"heating load", "equipment"}


def is_socket(point: PointServed) -> bool:
    """Tell whether a point is a socket-outlet of any sort."""
    return "socket" in point.kind


def is_industrial_socket(point: PointServed) -> bool:
    """Tell whether a point is a socket-outlet other than a 13 A one."""
    return is_socket(point) and not point.kind.startswith("13 A")


def is_isolator(point: PointServed) -> bool:
    """Tell whether a point is an isolator."""
    return point.kind == "isolator"


def can_isolate(point: PointServed) -> bool:
    """Tell whether a point can cut off what follows it: an isolator or a switched fused spur."""
    return is_isolator(point) or point.kind == "fused spur"


def is_machine(point: PointServed) -> bool:
    """Tell whether a point is a motor or another fixed machine that needs isolating nearby."""
    return point.kind in _MACHINES


def is_motor(point: PointServed) -> bool:
    """Tell whether a point is driven by a motor."""
    return point.kind in _MOTORS


def is_starter(point: PointServed) -> bool:
    """Tell whether a point is the starter of a motor in its own enclosure."""
    return point.kind == STARTER


def is_switch(point: PointServed) -> bool:
    """Tell whether a point is a light switch."""
    return point.kind == "light switch"


def is_fed_at_12_v(installation: Installation, tag: str) -> bool:
    """Tell whether a data device is a camera fed at 12 V d.c. and not over its data link."""
    device = installation.data_devices[tag]
    return device.kind == "camera" and device.poe_class is None and not device.port
