"""Twelve ways to get a job wrong: one fact broken in a sound spec, and what the reader is told."""

from __future__ import annotations

from pathlib import Path

import pytest

from asfitted.calculate.calculate import calculate
from asfitted.check.finding import Finding, Status
from asfitted.check.run import CheckReport, run_checks
from asfitted.errors import SpecError
from asfitted.resolve import resolve
from asfitted.spec.load_job import load_job

SPECS = Path(__file__).parent.parent / "specs"
TOO_NARROW = "T1:\n    is: perforated tray\n    size: 75 x 25"
SOUND = SPECS / "pottery-studio.yaml"


def report_on(path: Path) -> CheckReport:
    installation = resolve(load_job(path))
    return run_checks(installation, calculate(installation))


def broken(folder: Path, old: str, new: str) -> Path:
    """Write the sound spec with one fact changed, and return the file."""
    text = SOUND.read_text(encoding="utf-8")
    assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times in the spec"
    path = folder / "job.yaml"
    path.write_text(text.replace(old, new), encoding="utf-8")
    return path


def line_of(path: Path, words: str) -> int:
    lines = path.read_text(encoding="utf-8").splitlines()
    return next(n for n, line in enumerate(lines, 1) if words in line)


def the(report: CheckReport, rule: str, subject: str) -> Finding:
    found = [f for f in report.findings if (f.rule, f.subject) == (rule, subject)]
    assert len(found) == 1, [f.render() for f in report.findings if f.rule == rule]
    return found[0]


@pytest.mark.parametrize("spec", sorted(SPECS.glob("*.yaml")), ids=lambda p: p.stem)
def test_the_jobs_of_the_gallery_have_no_error(spec: Path) -> None:
    report = report_on(spec)
    assert [f.render() for f in report.errors] == []
    assert report.findings, "a job on which every single thing was checked would be a surprise"
    assert sum(report.checked.values()) > 20


def test_1_a_40_a_breaker_on_a_given_2_5_mm2(tmp_path: Path) -> None:
    old = "    device: C40 TP 6 kA\n    cable: SWA 4c\n    points:\n      - {tag: Q1"
    path = broken(tmp_path, old, old.replace("SWA 4c", "SWA 4c 2.5 mm2"))
    finding = the(report_on(path), "OC-02", "W08")
    assert finding.stops_work
    assert finding.found == 40
    assert "2.5 mm²" in finding.message
    assert "given in the spec" in finding.message


def test_2_breaking_capacity_below_the_fault_level(tmp_path: Path) -> None:
    path = broken(tmp_path, "device: C10 TP 6 kA", "device: C10 TP 3 kA")
    finding = the(report_on(path), "OC-04", "DB1/8TP")
    assert finding.stops_work
    assert (finding.found, finding.unit) == (3, "kA")
    assert isinstance(finding.limit, float)
    assert finding.limit >= 3.6


def test_3_a_data_cable_by_way_of_the_power_tray(tmp_path: Path) -> None:
    old = "D1: {is: data outlet, "
    path = broken(tmp_path, old, f"{old}via: [T1], ")
    report = report_on(path)
    finding = the(report, "SG-01", "D05")
    assert finding.stops_work
    assert "data cable lies in T1, which is not for data" in finding.message
    assert finding.place is not None
    assert finding.place.line == line_of(path, "via: [T1]")
    assert not [f for f in report.findings if (f.rule, f.subject) == ("CF-05", "D05")]
    beside = the(report, "SG-03", "T1")
    assert "D05" in beside.message, "said once for the run, not once for each piece"


def test_3_a_power_cable_by_way_of_the_data_basket(tmp_path: Path) -> None:
    old = "    cable: SWA 4c\n    points:\n      - {tag: X1"
    path = broken(tmp_path, old, old.replace("SWA 4c", "SWA 4c\n    via: [T3]"))
    finding = the(report_on(path), "SG-01", "W05")
    assert finding.stops_work
    assert "power cable lies in T3, which is not for power" in finding.message


def test_4_an_item_off_the_end_of_its_wall(tmp_path: Path) -> None:
    path = broken(tmp_path, "wall B, 2.8 m along, 1.3 m up", "wall B, 12.8 m along, 1.3 m up")
    with pytest.raises(SpecError) as caught:
        report_on(path)
    (problem,) = caught.value.problems
    assert problem.place is not None
    assert problem.place.line == line_of(path, "12.8 m along")
    assert "X2" in problem.message
    assert "6.4" in problem.message or "6400" in problem.message


def test_5_ze_deleted_is_said_aloud(tmp_path: Path) -> None:
    path = broken(tmp_path, "  Ze: 0.15 ohm measured\n", "")
    report = report_on(path)
    origin = [f for f in report.findings if f.rule == "SU-01"]
    assert [f.status for f in origin] == [Status.NOT_CHECKED]
    assert "Ze" in origin[0].message
    silent = [f.subject for f in report.findings if f.rule == "EF-01"]
    assert "DB1/3TP" in silent, "each circuit whose Zs hangs on it is named"
    assert all(f.status is Status.NOT_CHECKED for f in report.findings if f.rule == "EF-01")
    assert report.checked["EF-01"] == 0


def test_6_rcd_taken_from_a_five_pin_socket(tmp_path: Path) -> None:
    old = 'at: "wall A, 6.7 m along, 1.3 m up",\n         RCD: 40 A 30 mA type A, '
    path = broken(tmp_path, old, old.replace("RCD: 40 A 30 mA type A, ", ""))
    finding = the(report_on(path), "EF-03", "X3")
    assert finding.stops_work
    assert "has no RCD" in finding.message


def test_7_a_camera_load_too_big_for_its_long_run(tmp_path: Path) -> None:
    old = "power pairs: 3,\n           signal: HD 1080p, load: 5 W"
    path = broken(tmp_path, old, old.replace("5 W", "12 W"))
    finding = the(report_on(path), "CC-01", "CAM4")
    assert finding.stops_work
    assert isinstance(finding.found, float)
    assert finding.found < 10.8


def test_8_a_way_of_a_board_that_does_not_exist(tmp_path: Path) -> None:
    path = broken(tmp_path, "way: DB2/1L2", "way: DB3/1L2")
    with pytest.raises(SpecError) as caught:
        report_on(path)
    problem = caught.value.problems[0]
    assert problem.place is not None
    assert problem.place.line == line_of(path, "DB3/1L2")
    assert "DB3" in problem.message


def test_9_one_way_used_twice(tmp_path: Path) -> None:
    path = broken(tmp_path, "way: DB1/4TP", "way: DB1/3TP")
    with pytest.raises(SpecError) as caught:
        report_on(path)
    problem = caught.value.problems[0]
    assert problem.place is not None
    assert problem.place.line > line_of(path, "way: DB1/3TP"), "the second of the two is shown"
    assert "3TP" in problem.message


def test_10_an_ip20_floodlight_outside(tmp_path: Path) -> None:
    path = broken(tmp_path, "load: 50 W, IP: IP65", "load: 50 W, IP: IP20")
    finding = the(report_on(path), "HT-10", "FL1")
    assert finding.stops_work
    assert "IP20" in finding.message
    assert finding.place is not None
    assert finding.place.line == line_of(path, "tag: FL1")


def test_11_a_tray_too_narrow_for_its_cables(tmp_path: Path) -> None:
    path = broken(tmp_path, "T1:\n    is: perforated tray\n    size: 225 x 25", TOO_NARROW)
    finding = the(report_on(path), "CF-07", "T1")
    assert finding.stops_work
    assert isinstance(finding.found, float)
    assert finding.found > 100
    assert "Width to order" in finding.to_do


def test_12_a_decimal_comma(tmp_path: Path) -> None:
    path = broken(tmp_path, "Ze: 0.15 ohm measured", "Ze: 0,15 ohm measured")
    with pytest.raises(SpecError) as caught:
        report_on(path)
    (problem,) = caught.value.problems
    assert problem.place is not None
    assert problem.place.line == line_of(path, "0,15")
    assert "0,15" in problem.render()
