"""The armoured ends of the job: gland, strip lengths and earth by size of cable."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from asfitted.calculate.armoured_gland import gland_type
from asfitted.layout.breakable_words import with_breakable_words
from asfitted.layout.details.armour import StackFigure, StrippedEndFigure
from asfitted.layout.details.subject import (
    Subject,
    gland_of,
    lead_words,
    new_cables,
    size_mm2,
)
from asfitted.layout.given_words import NOT_RECORDED
from asfitted.layout.table import Column, Table
from asfitted.reference.cable_family import family

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model
    from asfitted.resolve.installation import Cable

CAUTION = (
    "Isolate at the way that feeds the cable, lock off and prove dead before an end is opened or "
    "made off. A cut armour wire is sharp: gloves and eye protection."
)
NOTES = (
    (
        "Lengths",
        (
            'in mm; the leaflet of the gland in hand goes before these. "Leave inside" on a cable '
            "card is the working length left in the enclosure; C is the least stripped of it, "
            "and more where terminals need more: mark it first, the bedding stays on the rest"
        ),
    ),
    (
        "Armour",
        (
            "ring the sheath, cut the armour half through and break the wires off; every wire "
            "is held under the ring, none crosses another"
        ),
    ),
    (
        "Earth",
        (
            "tag bolted through to a lead to the earth terminal, at both ends; a knock-out or "
            "paint is not relied on"
        ),
    ),
    ("Tighten", "as the leaflet says; the locknut firm on its serrated washer"),
    (
        "Type",
        (
            "CW, with part 2, outdoors, on an enclosure of IPx4 or better and where its IP is not "
            "recorded; BW, without it, on any other indoors in the dry"
        ),
    ),
    (
        "Sources",
        (
            "order of parts and lengths common practice. Gland: the smallest that takes the cable "
            "over all and over its bedding; diameters nominal, as printed (seen), ranges of glands "
            "assumed (memory): check the cable in hand against the range of the gland in hand"
        ),
    ),
)
COLUMNS = (
    Column("Cable", wraps=True),
    Column("Over all mm", align="end"),
    Column("Over bedding mm", align="end"),
    Column("Gland", wraps=False),
    Column("Thread", wraps=False),
    Column("A armour", align="end"),
    Column("C cores, least", align="end"),
    Column("Fly lead", wraps=False),
    Column("Ends", align="end", wraps=False),
    Column("Cables"),
    Column("Gland known by"),
)
Size = tuple[str, int, float | None]


def armoured_ends(model: Model, first: int = 1) -> Subject | None:
    """Return the subject of armoured ends, figures numbered from ``first``; None without any."""
    armoured = [c for c in new_cables(model) if family(c.family).is_armoured]
    if not armoured:
        return None
    sizes: dict[Size, list[Cable]] = {}
    for cable in armoured:
        key = (cable.family, cable.cores, size_mm2(model, cable))
        sizes.setdefault(key, []).append(cable)
    rows = tuple(_row(model, found) for found in sizes.values())
    tags = tuple(c.tag for c in armoured)
    return Subject(
        key="armoured-ends",
        name="armoured ends",
        table_title="Glands and strip lengths, mm",
        title="Detail: armoured cable ends",
        caution=CAUTION,
        figures=(StackFigure("stack", first, tags), StrippedEndFigure("stripped", first + 1, tags)),
        notes=NOTES,
        table=with_breakable_words(
            Table(COLUMNS, rows, tuple(found[0].tag for found in sizes.values()))
        ),
    )


def _row(model: Model, found: list[Cable]) -> tuple[str, ...]:
    first = found[0]
    figures = model.results.cables.get(first.tag)
    gland = gland_of(model, first)
    thread = gland.thread if gland else None
    lengths = gland.lengths if gland else None
    return (
        figures.words if figures else NOT_RECORDED,
        f"{figures.overall_mm:.1f}" if figures else NOT_RECORDED,
        f"{gland.bedding_mm:.1f}" if gland else NOT_RECORDED,
        gland.size.text if gland else NOT_RECORDED,
        thread.text.replace("x", " × ") if thread else NOT_RECORDED,
        f"{lengths.armour_mm:g}" if lengths else NOT_RECORDED,
        f"{lengths.cores_least_mm:g}" if lengths else NOT_RECORDED,
        lead_words(model, first),
        _ends(model, found),
        ", ".join(c.tag for c in found),
        gland.size.provenance if gland else NOT_RECORDED,
    )


def _ends(model: Model, found: list[Cable]) -> str:
    """Return how many ends take each type of gland: "4 BW, 2 CW"."""
    ends = [end for cable in found for end in (cable.from_end, cable.to_end)]
    counts = Counter(gland_type(end, model.installation) for end in ends)
    return ", ".join(f"{count} {kind}" for kind, count in sorted(counts.items()))
