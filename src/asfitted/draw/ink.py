"""Colours, dash lengths and number format shared by every way of drawing."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from asfitted.errors import OutputError

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import Pattern, Stroke, Tone

#: Grey is 7:1 on white; tint is under 1.2:1 and so reads as paper, not as ink (WCAG 2 contrast).
TONES: dict[Tone, str] = {
    "black": "#000000",
    "grey": "#595959",
    "tint": "#ececec",
    "white": "#ffffff",
}
#: Dash and gap lengths in line widths (memory of ISO 128-2).
PATTERNS: dict[Pattern, tuple[float, ...]] = {
    "continuous": (),
    "dashed": (12, 3),
    "long_dash_dot": (24, 3, 0.5, 3),
    "long_dash_double_dot": (24, 3, 0.5, 3, 0.5, 3),
    "dotted": (0.5, 3),
}
#: Corners are mitred down to about 29 degrees, sharper ones are cut off; SVG and PDF must agree.
MITRE_LIMIT = 4


def dashes_mm(stroke: Stroke) -> tuple[float, ...]:
    """Return the dash and gap lengths of a stroke in mm; empty for a continuous one."""
    return tuple(mm(length * stroke.width_mm) for length in PATTERNS[stroke.pattern])


def mm(value: float) -> float:
    """Return a length rounded to a micrometre, a whole number without a point, and never -0.

    Raises:
        OutputError: the value is not a finite number.
    """
    if not math.isfinite(value):
        raise OutputError(f"a sheet holds a length that is not a number: {value!r}")
    rounded = round(value, 3)
    return int(rounded) if rounded == int(rounded) else rounded
