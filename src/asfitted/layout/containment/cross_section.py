"""What one cross-section shows: the cables of a piece at their true sizes, laid into the run."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from asfitted.calculate.containment.containment_kinds import kind_of
from asfitted.calculate.containment.section_fill import cable_size, inside_area_mm2
from asfitted.layout.containment.packing import (
    Bore,
    CableShape,
    Packed,
    Trough,
    clearance_mm,
    lay_in_a_layer,
    pack,
)
from asfitted.reference import cable_family
from asfitted.reference.containment import edge_allowance_mm

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from asfitted.layout.containment.section_places import SectionPlace
    from asfitted.layout.sheet_model import Model
    from asfitted.resolve.installation import Cable, Containment

Form = Literal["layer", "trunking", "bore"]
DIVIDER_MM = 1.0
DIVIDER_STEP_MM = 1.0


@dataclass(frozen=True)
class CrossSection:
    """A cut through a run: inside sizes, the pieces where they lie, a divider where it is needed.

    ``inside_mm`` is width and height of the hollow (both the bore of conduit or duct);
    ``divider_mm`` is where the divider between power and data stands, or None.
    """

    place: SectionPlace
    form: Form
    inside_mm: tuple[float, float]
    packed: Packed
    data_tags: frozenset[str]
    divider_mm: float | None

    @property
    def wall_mm(self) -> float:
        """Thickness of the walls round the hollow; 0 where the size given is that of the hollow."""
        return max(self.place.developed.run.width_mm - self.inside_mm[0], 0.0) / 2

    @property
    def fits(self) -> bool:
        """Whether every cable found room."""
        return not self.packed.left_out

    @property
    def clear_mm(self) -> float | None:
        """Clear distance of power from data as laid here, or None where only one of them is."""
        power = [p for p in self.packed.laid if p.shape.tag not in self.data_tags]
        data = [p for p in self.packed.laid if p.shape.tag in self.data_tags]
        if not power or not data:
            return None
        return min(clearance_mm(a, b) for a in power for b in data)


def cross_section(model: Model, place: SectionPlace) -> CrossSection:
    """Lay the cables of a piece into its run, power apart from data."""
    run = place.developed.run
    cables = [model.installation.cables[tag] for tag in place.piece.section.cables]
    sizes = {tag: result.csa_mm2 for tag, result in model.results.cables.items()}
    overall = dict(zip(place.piece.section.cables, place.piece.section.overall_mm, strict=True))
    shapes = {
        band: [s for c in cables if c.band == band for s in shapes_of(c, sizes, overall[c.tag])]
        for band in ("power", "data")
    }
    data_tags = frozenset(c.tag for c in cables if c.band == "data")
    power, data = shapes["power"], shapes["data"]
    if kind_of(run.kind).filling == "width":
        packed = lay_in_a_layer(run.width_mm, edge_allowance_mm().value, power, data)
        inside = (run.width_mm, run.height_mm)
        return CrossSection(place, "layer", inside, packed, data_tags, None)
    if "trunking" in run.kind:
        inside = _trunking_inside(run)
        packed, divider = _in_trunking(inside, power, data)
        return CrossSection(place, "trunking", inside, packed, data_tags, divider)
    bore = 2 * math.sqrt(inside_area_mm2(run) / math.pi)
    packed = pack(Bore(bore / 2), [*power, *data])
    return CrossSection(place, "bore", (bore, bore), packed, data_tags, None)


def shapes_of(cable: Cable, sizes: Mapping[str, float], overall_mm: float) -> list[CableShape]:
    """Return the outlines of a cable: one, or one for each conductor of singles.

    Args:
        cable: the cable.
        sizes: cross-sections by cable tag, mm2.
        overall_mm: its overall diameter as the fill takes it, mm; the longer axis of a flat cable.
    """
    construction = cable_family.family(cable.family).construction
    if construction == "single":
        each = overall_mm / cable.cores
        return [CableShape(cable.tag, each, each)] * cable.cores
    thick_mm = overall_mm
    if construction == "flat" and (cable.csa_mm2 or cable.tag in sizes):
        thick_mm = cable_size(cable, sizes).area_mm2 / overall_mm
    return [CableShape(cable.tag, overall_mm, thick_mm)]


def _trunking_inside(run: Containment) -> tuple[float, float]:
    """Return width and height of the inside: its walls are as thick as the fill takes them."""
    area, width, height = inside_area_mm2(run), run.width_mm, run.height_mm
    # (w - 2t)(h - 2t) = A, solved for the wall thickness t
    half = (width + height) / 4
    wall = half - math.sqrt(max(half**2 - (width * height - area) / 4, 0.0))
    return width - 2 * wall, height - 2 * wall


def _in_trunking(
    inside: tuple[float, float], power: Sequence[CableShape], data: Sequence[CableShape]
) -> tuple[Packed, float | None]:
    """Lay power left and data right of a divider, which stands where both find room."""
    width, height = inside
    if not power or not data:
        return pack(Trough(0.0, width, height), [*power, *data]), None
    areas = [sum(shape.area_mm2 for shape in group) for group in (power, data)]
    wish = width * areas[0] / sum(areas)
    count = int(width / DIVIDER_STEP_MM)
    places = sorted((i * DIVIDER_STEP_MM for i in range(1, count)), key=lambda x: abs(x - wish))
    best: tuple[Packed, float] | None = None
    for at in places:
        left = pack(Trough(0.0, at - DIVIDER_MM / 2, height), power)
        right = pack(Trough(at + DIVIDER_MM / 2, width, height), data)
        both = Packed((*left.laid, *right.laid), (*left.left_out, *right.left_out))
        if not both.left_out:
            return both, at
        if best is None or len(both.laid) > len(best[0].laid):
            best = both, at
    return best if best is not None else (Packed((), (*power, *data)), None)
