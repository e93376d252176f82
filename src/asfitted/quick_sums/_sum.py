"""What a quick sum is: its inputs with their units, the working it gives, and a checked example."""

from __future__ import annotations

from dataclasses import dataclass, field
from types import MappingProxyType
from typing import TYPE_CHECKING

from asfitted.errors import InputOutOfRangeError, NotUnderstoodError
from asfitted.errors import OutsideTableError as Outside
from asfitted.quantities import parse_count, parse_quantity
from asfitted.spec.words import did_you_mean

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

    from asfitted.calculate.working import Step
    from asfitted.quantities import QuantityKind


@dataclass(frozen=True)
class Input:
    """One input of a sum.

    Attributes:
        name: The key, as typed before "=".
        words: What it is.
        kind: What sort of figure; None for a word or a whole number.
        choices: The words that are known, where it is a word.
        default: What is taken where it is left out, as typed; None where it must be given.
        many: Whether it is a list, parted by commas.
        is_count: Whether it is a whole number, one or more.
    """

    name: str
    words: str
    kind: QuantityKind | None = None
    choices: tuple[str, ...] = ()
    default: str | None = None
    many: bool = False
    is_count: bool = False

    @property
    def takes(self) -> str:
        """What is to be typed, in words: "A, such as 32 A"."""
        if self.choices:
            return "one of " + ", ".join(self.choices)
        if self.is_count:
            return "a whole number"
        if self.kind is None:
            return "words"
        unit = f"{self.kind.unit}, such as " if self.kind.unit else "a number such as "
        return unit + self.kind.example + (", parted by commas" if self.many else "")


@dataclass(frozen=True)
class Example:
    """A sum worked outside this project, or by hand from the cited table.

    Attributes:
        given: The inputs as typed.
        result: The figure published.
        tolerance: How far the result may be from it, in the same unit.
        source: Where it was published, with its provenance.
    """

    given: Mapping[str, str]
    result: float
    tolerance: float
    source: str


Value = float | int | str | tuple[float, ...]


@dataclass(frozen=True)
class Values:
    """The inputs of a sum as read."""

    held: Mapping[str, Value] = field(default_factory=lambda: MappingProxyType({}))

    def number(self, name: str) -> float:
        """Return a figure in the unit of its kind."""
        value = self.held[name]
        return float(value) if isinstance(value, int | float) else 0.0

    def count(self, name: str) -> int:
        """Return a whole number."""
        return round(self.number(name))

    def word(self, name: str) -> str:
        """Return a word."""
        return str(self.held[name])

    def numbers(self, name: str) -> tuple[float, ...]:
        """Return the figures of a list."""
        value = self.held[name]
        return value if isinstance(value, tuple) else (self.number(name),)

    def has(self, name: str) -> bool:
        """Tell whether an input that may be left out was given."""
        return name in self.held


@dataclass(frozen=True)
class QuickSum:
    """One sum; the last step of its working is the result.

    ``work`` gives the working from the inputs read; ``note`` is printed under the result.
    """

    name: str
    title: str
    inputs: tuple[Input, ...]
    work: Callable[[Values], Sequence[Step]]
    example: Example
    note: str = ""

    def read(self, typed: Mapping[str, str]) -> Values:
        """Return the inputs as read, with what is taken for those left out.

        Raises:
            NotUnderstoodError: an input that is not known, missing, or cannot be read.
        """
        known = {one.name: one for one in self.inputs}
        for name in typed:
            if name not in known:
                raise NotUnderstoodError(
                    f'{self.name} has no input "{name}"', did_you_mean(name, known)
                )
        held: dict[str, Value] = {}
        for one in self.inputs:
            text = typed.get(one.name, one.default)
            if text is None:
                hint = f"write {one.name}={self.example.given.get(one.name, '...')}: {one.takes}"
                raise NotUnderstoodError(f'{self.name} needs "{one.name}", {one.words}', hint)
            if text:
                held[one.name] = _read(one, text)
        return Values(MappingProxyType(held))

    def usage(self) -> list[str]:
        """Return the inputs with their units, and an example to type."""
        lines = [f"{self.name}: {self.title}"]
        for one in self.inputs:
            if one.default is None:
                need = "needed"
            else:
                need = f"{one.default} if left out" if one.default else "may be left out"
            lines.append(f"  {one.name:<14} {one.words} [{one.takes}; {need}]")
        given = " ".join(f'{name}="{text}"' for name, text in self.example.given.items())
        lines.append(f"example: asfitted calc {self.name} {given}")
        unit = self.working(self.example.given)[-1].unit
        lines.append(f"gives {self.example.result:g} {unit}: {self.example.source}".rstrip())
        return lines

    def working(self, typed: Mapping[str, str]) -> tuple[Step, ...]:
        """Return the working; its last step is the result.

        Raises:
            NotUnderstoodError: an input cannot be read, lies off a table or out of range.
        """
        values = self.read(typed)
        try:
            return tuple(self.work(values))
        except (Outside, InputOutOfRangeError) as error:
            hint = f"see the inputs of {self.name}: asfitted calc {self.name}"
            raise NotUnderstoodError(f"{self.name}: {error}", hint) from error


def _read(one: Input, text: str) -> Value:
    try:
        if one.choices:
            return _chosen(one, text)
        if one.is_count:
            return parse_count(text)
        if one.kind is None:
            return " ".join(text.split())
        if one.many:
            kind = one.kind
            return tuple(parse_quantity(part, kind) for part in text.split(",") if part.strip())
        return parse_quantity(text, one.kind)
    except NotUnderstoodError as error:
        raise NotUnderstoodError(f"{one.name}: {error.message}", error.hint) from error


def _chosen(one: Input, text: str) -> str:
    plain = " ".join(text.lower().replace("_", " ").split())
    for known in one.choices:
        if known.lower() == plain:
            return known
    raise NotUnderstoodError(f'"{text}" is not known', did_you_mean(text, one.choices))


def split_typed(words: Sequence[str]) -> dict[str, str]:
    """Return inputs by name from words such as ``size=6 mm2 length=25``.

    A word without "=" belongs to the input before it, so that quotes are not needed.

    Raises:
        NotUnderstoodError: the first word has no "=", or a name stands twice.
    """
    found: dict[str, str] = {}
    name = ""
    for word in words:
        head, sign, tail = word.partition("=")
        if sign:
            name = head.strip().lower()
            if name in found:
                raise NotUnderstoodError(f'"{name}" is written twice', "write it once")
            found[name] = tail
        elif name:
            found[name] = f"{found[name]} {word}"
        else:
            raise NotUnderstoodError(
                f'"{word}" is not an input', "write name=value, such as length=25"
            )
    return found
