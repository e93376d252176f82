"""The isolators of the job and what they feed: their figures, notes and table."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.layout.breakable_words import with_breakable_words
from asfitted.layout.details.conductors import CableEnd, end_of
from asfitted.layout.details.machine import POLES, IsolatorFigure
from asfitted.layout.details.subject import (
    Subject,
    cable_words,
    gland_words,
    in_order,
    lead_words,
)
from asfitted.layout.given_words import NOT_RECORDED
from asfitted.layout.schedule.words import device_words, end_words
from asfitted.layout.table import Column, Table
from asfitted.reference.connections import source_of
from asfitted.reference.points import point_kind
from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from asfitted.layout.details.subject import Notes
    from asfitted.layout.sheet_model import Model
    from asfitted.resolve.installation import Cable, PointServed

CAUTION = (
    "With the isolator open its supply side is still live: to work inside it, isolate at the way "
    "named in the table. To work on the machine: open, lock off, keep the key, prove dead at the "
    "machine's terminals, each line to each other, to neutral and to earth, with a tester proved "
    "before and after; let moving parts stop and hot parts cool."
)
NOTES = (
    ("Lock", "each person at work fits a lock of their own and keeps its key"),
    ("Tail", "flexible where the machine moves or shakes; glanded and held at both ends"),
)
COLUMNS = (
    Column("Isolator", wraps=False),
    Column("Figure", align="middle", wraps=False),
    Column("Rating"),
    Column("Feeds"),
    Column("Isolate at", wraps=False),
    Column("Protected by"),
    Column("Supply cable"),
    Column("Gland", wraps=False),
    Column("Fly lead", wraps=False),
    Column("Tail"),
)
NO_TAIL = CableEnd("", 0, "none")


@dataclass(frozen=True)
class _Kind:
    """What makes two isolators alike on paper."""

    end: CableEnd
    tail: CableEnd
    poles: int | None
    symbol: str
    is_motor: bool


def isolators(model: Model, first: int = 1) -> Subject | None:
    """Return the subject of the isolators, figures numbered from ``first``; None without new."""
    cables = model.installation.cables.values()
    feeds = {c.to_end: c for c in cables}
    onward = {c.from_end: c for c in reversed(list(cables))}
    points = [
        p
        for p in model.installation.points.values()
        if p.kind == "isolator" and p.state is State.NEW and p.tag in feeds
    ]
    if not points:
        return None
    kinds = [_kind(model, p, feeds[p.tag], onward.get(p.tag)) for p in points]
    numbers = in_order(kinds, first)
    drawn = tuple(
        IsolatorFigure(
            f"isolator{numbers[kind]}",
            numbers[kind],
            tuple(p.tag for p, other in zip(points, kinds, strict=True) if other == kind),
            kind.end,
            kind.tail,
            kind.poles,
            kind.symbol,
            kind.is_motor,
        )
        for kind in dict.fromkeys(kinds)
    )
    rows = tuple(
        _row(model, p, feeds[p.tag], onward.get(p.tag), numbers[kind])
        for p, kind in zip(points, kinds, strict=True)
    )
    return Subject(
        key="isolators",
        name="isolators",
        title="Detail: isolators and machines",
        caution=CAUTION,
        figures=drawn,
        notes=_notes(has_motor=any(kind.is_motor for kind in kinds)),
        table=with_breakable_words(Table(COLUMNS, rows, tuple(p.tag for p in points))),
    )


def _kind(model: Model, point: PointServed, feed: Cable, onward: Cable | None) -> _Kind:
    end, tail = end_of(feed), NO_TAIL
    symbol, is_motor = "", False
    if onward is not None:
        tail = end_of(onward, drop=True)
        fed = model.installation.points.get(onward.to_end)
        if fed is not None:
            three = len(tail.live) > 2
            kind = point_kind(fed.kind)
            symbol = kind.symbol_for(is_three_phase=three, gangs=fed.gangs)
            is_motor = kind.use == "motor" and three
    if not set(tail.live) <= set(end.live):
        tail = NO_TAIL
    return _Kind(end, tail, point.poles, symbol, is_motor)


def _row(
    model: Model, point: PointServed, feed: Cable, onward: Cable | None, number: int
) -> tuple[str, ...]:
    circuit = model.installation.circuits.get(point.circuit)
    rating = NOT_RECORDED if point.rating_a is None else f"{point.rating_a:g} A"
    poles = POLES.get(point.poles or 0, "poles not recorded")
    feeds = NOT_RECORDED if onward is None else end_words(model.installation, onward.to_end)
    return (
        point.tag,
        str(number),
        f"{rating} {poles}",
        feeds,
        point.circuit,
        device_words(circuit.device) if circuit else NOT_RECORDED,
        cable_words(model, feed),
        gland_words(model, feed, point.tag),
        lead_words(model, feed),
        cable_words(model, onward),
    )


def _notes(*, has_motor: bool) -> Notes:
    motor = ("Direction", "check the way a motor turns on a short start, guards in place")
    marks = f"; motor terminals {source_of('motor_terminals').words}" if has_motor else ""
    colours = source_of("conductor_colours").words
    sources = ("Sources", f"colours {colours}{marks}; fly lead common practice")
    return (*NOTES, motor, sources) if has_motor else (*NOTES, sources)
