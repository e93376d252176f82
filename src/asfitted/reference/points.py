"""Kinds of point: one data file each, found by the words an electrician writes after ``is:``."""

from __future__ import annotations

from functools import cache
from importlib import resources
from types import MappingProxyType
from typing import TYPE_CHECKING, Literal

from pydantic import BaseModel, ConfigDict

from asfitted.errors import OutsideTableError, ReferenceDataError
from asfitted.reference.loader import read_checked

if TYPE_CHECKING:
    from collections.abc import Mapping

_FOLDER = "points"
_GANGS = {1: "single", 2: "twin", 3: "triple"}
_POLES = {1: "single-pole", 2: "double-pole", 3: "three-pole", 4: "four-pole"}


class PointKind(BaseModel):
    """What is the same for every point of a kind.

    Attributes:
        words: Spec words, the first of which is the key of the kind.
        drawn_as: Words for drawings and schedules; may hold {rating}, {gangs}, {poles}, {fuse}.
        rating_a: Rating that its name implies, A; None where the spec has to give it.
        symbol: Name of the drawing symbol.
        symbol_with_rcd: Symbol when the outlet holds an RCD, "" for the same.
        symbol_three_phase: Symbol on a three-phase circuit, "" for the same.
        symbol_two_gang: Symbol with two gangs, "" for the same.
        width_mm: Outline on an elevation, mm.
        height_mm: Outline on an elevation, mm.
        default_height_mm: Height of its centre above floor when the spec gives none, mm.
        tail: Place of ``reference.termination`` that gives the spare tail at its terminals.
        tail_above_32_a: The same when it is rated above 32 A, "" for the same.
        power_factor: Power factor of its load when the spec gives none.
        phases: Phases of its supply: "1", "3" or "by circuit".
        neutral: Whether its load needs a neutral on a three-phase circuit.
        use: Use of a circuit that serves it, "" for a kind that only passes the supply on.
        serves: Whether it counts as a point served when further points follow it.
        legend: Heading in the legend.
        tag_letter: First letter of the tag that the trade gives it.
        source: Where the outline, height and power factor come from.
        provenance: Provenance word of those figures.
    """

    model_config = ConfigDict(frozen=True, extra="forbid")

    words: tuple[str, ...]
    drawn_as: str
    rating_a: float | None = None
    symbol: str
    symbol_with_rcd: str = ""
    symbol_three_phase: str = ""
    symbol_two_gang: str = ""
    width_mm: float
    height_mm: float
    default_height_mm: float
    tail: str
    tail_above_32_a: str = ""
    power_factor: float
    phases: Literal["1", "3", "by circuit"]
    neutral: bool = True
    use: str
    serves: bool = True
    legend: str
    tag_letter: str
    source: str
    provenance: str

    def lacks(self, *, rating_a: float | None, fuse_a: float | None) -> str:
        """Return the spec key that its words need and that is not given, "" if none."""
        if "{rating}" in self.drawn_as and rating_a is None:
            return "rating"
        return "fuse" if "{fuse}" in self.drawn_as and fuse_a is None else ""

    @property
    def key(self) -> str:
        """The first of its words."""
        return self.words[0]

    def symbol_for(
        self, *, has_rcd: bool = False, is_three_phase: bool = False, gangs: int = 1
    ) -> str:
        """Return the name of the symbol for one point of this kind."""
        if has_rcd and self.symbol_with_rcd:
            return self.symbol_with_rcd
        if is_three_phase and self.symbol_three_phase:
            return self.symbol_three_phase
        if gangs > 1 and self.symbol_two_gang:
            return self.symbol_two_gang
        return self.symbol

    def tail_for(self, rating_a: float | None) -> str:
        """Return the place of ``reference.termination`` that gives the tail at its terminals."""
        is_large = rating_a is not None and rating_a > 32
        return self.tail_above_32_a if is_large and self.tail_above_32_a else self.tail

    def describe(
        self,
        *,
        rating_a: float | None = None,
        gangs: int = 1,
        poles: int | None = None,
        fuse_a: float | None = None,
    ) -> str:
        """Return the words for drawings; a figure that is not known is left out."""
        text = self.drawn_as.format(
            rating="" if rating_a is None else f"{rating_a:g} A",
            gangs=_GANGS.get(gangs, f"{gangs}-gang"),
            poles="" if poles is None else _POLES.get(poles, f"{poles}-pole"),
            fuse="" if fuse_a is None else f"{fuse_a:g} A",
        )
        return " ".join(text.split())


@cache
def point_kinds() -> Mapping[str, PointKind]:
    """Return every kind of point by its key.

    Raises:
        ReferenceDataError: a data file breaks the schema, or two kinds share a word.
    """
    folder = resources.files("asfitted.reference").joinpath("data", _FOLDER)
    names = sorted(f.name for f in folder.iterdir() if f.name.endswith(".yaml"))
    kinds = [read_checked((_FOLDER, name), PointKind) for name in names]
    words = [word.lower() for kind in kinds for word in kind.words]
    twice = sorted({word for word in words if words.count(word) > 1})
    if twice:
        raise ReferenceDataError(f"{_FOLDER}: two kinds of point share {', '.join(twice)}")
    return MappingProxyType({kind.key: kind for kind in kinds})


def point_words() -> tuple[str, ...]:
    """Return every word that names a kind of point."""
    return tuple(word for kind in point_kinds().values() for word in kind.words)


def point_kind(words: str) -> PointKind:
    """Return the kind that the words name, whatever their capitals.

    Raises:
        OutsideTableError: no kind of point bears that name.
    """
    wanted = " ".join(words.lower().split())
    for kind in point_kinds().values():
        if wanted in {word.lower() for word in kind.words}:
            return kind
    raise OutsideTableError(f"no kind of point is called {words!r}")
