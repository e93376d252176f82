"""Cables laid into a cross-section one by one, each at its true size, none over another.

On tray, ladder and basket they lie in one layer. In trunking, conduit and duct each cable in turn
is let down where it comes to rest lowest, then furthest left; a few orders are tried. What finds no
room is said not to fit: nothing is squeezed or drawn smaller. Lengths are mm of the real thing; x
runs right and y UP from the inside bottom left corner of the containment.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING, Protocol

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

PLACES = 160  # even places across that are tried
SLACK_MM = 1e-6


@dataclass(frozen=True)
class CableShape:
    """The outline of one piece in a cross-section, lying flat: a circle, or a flat cable.

    ``tag`` names its cable; the conductors of a cable of singles share it.
    """

    tag: str
    width_mm: float
    height_mm: float

    @cached_property
    def radius_mm(self) -> float:
        """Radius of its rounded ends."""
        return self.height_mm / 2

    @cached_property
    def reach_mm(self) -> float:
        """From its middle to the middle of a rounded end; 0 for a circle."""
        return max(self.width_mm - self.height_mm, 0.0) / 2

    @property
    def area_mm2(self) -> float:
        """Area of its outline."""
        return math.pi * self.radius_mm**2 + 2 * self.reach_mm * self.height_mm


@dataclass(frozen=True)
class Laid:
    """A piece with the place of its middle."""

    shape: CableShape
    x: float
    y: float


@dataclass(frozen=True)
class Packed:
    """All pieces that found room, and those that did not."""

    laid: tuple[Laid, ...]
    left_out: tuple[CableShape, ...]


def clearance_mm(one: Laid, other: Laid) -> float:
    """Return the clear distance of two pieces, below nought where they overlap."""
    across = max(abs(one.x - other.x) - one.shape.reach_mm - other.shape.reach_mm, 0.0)
    middle = math.hypot(across, one.y - other.y)
    return middle - one.shape.radius_mm - other.shape.radius_mm


class Hollow(Protocol):
    """The inside of a containment: how low and how high the middle of a piece may be at x."""

    @property
    def span(self) -> tuple[float, float]:
        """From and to across, mm."""

    def limits(self, shape: CableShape, x: float) -> tuple[float, float] | None:
        """Return the least and greatest height of the middle, or None where it does not go in."""


@dataclass(frozen=True)
class Trough:
    """The inside of trunking, or of one compartment of it."""

    x0: float
    x1: float
    height: float

    @property
    def span(self) -> tuple[float, float]:
        """From and to across, mm."""
        return self.x0, self.x1

    def limits(self, shape: CableShape, x: float) -> tuple[float, float] | None:
        """Return how low and high the middle of a piece may be."""
        half = shape.width_mm / 2
        if x - half < self.x0 - SLACK_MM or x + half > self.x1 + SLACK_MM:
            return None
        r = shape.radius_mm
        return None if 2 * r > self.height + SLACK_MM else (r, self.height - r)


@dataclass(frozen=True)
class Bore:
    """The inside of conduit or duct; its lowest point is at (radius, 0)."""

    radius: float

    @property
    def span(self) -> tuple[float, float]:
        """From and to across, mm."""
        return 0.0, 2 * self.radius

    def limits(self, shape: CableShape, x: float) -> tuple[float, float] | None:
        """Return how low and high the middle of a piece may be."""
        room = self.radius - shape.radius_mm
        off = abs(x - self.radius) + shape.reach_mm
        if room < -SLACK_MM or off > room + SLACK_MM:
            return None
        rise = math.sqrt(max(room**2 - off**2, 0.0))
        return self.radius - rise, self.radius + rise


def pack(hollow: Hollow, shapes: Sequence[CableShape]) -> Packed:
    """Lay pieces into a hollow; the first order in which all find room, else the fullest one."""
    tries = []
    for order in _orders(shapes):
        packed = _let_down(hollow, order)
        if not packed.left_out:
            return packed
        tries.append(packed)
    return max(tries, key=lambda p: len(p.laid)) if tries else Packed((), ())


def _orders(shapes: Sequence[CableShape]) -> list[list[CableShape]]:
    """Return orders to try: as they lie, largest first, widest first, smallest first."""
    keys: tuple[Callable[[CableShape], float], ...] = (
        lambda s: -s.area_mm2,
        lambda s: -s.width_mm,
        lambda s: s.area_mm2,
    )
    return [list(shapes), *(sorted(shapes, key=key) for key in keys)] if shapes else []


def _let_down(hollow: Hollow, shapes: Sequence[CableShape]) -> Packed:
    laid: list[Laid] = []
    left: list[CableShape] = []
    for shape in shapes:
        spots = (_rest(hollow, shape, x, laid) for x in _places_across(hollow, shape, laid))
        found = [spot for spot in spots if spot is not None]
        if found:
            laid.append(min(found, key=lambda s: (round(s.y, 4), s.x)))
        else:
            left.append(shape)
    return Packed(tuple(laid), tuple(left))


def _places_across(hollow: Hollow, shape: CableShape, laid: Sequence[Laid]) -> list[float]:
    """Return places across to try: even steps, both sides, and just beside every piece laid."""
    x0, x1 = hollow.span
    half = shape.width_mm / 2
    places = {x0 + (x1 - x0) * i / PLACES for i in range(PLACES + 1)}
    places |= {x0 + half, x1 - half, (x0 + x1) / 2}
    for other in laid:
        reach = half + other.shape.width_mm / 2
        places |= {other.x - reach, other.x + reach}
    return sorted(places)


def _rest(hollow: Hollow, shape: CableShape, x: float, laid: Sequence[Laid]) -> Laid | None:
    """Return a piece let down at x until it rests on the hollow or on other pieces."""
    limits = hollow.limits(shape, x)
    if limits is None:
        return None
    low, high = limits
    reach, radius = shape.reach_mm, shape.radius_mm
    for other in laid:
        across = max(abs(x - other.x) - reach - other.shape.reach_mm, 0.0)
        touch = radius + other.shape.radius_mm
        if across < touch:
            low = max(low, other.y + math.sqrt(touch**2 - across**2))
    return Laid(shape, x, low) if low <= high + SLACK_MM else None


def lay_in_a_layer(
    width_mm: float, edge_mm: float, power: Sequence[CableShape], data: Sequence[CableShape]
) -> Packed:
    """Lay pieces side by side on a tray: power from the left edge, data from the right one."""
    if not power:
        power, data = data, ()
    laid, left = [], []
    x, end = edge_mm, width_mm - edge_mm
    for shape in power:
        if x + shape.width_mm > end + SLACK_MM:
            left.append(shape)
            continue
        laid.append(Laid(shape, x + shape.width_mm / 2, shape.radius_mm))
        x += shape.width_mm
    for shape in data:
        if end - shape.width_mm < x - SLACK_MM:
            left.append(shape)
            continue
        end -= shape.width_mm
        laid.append(Laid(shape, end + shape.width_mm / 2, shape.radius_mm))
    return Packed(tuple(laid), tuple(left))
