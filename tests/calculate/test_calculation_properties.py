"""What must hold for any input: monotonic, unrounded, refused outside the range."""

from __future__ import annotations

import itertools
import math
from typing import TYPE_CHECKING

import pytest
from hypothesis import given
from hypothesis import strategies as st

from asfitted.calculate import (
    adiabatic,
    current_capacity,
    design_current,
    diversity,
    earth_fault_loop,
    fault_current,
    neutral_current,
    phase_balance,
    ring_final,
    voltage_drop,
)
from asfitted.calculate.containment import containment_fill
from asfitted.calculate.data import dc_supply, lens, poe, storage
from asfitted.errors import InputOutOfRangeError, OutsideTableError
from asfitted.reference import cables

if TYPE_CHECKING:
    from collections.abc import Callable

AMPS = st.floats(0.1, 400)
METRES = st.floats(0.1, 500)


@given(AMPS, METRES, METRES)
def test_a_longer_run_never_drops_less(current: float, one: float, other: float) -> None:
    short, long = sorted((one, other))
    drops = [
        voltage_drop.voltage_drop_v(2.8, current_a=current, length_m=length)
        for length in (short, long)
    ]
    assert drops[0] <= drops[1]


@given(AMPS, METRES)
def test_the_greatest_length_just_meets_the_limit(current: float, limit: float) -> None:
    length = voltage_drop.greatest_length_m(2.8, current_a=current, limit_v=limit)
    drop = voltage_drop.voltage_drop_v(2.8, current_a=current, length_m=length)
    assert drop == pytest.approx(limit)


def test_a_bigger_cable_never_fails_where_a_smaller_passed() -> None:
    for family_id in ("swa", "twin_earth", "singles"):
        sizes = cables.standard_sizes(family_id, cables.family(family_id).cores[0])
        for smaller, larger in itertools.pairwise(sizes):
            capacity = [
                cables.tabulated_capacity(family_id, s, "C", 2).value for s in (smaller, larger)
            ]
            row = [cables.voltage_drop_r_x_z(family_id, s, 2, "C") for s in (smaller, larger)]
            assert capacity[0] < capacity[1]
            assert row[0].z_mv_a_m > row[1].z_mv_a_m


@given(st.floats(0, 1), st.floats(0.3, 1))
def test_ct_only_ever_lowers_the_drop(load_share: float, grouping: float) -> None:
    ct = voltage_drop.temperature_factor_ct(
        conductor_c=90, ca=1.0, cg=grouping, current_a=load_share * 100, tabulated_a=100
    )
    assert 0.8 < ct <= 1.0


def test_ct_is_one_for_a_fully_loaded_cable() -> None:
    # BS 7671 Appendix 4, 6.1: a cable at its full rating is at its full temperature
    full = voltage_drop.temperature_factor_ct(
        conductor_c=70, ca=1.0, cg=1.0, current_a=27, tabulated_a=27
    )
    none = voltage_drop.temperature_factor_ct(
        conductor_c=70, ca=1.0, cg=1.0, current_a=0, tabulated_a=27
    )
    assert full == 1.0
    assert none == pytest.approx(260 / 300)


@given(st.lists(st.floats(0, 60), min_size=3, max_size=3))
def test_neutral_is_never_above_the_largest_line(currents: list[float]) -> None:
    neutral = neutral_current.neutral_current_a(*currents)
    assert neutral <= max(currents) + 1e-9
    a, b, c = currents
    under_root = max(0.0, a * a + b * b + c * c - a * b - b * c - c * a)
    assert neutral == pytest.approx(math.sqrt(under_root), abs=1e-6)


def test_neutral_takes_the_power_factor_of_each_line() -> None:
    balanced = neutral_current.neutral_current_a(10, 10, 10, lag_degrees=(30, 30, 30))
    skewed = neutral_current.neutral_current_a(10, 10, 10, lag_degrees=(60, 0, 0))
    assert balanced == pytest.approx(0, abs=1e-9)
    # moving one of three equal currents by 60 degrees leaves a resultant of 2 x 10 sin 30 degrees
    assert skewed == pytest.approx(10)
    # 10 A lagging 60 degrees lies 60 degrees from 5 A of L2: 10^2 + 5^2 + 2 x 50 cos 60
    two = neutral_current.neutral_current_a(10, 5, 0, lag_degrees=(60, 0, 0))
    assert two == pytest.approx(math.sqrt(175))


def test_harmonic_bands_need_more_copper_as_they_rise() -> None:
    # BS 7671 Appendix 4, 5.5: sized on the neutral from 33 % on
    need = [
        neutral_current.harmonic_sizing_current_a(100, third_harmonic_percent=h)
        for h in (10, 20, 40, 45)
    ]
    assert need == pytest.approx([100, 100 / 0.86, 120 / 0.86, 135 / 0.86])


@given(st.floats(1, 8), st.floats(0.1, 3))
def test_the_lowest_voltage_method_is_on_the_safe_side(power: float, loop: float) -> None:
    exact = dc_supply.constant_power_voltage_v(12.0, power_w=power, loop_ohm=loop)
    current = dc_supply.load_current_a(power)
    simple = dc_supply.voltage_at_load_v(12.0, current_a=current, loop_ohm=loop)
    if exact >= 10.8:
        assert simple <= exact + 1e-9
    else:
        assert simple < 10.8


@given(st.dictionaries(st.sampled_from("abcdefgh"), st.floats(0, 40), max_size=6))
def test_small_boards_are_balanced_exactly(loads: dict[str, float]) -> None:
    found = phase_balance.propose_lines(loads)
    spread = _spread(loads, found)
    names = sorted(loads)
    best = min(
        _spread(loads, dict(zip(names, way, strict=True)))
        for way in itertools.product(phase_balance.LINES, repeat=len(names))
    )
    assert spread <= best + 1e-6


@given(st.lists(st.floats(0, 40), min_size=9, max_size=14))
def test_large_boards_are_balanced_within_the_largest_load(amounts: list[float]) -> None:
    loads = {f"way {n}": a for n, a in enumerate(amounts)}
    found = phase_balance.propose_lines(loads)
    assert set(found) == set(loads)
    assert _spread(loads, found) <= max(amounts) + 1e-6
    backwards = dict(reversed(loads.items()))
    assert phase_balance.propose_lines(backwards) == found


def test_fixed_circuits_stay() -> None:
    loads = {"1": 30.0, "2": 10.0, "3": 10.0, "4": 10.0}
    found = phase_balance.propose_lines(loads, fixed={"2": "L1", "3": "L1"})
    assert (found["2"], found["3"]) == ("L1", "L1")
    totals = phase_balance.line_totals_a(loads, lines=found)
    assert sorted(totals.values()) == [10, 20, 30]
    assert phase_balance.unbalance_percent({"L1": 0, "L2": 0, "L3": 0}) == 0


def _spread(loads: dict[str, float], lines: dict[str, str]) -> float:
    totals = phase_balance.line_totals_a(loads, lines=lines)
    return max(totals.values()) - min(totals.values())


@given(st.lists(st.floats(0, 63), min_size=1, max_size=8))
def test_diversity_never_adds_current(currents: list[float]) -> None:
    for load in ("lighting", "standard_socket_circuits", "cooking"):
        less = diversity.diversified_current_a(load, premises="dwelling", currents_a=currents)
        assert 0 <= less <= sum(currents) + 1e-9


def test_socket_circuits_of_a_dwelling() -> None:
    # On-Site Guide Table A2: 100 % of the largest and 40 % of every other standard circuit
    demand = diversity.diversified_current_a(
        "standard_socket_circuits", premises="dwelling", currents_a=[32, 32, 20]
    )
    assert demand == pytest.approx(32 + 0.4 * 52)
    cooker = diversity.diversified_current_a(
        "cooking", premises="dwelling", currents_a=[40], sockets=1
    )
    assert cooker == pytest.approx(10 + 9 + 5)
    with pytest.raises(OutsideTableError):
        diversity.diversified_current_a("motors", premises="dwelling", currents_a=[5])


def test_ring_legs_share_by_distance() -> None:
    legs = ring_final.leg_currents_a([(10, 20), (20, 12)], ring_length_m=60)
    assert sum(legs) == pytest.approx(32)
    assert legs[0] == pytest.approx(20 * 50 / 60 + 12 * 40 / 60)


def test_line_to_line_fault_is_root_three_over_two_of_three_phase() -> None:
    # IEC 60909-0, 7.3
    z = 0.02 + 0.03j
    ratio = fault_current.line_line_fault_a(z) / fault_current.three_phase_fault_a(z)
    assert ratio == pytest.approx(math.sqrt(3) / 2)


@pytest.mark.parametrize(
    ("kva", "uk", "ka"), [(100, 4, 3.61), (500, 4.75, 15.19), (1600, 6, 38.49)]
)
def test_fault_current_of_usual_transformers(kva: float, uk: float, ka: float) -> None:
    # infinite bus, no voltage factor: Ik3 = Sn / (sqrt(3) Un uk), IEC 60909-0
    z = fault_current.transformer_impedance_ohm(kva, line_voltage_v=400, uk_percent=uk)
    assert fault_current.three_phase_fault_a(z, c=1.0) / 1000 == pytest.approx(ka, abs=0.01)


def test_transformer_losses_turn_part_of_the_impedance_into_resistance() -> None:
    z = fault_current.transformer_impedance_ohm(
        1000, line_voltage_v=400, uk_percent=5, copper_loss_w=10000
    )
    assert abs(z) == pytest.approx(0.008)
    assert z.real == pytest.approx(0.0016)


def test_armour_in_parallel_with_a_core_is_below_either() -> None:
    armour = earth_fault_loop.armour_impedance_ohm(3.2, length_m=40, temperature_factor=1.27)
    both = earth_fault_loop.parallel_ohm(armour, 0.1 + 0j)
    assert abs(both) < 0.1


def test_a_measured_limit_is_rounded_down() -> None:
    # BS 7671 Appendix 3: 0.8 x 4.37 = 3.496
    assert earth_fault_loop.measured_limit_ohm(4.37) == 3.49
    assert earth_fault_loop.measured_limit_ohm(1.25) == 1.0


def test_times_and_sizes_of_the_adiabatic_equation_agree() -> None:
    time = adiabatic.longest_time_s(800, csa_mm2=4, k=115)
    assert adiabatic.minimum_csa_mm2(800, time_s=time, k=115) == pytest.approx(4)
    energy = adiabatic.fault_energy_a2s(800, time_s=time)
    assert adiabatic.minimum_csa_for_energy_mm2(energy, k=115) == pytest.approx(4)


def test_tray_and_trunking() -> None:
    # On-Site Guide Appendix E: 45 % of a 50 x 50 trunking with 1 mm walls is its term, 1037
    inside = containment_fill.trunking_inside_area_mm2(50, 50)
    assert 0.45 * inside == pytest.approx(1037, abs=0.5)
    assert containment_fill.filled_share([518.4, 518.4], inside_area_mm2=inside) == pytest.approx(
        0.45
    )
    width = containment_fill.tray_width_mm(
        [20, 20], edge_mm=10, spare_fraction=0.0, gaps_mm=containment_fill.spaced_gaps_mm([20, 20])
    )
    assert width == 80


def test_lens_and_storage_agree_with_their_inverses() -> None:
    width = lens.scene_width_m(sensor_width_mm=5.4, focal_length_mm=4, distance_m=12)
    angle = lens.field_of_view_degrees(sensor_width_mm=5.4, focal_length_mm=4)
    assert lens.width_in_view_m(angle, distance_m=12) == pytest.approx(width)
    detail = lens.pixel_density_px_m(2560, width_m=width)
    reach = lens.greatest_distance_m(detail, width_px=2560, sensor_width_mm=5.4, focal_length_mm=4)
    assert reach == pytest.approx(12)
    disk = storage.disk_tb(storage.storage_gb(4, days=31, cameras=4), margin=1.0)
    assert storage.days_kept(disk, total_rate_mbit_s=16) == pytest.approx(31)


REFUSED: list[Callable[[], object]] = [
    lambda: design_current.single_phase_current_a(-1),
    lambda: design_current.three_phase_current_a(1, power_factor=0),
    lambda: design_current.three_phase_current_a(1, power_factor=1.2),
    lambda: current_capacity.combined_factor(cg=0),
    lambda: current_capacity.governing_length([]),
    lambda: current_capacity.smallest_size(100, capacities_a=[(4, 26)]),
    lambda: voltage_drop.voltage_drop_v(0, current_a=1, length_m=1),
    lambda: voltage_drop.voltage_drop_v(18, current_a=float("nan"), length_m=1),
    lambda: earth_fault_loop.maximum_zs_ohm(0),
    lambda: earth_fault_loop.loop_impedance_from_parts_ohm(-1 + 0j),
    lambda: fault_current.three_phase_fault_a(0j),
    lambda: fault_current.transformer_impedance_ohm(
        100, line_voltage_v=400, uk_percent=1, copper_loss_w=2000
    ),
    lambda: adiabatic.minimum_csa_mm2(0, time_s=0.4, k=115),
    lambda: ring_final.leg_currents_a([(70, 10)], ring_length_m=60),
    lambda: neutral_current.harmonic_neutral_a(10, third_harmonic_percent=120),
    lambda: dc_supply.constant_power_voltage_v(12, power_w=20, loop_ohm=2.6),
    lambda: poe.device_power_w(15.4, current_a=1, channel_ohm=20),
    lambda: poe.channel_current_a(100, source_v=50, channel_ohm=12.5),
    lambda: poe.least_type(80),
    lambda: poe.current_per_conductor_a(0.6, pairs=3),
    lambda: lens.width_in_view_m(180, distance_m=5),
    lambda: containment_fill.smallest_by_term(900, terms={"20": 460}),
    lambda: containment_fill.stock_width_mm(900, widths_mm=[50, 600]),
    lambda: containment_fill.trunking_inside_area_mm2(2, 2),
    lambda: phase_balance.propose_lines({"1": 10}, fixed={"2": "L1"}),
    lambda: phase_balance.line_totals_a({"1": 10}, lines={"1": "L4"}),
    lambda: diversity.main_demand([1, 2], demand_factors=[0.5]),
]


@pytest.mark.parametrize("call", REFUSED)
def test_outside_its_range_a_formula_refuses(call: Callable[[], object]) -> None:
    with pytest.raises(InputOutOfRangeError):
        call()
