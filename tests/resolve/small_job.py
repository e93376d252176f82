"""A small job to build variations on, as text."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from asfitted.resolve import resolve
from asfitted.spec import load_job

if TYPE_CHECKING:
    from asfitted.resolve.installation import Installation

SPECS = Path(__file__).parents[2] / "specs"

HEAD = """\
asfitted: 1
job: {number: J1, title: Test}
supply: {system: TN-S, phases: 3}
rooms:
  Hall:
    height: 3 m
    walls: {A: {length: 6 m}, B: {length: 4 m}, C: {length: 6 m}, D: {length: 4 m}}
boards:
  DB1: {at: "wall A, 1.0 m along, 1.5 m up", ways: 4, phases: 3, fed from: supply}
"""


def socket_circuit(
    way: str, tag: str, extra: str = "", device: str = "RCBO B16 30 mA type A"
) -> str:
    """Return one circuit with one socket-outlet, as text."""
    point = f'{{tag: {tag}, is: 13 A socket, at: "wall B, 1.0 m along, 1.2 m up"}}'
    return (
        f"  - {{way: {way}, name: {tag}, device: {device}, cable: T&E, {extra}points: [{point}]}}\n"
    )


def resolved(folder: Path, text: str) -> Installation:
    """Return the installation that the text means."""
    path = folder / "job.yaml"
    path.write_text(text, encoding="utf-8")
    return resolve(load_job(path))
