"""Takes an SVG of plain outlines as a mark; whatever else it holds is refused by name.

The mark is drawn in the inks of the sheet: fills go by their lightness to black, grey, tint or
white, so that a mark looks on a copy as it looks on the first print.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any
from xml.etree import ElementTree as ET

from asfitted.spec.logo import Logo, LogoOutline, LogoRefusedError, LogoTone
from asfitted.spec.svg_outlines import outlines_of_path, round_outline

if TYPE_CHECKING:
    from collections.abc import Iterator

_SVG = "{http://www.w3.org/2000/svg}"
_SILENT = {"title", "desc", "metadata"}
_ATTRIBUTES = {
    "svg": {"width", "height", "viewBox", "version", "fill", "stroke", "stroke-width", "role"},
    "g": set(),
    "path": {"d"},
    "rect": {"x", "y", "width", "height"},
    "circle": {"cx", "cy", "r"},
    "ellipse": {"cx", "cy", "rx", "ry"},
    "polygon": {"points"},
    "polyline": {"points"},
    "line": {"x1", "y1", "x2", "y2"},
}
_PAINT = {"fill", "stroke", "stroke-width", "id", "fill-rule"}
_NAMED = {"black": 0.0, "white": 1.0, "gray": 0.5, "grey": 0.5}
MAX_OUTLINES, MAX_POINTS = 400, 20_000
_PLAIN = "save it as plain outlines: letters turned into paths, no styles and no transforms"
Outline = tuple[tuple[float, float], ...]


def svg_logo(data: bytes, file: str) -> Logo:
    """Return the mark that an SVG holds.

    Raises:
        LogoRefusedError: not SVG, or it holds more than outlines.
    """
    if re.search(rb"<!(DOCTYPE|ENTITY)", data, re.IGNORECASE):
        raise LogoRefusedError("it declares a document type", _PLAIN)
    try:
        root = ET.fromstring(data)  # noqa: S314 - entities are refused above
    except ET.ParseError as error:
        raise LogoRefusedError(f"it is no readable SVG ({error})") from error
    if root.tag != f"{_SVG}svg":
        raise LogoRefusedError("its root is not <svg>")
    left, top, width, height = _view(root)
    found: list[LogoOutline] = []
    for element, paint in _drawn(root, {"fill": "black"}):
        found += _outlines(element, paint)
    if not found:
        raise LogoRefusedError("it holds no outline")
    if len(found) > MAX_OUTLINES or sum(len(o.points) for o in found) > MAX_POINTS:
        raise LogoRefusedError("it holds too many outlines", "simplify the mark")
    moved = tuple(_moved(outline, -left, -top) for outline in found)
    if any(not (0 <= x <= width and 0 <= y <= height) for o in moved for x, y in o.points):
        raise LogoRefusedError("an outline runs out of its view box")
    return Logo(file, width, height, outlines=moved)


def _view(root: ET.Element) -> tuple[float, float, float, float]:
    numbers = _numbers(root.get("viewBox", ""))
    if not numbers:
        numbers = [0.0, 0.0, _number(root, "width"), _number(root, "height")]
    if len(numbers) != 4 or min(numbers[2:]) <= 0:
        raise LogoRefusedError("it has no size", "give the svg element a viewBox")
    return numbers[0], numbers[1], numbers[2], numbers[3]


def _drawn(element: ET.Element, paint: dict[str, str]) -> Iterator[tuple[ET.Element, Any]]:
    """Yield what is drawn with the paint it inherits; refuse what is not taken."""
    name = element.tag.removeprefix(_SVG) if isinstance(element.tag, str) else "a comment"
    if name in _SILENT:
        return
    if name not in _ATTRIBUTES:
        raise LogoRefusedError(f"it holds <{name}>", _PLAIN)
    for attribute in element.attrib:
        if attribute not in _ATTRIBUTES[name] | _PAINT:
            raise LogoRefusedError(f'<{name}> has "{attribute}"', _PLAIN)
    own = {**paint, **{k: v for k, v in element.attrib.items() if k in _PAINT}}
    if name not in {"svg", "g"}:
        yield element, own
    for inner in element:
        yield from _drawn(inner, own)


def _outlines(element: ET.Element, paint: dict[str, str]) -> list[LogoOutline]:
    fill, line = _tone(paint.get("fill", "black")), _tone(paint.get("stroke", "none"))
    width = float((_numbers(paint.get("stroke-width", "1")) or [1.0])[0]) if line else 0.0
    shapes = _shapes(element)
    if fill is None or len(shapes) == 1:
        return [LogoOutline(points, closed, fill, line, width) for points, closed in shapes]
    # holes: what lies inside an odd number of larger outlines shows the paper
    shapes = sorted(shapes, key=lambda shape: -abs(_area(shape[0])))
    made = []
    for n, (points, closed) in enumerate(shapes):
        depth = sum(_holds(other, points[0]) for other, _ in shapes[:n])
        made.append(LogoOutline(points, closed, "white" if depth % 2 else fill, line, width))
    return made


def _shapes(element: ET.Element) -> list[tuple[Outline, bool]]:
    name = element.tag.removeprefix(_SVG)
    if name == "path":
        return outlines_of_path(element.get("d", ""))
    if name == "rect":
        x, y, w, h = (_number(element, key) for key in ("x", "y", "width", "height"))
        return [(((x, y), (x + w, y), (x + w, y + h), (x, y + h)), True)]
    if name in {"circle", "ellipse"}:
        radii = ("r", "r") if name == "circle" else ("rx", "ry")
        centre = (_number(element, "cx"), _number(element, "cy"))
        return [(round_outline(centre, *(_number(element, r) for r in radii)), True)]
    if name == "line":
        x1, y1, x2, y2 = (_number(element, key) for key in ("x1", "y1", "x2", "y2"))
        return [(((x1, y1), (x2, y2)), False)]
    numbers = _numbers(element.get("points", ""))
    points = tuple(zip(numbers[::2], numbers[1::2], strict=False))
    return [(points, name == "polygon")] if len(points) > 1 else []


def _tone(colour: str) -> LogoTone | None:
    """Return the ink nearest to a colour by lightness, None for no ink."""
    words = colour.strip().lower()
    if words == "none":
        return None
    if words in _NAMED:
        light = _NAMED[words]
    elif match := re.fullmatch(r"#([0-9a-f]{3}|[0-9a-f]{6})", words):
        digits = match[1] if len(match[1]) == 6 else "".join(2 * d for d in match[1])
        red, green, blue = (int(digits[i : i + 2], 16) / 255 for i in (0, 2, 4))
        light = 0.2126 * red + 0.7152 * green + 0.0722 * blue
    else:
        raise LogoRefusedError(f'the paint "{colour}" is not taken', "write colours as #rrggbb")
    inks: tuple[tuple[float, LogoTone], ...] = ((0.3, "black"), (0.6, "grey"), (0.95, "tint"))
    return next((ink for limit, ink in inks if light < limit), "white")


def _numbers(text: str) -> list[float]:
    return [float(n) for n in re.findall(r"[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?", text)]


def _number(element: ET.Element, key: str) -> float:
    match = re.fullmatch(r"\s*([-+]?[\d.]+(?:[eE][-+]?\d+)?)\s*(px|mm)?\s*", element.get(key, "0"))
    if match is None:
        raise LogoRefusedError(f'"{key}" of an outline is not a number')
    return float(match[1])


def _area(points: Outline) -> float:
    pairs = zip(points, points[1:] + points[:1], strict=True)
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in pairs) / 2


def _holds(outline: Outline, at: tuple[float, float]) -> bool:
    """Tell whether a point lies inside an outline (even-odd rule)."""
    inside = False
    for a, b in zip(outline, outline[1:] + outline[:1], strict=True):
        if (a[1] > at[1]) != (b[1] > at[1]):
            inside ^= at[0] < a[0] + (at[1] - a[1]) * (b[0] - a[0]) / (b[1] - a[1])
    return inside


def _moved(outline: LogoOutline, dx: float, dy: float) -> LogoOutline:
    points = tuple((x + dx, y + dy) for x, y in outline.points)
    return LogoOutline(points, outline.closed, outline.fill, outline.line, outline.line_width)
