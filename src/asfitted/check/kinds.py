"""What sort of thing a point is, by the words of its kind."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from asfitted.resolve.installation import PointServed

_MACHINES = frozenset({"motor", "fan", "machine", "heating load", "pump", "fixed load"})
_LUMINAIRES = ("luminaire", "floodlight", "downlight", "lamp", "bulkhead")


def is_socket(point: PointServed) -> bool:
    """Tell whether a point is a socket-outlet of any sort."""
    return "socket" in point.kind


def is_industrial_socket(point: PointServed) -> bool:
    """Tell whether a point is a socket-outlet other than a 13 A one."""
    return is_socket(point) and not point.kind.startswith("13 A")


def is_isolator(point: PointServed) -> bool:
    """Tell whether a point is an isolator."""
    return "isolator" in point.kind


def is_machine(point: PointServed) -> bool:
    """Tell whether a point is a motor or another fixed machine that needs isolating nearby."""
    return point.kind in _MACHINES


def is_motor(point: PointServed) -> bool:
    """Tell whether a point is driven by a motor."""
    return point.kind in {"motor", "fan", "pump"}


def is_luminaire(point: PointServed) -> bool:
    """Tell whether a point is a light fitting."""
    return any(word in point.kind for word in _LUMINAIRES)


def is_switch(point: PointServed) -> bool:
    """Tell whether a point is a light switch."""
    return point.kind == "light switch"
