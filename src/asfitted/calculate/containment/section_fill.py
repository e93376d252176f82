"""How full a section of containment is: width on tray, area in trunking, conduit and duct."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from asfitted.calculate.containment.containment_fill import (
    filled_share,
    tray_width_mm,
    trunking_inside_area_mm2,
)
from asfitted.calculate.containment.containment_kinds import kind_of
from asfitted.errors import InputOutOfRangeError, OutsideTableError
from asfitted.reference import cable_family, cables, containment
from asfitted.reference.cable_mass import mass_or_estimate_kg_m
from asfitted.reference.loader import table

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from asfitted.resolve.installation import Cable, Containment


@dataclass(frozen=True)
class CableSize:
    """Space and mass of one cable as laid; ``mass_kg_m`` is None where no table gives it."""

    overall_mm: float
    area_mm2: float
    mass_kg_m: float | None


@dataclass(frozen=True)
class Fill:
    """What a set of cables takes of a run; width or area is None where it does not count."""

    used_mm: float | None
    used_area_mm2: float | None
    fill_pct: float
    limit_pct: float


def cable_size(cable: Cable, sizes: Mapping[str, float]) -> CableSize:
    """Return the space a cable takes; a flat cable lies on its longer axis.

    Args:
        cable: The cable.
        sizes: Chosen cross-sections by cable tag, mm2, for cables whose own is open.

    Raises:
        InputOutOfRangeError: the cable has no size yet.
        OutsideTableError: its size is not in the dimension table.
    """
    construction = cable_family.family(cable.family).construction
    csa = sizes.get(cable.tag, cable.csa_mm2)
    if csa is None and cable.band == "data":
        # space for the largest made: a data cable is chosen by its category, not by size
        csa = max(cables.standard_sizes(cable.family, cable.cores), default=0.0)
    if csa is None:
        raise InputOutOfRangeError(f"cable {cable.tag} has no size yet: choose one first")
    # singles are drawn as one cable but lie as so many separate conductors
    count, cores = (cable.cores, 1) if construction == "single" else (1, cable.cores)
    wanted = (cable.family, cores, csa)
    try:
        mass: float | None = count * mass_or_estimate_kg_m(*wanted).value
    except OutsideTableError:
        mass = None
    return CableSize(
        overall_mm=count * cables.overall_diameter_mm(*wanted).value,
        area_mm2=count * cables.overall_area_mm2(*wanted).value,
        mass_kg_m=mass,
    )


def conduit_inside_area_mm2(diameter_mm: float) -> float:
    """Return the inside area of conduit of an outside diameter, mm2; the steel wall serves all."""
    wall = float(table("containment", "conduit_stock").row(material="steel")["wall_heavy"])
    return math.pi / 4 * (diameter_mm - 2 * wall) ** 2


def inside_area_mm2(run: Containment) -> float:
    """Return the inside area of trunking, conduit or duct, mm2.

    Trunking and plastic conduit: inside the walls; a duct's size is taken as its bore.
    """
    if "trunking" in run.kind:
        return trunking_inside_area_mm2(run.width_mm, run.height_mm)
    if "conduit" in run.kind:
        return conduit_inside_area_mm2(run.width_mm)
    return math.pi / 4 * run.width_mm**2


def fill_of(run: Containment, sizes: Sequence[CableSize], *, only_data: bool) -> Fill:
    """Return how full a run is with cables of these sizes.

    Tray and basket: diameters touching in one layer plus an edge at each side, over the width; a
    share stays spare. Trunking, conduit and duct: cable areas over the inside area. A hidden run
    has no known room: nothing is used of it.
    """
    filling = kind_of(run.kind).filling
    if filling == "width":
        edges = 2 * containment.edge_allowance_mm().value
        used = sum(size.overall_mm for size in sizes) + edges if sizes else 0.0
        limit = 100 * (1 - containment.spare_fraction().value)
        return Fill(used, None, 100 * used / run.width_mm, limit)
    if filling == "area":
        used = sum(size.area_mm2 for size in sizes)
        kind: Literal["trunking", "conduit", "conduit_data"] = "conduit"
        if "trunking" in run.kind:
            kind = "trunking"
        elif only_data:
            kind = "conduit_data"
        limit = containment.space_factor_limit(kind).value
        share = filled_share(
            [size.area_mm2 for size in sizes], inside_area_mm2=inside_area_mm2(run)
        )
        return Fill(None, used, 100 * share, 100 * limit)
    return Fill(None, None, 0.0, 100.0)


def width_needed_mm(diameters_mm: Sequence[float]) -> float:
    """Return the width of tray that keeps the spare share free, mm."""
    return tray_width_mm(
        diameters_mm,
        edge_mm=containment.edge_allowance_mm().value,
        spare_fraction=containment.spare_fraction().value,
    )


def width_to_order_mm(kind: str, needed_mm: float) -> float | None:
    """Return the next stock width of tray or basket, mm; None where none is wide enough."""
    stock = kind_of(kind).stock
    widths = containment.stock(stock).widths_mm if stock else ()
    return min((width for width in widths if width >= needed_mm), default=None)
