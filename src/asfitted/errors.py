"""Every exception of the tool. Errors mean "cannot go on"; findings mean "does not comply".

A user-facing error carries a code, a place in the spec where there is one, and a hint.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Place:
    """Where in a spec file something stands (line and column count from 1)."""

    file: str
    line: int
    column: int
    text: str = ""

    def __str__(self) -> str:
        """Return ``file:line:column``."""
        return f"{self.file}:{self.line}:{self.column}"


@dataclass(frozen=True)
class Problem:
    """One thing wrong in a spec, in the electrician's words."""

    code: str
    message: str
    place: Place | None = None
    hint: str = ""

    def render(self) -> str:
        """Return the problem as printed: code, place, message, the offending line, a hint."""
        head = (
            f"{self.code}  {self.place}  {self.message}"
            if self.place
            else f"{self.code}  {self.message}"
        )
        lines = [head]
        if self.place and self.place.text:
            number = f"{self.place.line:>6}"
            lines.append(f"{number} | {self.place.text.rstrip()}")
            lines.append(" " * len(number) + " | " + " " * (self.place.column - 1) + "^")
        if self.hint:
            lines.append(f"         {self.hint}")
        return "\n".join(lines)


class AsfittedError(Exception):
    """Base of every error that the tool raises on purpose."""


class SpecError(AsfittedError):
    """The spec cannot be used; holds every problem found in one run."""

    def __init__(self, problems: list[Problem]) -> None:
        """Keep the problems, in the order of the file."""
        self.problems = problems
        super().__init__("\n".join(p.render() for p in problems))


class NotUnderstoodError(AsfittedError, ValueError):
    """Words of a spec value cannot be understood; becomes a ``Problem`` once its place is known."""

    def __init__(self, message: str, hint: str = "", *, is_quantity: bool = False) -> None:
        """Keep the message, what to write instead, and whether it is a figure with a unit."""
        self.message = message
        self.hint = hint
        self.is_quantity = is_quantity
        super().__init__(message)


class ReferenceDataError(AsfittedError):
    """A reference table is malformed: our fault."""


class OutsideTableError(AsfittedError, LookupError):
    """A look-up lies off a table; names table, axis and range."""


class InputOutOfRangeError(AsfittedError, ValueError):
    """A calculation was given an input outside its published range."""


class LayoutError(AsfittedError):
    """A drawing cannot be laid out."""


class DoesNotFitError(LayoutError):
    """An item needs more room than its sheet has."""


class MissingGlyphError(LayoutError):
    """The lettering font has no sign for a character."""


class OutputError(AsfittedError):
    """A file cannot be written, or a library needed for it is missing."""
