"""Tails, making-off and cutting allowances, stock lengths, gland ranges."""

from __future__ import annotations

from dataclasses import dataclass

from asfitted.reference.cable_family import family
from asfitted.reference.figure import Figure, TextFigure
from asfitted.reference.loader import table

_FILE = "termination"
_TAILS = {
    "distribution_board": "three-phase distribution board",
    "consumer_unit": "consumer unit or small board",
    "isolator_small": "isolator up to 32 A",
    "isolator_large": "isolator or switch-fuse 63-125 A",
    "industrial_socket": "industrial socket 16-32 A",
    "interlocked_socket": "interlocked socket 63 A",
    "socket": "13 A socket or switch box",
    "junction_box": "lever connector box",
    "luminaire": "luminaire or floodlight",
    "machine": "machine terminal box",
    "camera": "camera",
    "cabinet": "recorder or data cabinet",
    "data_outlet": "data outlet",
}
TAIL_PLACES = tuple(_TAILS)


@dataclass(frozen=True)
class CutRounding:
    """How a cable's cut length becomes an ordered length.

    Attributes:
        waste: Share added, such as 0.05.
        least_waste_m: Least length added, m.
        round_up_to_m: Ordered in steps of so many metres; 0 where bought by the reel or box.
        stock_lengths_m: Usual reels, drums or boxes, m.
        source: Where the figures come from.
        provenance: Their provenance word.
    """

    waste: float
    least_waste_m: float
    round_up_to_m: float
    stock_lengths_m: tuple[float, ...]
    source: str
    provenance: str


def tail_mm(place_key: str) -> Figure:
    """Return the spare tail of each conductor at a place, mm.

    Args:
        place_key: One of ``TAIL_PLACES``.

    Raises:
        OutsideTableError: another place.
    """
    found = table(_FILE, "tails")
    row = found.row(at=_TAILS.get(place_key, place_key))
    return found.figure(row, "length", "mm")


def gland_making_off_mm() -> Figure:
    """Return the sheath and armour lost in making off one armoured end, mm."""
    found = table(_FILE, "tails")
    return found.figure(found.row(at="gland making off (sheath and armour waste)"), "length", "mm")


def level_change_allowance_m() -> Figure:
    """Return the length added for each change of level on a wall, m."""
    found = table(_FILE, "cutting_allowance")
    return Figure(0.3, "m", found.source, found.provenance, str(found.row(step=2)["formula"]))


def cut_rounding(family_id: str) -> CutRounding:
    """Return the waste and the stock lengths of a cable family.

    Raises:
        OutsideTableError: no such family.
    """
    waste_of = {
        "armoured": ("armoured cut to length", "armoured cable"),
        "flat": ("twin and earth from reel", "twin and earth"),
        "single": ("single-core in conduit or trunking", "single-core conduit wire"),
        "multicore": ("twin and earth from reel", "flexible cord"),
        "flexible": ("twin and earth from reel", "flexible cord"),
        "data": ("four-pair or coax from box", "four-pair Cat 5e/6"),
        "coax": ("four-pair or coax from box", "RG59 coax"),
        "coax_power": ("four-pair or coax from box", "combined coax and power"),
    }
    waste_name, stock_name = waste_of[family(family_id).construction]
    found = table(_FILE, "cutting_allowance")
    row = found.row(waste=waste_name)
    stock = table(_FILE, "stock_lengths").row(item=stock_name)
    return CutRounding(
        waste=float(row["value"]),
        least_waste_m=float(row.get("min_m", 0.0)),
        round_up_to_m=float(row.get("round_up_to_m", 0.0)),
        stock_lengths_m=tuple(map(float, stock["lengths"])),
        source=found.source,
        provenance=str(row["provenance"]),
    )


def gland_entry_thread(size: str) -> TextFigure:
    """Return the entry thread of a gland size, such as "M20x1.5" for "20S".

    Raises:
        OutsideTableError: no such size.
    """
    found = table(_FILE, "gland_ranges")
    row = found.row(size=size)
    return TextFigure(row["entry_thread"], found.standard, str(row["provenance"]))
