"""Parts shared by symbols: one contact as the base, and the marks that say what it can do.

The meaning of the marks at the fixed contact (bar, bar with circle, saltire) follows the qualifying
symbols of IEC 60617-7; drawn from memory of that standard, to proportions of our own.
"""

from __future__ import annotations

from typing import Any

from asfitted.draw.symbols._strokes import arc, circle, letters, line, rect

#: Where wires end on a symbol that stands in a conductor, and on one at the end of a conductor.
IN_LINE = ("supply", "load")
AT_END = ("supply",)


def make_contact(fixed_at: float = 3.0) -> list[Any]:
    """Return an open contact: the fixed stub down to ``fixed_at``, and the blade with its stub."""
    return [line(5, 0, 5, fixed_at), line(5, 10, 5, 7, 2.5, 3)]


def isolating_bar(y: float = 3.0) -> Any:
    """Return the bar across the fixed contact: isolating distance."""
    return line(3.8, y, 6.2, y)


def load_break_circle() -> Any:
    """Return the small circle under the bar: may be opened under load."""
    return circle(5, 3.5, 0.6)


def saltire(x: float = 5.0, y: float = 3.0, half: float = 0.9) -> list[Any]:
    """Return the cross that stands for breaking fault current."""
    return [
        line(x - half, y - half, x + half, y + half),
        line(x + half, y - half, x - half, y + half),
    ]


def switch_disconnector() -> list[Any]:
    """Return a contact with bar and circle."""
    return [*make_contact(2.9), isolating_bar(2.9), load_break_circle()]


def circuit_breaker() -> list[Any]:
    """Return a contact with the saltire."""
    return [*make_contact(), *saltire()]


def residual_current_ring() -> list[Any]:
    """Return the summation ring round the outgoing conductor and its trip link to the blade."""
    link = line(3.9, 8.5, 1.2, 8.5, 1.2, 5, 3.75, 5, dashed=True, narrow=True)
    return [circle(5, 8.5, 1.1), link]


def contactor_contact() -> list[Any]:
    """Return a contact with the half circle of a contactor, in the upper half of the box."""
    return [line(5, 0, 5, 2), arc(5, 0.6, 5.7, 1.3, 5, 2), line(5, 5.6, 5, 4.8, 2.9, 2.1)]


def thermal_relay(top: float) -> list[Any]:
    """Return the box of a thermal overload relay from ``top``, its conductor stepped inside."""
    foot = top + 3.2
    inside = line(5, top, 5, top + 0.7, 6.1, top + 0.7, 6.1, foot - 0.7, 5, foot - 0.7, 5, foot)
    return [rect(2.8, top, 4.4, 3.2), inside, line(5, foot, 5, 10)]


def fuse_on_blade(fixed_at: float = 3.0) -> list[Any]:
    """Return a contact whose moving blade is a fuse."""
    return [*make_contact(fixed_at), rect(2.9, 3.4, 1.7, 3.2, turn_deg=-32)]


def socket_outlet(crown: float = 4.0) -> list[Any]:
    """Return the half circle with the bar of a protective contact, its crown at ``crown``."""
    cup = arc(1.5, crown + 3.5, 5, crown, 8.5, crown + 3.5)
    return [line(5, 0, 5, crown), cup, line(1.5, crown, 8.5, crown)]


def three_strokes() -> list[Any]:
    """Return three short strokes across the top of the stem: three phases."""
    return [line(3.9, y + 0.5, 6.1, y - 0.5) for y in (0.8, 2.05, 3.3)]


def oblique_stroke() -> list[Any]:
    """Return a conductor with one oblique stroke across it."""
    return [line(5, 0, 5, 10), line(3, 6.15, 7, 3.85)]


def machine(letter: str, phases: str) -> list[Any]:
    """Return the circle of a rotating machine with its letter and kind of supply."""
    return [circle(5, 5, 4.2), letters(5, 4.9, letter), letters(5, 8, phases)]


def square() -> Any:
    """Return the square of a unit that is shown by what stands inside it."""
    return rect(1, 1, 8, 8)


def pole_stubs(top: float, bottom: float) -> list[Any]:
    """Return the two stubs of a box that stands in a conductor."""
    return [line(5, 0, 5, top), line(5, bottom, 5, 10)]
