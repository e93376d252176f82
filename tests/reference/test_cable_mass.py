"""Masses worked out from size, against tabulated and published ones."""

from __future__ import annotations

import math

import pytest

from asfitted.errors import OutsideTableError
from asfitted.reference import cables
from asfitted.reference.cable_mass import estimated_mass_kg_m, mass_or_estimate_kg_m

STEEL_G_CM3 = 7.85


def test_tabulated_mass_is_taken_where_there_is_one() -> None:
    assert mass_or_estimate_kg_m("swa", 4, 16).value == 1.36
    assert mass_or_estimate_kg_m("swa", 4, 16).provenance == "seen"


def test_flat_twin_by_hand() -> None:
    # 10.3 x 5.9 = 60.77 mm2, copper 2 x 2.5 + 1.5 = 6.5 mm2:
    # 6.5 x 8.89 + 54.27 x 1.5 = 57.8 + 81.4 = 139.2 g/m
    found = mass_or_estimate_kg_m("twin_earth", 2, 2.5)
    assert found.value == pytest.approx(0.1392, abs=1e-4)
    assert found.provenance == "derived"


@pytest.mark.parametrize(
    ("family", "cores", "csa_mm2", "published_kg_km"),
    [
        # BS 6004 flat twin and earth and BS 6004 singles, as distributors print them (memory)
        ("twin_earth", 2, 1.5, 85),
        ("twin_earth", 2, 2.5, 120),
        ("singles", 1, 2.5, 32),
        ("singles", 1, 10, 115),
    ],
)
def test_never_lighter_than_printed_and_not_half_as_heavy_again(
    family: str, cores: int, csa_mm2: float, published_kg_km: float
) -> None:
    found = estimated_mass_kg_m(family, cores, csa_mm2).value * 1000
    assert published_kg_km * 0.98 <= found <= published_kg_km * 1.5


@pytest.mark.parametrize(("cores", "csa_mm2"), [(2, 6), (3, 10), (4, 16), (4, 10)])
def test_the_same_sum_with_steel_reproduces_the_masses_of_armoured_cable(
    cores: int, csa_mm2: float
) -> None:
    """BS 5467 nominal masses: copper, armour wires of known area, the rest solid plastics."""
    tabulated = cables.mass_kg_m("swa", cores, csa_mm2).value * 1000
    overall = math.pi / 4 * cables.overall_diameter_mm("swa", cores, csa_mm2).value ** 2
    steel, copper = cables.armour("swa", cores, csa_mm2).area_mm2, cores * csa_mm2
    found = copper * 8.89 + steel * STEEL_G_CM3 + (overall - copper - steel) * 1.5
    assert tabulated * 0.95 <= found <= tabulated * 1.35


def test_bigger_is_heavier_in_every_family() -> None:
    for one in cables.families():
        if one.construction in ("armoured", "multicore"):  # where diameters come from two tables
            continue
        for cores in one.cores:
            masses = []
            for csa in cables.standard_sizes(one.id, cores):
                try:
                    masses.append(mass_or_estimate_kg_m(one.id, cores, csa).value)
                except OutsideTableError:
                    continue
            assert masses == sorted(masses), one.id


def test_multicore_without_a_tabulated_diameter_takes_the_larger_armoured_one() -> None:
    stand_in = cables.overall_diameter_mm("multicore_pvc", 4, 16)
    assert (stand_in.value, stand_in.provenance) == (23.4, "derived")
    # where both are tabulated the armoured one is the larger
    for cores, csa in [(2, 1.5), (3, 2.5), (3, 4), (5, 2.5)]:
        own = cables.overall_diameter_mm("multicore_pvc", cores, csa).value
        assert own < cables.overall_diameter_mm("swa", cores, csa).value


def test_every_size_that_can_be_chosen_has_a_diameter() -> None:
    for one in cables.families():
        for cores in one.cores:
            for csa in cables.standard_sizes(one.id, cores):
                assert cables.overall_diameter_mm(one.id, cores, csa).value > 0


def test_armoured_cable_without_a_tabulated_mass_is_not_guessed() -> None:
    with pytest.raises(OutsideTableError):
        mass_or_estimate_kg_m("swa", 4, 7)
