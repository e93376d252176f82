"""Device phrases with settings, arc fault detection and back-up, as resolved."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from asfitted.errors import SpecError
from asfitted.resolve.resolve_job import resolve
from asfitted.spec.load_job import load_job

if TYPE_CHECKING:
    from asfitted.resolve.installation import Installation

STUDIO = Path(__file__).parent.parent.parent / "specs" / "pottery-studio.yaml"


def _resolved(tmp_path: Path, *edits: tuple[str, str]) -> Installation:
    text = STUDIO.read_text()
    for old, new in edits:
        assert old in text
        text = text.replace(old, new, 1)
    path = tmp_path / "job.yaml"
    path.write_text(text)
    return resolve(load_job(path))


def test_the_setting_is_the_rated_current(tmp_path: Path) -> None:
    # BS 7671 433.1.1: for an adjustable device the rated current is the setting selected
    phrase = "MCCB 160 A Ir 125 A Im 1250 A 25 kA TP"
    job = _resolved(tmp_path, ("device: C32 TP 6 kA", f"device: {phrase}"))
    device = job.circuits["DB1/3TP"].device
    assert (device.rating_a, device.frame_a, device.im_a) == (125, 160, 1250)
    assert (device.words, device.kind, device.icn_ka) == (phrase, "mccb", 25)


def test_arc_fault_detection_by_phrase_or_key(tmp_path: Path) -> None:
    old = "device: C32 TP 6 kA"
    assert _resolved(tmp_path, (old, f"{old} AFDD")).circuits["DB1/3TP"].device.afdd
    assert _resolved(tmp_path, (old, f"AFDD: yes\n    {old}")).circuits["DB1/3TP"].device.afdd
    assert not _resolved(tmp_path).circuits["DB1/3TP"].device.afdd


def test_use_of_the_building_and_back_up_of_a_board(tmp_path: Path) -> None:
    job = _resolved(
        tmp_path,
        ("  building use: workshop", "  building use: care home"),
        ("    make group: make P", "    make group: make P\n    back-up: 100 A BS 88-3"),
    )
    assert job.job.building_use == "care home"
    back_up = job.boards["DB1"].back_up
    assert back_up is not None
    assert (back_up.standard, back_up.rating_a) == ("BS 88-3", 100)


@pytest.mark.parametrize(
    ("phrase", "says"),
    [
        ("C32 TP Im 320 A 6 kA", "has settings Ir or Im"),
        ("MCCB 63 A Ir 80 A Im 640 A TP 25 kA", "Ir 80 A is above the rating 63 A"),
    ],
)
def test_settings_that_cannot_be_are_refused(tmp_path: Path, phrase: str, says: str) -> None:
    with pytest.raises(SpecError, match=says):
        _resolved(tmp_path, ("device: C32 TP 6 kA", f"device: {phrase}"))
