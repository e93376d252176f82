"""Cables from room to room and from storey to storey, and between runs that do not meet.

Lengths are worked out by hand from the places written in the job; no outside source is needed.
"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from small_room import board, cable, installation, point, position, run, walls

from asfitted.calculate.calculate import calculate
from asfitted.calculate.routes.cable_routes import find_paths
from asfitted.resolve import resolve
from asfitted.spec.load_job import load_job

if TYPE_CHECKING:
    from collections.abc import Mapping

    from asfitted.calculate.results import CableRoute
    from asfitted.resolve.installation import Installation

SPECS = Path(__file__).parents[2] / "specs"

# Hall 6 m by 4 m and 3 m high; Office 5 m by 4 m behind its wall B; Loft over the Hall, 3.3 m up.
JOB = """\
asfitted: 1
job: {number: J1, title: Test}
supply: {system: TN-S, phases: 3, Ze: 0.2 ohm measured, fault current: 2 kA measured}
rooms:
  Hall:
    height: 3 m
    walls: {A: {length: 6 m}, B: {length: 4 m}, C: {length: 6 m}, D: {length: 4 m}}
  Office:
    height: 3 m
    walls: {A: {length: 5 m}, B: {length: 4 m}, C: {length: 5 m}, D: {length: 4 m}}
  Loft:
    level: 3.3 m
    height: 2.7 m
    walls: {A: {length: 6 m}, B: {length: 4 m}, C: {length: 6 m}, D: {length: 4 m}}
passages:
  P1: {through: wall, thickness: 150 mm, size: 200 x 100,
       from: "Hall wall B, 1.0 m along, 2.5 m up", to: "Office wall A, 2.0 m along, 2.5 m up"}
  P2: {through: floor, from: "Hall wall A, 3.0 m along, 3.0 m up",
       to: "Loft wall A, 3.0 m along, 0 m up"}
boards:
  DB1: {at: "Hall wall A, 1.0 m along, 1.5 m up", size: 400 x 600, ways: 8, phases: 3,
        fed from: supply}
containment:
  T1: {is: perforated tray, size: 150 x 25, for: power, level: 2.5 m,
       run: [Hall wall A 1.0 m, B 1.0 m]}
  T2: {is: perforated tray, size: 150 x 25, for: power, level: 2.5 m,
       run: [Office wall A 2.0 m, B 2.0 m]}
  T3: {is: perforated tray, size: 150 x 25, for: power, level: 2.2 m,
       run: [Loft wall A 3.0 m at 0 m up, A 3.0 m, B 2.0 m]}
circuits:
"""


def circuit(way: str, tag: str, at: str, extra: str = "") -> str:
    socket = f'{{tag: {tag}, is: 13 A socket, at: "{at}"}}'
    return (
        f"  - {{way: DB1/{way}, name: {tag}, device: RCBO B16 30 mA type A, cable: T&E, {extra}"
        f"points: [{socket}]}}\n"
    )


def job_of(folder: Path, *circuits: str, before: str = "", after: str = "") -> Installation:
    assert before in JOB
    path = folder / "job.yaml"
    path.write_text(JOB.replace(before, after, 1) + "".join(circuits), encoding="utf-8")
    return resolve(load_job(path))


def way_of(folder: Path, *circuits: str, before: str = "", after: str = "") -> CableRoute:
    return find_paths(job_of(folder, *circuits, before=before, after=after))["W01"]


IN_OFFICE = "Office wall B, 1.0 m along, 1.2 m up"
IN_LOFT = "Loft wall B, 1.0 m along, 1.2 m up"


def test_from_room_to_room(tmp_path: Path) -> None:
    route = way_of(tmp_path, circuit("1L1", "S1", IN_OFFICE))
    # board top 1.8 to 2.5; A 1.0 to 6.0 and B to 1.0; 0.15 of wall; Office A 2.0 to 5.0, B to 1.0;
    # down to 1.2
    assert route.path_m == pytest.approx(0.7 + 5.0 + 1.0 + 0.15 + 3.0 + 1.0 + 1.3)
    assert route.passages == ("P1",)
    leg = next(leg for leg in route.legs if leg.kind == "passage")
    assert (leg.passage, leg.length_mm, leg.words) == ("P1", 150, "through the wall by P1")
    assert (leg.method, leg.enclosure) == ("E", "perforated tray")  # it lies as on the tray


def test_the_other_way_round_is_as_long(tmp_path: Path) -> None:
    turned = (
        'from: "Office wall A, 2.0 m along, 2.5 m up", to: "Hall wall B, 1.0 m along, 2.5 m up"'
    )
    written = (
        'from: "Hall wall B, 1.0 m along, 2.5 m up", to: "Office wall A, 2.0 m along, 2.5 m up"'
    )
    route = way_of(tmp_path, circuit("1L1", "S1", IN_OFFICE), before=written, after=turned)
    assert route.path_m == pytest.approx(12.15)
    assert route.passages == ("P1",)


def test_from_storey_to_storey(tmp_path: Path) -> None:
    route = way_of(tmp_path, circuit("1L1", "S1", IN_LOFT))
    # 0.7 up to the tray, A 1.0 to 3.0, 0.5 clipped up to the hole, 0.3 of floor (3.3 - 3.0),
    # tray up 2.2, A 3.0 to 6.0, B to 1.0, down to 1.2
    assert route.path_m == pytest.approx(0.7 + 2.0 + 0.5 + 0.3 + 2.2 + 3.0 + 1.0 + 1.0)
    assert route.passages == ("P2",)


def test_heights_are_those_above_the_floor_of_the_room(tmp_path: Path) -> None:
    route = way_of(tmp_path, circuit("1L1", "S1", IN_LOFT))
    assert max(leg.end.z for leg in route.legs) == 3000
    assert route.legs[-1].words == "drop on wall Loft B from +2200 to +1200, clipped"


def test_clipped_through_rooms(tmp_path: Path) -> None:
    clipped = "route: 'clipped direct, 2.7 m up', "
    route = way_of(tmp_path, circuit("1L1", "S1", IN_OFFICE, clipped))
    # 1.8 to 2.7; A 1.0 to 6.0, B to 1.0; down 0.2 to the hole; 0.15; up 0.2; Office A 2.0 to 5.0,
    # B to 1.0; down to 1.2
    hand = 0.9 + 5.0 + 1.0 + 0.2 + 0.15 + 0.2 + 3.0 + 1.0 + 1.5
    assert route.path_m == pytest.approx(hand)
    assert {leg.kind for leg in route.legs} == {"clipped", "passage"}


def test_clipped_to_a_room_that_no_passage_leads_to(tmp_path: Path) -> None:
    clipped = "route: 'clipped direct, 2.6 m up', "
    gone = JOB[JOB.index("  P2:") : JOB.index("boards:")]
    route = way_of(tmp_path, circuit("1L1", "S1", IN_LOFT, clipped), before=gone)
    assert route.broken == (
        "its ends are in two rooms (Hall and Loft) and no passage leads from the one to the other"
    )


def test_a_cable_without_a_way_keeps_a_length_in_the_building(tmp_path: Path) -> None:
    gone = JOB[JOB.index("  P2:") : JOB.index("boards:")]
    route = way_of(tmp_path, circuit("1L1", "S1", IN_LOFT), before=gone)
    # DB1 at (1.0, 0, 1.5), S1 at (6.0, -1.0, 3.3 + 1.2): along the axes of the building
    assert route.broken
    assert route.path_m == pytest.approx(5.0 + 1.0 + 3.0)


def test_a_passage_for_data_is_not_taken_by_power(tmp_path: Path) -> None:
    route = way_of(
        tmp_path,
        circuit("1L1", "S1", IN_OFFICE),
        before="size: 200 x 100,",
        after="size: 200 x 100, for: data,",
    )
    assert route.broken.startswith(
        "no run for power joins DB1 (wall Hall A) and S1 (wall Office B)"
    )
    # T1 ends at Hall B 1.0, T2 starts at Office A 2.0: 150 mm of wall between them
    assert "(T1 and T2 do not meet: 0.15 m apart)" in route.broken
    assert "add a run, or a passage between the rooms" in route.broken


def test_a_passage_may_be_told(tmp_path: Path) -> None:
    third = (
        '  P3: {through: wall, thickness: 150 mm, from: "Hall wall B, 2.0 m along, 2.5 m up", '
        'to: "Office wall A, 1.0 m along, 2.5 m up"}\nboards:'
    )
    by_itself = circuit("1L1", "S1", IN_OFFICE)
    nearest = way_of(tmp_path, by_itself, before="boards:", after=third)
    assert nearest.passages == ("P1",)
    by_p3 = circuit("1L1", "S1", IN_OFFICE, "via: [P3], ")
    told = way_of(tmp_path, by_p3, before="boards:", after=third)
    # 1.0 m clipped to P3 on the Hall side, 1.0 m back to T2 on the Office side
    assert told.passages == ("P3",)
    assert told.path_m == pytest.approx(nearest.path_m + 1.0 + 1.0)


def test_two_things_on_one_wall_are_not_joined_by_the_mouth_of_a_passage(tmp_path: Path) -> None:
    start, end = JOB.index("containment:"), JOB.index("circuits:")
    at = "Hall wall A, 5.5 m along, 1.2 m up"
    route = way_of(tmp_path, circuit("1L1", "S1", at), before=JOB[start:end])
    assert route.passages == ()
    assert route.broken or all(leg.start.z <= 2000 for leg in route.legs)


def test_what_goes_through_a_passage(tmp_path: Path) -> None:
    job = job_of(tmp_path, circuit("1L1", "S1", IN_OFFICE), circuit("1L2", "S2", IN_LOFT))
    results = calculate(job)
    one = results.passages["P1"]
    overall = results.sections["T1/1"].overall_mm
    assert one.cables == ("W01",)
    assert one.opening_area_mm2 == 200 * 100
    assert one.fill_pct == pytest.approx(100 * one.used_area_mm2 / 20_000)
    assert 0 < one.used_area_mm2 < max(overall) ** 2
    assert results.passages["P2"].cables == ("W02",)
    assert results.passages["P2"].fill_pct is None


def test_cables_in_one_passage_are_one_group(tmp_path: Path) -> None:
    # without trays in the Office both are clipped there; a wall of 400 mm is no short hole
    tray = JOB[JOB.index("  T2:") : JOB.index("  T3:")]
    both = (
        circuit("1L1", "S1", "Office wall A, 4.0 m along, 1.2 m up"),
        circuit("1L2", "S2", "Office wall A, 0.5 m along, 1.2 m up"),
    )
    job = job_of(tmp_path, *both, before=tray)
    path = find_paths(job)
    assert [path[tag].passages for tag in ("W01", "W02")] == [("P1",), ("P1",)]
    # Hall as before; then from Office A 2.0 up 2.5 to 4.0 or 0.5, down 1.3
    assert path["W01"].path_m == pytest.approx(0.7 + 5.0 + 1.0 + 0.15 + 2.0 + 1.3)
    assert path["W02"].path_m == pytest.approx(0.7 + 5.0 + 1.0 + 0.15 + 1.5 + 1.3)


# ---- runs of one room that do not meet ----------------------------------------------------------

ON = walls()
A, B, C, D = (ON[name] for name in "ABCD")
DB1 = board(position(A, 1000, 1500))
ONE = run("T1", [(A, 0, 2500), (A, 3000, 2500)], ("A",))
TWO = run("T2", [(A, 5000, 2500), (A, 8000, 2500)], ("A",))
FAR = run("T3", [(C, 0, 2500), (C, 8000, 2500)], ("C",))


def told_way(*runs: object, to: object, via: tuple[str, ...], **changes: object) -> CableRoute:
    w1 = cable("W1", "DB1", "X1", via=via, **changes)
    job = installation(on=ON, boards=[DB1], points=[point("X1", to)], cables=[w1], runs=runs)  # type: ignore[arg-type] # tests hand over made parts
    return find_paths(job)["W1"]


def test_told_runs_that_do_not_meet_are_joined_along_the_wall() -> None:
    route = told_way(ONE, TWO, to=position(A, 7000, 1200), via=("T1", "T2"))
    # 0.7 up, T1 1.0 to 3.0, 2.0 clipped, T2 5.0 to 7.0, 1.3 down
    assert route.path_m == pytest.approx(0.7 + 2.0 + 2.0 + 2.0 + 1.3)
    assert [leg.words for leg in route.legs if leg.kind == "clipped"] == [
        "level on wall A at +2500, clipped"
    ]


def test_told_runs_on_opposite_walls_are_joined_round_the_room() -> None:
    route = told_way(TWO, FAR, to=position(C, 1000, 1200), via=("T2", "T3"))
    # A 1.0 up 0.7 and 4.0 to T2; T2 5.0 to 8.0; B 6.0 clipped; T3 0 to 1.0; 1.3 down
    assert route.path_m == pytest.approx(0.7 + 4.0 + 3.0 + 6.0 + 1.0 + 1.3)


def test_single_cores_are_not_clipped_between_runs() -> None:
    route = told_way(
        ONE, TWO, to=position(A, 7000, 1200), via=("T1", "T2"), family="singles", cores=1
    )
    assert "T1 and T2 do not meet: 2.00 m apart, and single cores are not clipped" in route.broken


def test_without_being_told_a_gap_is_not_bridged() -> None:
    short = run("T1", [(A, 0, 2500), (A, 1500, 2500)], ("A",))
    away = run("T3", [(C, 0, 2500), (C, 4000, 2500)], ("C",))
    route = told_way(short, away, to=position(C, 1000, 1200), via=())
    # nearest: T1 ends at (1500, 0), T3 at (4000, -6000): root of 2.5 squared and 6.0 squared
    assert "T1 and T3 do not meet: 6.50 m apart" in route.broken


# ---- the example jobs ----------------------------------------------------------------------------


@pytest.fixture(scope="module")
def hall() -> Mapping[str, CableRoute]:
    return find_paths(resolve(load_job(SPECS / "community-hall.yaml")))


@pytest.fixture(scope="module")
def office() -> Mapping[str, CableRoute]:
    return find_paths(resolve(load_job(SPECS / "two-storey-office.yaml")))


def test_stage_feeder_of_the_hall(hall: Mapping[str, CableRoute]) -> None:
    # T3 1.9 to 3.2; Store A 1.5, D 2.0; 0.2 of wall; Hall B 2.0, A 14.0, D 9.0 to 8.0; 0.3 of wall;
    # Stage B 1.0, A 5.0 to 2.5; T7 2.3 to 1.625
    hand = 1.3 + 1.5 + 2.0 + 0.2 + 2.0 + 14.0 + 1.0 + 0.3 + 1.0 + 2.5 + 0.675
    assert hall["W01"].path_m == pytest.approx(hand)
    assert hall["W01"].passages == ("P1", "P3")


def test_fire_alarm_supply_of_the_office_is_clipped_from_room_to_room(
    office: Mapping[str, CableRoute],
) -> None:
    # up 1.9 to 2.65; Plant A 2.0, B 1.5; down and up 0.15; 0.15; Office D 4.5 to 6.0, A 10.0,
    # B 1.0; down and up 0.15; 0.15; Reception D 4.0 to 5.0, A 5.2; down to 1.5
    hand = 0.75 + 3.5 + 0.3 + 0.15 + 12.5 + 0.3 + 0.15 + 6.2 + 1.15
    assert office["W08"].path_m == pytest.approx(hand)
    assert office["W08"].passages == ("P1", "P6")
    assert {leg.containment for leg in office["W08"].legs} == {""}


def test_first_floor_feeder_of_the_office(office: Mapping[str, CableRoute]) -> None:
    # T2 1.9 to 2.5; Plant A 2.0 to 0.5; L1 2.5 to 2.9; floor 0.4; L2 2.3; Comms A 0.5 to 4.0,
    # B 1.5; 0.15; Studio D 4.5 to 3.2; T10 2.3 to 1.8
    hand = 0.6 + 1.5 + 0.4 + 0.4 + 2.3 + 3.5 + 1.5 + 0.15 + 1.3 + 0.5
    assert office["W02"].path_m == pytest.approx(hand)
    assert office["W02"].passages == ("P3", "P8")


@pytest.mark.parametrize("name", ["two-storey-office", "community-hall"])
def test_every_cable_has_a_way_that_hangs_together(name: str) -> None:
    job = resolve(load_job(SPECS / f"{name}.yaml"))
    for tag, route in find_paths(job).items():
        assert not route.broken, tag
        assert not route.forbidden, tag
        for before, after in zip(route.legs, route.legs[1:], strict=False):
            if "declared" not in (before.kind, after.kind):
                assert before.end == pytest.approx(after.start, abs=0.01), tag
