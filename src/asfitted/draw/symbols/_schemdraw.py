"""The one place where schemdraw is imported, and the reason why it never brings matplotlib along.

schemdraw loads its matplotlib backend whenever matplotlib happens to be installed. That is slow
and would make start-up depend on the machine. We only declare symbols with it, so that backend is
hidden for the length of the import.
"""

from __future__ import annotations

import importlib
import sys
from typing import Any

_MATPLOTLIB_BACKEND = "schemdraw.backends.mpl"


def _import_without_matplotlib() -> Any:
    hidden = _MATPLOTLIB_BACKEND not in sys.modules
    if hidden:
        sys.modules[_MATPLOTLIB_BACKEND] = None  # type: ignore[assignment]  # None makes import fail
    try:
        schemdraw = importlib.import_module("schemdraw")
        elements = importlib.import_module("schemdraw.elements")
    finally:
        if hidden:
            del sys.modules[_MATPLOTLIB_BACKEND]
    schemdraw.use("svg")
    return schemdraw, elements


_schemdraw, _elements = _import_without_matplotlib()

Element: Any = _elements.Element
Segment: Any = _schemdraw.Segment
SegmentArc: Any = _schemdraw.SegmentArc
SegmentCircle: Any = _schemdraw.SegmentCircle
SegmentPoly: Any = _schemdraw.SegmentPoly
SegmentText: Any = _schemdraw.SegmentText
