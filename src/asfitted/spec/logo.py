"""A firm's mark, read from a local file into plain data: a PNG as it is, an SVG as outlines."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

LOGO_HINT = "give a PNG, or an SVG of plain outlines, of no more than 500 kB"
LogoTone = Literal["black", "grey", "tint", "white"]


@dataclass(frozen=True)
class LogoOutline:
    """One outline of a mark in units of its own: a fill, a line, or both."""

    points: tuple[tuple[float, float], ...]
    closed: bool
    fill: LogoTone | None
    line: LogoTone | None = None
    line_width: float = 0.0


@dataclass(frozen=True)
class Logo:
    """A mark: its size in units of its own, and either outlines or the bytes of a PNG."""

    file: str
    width: float
    height: float
    outlines: tuple[LogoOutline, ...] = ()
    png: bytes = b""


class LogoRefusedError(ValueError):
    """Why a file cannot serve as a mark, in words; ``hint`` says what to do."""

    def __init__(self, message: str, hint: str = LOGO_HINT) -> None:
        """Keep the reason and the way out."""
        self.hint = hint
        super().__init__(message)
