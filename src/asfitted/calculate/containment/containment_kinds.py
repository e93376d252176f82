"""What the kind of a run, or of a drop, means for rating, grouping, fill and separation."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal

from asfitted.errors import InputOutOfRangeError

Filling = Literal["width", "area", "length"]
PowerContainment = Literal["none_or_plastic", "mesh", "perforated", "solid_metal"]


@dataclass(frozen=True)
class ContainmentKind:
    """One kind of run.

    Attributes:
        method: Reference method letter of BS 7671 Appendix 4 Table 4A2.
        arrangement: Row of ``reference.factors.grouping`` for several cables in it.
        filling: Whether its width or its inside area is used up; "length" for neither.
        stock: Kind of ``reference.containment.stock``, "" for none.
        screen: Column of BS EN 50174-2 for power cables in it.
    """

    method: str
    arrangement: str
    filling: Filling
    stock: str
    screen: PowerContainment


# Methods: BS 7671 Table 4A2. A hidden run is taken as cable in conduit, the safer guess.
_KINDS = {
    "perforated tray": ContainmentKind(
        "E", "perforated_tray", "width", "medium tray", "perforated"
    ),
    "wire basket": ContainmentKind("E", "perforated_tray", "width", "basket", "mesh"),
    "cable ladder": ContainmentKind("E", "ladder", "width", "ladder", "none_or_plastic"),
    "steel trunking": ContainmentKind("B", "bunched", "area", "steel trunking", "solid_metal"),
    "plastic trunking": ContainmentKind(
        "B", "bunched", "area", "plastic trunking", "none_or_plastic"
    ),
    "steel conduit": ContainmentKind("B", "bunched", "area", "steel conduit", "solid_metal"),
    "plastic conduit": ContainmentKind(
        "B", "bunched", "area", "plastic conduit", "none_or_plastic"
    ),
    "buried duct": ContainmentKind("D", "bunched", "area", "", "none_or_plastic"),
    "hidden run": ContainmentKind("B", "bunched", "length", "", "none_or_plastic"),
}


def kind_of(words: str) -> ContainmentKind:
    """Return what a kind of run means.

    Raises:
        InputOutOfRangeError: no such kind of run.
    """
    if words not in _KINDS:
        raise InputOutOfRangeError(f"no kind of containment {words!r}; known: {', '.join(_KINDS)}")
    return _KINDS[words]


def is_run_kind(words: str) -> bool:
    """Tell whether words name a kind of run, not only what a drop runs in."""
    return words in _KINDS


def drop_enclosure(drop: str) -> str:
    """Return what a drop runs in without its size: "20 mm steel conduit" gives "steel conduit"."""
    return re.sub(r"^[\d.]+(\s*[x×]\s*[\d.]+)?\s*(mm)?\s+", "", drop.strip()) or "clipped"


def is_enclosed(enclosure: str) -> bool:
    """Tell whether a drop runs in conduit or trunking."""
    return "conduit" in enclosure or "trunking" in enclosure


def drop_method(enclosure: str) -> str:
    """Return the reference method letter of a drop: B in conduit or trunking, C clipped."""
    return "B" if is_enclosed(enclosure) else "C"


def drop_arrangement(enclosure: str) -> str:
    """Return the row of the grouping table for cables that share a drop."""
    return "bunched" if is_enclosed(enclosure) else "single_layer_wall"
