"""Readings of an instrument as written: ``0.35 ohm``, ``>999 Mohm``, ``not tested, in use``.

A value that no instrument shows, or that means a fault to put right before anything is handed
over, is refused here: a slip of the pen must not reach paper as a reading.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import partial
from typing import TYPE_CHECKING, Annotated, Any, Literal

from pydantic import BeforeValidator, WithJsonSchema

from asfitted.errors import NotUnderstoodError
from asfitted.quantities import QuantityKind, parse_quantity
from asfitted.spec.fields import ShapeError
from asfitted.spec.words import one_of

if TYPE_CHECKING:
    from collections.abc import Callable

_NOT_TESTED = re.compile(r"not tested\b[\s,;:()-]*(?P<reason>.*?)[\s)]*", re.IGNORECASE)
_NUMBER = re.compile(r"\d+(?:\.\d+)?|\.\d+")
_OHM = {"ohm": 1.0, "ohms": 1.0, "\u03a9": 1.0, "\u2126": 1.0, "mohm": 1e-3, "kohm": 1e3}


@dataclass(frozen=True)
class ReadingWords:
    """One reading: its value in the unit of its kind, as shown by the instrument.

    ``beyond`` tells that the instrument showed more than the end of its range (``>999``).
    ``not_tested`` is the reason why there is no reading; the value is None then.
    """

    value: float | None
    shown: str  # "0.35", ">999", "not tested"
    beyond: bool = False
    not_tested: str = ""


@dataclass(frozen=True)
class ReadingKind:
    """One kind of reading: what a real instrument can show of it, and what else is refused."""

    quantity: QuantityKind
    least: float
    most: float
    too_small: str
    too_great: str
    may_go_beyond: bool = False


CONTINUITY_OHM = ReadingKind(
    QuantityKind("continuity reading", "ohm", _OHM, "0.35 ohm", nought=True),
    0.0,
    200.0,
    "",
    "that is an open circuit, not a conductor: find it, then write the reading",
)
LOOP_OHM = ReadingKind(
    QuantityKind("loop impedance reading", "ohm", _OHM, "0.72 ohm"),
    0.01,
    2000.0,
    "no loop of a public supply is so low: look at the unit",
    "loop testers do not read so far: look at the unit",
)
INSULATION_MOHM = ReadingKind(
    QuantityKind(
        "insulation reading",
        "Mohm",
        {"Mohm": 1.0, "M\u03a9": 1.0, "M\u2126": 1.0, "megohm": 1.0, "kohm": 1e-3, "Gohm": 1e3},
        "299 Mohm or >999 Mohm",
        nought=True,
    ),
    1e-3,
    1e6,
    "that is a fault between conductors: put it right and test again",
    "insulation testers do not read so far: write >999 Mohm",
    may_go_beyond=True,
)
TRIP_MS = ReadingKind(
    QuantityKind("tripping time", "ms", {"ms": 1.0, "s": 1000.0}, "28 ms", nought=True),
    1.0,
    2000.0,
    "no RCD trips in no time: look at the unit, or write not tested and why",
    "tests end before that: write >300 ms if it did not trip",
    may_go_beyond=True,
)
FAULT_KA = ReadingKind(
    QuantityKind("fault current reading", "kA", {"kA": 1.0, "A": 1e-3}, "1.9 kA"),
    0.005,
    100.0,
    "look at the unit",
    "look at the unit",
)
TEST_VOLTS = ("250", "500", "1000")


def parse_reading(text: str, kind: ReadingKind) -> ReadingWords | None:
    """Return one reading, or None where nothing is written.

    Raises:
        NotUnderstoodError: no figure, a wrong unit, a value no instrument shows, or a missing
            reason after "not tested".
    """
    words = " ".join(text.split())
    if not words:
        return None
    left_out = _NOT_TESTED.fullmatch(words)
    if left_out:
        return _not_tested(left_out["reason"], kind)
    beyond = words.startswith(">")
    figure = words.lstrip("> ").removesuffix("measured").strip()
    value = parse_quantity(figure, kind.quantity)
    _refuse_absurd(words, value, kind, beyond=beyond)
    number = _NUMBER.search(figure)
    written = number[0] if number else f"{value:g}"
    factor_is_one = not number or abs(float(written) - value) < 1e-12
    shown = written if factor_is_one else f"{value:g}"
    return ReadingWords(value, f">{shown}" if beyond else shown, beyond)


def _not_tested(reason: str, kind: ReadingKind) -> ReadingWords:
    if not reason:
        raise NotUnderstoodError(
            f"{kind.quantity.name}: it is not said why it was not tested",
            "write the reason behind it: not tested, circuit in use",
        )
    return ReadingWords(None, "not tested", not_tested=reason)


def _refuse_absurd(words: str, value: float, kind: ReadingKind, *, beyond: bool) -> None:
    name, unit = kind.quantity.name, kind.quantity.unit
    if beyond and not kind.may_go_beyond:
        message = f'"{words}" cannot be taken as {name}: it has to be a figure'
        raise NotUnderstoodError(message, f"write it like {kind.quantity.example}")
    if value < kind.least:
        message = f'"{words}" cannot be taken as {name}'
        raise NotUnderstoodError(message, kind.too_small, is_quantity=True)
    if value > kind.most:
        message = f'"{words}" cannot be taken as {name}: it is more than {kind.most:g} {unit}'
        raise NotUnderstoodError(message, kind.too_great, is_quantity=True)


def _field(read: Callable[[str], Any], what: str) -> tuple[BeforeValidator, WithJsonSchema]:
    def before(value: Any) -> Any:
        if isinstance(value, list | dict):
            raise ShapeError(what)
        return read(value) if isinstance(value, str) else value

    return BeforeValidator(before), WithJsonSchema(
        {"type": ["string", "number"], "description": what}
    )


def _reading(kind: ReadingKind) -> tuple[BeforeValidator, WithJsonSchema]:
    what = f"a {kind.quantity.name} such as {kind.quantity.example}, or not tested and why"
    return _field(partial(parse_reading, kind=kind), what)


def _word(*known: str, what: str) -> tuple[BeforeValidator, WithJsonSchema]:
    def read(text: str) -> str | None:
        return one_of(text, known, what) if text.strip() else None

    return _field(read, "one of " + ", ".join(known))


def _volts(text: str) -> str | None:
    figure = text.strip().removesuffix("V").strip()
    if not figure:
        return None
    if figure not in TEST_VOLTS:
        raise NotUnderstoodError(
            f'"{text}" is no test voltage for insulation', "write 250 V, 500 V or 1000 V"
        )
    return figure


ContinuityReading = Annotated[ReadingWords | None, *_reading(CONTINUITY_OHM)]
LoopReading = Annotated[ReadingWords | None, *_reading(LOOP_OHM)]
InsulationReading = Annotated[ReadingWords | None, *_reading(INSULATION_MOHM)]
TripReading = Annotated[ReadingWords | None, *_reading(TRIP_MS)]
FaultReading = Annotated[ReadingWords | None, *_reading(FAULT_KA)]
TestVolts = Annotated[str | None, *_field(_volts, "250 V, 500 V or 1000 V")]
RightOrWrong = Annotated[
    Literal["correct", "wrong"] | None, *_word("correct", "wrong", what="result")
]
WorksOrFails = Annotated[
    Literal["works", "fails"] | None, *_word("works", "fails", what="result of the button")
]
