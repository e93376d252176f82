"""Typed look-ups: right cell, safe side between cells, a clear error off the table."""

from __future__ import annotations

import dataclasses

import pytest

from asfitted.errors import InputOutOfRangeError, OutsideTableError, ReferenceDataError
from asfitted.reference import (
    cables,
    cctv,
    conductors,
    containment,
    devices,
    factors,
    heights,
    loader,
    segregation,
    termination,
)


def test_spec_words_in_any_letter_case_name_a_family() -> None:
    for word, family_id in [
        ("SWA", "swa"),
        ("swa lsf", "swa_lsf"),
        ("T&E", "twin_earth"),
        ("Singles LSF", "singles_lsf"),
        ("RG59+2", "coax_power"),
        ("cat6", "cat6"),
        ("rubber flex", "flex_rubber"),
        ("heat-resistant flex", "flex_heat"),
        ("FP", "fire_performance"),
        ("multicore PVC", "multicore_pvc"),
    ]:
        assert cables.family(word).id == family_id
    with pytest.raises(OutsideTableError, match="SWA"):
        cables.family("bell wire")


def test_a_90_c_cable_at_70_c_terminals_is_read_from_the_70_c_table() -> None:
    # BS 7671 Tables 4D4A and 4E4A, 10 mm2, Method C, three-phase
    cold = cables.tabulated_capacity("swa", 10, "C", 3)
    hot = cables.tabulated_capacity("swa", 10, "C", 3, terminals_90c=True)
    assert (cold.value, hot.value) == (58, 73)
    assert "4D4A" in cold.source
    assert "4E4A" in hot.source
    assert cables.rating_insulation_c("swa") == 70
    assert cables.rating_insulation_c("swa", terminals_90c=True) == 90
    assert cables.family("swa").terminals_70c_table == "4D4A"


def test_no_cable_gains_from_70_c_terminals() -> None:
    for one in cables.families():
        if not one.terminals_70c_family:
            continue
        for size in cables.standard_sizes(one.id, one.cores[0]):
            if size > 300:
                continue
            for method in ("A", "B", "C", "D", "E", "F"):
                try:
                    hot = cables.tabulated_capacity(one.id, size, method, 2, terminals_90c=True)
                    cold = cables.tabulated_capacity(one.id, size, method, 2)
                except OutsideTableError:
                    continue
                assert cold.value < hot.value, (one.id, size, method)


def test_flat_cable_outside_its_own_table_is_read_as_multicore() -> None:
    # BS 7671 Table 4D5 for method 100; Table 4D2A for method B
    assert cables.tabulated_capacity("T&E", 2.5, "100", 2).value == 21
    in_trunking = cables.tabulated_capacity("T&E", 2.5, "B", 2)
    assert in_trunking.value == 23
    assert "4D2A" in in_trunking.source


def test_voltage_drop_of_small_and_large_cable() -> None:
    # BS 7671 Tables 4E4B and 4D5
    large = cables.voltage_drop_r_x_z("swa", 25, 3, "E")
    assert (large.r_mv_a_m, large.x_mv_a_m, large.z_mv_a_m) == (1.6, 0.14, 1.65)
    small = cables.voltage_drop_r_x_z("twin_earth", 2.5, 2, "C")
    assert (small.r_mv_a_m, small.x_mv_a_m, small.z_mv_a_m) == (18, 0, 18)


def test_off_the_table_names_table_axis_and_range() -> None:
    with pytest.raises(OutsideTableError, match=r"4D4A.*csa 7.*1\.5 to 400"):
        cables.tabulated_capacity("swa", 7, "C", 3)
    with pytest.raises(OutsideTableError, match="4D4A"):
        cables.tabulated_capacity("swa", 10, "Z", 3)
    with pytest.raises(InputOutOfRangeError, match="2 or 3"):
        cables.tabulated_capacity("swa", 10, "C", 1)
    with pytest.raises(OutsideTableError, match="capacity"):
        cables.tabulated_capacity("cat6", 0.259, "C", 2)
    with pytest.raises(OutsideTableError, match="no armour"):
        cables.armour("twin_earth", 2, 2.5)
    with pytest.raises(OutsideTableError, match="mass"):
        cables.mass_kg_m("twin_earth", 2, 2.5)


def test_dimensions_armour_and_gland() -> None:
    # BS 5467 nominal dimensions as distributors print them
    assert cables.overall_diameter_mm("swa", 4, 16).value == 23.4
    assert cables.mass_kg_m("swa", 4, 16).value == 1.36
    assert cables.armour("swa", 4, 16).area_mm2 == 49
    assert cables.gland_size("swa", 4, 16).text == "25"
    assert "check" in cables.gland_size("swa", 2, 50).note
    assert cables.overall_area_mm2("T&E", 2, 2.5).value == pytest.approx(10.3 * 5.9)
    assert cables.cpc_csa_mm2("T&E", 2, 2.5).value == 1.5
    assert cables.bend_radius_factor("swa", 4, 16).value == 6
    assert cables.bend_radius_factor("swa", 4, 25).value == 8
    assert cables.bend_radius_factor("T&E", 2, 2.5).value == 4
    assert cables.overall_diameter_mm("cat6", 8, 0).value == 6.2


def test_bend_factor_of_every_armoured_size_agrees_with_the_cable_page() -> None:
    for cores in (2, 3, 4, 5):
        for size in cables.standard_sizes("swa", cores):
            wanted = 6 if size <= 16 else 8
            assert cables.bend_radius_factor("swa", cores, size).value == wanted


def test_conductors() -> None:
    # IEC 60228 Tables 1 to 3; On-Site Guide multipliers 1.20 and 1.28
    assert conductors.resistance_20c(2.5).value == 7.41
    assert conductors.resistance_20c(0.75, klass=5).value == 26.0
    assert conductors.resistance_20c(185, klass=1).value == 0.101
    assert conductors.resistance_20c(25, "aluminium").value == 1.2
    assert conductors.temperature_factor(70).value == pytest.approx(1.20)
    assert conductors.temperature_factor(90).value == pytest.approx(1.28)
    assert conductors.temperature_factor(20, from_c=70).value == pytest.approx(1 / 1.2)
    assert conductors.k_cpc("swa", "armour").value == 46
    assert conductors.k_steel_enclosure("thermoplastic 70").value == 47
    for line, least in [(10, 10), (16, 16), (25, 16), (35, 16), (50, 25)]:
        assert conductors.minimum_cpc_by_table(line).value == least
    assert conductors.main_bonding_mm2(70).value == 25
    assert conductors.reactance("multicore").value == 0.085
    with pytest.raises(OutsideTableError):
        conductors.resistance_20c(3)
    with pytest.raises(OutsideTableError, match="k"):
        conductors.k_line("cat6")
    with pytest.raises(InputOutOfRangeError):
        conductors.temperature_factor(500)


@pytest.mark.parametrize(
    ("standard", "curve", "rating", "time", "zs"),
    [
        ("BS EN 60898", "B", 32, 0.4, 1.37),  # BS 7671 Table 41.3
        ("BS EN 61009-1", "C", 16, 0.4, 1.37),
        ("BS EN 60898", "D", 16, 5, 1.37),
        ("BS 88-3", "", 32, 0.4, 0.91),  # trade-body journal: 0.72 measured = 0.8 x 0.91
        ("BS 88-2", "", 100, 5, 0.42),  # BS 7671 Table 41.4(a), recalled
    ],
)
def test_maximum_zs(standard: str, curve: str, rating: float, time: float, zs: float) -> None:
    assert devices.maximum_zs(standard, curve, rating, time).value == pytest.approx(zs, abs=0.006)


def test_a_shorter_time_never_allows_a_higher_impedance() -> None:
    for standard in devices.FUSES:
        for rating in devices.standard_ratings(standard):
            limits = []
            for time in (0.1, 0.2, 0.4, 1.0, 5.0):
                try:
                    limits.append(devices.maximum_zs(standard, "", rating, time).value)
                except OutsideTableError:
                    assert rating >= 80
            assert limits == sorted(limits), (standard, rating)


def test_a_fuse_in_a_tenth_of_a_second_needs_twice_its_0_4_s_current() -> None:
    # the I2t of a fuse does not grow as it gets faster, so 2 x I(0.4 s) is enough at 0.1 s
    for standard, rating in (("BS 88-2", 32), ("BS 88-3", 63), ("BS 3036", 30)):
        fast = devices.current_for_disconnection(standard, "", rating, 0.1).value
        slow = devices.current_for_disconnection(standard, "", rating, 0.4).value
        assert 2 * slow <= fast <= 2.02 * slow


def test_devices() -> None:
    assert devices.magnetic_multiple("c").value == 10
    assert devices.current_for_disconnection("BS EN 60898", "B", 32, 0.4).value == 160
    # 60898-1 Annex ZA quoted for 10 kA, class 3: 70 000 and 84 000 A2s up to 16 A
    for curve, energy in (("B", 70000), ("C", 84000)):
        found = devices.let_through_energy(curve, 16, 10000)
        assert found is not None
        assert found.value == energy
    assert devices.let_through_energy("D", 16, 6000) is None
    assert devices.let_through_energy("B", 50, 6000) is None
    assert devices.let_through_energy("B", 16, 15000) is None
    assert devices.overload_factor("BS 3036").value == 0.725
    assert devices.rcd_time().value == 300
    assert devices.rcd_time(5, delayed=True).value == 150
    assert devices.rcd_minimum_time().value == 130
    assert devices.maximum_zs_rcd(30).value == pytest.approx(1667, abs=1)
    assert devices.measured_zs_factor().value == 0.8
    with pytest.raises(OutsideTableError, match="disconnect"):
        devices.current_for_disconnection("BS EN 61008", "", 63, 0.4)
    with pytest.raises(OutsideTableError):
        devices.maximum_zs("BS 1361", "", 30, 0.4)
    with pytest.raises(OutsideTableError):
        devices.current_for_disconnection("BS EN 60898", "B", 32, 7)


@pytest.mark.parametrize(
    ("system", "final", "rating", "sockets", "seconds"),
    [
        ("TN-C-S", True, 32, False, 0.4),  # BS 7671 Table 41.1 and 411.3.2.2 to .4
        ("TN-S", True, 63, True, 0.4),
        ("TN-C-S", True, 40, False, 5),
        ("TN-C-S", False, 16, False, 5),
        ("TT", True, 32, True, 0.2),
        ("TT", False, 63, False, 1),
    ],
)
def test_disconnection_time(
    system: str, final: bool, rating: float, sockets: bool, seconds: float
) -> None:
    assert devices.disconnection_time(system, final, rating, sockets).value == seconds


def test_factors_take_the_safe_side() -> None:
    assert factors.ambient_air(90, 35).value == 0.96
    assert factors.ambient_air(90, 31).value == 0.96
    assert factors.ambient_air(60, 30).value == 1.0
    assert factors.ground(70, 22).value == 0.95
    assert factors.grouping("perforated_tray", 4).value == 0.77
    assert factors.grouping("bunched", 10).value == 0.45
    assert factors.grouping("ladder", 40).value == 0.78
    assert factors.grouping("buried_touching", 1).value == 1.0
    assert factors.grouping("duct_touching", 3).value == 0.75
    assert factors.grouping_on_trays("ladder", "touching", 2, 5).value == 0.76
    assert factors.soil(2.6).value == 0.9
    assert factors.depth(0.9).value == 0.97
    assert factors.insulation_length(0).value == 1.0
    assert factors.insulation_length(60).value == 0.78
    assert factors.insulation_length(3000).value == 0.5
    assert factors.device_factor("BS 3036", buried=False).value == 0.725
    assert factors.device_factor("BS EN 60898", buried=True).value == 0.9
    assert factors.voltage_drop_limit_percent("lighting").value == 3
    assert factors.voltage_drop_limit_percent("other", private_supply=True).value == 8
    assert factors.voltage_drop_extra_percent(300) == 0.5
    assert [factors.third_harmonic(p)[0].value for p in (15, 33, 45, 46)] == [1, 0.86, 0.86, 1]
    assert [factors.third_harmonic(p)[1] for p in (15, 33, 45, 46)] == [False, False, True, True]


@pytest.mark.parametrize(
    "call",
    [
        lambda: factors.ambient_air(70, 61),
        lambda: factors.ambient_air(105, 30),
        lambda: factors.ground(60, 20),
        lambda: factors.grouping("bunched", 21),
        lambda: factors.grouping("buried_touching", 7),
        lambda: factors.grouping("heap", 2),
        lambda: factors.soil(3.1),
        lambda: factors.depth(3.1),
        lambda: containment.trunking_term("60x60"),
        lambda: containment.conduit_term(20, 6, 3),
        lambda: containment.support_spacing("armoured cable", 41),
        lambda: containment.stock("bucket"),
        lambda: termination.tail_mm("moon"),
        lambda: cctv.poe_type(5),
        lambda: cctv.conductor_ohm_per_100m("swa"),
        lambda: segregation.base_separation_mm("e", "mesh"),
        lambda: heights.least_ip("moon"),
    ],
)
def test_off_a_table_is_an_error(call: object) -> None:
    with pytest.raises(OutsideTableError):
        call()  # type: ignore[operator]


def test_containment() -> None:
    assert containment.trunking_term("50x50").value == 1037  # On-Site Guide Appendix E
    assert containment.cable_term(2.5).value == 12.6
    assert containment.cable_term(4, containment="conduit_short").value == 58
    assert containment.cable_term(1.0).value == containment.cable_term(1.5).value
    assert containment.conduit_term(20, 2.9, 0).value == 460
    assert containment.conduit_term(25, 6, 1).value == 422
    assert containment.conduit_term(25, 5.5, 1).value == 422
    assert containment.space_factor_limit("trunking").value == 0.45
    assert containment.space_factor_limit("conduit_data").value == 0.40
    assert containment.support_spacing("armoured cable", 18).value == 400
    assert containment.support_spacing("armoured cable", 18, "vertical").value == 550
    assert containment.support_spacing("steel conduit", 20).value == 1750
    assert containment.support_spacing("tray", 0).value == 1500
    assert containment.usable_width(300).value == 205
    assert containment.stock("steel conduit").stock_length_m == 3.75
    for kind in containment.STOCK_KINDS:
        widths = containment.stock(kind).widths_mm
        assert widths == tuple(sorted(widths)), kind


def test_termination() -> None:
    for place in termination.TAIL_PLACES:
        assert termination.tail_mm(place).value > 0
    assert termination.gland_making_off_mm().value == 100
    assert termination.cut_rounding("swa").round_up_to_m == 1
    for one in cables.families():
        assert 0 < termination.cut_rounding(one.id).waste < 0.5
    assert termination.gland_entry_thread("20S").text == "M20x1.5"


def test_camera_tables() -> None:
    assert cctv.conductor_ohm_per_100m("cat6").value == 6.68
    assert cctv.conductor_ohm_per_100m("coax_power", 0.75).value == 2.6
    for family_id in ("cat5e", "cat6"):
        one = cctv.conductor_ohm_per_100m(family_id).value
        assert cctv.loop_ohm_per_100m(family_id, 1).value == pytest.approx(2 * one)
        assert cctv.loop_ohm_per_100m(family_id, 4).value == pytest.approx(one / 2)
    assert [cctv.poe_type(n).device_w for n in (1, 2, 3, 4)] == [12.95, 25.5, 51, 71.3]
    assert cctv.pixel_density("recognise").value == 125  # BS EN 62676-4:2015
    assert cctv.sensor_width_mm("1/2.8").value == 5.4
    assert cctv.bit_rate_mbit_s(2000).value == 3.0
    assert cctv.camera_window().least_v == 10.8
    assert cctv.recorder_ports(4).value == 8
    assert len(cctv.pin_colours("T568B")) == 8


def test_separation_of_data_from_power() -> None:
    # BS EN 50174-2: A = S x P; unscreened Cat 6, no divider, 5 circuits = 100 x 0.4
    assert segregation.separation_mm("b", "none_or_plastic", 5).value == 40
    assert segregation.separation_mm("b", "solid_metal", 80).value == 0
    assert segregation.counted_circuits(32, 3) == 6
    assert segregation.counted_circuits(20, 1) == 1
    assert segregation.segregation_class("cat6") == "b"


def test_heights() -> None:
    assert heights.prescribed_zone_mm("top of wall").value == 150  # BS 7671 522.6.202
    assert heights.least_ip("outdoor open").text == "IPX4"
    for found in heights.workplace_heights():
        assert found.least_mm <= found.default_mm <= found.greatest_mm


def test_tables_are_frozen() -> None:
    found = loader.table("factors", "Ca_air")
    with pytest.raises(TypeError):
        found.rows[0]["pvc_70"] = 2.0  # type: ignore[index]
    with pytest.raises(dataclasses.FrozenInstanceError):
        found.id = "other"  # type: ignore[misc]
    assert loader.table("factors", "Ca_air") is found


def test_a_missing_file_or_table_is_our_fault() -> None:
    with pytest.raises(ReferenceDataError, match="nowhere"):
        loader.tables("nowhere")
    with pytest.raises(ReferenceDataError, match="no table"):
        loader.table("factors", "Cx")
