"""How items of stock are named, the same on the cut list, the materials list and in prices."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from asfitted.calculate.results import CalculationResults, RouteLeg
    from asfitted.reference.figure import Figure
    from asfitted.resolve.installation import Cable, Containment

_ROUND = ("conduit", "duct")
SIZE_OPEN = ", size not recorded"
_OPEN = re.compile(r", (?:size not recorded|bore \d+ mm or more)$")


def source_words(figure: Figure) -> str:
    """Return where a figure comes from, with its provenance words only."""
    provenance = re.sub(r"\s*[(][^)]*[)]", "", figure.provenance)
    return f"{figure.source} ({provenance})"


def size_item(kind: str, width_mm: float, height_mm: float) -> str:
    """Return containment as ordered: ``225 × 25 perforated tray``, ``25 mm steel conduit``."""
    if any(word in kind for word in _ROUND) and width_mm == height_mm:
        return f"{width_mm:g} mm {kind}"
    return f"{width_mm:g} × {height_mm:g} {kind}"


def listed_item(item: str) -> str:
    """Return an item as listed to order: conduit without a size says that it is not recorded."""
    sized = "conduit" not in item or re.search(r"\d", item)
    return item if sized else f"{item}{SIZE_OPEN}"


def of_bore(item: str, bore_mm: int) -> str:
    """Return conduit without a size by the bore that its cables need."""
    return f"{item}, bore {bore_mm} mm or more"


def without_size(item: str) -> str:
    """Return an item without what is said where its size is still to be chosen."""
    return _OPEN.sub("", item)


def run_item(run: Containment) -> str:
    """Return a run as ordered."""
    return size_item(run.kind, run.width_mm, run.height_mm)


def cable_item(cable: Cable, results: CalculationResults) -> str:
    """Return a cable as ordered, "not recorded" where its size is not known."""
    figures, data = results.cables.get(cable.tag), results.data.get(cable.to_end)
    if figures is not None:
        return figures.words
    return data.medium.removesuffix(" with baluns") if data is not None else "not recorded"


def enclosure_item(leg: RouteLeg) -> str:
    """Return what a leg outside the runs lies in, with its size: "25 mm steel conduit", or ""."""
    _, _, told = leg.words.rpartition(" in ")
    if leg.section or not told or told == leg.words:
        return ""
    return told if re.search(r"conduit|trunking", told) else ""
