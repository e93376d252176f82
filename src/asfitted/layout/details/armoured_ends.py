"""The armoured ends of the job: gland, strip lengths and earth by size of cable."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.errors import OutsideTableError
from asfitted.layout.breakable_words import with_breakable_words
from asfitted.layout.details.armour import StackFigure, StrippedEndFigure
from asfitted.layout.details.subject import (
    Subject,
    gland_words,
    lead_words,
    new_cables,
    size_mm2,
)
from asfitted.layout.given_words import NOT_RECORDED
from asfitted.layout.table import Column, Table
from asfitted.reference import cables
from asfitted.reference.armoured_end import strip_lengths
from asfitted.reference.cable_family import family
from asfitted.reference.termination import gland_entry_thread

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
            "in mm; the leaflet of the gland in hand goes before these. C is the least: mark first "
            "what is needed inside the enclosure"
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
            "CW, with part 2, outdoors, in wet places and where the IP rating is to be kept; BW, "
            "without it, indoors in the dry"
        ),
    ),
    (
        "Sources",
        (
            "order of parts and lengths common practice; gland by cable as the column says: check "
            "the diameter of the cable in hand against the range of the gland"
        ),
    ),
)
COLUMNS = (
    Column("Cable", wraps=True),
    Column("Overall mm", align="end"),
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


def armoured_ends(model: Model) -> Subject | None:
    """Return the subject of armoured ends, None for a job without new armoured cables."""
    armoured = [c for c in new_cables(model) if family(c.family).is_armoured]
    if not armoured:
        return None
    sizes: dict[Size, list[Cable]] = {}
    for cable in armoured:
        key = (cable.family, cable.cores, size_mm2(model, cable))
        sizes.setdefault(key, []).append(cable)
    rows = tuple(_row(model, size, found) for size, found in sizes.items())
    tags = tuple(c.tag for c in armoured)
    return Subject(
        key="armoured-ends",
        title="Detail: armoured cable ends",
        caution=CAUTION,
        figures=(StackFigure("stack", 1, tags), StrippedEndFigure("stripped", 2, tags)),
        notes=NOTES,
        table=with_breakable_words(
            Table(COLUMNS, rows, tuple(found[0].tag for found in sizes.values()))
        ),
    )


def _row(model: Model, size: Size, found: list[Cable]) -> tuple[str, ...]:
    first = found[0]
    figures = model.results.cables.get(first.tag)
    gland = gland_words(model, first)
    return (
        figures.words if figures else NOT_RECORDED,
        f"{figures.overall_mm:.1f}" if figures else NOT_RECORDED,
        gland,
        _thread(gland),
        *_lengths(gland),
        lead_words(model, first),
        str(2 * len(found)),
        ", ".join(c.tag for c in found),
        _known_by(size),
    )


def _thread(gland: str) -> str:
    try:
        return gland_entry_thread(gland).text.replace("x", " × ")
    except OutsideTableError:
        return NOT_RECORDED


def _lengths(gland: str) -> tuple[str, str]:
    """Return bared armour and least length of cores, "not recorded" for a size not held."""
    try:
        found = strip_lengths(gland)
    except OutsideTableError:
        return NOT_RECORDED, NOT_RECORDED
    return f"{found.armour_mm:g}", f"{found.cores_least_mm:g}"


def _known_by(size: Size) -> str:
    family_id, cores, csa_mm2 = size
    try:
        return cables.gland_size(family_id, cores, csa_mm2 or 0.0).provenance
    except OutsideTableError:
        return NOT_RECORDED
