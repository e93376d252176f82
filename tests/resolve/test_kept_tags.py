"""Cable tags and the order of things stay from issue to issue, wherever new lines are written."""

from __future__ import annotations

from types import MappingProxyType
from typing import TYPE_CHECKING

from asfitted.resolve import resolve
from asfitted.resolve.kept_tags import in_issued_order
from asfitted.spec import load_job

if TYPE_CHECKING:
    from pathlib import Path

    from asfitted.resolve.installation import Installation

HEAD = """\
asfitted: 1
job: {number: J1, title: A job}
supply: {system: TN-S, phases: 1}
rooms:
  R:
    height: 2.6 m
    walls: {A: {length: 5 m}, B: {length: 3 m}, C: {length: 5 m}, D: {length: 3 m}}
boards:
  CU1: {at: "wall A, 0.5 m along, 1.6 m up", ways: 8, phases: 1, fed from: supply}
circuits:
"""


def circuit(way: int, *points: str) -> str:
    lines = [f"  - way: CU1/{way}", f"    name: Way {way}", "    device: B16 SP 6 kA"]
    lines += ["    cable: T&E 2.5 mm2", "    points:"]
    at = '"wall A, {} m along, 1.2 m up"'
    lines += [
        f"      - {{tag: {tag}, is: 13 A socket, at: {at.format(1 + n)}}}"
        for n, tag in enumerate(points)
    ]
    return "\n".join(lines) + "\n"


def job(folder: Path, *circuits: str, issued: Installation | None = None) -> Installation:
    path = folder / "job.yaml"
    path.write_text(HEAD + "".join(circuits), encoding="utf-8")
    return resolve(load_job(path), issued)


def ends(installation: Installation) -> dict[str, str]:
    return {cable.tag: cable.to_end for cable in installation.cables.values()}


def test_a_first_issue_is_numbered_by_the_order_of_the_file(tmp_path: Path) -> None:
    made = job(tmp_path, circuit(1, "S1", "S2"), circuit(2, "S3"))
    assert ends(made) == {"W01": "S1", "W01-2": "S2", "W02": "S3"}


def test_cables_keep_their_tags_and_what_is_new_comes_after_the_last(tmp_path: Path) -> None:
    first = job(tmp_path, circuit(1, "S1", "S2"), circuit(2, "S3"))
    second = job(tmp_path, circuit(5, "S9"), circuit(2, "S3"), circuit(1, "S1", "S2"), issued=first)
    assert ends(second) == {"W01": "S1", "W01-2": "S2", "W02": "S3", "W03": "S9"}


def test_a_point_put_between_two_others_takes_a_tag_of_its_own(tmp_path: Path) -> None:
    first = job(tmp_path, circuit(1, "S1", "S2"))
    second = job(tmp_path, circuit(1, "S1", "S9", "S2"), issued=first)
    assert ends(second) == {"W01": "S1", "W01-2": "S2", "W01-3": "S9"}


def test_a_circuit_on_another_way_keeps_its_cables(tmp_path: Path) -> None:
    first = job(tmp_path, circuit(1, "S1"), circuit(2, "S3"))
    second = job(tmp_path, circuit(6, "S1"), circuit(2, "S3"), issued=first)
    assert ends(second) == {"W01": "S1", "W02": "S3"}
    assert second.circuits["CU1/6"].number == 1


def test_two_circuits_that_changed_ways_keep_their_cables(tmp_path: Path) -> None:
    first = job(tmp_path, circuit(1, "S1"), circuit(2, "S3"))
    second = job(tmp_path, circuit(1, "S3"), circuit(2, "S1"), issued=first)
    assert ends(second) == {"W01": "S1", "W02": "S3"}


def test_things_stand_in_the_order_of_the_issue_and_new_ones_by_their_neighbour() -> None:
    issued = MappingProxyType(dict.fromkeys("ABC", 0))
    found = MappingProxyType(dict.fromkeys("CXAYB", 1))
    assert list(in_issued_order(found, issued)) == ["A", "Y", "B", "C", "X"]
    assert list(in_issued_order(found, None)) == list("CXAYB")
