"""A subject of detail sheets: figures with one caution, notes and a table of where they apply."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.calculate.armoured_gland import armoured_gland, gland_type, line_csa_mm2
from asfitted.errors import OutsideTableError
from asfitted.layout.given_words import NOT_RECORDED
from asfitted.reference.armoured_end import fly_lead_mm2
from asfitted.reference.cable_family import family
from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.calculate.armoured_gland import ArmouredGland
    from asfitted.layout.details.figure import Figure
    from asfitted.layout.sheet_model import Model
    from asfitted.layout.table import Table
    from asfitted.resolve.installation import Cable

Notes = tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class Subject:
    """One subject, such as socket-outlets; ``key`` and ``title`` name its sheets."""

    key: str
    title: str
    caution: str
    figures: tuple[Figure, ...]
    notes: Notes
    table: Table | None  # None on a sheet that holds a part of the subject only
    name: str = ""  # as a sheet of several subjects names it
    table_title: str = "Where each figure applies"


def new_cables(model: Model) -> list[Cable]:
    """Return the cables that the job brings: nothing is connected anew on existing ones."""
    return [c for c in model.installation.cables.values() if c.state is State.NEW]


def cable_words(model: Model, cable: Cable | None) -> str:
    """Return tag and words of a cable: ``W05 4c × 6 mm² XLPE/SWA/PVC``."""
    if cable is None:
        return NOT_RECORDED
    figures = model.results.cables.get(cable.tag)
    return f"{cable.tag} {figures.words if figures else 'size not recorded'}"


def gland_words(model: Model, cable: Cable | None, at: str) -> str:
    """Return size and type of the gland of a cable at an end, "–" for a cable without armour."""
    if cable is None:
        return NOT_RECORDED
    if not family(cable.family).is_armoured:
        return "–"
    gland = gland_of(model, cable)
    return f"{gland.size.text} {gland_type(at, model.installation)}" if gland else NOT_RECORDED


def gland_of(model: Model, cable: Cable) -> ArmouredGland | None:
    """Return the gland of an armoured cable, None where it is not held."""
    try:
        return armoured_gland(cable, model.results)
    except OutsideTableError:
        return None


def lead_words(model: Model, cable: Cable | None) -> str:
    """Return the size of the lead from the earth tag, "–" for a cable without armour."""
    if cable is None:
        return NOT_RECORDED
    if not family(cable.family).is_armoured:
        return "–"
    csa_mm2 = size_mm2(model, cable)
    return f"{fly_lead_mm2(csa_mm2).value:g} mm²" if csa_mm2 else NOT_RECORDED


def size_mm2(model: Model, cable: Cable) -> float | None:
    """Return the size of the line conductors, mm2, None where it is not known."""
    return line_csa_mm2(cable, model.results)


def in_order(keys: Sequence[object], first: int = 1) -> dict[object, int]:
    """Return the number, from ``first``, of each different key in the order of first use."""
    return {key: i for i, key in enumerate(dict.fromkeys(keys), start=first)}
