"""Readings as written: units, ends of ranges, reasons; what no instrument shows is refused."""

from __future__ import annotations

from pathlib import Path

import pytest

from asfitted.errors import NotUnderstoodError, SpecError
from asfitted.resolve.resolve_job import resolve
from asfitted.spec import reading_words as r
from asfitted.spec.load_job import load_job

SHED = (Path(__file__).parent.parent.parent / "specs" / "community-shed.yaml").read_text()
HEAD = "asfitted: 1\ninstruments: {A: {name: tester, serial: '12'}}\ninstrument: A\n"


def job_with(folder: Path, results: str) -> Path:
    (folder / "readings.yaml").write_text(HEAD + results)
    job = folder / "job.yaml"
    job.write_text(SHED + "\nresults: readings.yaml\n")
    return job


@pytest.mark.parametrize(
    ("text", "kind", "value", "shown"),
    [
        ("0.72 ohm", r.LOOP_OHM, 0.72, "0.72"),
        ("0.30 ohm measured", r.LOOP_OHM, 0.3, "0.30"),
        ("720 mohm", r.LOOP_OHM, 0.72, "0.72"),
        (">999 Mohm", r.INSULATION_MOHM, 999.0, ">999"),
        ("500 kohm", r.INSULATION_MOHM, 0.5, "0.5"),
        ("28 ms", r.TRIP_MS, 28.0, "28"),
        (">300 ms", r.TRIP_MS, 300.0, ">300"),
        ("0.05", r.CONTINUITY_OHM, 0.05, "0.05"),
    ],
)
def test_readings_are_kept_as_the_instrument_showed_them(
    text: str, kind: r.ReadingKind, value: float, shown: str
) -> None:
    reading = r.parse_reading(text, kind)
    assert reading is not None
    assert reading.value == pytest.approx(value)
    assert reading.shown == shown


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("-0.2 ohm", r.LOOP_OHM),
        ("0 ohm", r.LOOP_OHM),
        ("40 kohm", r.LOOP_OHM),
        (">2 ohm", r.LOOP_OHM),
        ("900 ohm", r.CONTINUITY_OHM),
        ("0 Mohm", r.INSULATION_MOHM),
        ("-1 Mohm", r.INSULATION_MOHM),
        ("0 ms", r.TRIP_MS),
        ("28 s", r.TRIP_MS),
        ("0.35 Mohm", r.LOOP_OHM),
        ("not tested", r.LOOP_OHM),
        ("fine", r.LOOP_OHM),
    ],
)
def test_what_cannot_be_a_reading_is_refused_with_a_hint(text: str, kind: r.ReadingKind) -> None:
    with pytest.raises(NotUnderstoodError) as caught:
        r.parse_reading(text, kind)
    assert caught.value.message


def test_a_reason_stands_for_a_reading_that_was_not_taken() -> None:
    reading = r.parse_reading("not tested, circuit in use", r.LOOP_OHM)
    assert reading is not None
    assert reading.value is None
    assert reading.not_tested == "circuit in use"
    assert r.parse_reading("  ", r.LOOP_OHM) is None


def test_a_results_file_reaches_the_installation(tmp_path: Path) -> None:
    path = job_with(
        tmp_path,
        "by: A. Tester\ndate: 2026-11-21\n"
        "circuits:\n  CU1/1: {Zs: 0.61 ohm, RCD time: 28 ms, polarity: correct}\n",
    )
    readings = resolve(load_job(path)).readings
    assert readings is not None
    found = readings.circuits["CU1/1"]
    assert found.zs_ohm is not None
    assert found.zs_ohm.shown == "0.61"
    assert found.r1r2_ohm is None
    assert (found.taken.by, found.taken.date, found.taken.instrument) == (
        "A. Tester",
        "2026-11-21",
        "A",
    )
    assert readings.instruments["A"].serial == "12"


@pytest.mark.parametrize(
    ("results", "said"),
    [
        ("circuits: {CU1/1: {Zs: 40 kohm}}", "cannot be taken as loop impedance reading"),
        ("circuits: {CU1/1: {insulation earth: 0 Mohm}}", "cannot be taken as insulation reading"),
        ("circuits: {CU1/1: {RCD time: 0 ms}}", "cannot be taken as tripping time"),
        ("circuits: {CU1/99: {Zs: 1 ohm}}", 'circuit "CU1/99" is not in this job'),
        ("boards: {CU9: {Zs: 1 ohm}}", 'board "CU9" is not in this job'),
        ("circuits: {CU1/1: {r1: 0.3 ohm}}", "CU1/1 is none"),
        ("circuits: {CU1/1: {instrument: B, Zs: 1 ohm}}", 'instrument "B" is not listed'),
        ("circuits: {CU1/1: {Z: 1 ohm}}", 'key "Z" has no meaning'),
    ],
)
def test_a_wrong_result_names_its_own_file_and_line(
    tmp_path: Path, results: str, said: str
) -> None:
    with pytest.raises(SpecError) as caught:
        resolve(load_job(job_with(tmp_path, results + "\n")))
    (problem,) = caught.value.problems
    assert said in problem.message
    assert problem.place is not None
    assert (problem.place.file, problem.place.line) == ("readings.yaml", 4)


def test_results_in_the_job_file_itself(tmp_path: Path) -> None:
    job = tmp_path / "job.yaml"
    block = "\ntest results:\n  circuits:\n    CU1/1: {Zs: 0.5 ohm}\n"
    job.write_text(SHED + block)
    readings = resolve(load_job(job)).readings
    assert readings is not None
    assert "CU1/1" in readings.circuits
    job.write_text(SHED + block + "results: other.yaml\n")
    with pytest.raises(SpecError, match="both"):
        load_job(job)


def test_a_results_file_that_is_not_there_is_named(tmp_path: Path) -> None:
    job = tmp_path / "job.yaml"
    job.write_text(SHED + "\nresults: gone.yaml\n")
    with pytest.raises(SpecError, match=r"gone\.yaml"):
        load_job(job)
