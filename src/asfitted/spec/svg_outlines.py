"""The ``d`` of an SVG path as polylines: lines as they are, curves in short straight pieces."""

from __future__ import annotations

import math
import re

from asfitted.spec.logo import LogoRefusedError

Outline = tuple[tuple[float, float], ...]
_TOKEN = re.compile(r"[A-Za-z]|[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?")
_TAKES = {"M": 2, "L": 2, "H": 1, "V": 1, "C": 6, "Q": 4, "Z": 0}
PIECES = 12  # straight pieces of one curve: a mark is printed at some 15 mm
ROUND_PIECES = 48


def round_outline(centre: tuple[float, float], rx: float, ry: float) -> Outline:
    """Return a circle or ellipse as a polygon."""
    angles = [2 * math.pi * n / ROUND_PIECES for n in range(ROUND_PIECES)]
    return tuple((centre[0] + rx * math.cos(a), centre[1] + ry * math.sin(a)) for a in angles)


def outlines_of_path(d: str) -> list[tuple[Outline, bool]]:
    """Return the sub-paths of a path, each with whether it is closed.

    Raises:
        LogoRefusedError: a command that is not taken (arcs, smooth curves), or numbers missing.
    """
    pen = _Pen()
    tokens = _TOKEN.findall(d)
    at, command = 0, ""
    while at < len(tokens):
        if tokens[at].isalpha():
            command, at = tokens[at], at + 1
        elif command.upper() == "M":  # further pairs after a move are lines
            command = "l" if command == "m" else "L"
        count = _TAKES.get(command.upper(), -1)
        if count < 0:
            message = f'the path command "{command}" is not taken'
            raise LogoRefusedError(message, "save curves as C or Q, not as arcs")
        numbers = tokens[at : at + count]
        if len(numbers) < count or any(n.isalpha() for n in numbers) or (not count and pen.closed):
            raise LogoRefusedError("a path is not complete")
        pen.go(command, [float(n) for n in numbers])
        at += count
    return [(tuple(line), closed) for line, closed in pen.lines if len(line) > 1]


class _Pen:
    """Follows the commands of one path."""

    def __init__(self) -> None:
        self.lines: list[tuple[list[tuple[float, float]], bool]] = []
        self.x = self.y = 0.0
        self.closed = True

    def go(self, command: str, numbers: list[float]) -> None:
        base = (self.x, self.y) if command.islower() else (0.0, 0.0)
        name = command.upper()
        if name == "Z":
            line, _ = self.lines[-1]
            self.lines[-1] = (line, True)
            (self.x, self.y), self.closed = line[0], True
            return
        if name == "H":
            points = [(numbers[0] + base[0], self.y)]
        elif name == "V":
            points = [(self.x, numbers[0] + base[1])]
        else:
            pairs = zip(numbers[::2], numbers[1::2], strict=True)
            points = [(x + base[0], y + base[1]) for x, y in pairs]
        if name == "M":
            self.lines.append(([points[0]], False))
        else:
            if self.closed:
                self.lines.append(([(self.x, self.y)], False))
            self.lines[-1][0].extend(_curve((self.x, self.y), points))
        self.closed = False
        self.x, self.y = points[-1]


def _curve(
    start: tuple[float, float], points: list[tuple[float, float]]
) -> list[tuple[float, float]]:
    """Return a line, quadratic or cubic curve as points after its start (Bernstein form)."""
    if len(points) == 1:
        return points
    controls = [start, *points]
    n = len(points)
    made = []
    for step in range(1, PIECES + 1):
        t = step / PIECES
        weights = [math.comb(n, i) * t**i * (1 - t) ** (n - i) for i in range(n + 1)]
        x = sum(w * c[0] for w, c in zip(weights, controls, strict=True))
        y = sum(w * c[1] for w, c in zip(weights, controls, strict=True))
        made.append((x, y))
    return made
