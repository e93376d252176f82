"""Motors and what starts them: a starter drawn before the motor, or one that it brings."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from small_job import HEAD, resolved

from asfitted.errors import SpecError

if TYPE_CHECKING:
    from pathlib import Path

    from asfitted.resolve.installation import Installation

CIRCUIT = """\
circuits:
  - way: DB1/1TP
    name: Fan
    device: C10 TP
    cable: SWA 4c
    points:
      - {tag: Q1, is: isolator, rating: 20 A, at: "wall B, 1 m along"}
"""
STARTER = (
    "      - {tag: Q2, is: motor starter, rating: 9 A, overload: 3.5 A, restart: manual, "
    'at: "wall B, 1.5 m along"}\n'
)
MOTOR = '      - {tag: M1, is: fan, load: 1.5 kW, at: "wall B, 2 m along"}\n'


def job(folder: Path, *points: str) -> Installation:
    return resolved(folder, HEAD + CIRCUIT + "".join(points))


def test_a_motor_knows_the_starter_before_it_and_what_its_relay_is_set_to(tmp_path: Path) -> None:
    points = job(tmp_path, STARTER, MOTOR).points
    assert (points["M1"].starter, points["M1"].overload_a, points["M1"].restart) == (
        "Q2",
        3.5,
        "manual",
    )
    assert points["Q2"].words == "9 A direct-on-line starter, overload relay 3.5 A"
    assert points["M1"].words == "fan"  # the relay is not in the machine


def test_what_is_written_at_the_motor_is_known_at_its_starter(tmp_path: Path) -> None:
    silent = STARTER.replace("overload: 3.5 A, restart: manual, ", "")
    points = job(tmp_path, silent, MOTOR.replace("1.5 kW", "1.5 kW, overload: 3.4 A")).points
    assert points["Q2"].overload_a == 3.4
    assert points["Q2"].restart == ""
    assert points["Q2"].words.endswith("overload relay 3.4 A")


def test_a_starter_of_the_machine_itself_is_told_with_it(tmp_path: Path) -> None:
    own = MOTOR.replace("1.5 kW", "1.5 kW, overload: 3.5 A, starter: built in")
    points = job(tmp_path, own).points
    assert points["M1"].starter == "built in"
    assert points["M1"].words == "fan, starter built in, overload relay 3.5 A"


def test_a_packaged_machine_may_bring_its_own(tmp_path: Path) -> None:
    machine = MOTOR.replace("is: fan", "is: equipment").replace(
        "1.5 kW", "1.5 kW, starter: built in"
    )
    assert job(tmp_path, machine).points["M1"].words.endswith("starter built in")


def test_silence_stays_silence(tmp_path: Path) -> None:
    points = job(tmp_path, MOTOR.replace("1.5 kW", "1.5 kW, overload: 3.5 A")).points
    assert points["M1"].starter == ""
    assert points["M1"].words == "fan"


def test_the_way_is_followed_by_its_cables_not_by_the_order_of_the_file(tmp_path: Path) -> None:
    beside = MOTOR.replace("tag: M1", "tag: M2").replace("}", ", after: Q1}")
    points = job(tmp_path, STARTER, MOTOR, beside).points
    assert points["M1"].starter == "Q2"
    assert points["M2"].starter == ""


@pytest.mark.parametrize(
    ("points", "words"),
    [
        ((STARTER, MOTOR.replace("1.5 kW", "1.5 kW, starter: built in")), "stands before it"),
        ((STARTER, MOTOR.replace("1.5 kW", "1.5 kW, overload: 4 A")), "two figures of overload"),
        ((STARTER.replace("rating: 9 A, ", ""), MOTOR), 'lacks "rating"'),
        ((STARTER.replace("is: motor starter", "is: isolator"), MOTOR), 'has no "overload"'),
        ((STARTER.replace("}", ", starter: built in}"), MOTOR), 'has no "starter"'),
        ((MOTOR.replace("1.5 kW", "1.5 kW, starter: soft"),), "built in"),
    ],
)
def test_what_cannot_be_is_refused(tmp_path: Path, points: tuple[str, ...], words: str) -> None:
    with pytest.raises(SpecError) as caught:
        job(tmp_path, *points)
    assert words in str(caught.value)
