"""The socket-outlets of IEC 60309 in the job: their figures, notes and table."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.breakable_words import with_breakable_words
from asfitted.layout.details.conductors import end_of
from asfitted.layout.details.outlet import FaceFigure, OutletFigure
from asfitted.layout.details.subject import (
    Subject,
    cable_words,
    gland_words,
    in_order,
    lead_words,
)
from asfitted.layout.given_words import NOT_RECORDED
from asfitted.layout.schedule.words import device_words
from asfitted.layout.table import Column, Table
from asfitted.reference.connections import source_of
from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from asfitted.layout.details.figure import Figure
    from asfitted.layout.details.subject import Notes
    from asfitted.layout.sheet_model import Model
    from asfitted.resolve.installation import Cable, PointServed

KINDS = {"5-pin socket", "3-pin socket"}
FIVE_PIN = 4  # live conductors
CAUTION = (
    "Isolate at the way named in the table, lock off and keep the key; prove dead at this outlet, "
    "each line to each other, to neutral and to earth, with a tester proved before and after. "
    "The test button of an RCD does not isolate."
)
COLUMNS = (
    Column("Outlet", wraps=False),
    Column("Figure", align="middle", wraps=False),
    Column("Rating, RCD"),
    Column("Isolate at", wraps=False),
    Column("Protected by"),
    Column("Cable"),
    Column("Gland", wraps=False),
    Column("Fly lead", wraps=False),
    Column("IP", wraps=False),
)


def outlets(model: Model, first: int = 1) -> Subject | None:
    """Return the subject of the outlets, figures numbered from ``first``; None without new ones."""
    feeds = {c.to_end: c for c in model.installation.cables.values()}
    points = [
        p
        for p in model.installation.points.values()
        if p.kind in KINDS and p.state is State.NEW and p.tag in feeds
    ]
    if not points:
        return None
    kinds = [(end_of(feeds[p.tag]), p.rcd is not None) for p in points]
    numbers = in_order(kinds, first)
    drawn: list[Figure] = []
    for (end, has_rcd), number in ((kind, numbers[kind]) for kind in dict.fromkeys(kinds)):
        tags = tuple(p.tag for p, kind in zip(points, kinds, strict=True) if kind == (end, has_rcd))
        drawn.append(OutletFigure(f"outlet{number}", number, tags, end, has_rcd))
    five = tuple(
        p.tag for p, (end, _) in zip(points, kinds, strict=True) if len(end.live) == FIVE_PIN
    )
    supply = model.installation.supply
    if five and supply is not None and supply.phases == 3:
        drawn.append(FaceFigure("outlet-face", first + len(numbers), five, supply.line_v))
    rows = tuple(
        _row(model, point, feeds[point.tag], numbers[kind])
        for point, kind in zip(points, kinds, strict=True)
    )
    return Subject(
        key="outlets",
        name="socket-outlets",
        title="Detail: socket-outlets",
        caution=CAUTION,
        figures=tuple(drawn),
        notes=_notes(has_rcd=any(kind[1] for kind in kinds)),
        table=with_breakable_words(Table(COLUMNS, rows, tuple(p.tag for p in points))),
    )


def _row(model: Model, point: PointServed, cable: Cable, number: int) -> tuple[str, ...]:
    circuit = model.installation.circuits.get(point.circuit)
    rating = NOT_RECORDED if point.rating_a is None else f"{point.rating_a:g} A"
    rcd = "no RCD in the outlet"
    if point.rcd is not None:
        amps = "" if point.rcd.rated_a is None else f"{point.rcd.rated_a:g} A "
        rcd = f"RCD {amps}{point.rcd.idn_ma:g} mA type {point.rcd.type}"
    return (
        point.tag,
        str(number),
        f"{rating}, {rcd}",
        point.circuit,
        device_words(circuit.device) if circuit else NOT_RECORDED,
        cable_words(model, cable),
        gland_words(model, cable, point.tag),
        lead_words(model, cable),
        point.ip or NOT_RECORDED,
    )


def _notes(*, has_rcd: bool) -> Notes:
    colours = source_of("conductor_colours").words
    marks = source_of("residual_device_terminals").words
    own = (
        (
            "Faults and overload",
            (
                "the breaker in the table clears them up to the RCD and beyond; the RCD opens on "
                "earth leakage only"
            ),
        ),
        (
            "Test button",
            (
                "press it six-monthly (BS 7671 514.12.2, memory); the tripping time is measured "
                "with an instrument"
            ),
        ),
        (
            "RCD ring",
            "every live conductor of the outlet passes through it, the protective conductor never",
        ),
        ("RCD poles", "follow the marks on the device: its neutral may stand on the other side"),
    )
    every = (
        ("Phase order", "L1 L2 L3 clockwise; check it before a machine is plugged in"),
        (
            "Earth",
            (
                "fly lead from the earth tag to the earth terminal, at both ends of the cable; a "
                "metal box is bonded to the same terminal"
            ),
        ),
        (
            "Sources",
            (
                f"contacts BS EN IEC 60309-2 (seen); colours {colours}; RCD marks {marks}; "
                "fly lead common practice"
            ),
        ),
    )
    return (*own, *every) if has_rcd else every
