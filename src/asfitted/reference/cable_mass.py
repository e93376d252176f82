"""Mass of a cable: tabulated where a table gives it, else worked out from its size.

The supports of tray and ladder are chosen by it, so what is worked out is never too light.
"""

from __future__ import annotations

from asfitted.errors import OutsideTableError
from asfitted.reference.cable_family import family
from asfitted.reference.cables import cpc_csa_mm2, mass_kg_m, overall_area_mm2
from asfitted.reference.figure import Figure
from asfitted.reference.loader import table


def mass_or_estimate_kg_m(family_id: str, cores: int, csa_mm2: float) -> Figure:
    """Return the mass of a cable, kg/m, tabulated or else "derived" from size and density.

    Args:
        family_id: Cable family.
        cores: Number of cores, the protective conductor of flat twin and earth left out.
        csa_mm2: Size of a core, mm2.

    Raises:
        OutsideTableError: neither mass nor overall size is in the tables, or it is armoured.
    """
    try:
        return mass_kg_m(family_id, cores, csa_mm2)
    except OutsideTableError:
        if family(family_id).is_armoured:
            raise
        return estimated_mass_kg_m(family_id, cores, csa_mm2)


def estimated_mass_kg_m(family_id: str, cores: int, csa_mm2: float) -> Figure:
    """Return the mass from copper and a sheath without voids, kg/m.

    copper area x its density + the rest of the overall cross-section x density of plastics. The
    gaps between round cores are counted as filled: the figure lies above the mass as weighed.

    Raises:
        OutsideTableError: the size is not in the dimension table.
    """
    overall = overall_area_mm2(family_id, cores, csa_mm2)
    copper_mm2 = cores * csa_mm2 + _protective_mm2(family_id, cores, csa_mm2)
    density = table("conductors", "density")
    copper, plastics = (
        density.figure(density.row(material=name), "value", "g/cm3")
        for name in ("copper", "plastics")
    )
    # mm2 x g/cm3 is g/m
    grams = copper_mm2 * copper.value + max(overall.value - copper_mm2, 0.0) * plastics.value
    return Figure(
        grams / 1000,
        "kg/m",
        f"overall size ({overall.source}) and density ({copper.source})",
        "derived",
        "worked out with no voids: above the mass as weighed",
    )


def _protective_mm2(family_id: str, cores: int, csa_mm2: float) -> float:
    try:
        return cpc_csa_mm2(family_id, cores, csa_mm2).value
    except OutsideTableError:
        return 0.0
