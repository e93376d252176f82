"""Sections of runs, what fills them, who is beside whom, and how far data is from power."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from small_room import board, cable, circuit, installation, place, point, position, run, walls

from asfitted.calculate.containment.leg_groups import companions
from asfitted.calculate.containment.sections import fill_sections, find_routes
from asfitted.calculate.containment.separation import counted_circuits, worst_class
from asfitted.calculate.routes.cable_routes import find_paths
from asfitted.errors import InputOutOfRangeError
from asfitted.geometry import distance3
from asfitted.reference import cables as cable_tables
from asfitted.resolve import resolve
from asfitted.spec.load_job import load_job

if TYPE_CHECKING:
    from asfitted.calculate.containment.sections import RouteResult
    from asfitted.resolve.installation import Installation

SPECS = Path(__file__).parents[2] / "specs"
ON = walls()
A = ON["A"]
TRAY = run("T1", [(A, 0, 2500), (A, 8000, 2500)], ("A",))
BASKET = run(
    "T2", [(A, 0, 2250), (A, 8000, 2250)], ("A",), bands=("data",), kind="wire basket",
    width_mm=100.0, height_mm=55.0, level_of="U/S",
)  # fmt: skip
DB1 = board(position(A, 1000, 1500))
FAR, NEAR = point("X1", position(A, 6000, 1200)), point("X2", position(A, 4000, 1200))
W1, W2 = cable("W1", "DB1", "X1"), cable("W2", "DB1", "X2")
D1 = cable(
    "D1", "X1", "X2", band="data", family="cat6", cores=8, csa_mm2=None, cpc="none", via=("T2",)
)


def job(*cables: object, runs: tuple[object, ...] = (TRAY, BASKET)) -> Installation:
    return installation(on=ON, boards=[DB1], points=[FAR, NEAR], cables=cables, runs=runs)  # type: ignore[arg-type]


@pytest.fixture(scope="module")
def found() -> RouteResult:
    return find_routes(job(W1, W2, D1))


def test_a_run_is_cut_where_its_cables_change_and_nothing_is_left_out(found: RouteResult) -> None:
    tray = [s for s in found.sections.values() if s.containment == "T1"]
    assert [(s.ident, s.cables) for s in tray] == [
        ("T1/1", ()), ("T1/2", ("W1", "W2")), ("T1/3", ("W1",)), ("T1/4", ()),
    ]  # fmt: skip
    assert [distance3(s.start, s.end) for s in tray] == pytest.approx([1000, 3000, 2000, 2000])
    assert all(a.end == b.start for a, b in pairwise(tray))


def test_every_leg_in_containment_names_a_section_that_holds_its_cable(found: RouteResult) -> None:
    for tag, route in found.routes.items():
        for leg in route.legs:
            if leg.section:
                section = found.sections[leg.section]
                assert tag in section.cables
                assert {leg.start, leg.end} == {section.start, section.end}


def test_width_used_on_a_tray(found: RouteResult) -> None:
    # BS 5467 4c x 6 mm2 is 18.7 mm over all (maker's data page); two of them and 10 mm each side
    overall = cable_tables.overall_diameter_mm("swa", 4, 6.0).value
    assert overall == pytest.approx(18.7)
    section = found.sections["T1/2"]
    assert section.used_mm == pytest.approx(2 * 18.7 + 2 * 10)
    assert section.fill_pct == pytest.approx(100 * 57.4 / 150)
    assert section.limit_pct == 75.0
    assert section.power_circuits == 2


def test_a_run_as_a_whole(found: RouteResult) -> None:
    whole = found.containment["T1"]
    assert (whole.length_m, whole.fullest) == (8.0, "T1/2")
    # 57.4 / 0.75 = 76.5: the next stock width is 100
    assert whole.width_needed_mm == pytest.approx(57.4 / 0.75)
    assert whole.width_to_order_mm == 100.0


def test_area_used_in_trunking() -> None:
    trunking = run(
        "T1", [(A, 0, 2500), (A, 8000, 2500)], ("A",), kind="steel trunking",
        width_mm=50.0, height_mm=50.0, level_of="U/S",
    )  # fmt: skip
    result = find_routes(job(W1, W2, runs=(trunking,)))
    section = result.sections["T1/2"]
    # two circles of 18.7 mm over 48 x 48 inside; 45 % of that is the term of 50 x 50 (OSG App. E)
    assert section.used_area_mm2 == pytest.approx(2 * 274.65, abs=0.1)
    assert section.fill_pct == pytest.approx(100 * 549.29 / 2304, abs=0.01)
    assert section.limit_pct == 45.0


def test_an_empty_run_is_still_there() -> None:
    result = find_routes(job(W1))
    assert (result.containment["T2"].fullest, result.containment["T2"].fill_pct) == ("", 0.0)
    assert result.sections["T2/1"].cables == ()


def test_an_open_size_is_asked_for_and_taken_when_given() -> None:
    open_size = cable("W1", "DB1", "X1", csa_mm2=None)
    with pytest.raises(InputOutOfRangeError, match="W1 has no size yet"):
        find_routes(job(open_size))
    assert find_routes(job(open_size), {"W1": 6.0}).sections["T1/2"].overall_mm == (18.7,)


def test_sections_do_not_depend_on_when_the_sizes_come() -> None:
    pottery = resolve(load_job(SPECS / "pottery-studio.yaml"))
    paths = find_paths(pottery)
    sizes = {tag: 6.0 for tag, one in pottery.cables.items() if one.csa_mm2 is None}
    sections, _ = fill_sections(pottery, paths, sizes)
    named = {leg.section for route in paths.values() for leg in route.legs if leg.section}
    assert named == {ident for ident, section in sections.items() if section.cables}


def test_data_beside_power_by_bs_en_50174_2(found: RouteResult) -> None:
    # One 20 A three-phase circuit counts as three: P 0.2. Class b by a perforated tray: S 50.
    # Needed 50 x 0.2 = 10 mm. Tray: top 2500, 25 deep; basket: underside 2250, 55 high:
    # clear 2475 - 2305 = 170 mm.
    basket = found.containment["T2"]
    assert basket.separation_from == "T1"
    assert basket.separation_needed_mm == pytest.approx(10)
    assert basket.separation_mm == pytest.approx(170)
    assert found.containment["T1"].separation_from == "T2"


def test_a_clipped_power_cable_counts_as_a_neighbour() -> None:
    clipped = cable("W1", "DB1", "X1", clipped_up_mm=2200.0)
    basket = find_routes(job(clipped, D1)).containment["T2"]
    # 18.7 mm cable at 2200, basket underside 2250: clear 50 - 9.35; none: S 100 x P 0.2
    assert basket.separation_from == "W1"
    assert basket.separation_mm == pytest.approx(40.65)
    assert basket.separation_needed_mm == pytest.approx(20)


def test_power_and_data_in_one_run_are_no_distance_apart() -> None:
    shared = run("T1", [(A, 0, 2500), (A, 8000, 2500)], ("A",), bands=("power", "data"))
    data = cable("D1", "X1", "DB1", band="data", family="cat6", cores=8, csa_mm2=None)
    whole = find_routes(job(W1, data, runs=(shared,))).containment["T1"]
    assert (whole.separation_mm, whole.separation_from) == (0.0, "T1")
    assert whole.separation_needed_mm == pytest.approx(20)


def test_counting_of_circuits_for_separation() -> None:
    # one per phase and per 20 A begun: 32 A three-phase counts six
    three = job(W1)
    three.circuits["DB1/1"] = circuit(rating_a=32.0)  # type: ignore[index]
    assert counted_circuits(three, ["W1", "W1"]) == 6
    assert worst_class(["cat6", "coax"]) == "a"


def test_companions_in_a_section_and_in_a_drop() -> None:
    first = cable("W1", "DB1", "X2", drop="20 mm steel conduit")
    onward = cable("W1-2", "X2", "X1", drop="20 mm steel conduit", via=("T1",))
    installation_ = job(first, onward, replace(W1, tag="W9"))
    groups = companions(installation_, find_paths(installation_))
    drop = groups["W1"][-1]
    # the two cables at X2 share one conduit
    assert (drop.others, drop.arrangement) == (1, "bunched")
    along = groups["W1"][1]
    assert (along.where, along.others, along.arrangement) == ("T1/2", 1, "perforated_tray")
    assert groups["W9"][0].arrangement == "single_layer_wall"


def test_data_cables_have_no_power_company_of_their_own() -> None:
    job_ = job(W1, D1)
    groups = companions(job_, find_paths(job_))
    assert {group.others for group in groups["D1"]} == {0}


def test_place_is_where_the_room_says() -> None:
    assert place(A, 1000, 2500, 500) == (1000, -500, 2500)
