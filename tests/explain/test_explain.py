"""The working of one thing: complete, sourced, and true to the results it is copied from."""

from __future__ import annotations

import json
from functools import cache
from pathlib import Path

import pytest

from asfitted.cli import main
from asfitted.errors import NotUnderstoodError
from asfitted.explain.explanation import Explanation, Margin
from asfitted.explain.find import explain
from asfitted.explain.numbers import value_words
from asfitted.explain.text import WIDTH, as_text
from asfitted.pipeline import Checked, check_job

SPECS = Path(__file__).parent.parent.parent / "specs"
STUDIO = SPECS / "pottery-studio.yaml"


@cache
def _studio() -> Checked:
    return check_job(STUDIO)


def _told(name: str) -> Explanation:
    job = _studio()
    return explain(name, job.installation, job.results, job.report)


def test_everything_of_the_job_can_be_explained() -> None:
    installation = _studio().installation
    for group in (
        installation.circuits,
        installation.boards,
        installation.data_devices,
        installation.containment,
        installation.cables,
        installation.points,
    ):
        for tag in group:
            text = as_text(_told(tag))
            assert "not a certificate" in text
            assert max(map(len, text.splitlines())) <= WIDTH + 20


def test_a_circuit_tells_every_step_once_and_every_size_tried() -> None:
    job, told = _studio(), _told("DB1/6TP")
    steps = [step for part in told.parts for step in part.steps]
    wanted = list(job.results.circuits["DB1/6TP"].steps)
    for tag in job.installation.circuits["DB1/6TP"].cables:
        wanted += job.results.cables[tag].steps
    assert sorted(map(repr, steps)) == sorted(map(repr, wanted))
    text = " ".join(as_text(told).split())
    for tried in job.results.cables["W08"].tried:
        assert f"{tried.csa_mm2:g} mm² {'does not do' if tried.reason else 'does'}" in text
    assert "C40 TP 6 kA (BS EN 60898)" in text


def test_the_kiln_by_hand() -> None:
    # Ib = 18000 / (sqrt 3 x 400) = 25.98 A; Zs max = 0.95 x 230 / 400; Iz = 62 x 0.73 (4D4A, 4C1)
    text = as_text(_told("DB1/6TP"))
    for figure in ("= 25.98 A", "= 0.5463 Ω", "= 45.26 A", "= 40 A"):
        assert figure in text


def test_a_cable_or_point_is_told_with_its_circuit_in_any_capitals() -> None:
    assert _told("w08").tag == "DB1/6TP"
    assert _told("k1").tag == "DB1/6TP"
    assert _told("cam4").heading.startswith("Camera CAM4")


def test_an_unknown_name_gets_the_nearest() -> None:
    with pytest.raises(NotUnderstoodError, match='"DB1/66TP"') as refused:
        _told("DB1/66TP")
    assert "did you mean" in refused.value.hint


def test_what_is_not_known_is_said() -> None:
    told = _told("DB1/1L1")
    assert "existing cable not recorded" in told.not_known
    assert "Not known" in as_text(told)


def test_margins_say_which_way_they_hold() -> None:
    assert Margin("Zs", 0.3, "at most", 0.6, "Ω").room_pct == pytest.approx(50)
    assert Margin("Iz", 45, "at least", 40, "A").room_pct == pytest.approx(12.5)
    assert not Margin("Iz", 39, "at least", 40, "A").holds
    assert not Margin("Zs", 0.61, "at most", 0.6, "Ω").holds
    assert Margin("x", 0, "at most", 0, "A").room_pct is None
    assert "DOES NOT HOLD" not in as_text(_told("DB1/6TP"))


@pytest.mark.parametrize(
    ("value", "unit", "words"),
    [
        (0.29180789, "Ω", "0.2918 Ω"),
        (2044900.0, "A²s", "2044900 A²s"),
        (0.00003, "Ω", "3e-05 Ω"),
        (0.0, "A", "0 A"),
        (45.26, "A", "45.26 A"),
        (748.78, "A", "748.8 A"),
    ],
)
def test_values_are_rounded_for_reading(value: float, unit: str, words: str) -> None:
    assert value_words(value, unit) == words


def test_the_command_prints_text_json_and_refuses_in_words(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert main(["explain", str(STUDIO), "DB2"]) == 0
    assert "Board DB2" in capsys.readouterr().out
    assert main(["explain", str(STUDIO), "CAM1", "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert told["tag"] == "CAM1"
    assert told["parts"]
    assert told["cautions"]
    assert main(["explain", str(STUDIO), "CAMM1"]) == 2
    assert 'did you mean "CAM1"?' in capsys.readouterr().err
