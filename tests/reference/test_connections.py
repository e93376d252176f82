"""Cores, contacts and pins against the standards that name them, and against each other."""

from __future__ import annotations

import pytest

from asfitted.errors import OutsideTableError
from asfitted.reference.armoured_end import (
    bedding_proud_mm,
    fly_lead_mm2,
    gland_parts,
    strip_lengths,
)
from asfitted.reference.cctv import pin_colours
from asfitted.reference.connections import (
    balun_duties,
    coax_power_conductors,
    conductor_colour,
    core_colours,
    core_for_each,
    five_pin_face,
    motor_terminal,
    poe_duty,
    residual_device_terminals,
    source_of,
)


def test_conductors_are_identified_as_bs_7671_table_51_says() -> None:
    # BS 7671 Table 51 (memory)
    expected = {
        "L1": "brown",
        "L2": "black",
        "L3": "grey",
        "N": "blue",
        "PE": "green-and-yellow",
    }
    assert {mark: conductor_colour(mark) for mark in expected} == expected


def test_contacts_of_a_five_pin_outlet_run_clockwise_from_earth_at_six_o_clock() -> None:
    # BS EN IEC 60309-2, 3P+N+E, 230/400 V: red, 6 h; sequence seen on a maker's page
    assert five_pin_face(400.0) == (("E", "L1", "L2", "L3", "N"), "6h", "red")


def test_a_five_pin_outlet_of_an_unheld_voltage_is_refused() -> None:
    with pytest.raises(OutsideTableError):
        five_pin_face(690.0)


def test_a_core_of_the_right_colour_is_never_sleeved() -> None:
    made = core_colours("armoured", 5)
    assert core_for_each(("L1", "L2", "L3", "N", "PE"), made) == made


def test_the_fourth_core_serves_as_protective_conductor_when_sleeved() -> None:
    # BS 7671 514.3.2 (memory): identified at terminations by sleeving of the right colour
    found = core_for_each(("L1", "L2", "L3", "PE"), core_colours("armoured", 4))
    assert found == ("brown", "black", "grey", "blue sleeved green-and-yellow")


def test_no_core_serves_twice_and_a_missing_one_is_told() -> None:
    found = core_for_each(("L1", "L2", "L3", "N", "PE"), core_colours("armoured", 3))
    used = [words.split()[0] for words in found if words != "no core"]
    assert len(used) == len(set(used)) == 3
    assert found.count("no core") == 2


def test_poles_of_a_residual_current_device_are_marked_in_pairs() -> None:
    # BS EN 61008-1 (memory): odd numbers on one side, the next even number on the other
    for mark in ("L1", "L2", "L3"):
        upper, lower = residual_device_terminals(mark)
        assert int(lower) == int(upper) + 1
    assert residual_device_terminals("N") == ("N", "N")


def test_motor_terminals_are_those_of_bs_en_60034_8() -> None:
    # BS EN 60034-8 (memory)
    assert [motor_terminal(mark) for mark in ("L1", "L2", "L3", "N")] == ["U1", "V1", "W1", ""]


@pytest.mark.parametrize("each_way", [2, 3])
def test_a_balun_uses_each_of_the_eight_cores_once(each_way: int) -> None:
    duties = balun_duties(each_way)
    assert set(duties) == set(pin_colours("T568B"))
    said = list(duties.values())
    assert said.count("12 V +") == said.count("12 V −") == each_way
    assert said.count("picture +") == said.count("picture −") == 1


def test_a_balun_layout_that_is_not_held_is_refused() -> None:
    with pytest.raises(OutsideTableError):
        balun_duties(1)


def test_each_pin_of_mode_a_and_b_has_a_twin() -> None:
    # IEEE 802.3 clause 33: mode A on 1-2 and 3-6, mode B on 4-5 (+) and 7-8 (−)
    duties = [poe_duty(pin) for pin in range(1, 9)]
    assert duties[0] == duties[1] != duties[2] == duties[5]
    assert duties[3:5] == ["mode B +", "mode B +"]
    assert duties[6:] == ["mode B −", "mode B −"]


def test_a_camera_lead_has_one_of_each_conductor() -> None:
    assert len({carries for _, carries, _ in coax_power_conductors()}) == 4


def test_parts_of_the_gland_are_numbered_from_the_shroud_to_the_locknut() -> None:
    parts = gland_parts()
    assert [part.number for part in parts] == list(range(1, 11))
    assert parts[0].name == "shroud"
    assert parts[-1].name == "locknut"


def test_strip_lengths_rise_with_the_gland_and_stay_within_the_leaflet() -> None:
    # bared armour about 30 to 40 mm for sizes 20S and 20: seen on two pages on making off
    sizes = [strip_lengths(gland) for gland in ("20S", "20", "25", "32", "40")]
    assert [s.armour_mm for s in sizes] == sorted({s.armour_mm for s in sizes})
    assert [s.cores_least_mm for s in sizes] == sorted({s.cores_least_mm for s in sizes})
    assert all(30 <= s.armour_mm <= 40 for s in sizes[:2])
    with pytest.raises(OutsideTableError):
        strip_lengths("63")


@pytest.mark.parametrize(
    ("line_mm2", "lead_mm2"), [(1.5, 4), (4, 4), (6, 6), (16, 16), (25, 16), (95, 16)]
)
def test_the_lead_from_the_earth_tag_follows_the_line_conductor(
    line_mm2: float, lead_mm2: float
) -> None:
    # common practice: as the line conductor, 4 mm2 at least; 16 mm2 above 16
    found = fly_lead_mm2(line_mm2)
    assert found.value == lead_mm2
    assert found.provenance == "common practice"


def test_the_bedding_stands_proud_and_says_how_it_is_known() -> None:
    assert bedding_proud_mm().value == 10
    assert bedding_proud_mm().provenance == "common practice"


def test_a_source_reads_as_standard_and_how_it_is_known() -> None:
    assert source_of("conductor_colours").words == "BS 7671 Table 51 (memory)"
