"""An empty results file for a job: every circuit, every reading that is owed, and no value.

What stands in it is what to measure, never a figure: it is filled in by whoever held the
instrument, and named under ``results:`` in the job file. Left blank, nothing counts as measured.
"""

from __future__ import annotations

import json
import re
from typing import TYPE_CHECKING

from asfitted.check.readings import may_have_rcd

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.resolve.installation import Board, Circuit, Installation

TAKEN = ("by", "date", "instrument")
SUPPLY = ("Ze", "fault current", "polarity")
ELECTRODE = "electrode"
BOARD = ("Zs", "fault current", "polarity")
PHASES = "phase sequence"
RING = ("r1", "rn", "r2")
CIRCUIT = (
    "R1+R2",
    "R2",
    "insulation voltage",
    "insulation live",
    "insulation earth",
    "polarity",
    "Zs",
)
RCD = ("RCD time", "RCD button")
AFDD = ("AFDD button",)
LAST = ("not tested", "remarks")
HEAD = (
    "Write what the instrument showed, with its unit; leave blank what was not measured.",
    "Ze, Zs, R1+R2, R2, r1, rn, r2, electrode: ohm. Insulation: voltage V, readings Mohm.",
    'RCD time: ms. Fault current: kA. Beyond the range: with > before it, in quotes, ">999 Mohm".',
    "polarity, phase sequence: correct or wrong. Buttons: works or fails. not tested: the reason.",
    "R1+R2 or R2, whichever was read. One circuit may have its own by, date and instrument.",
    "Isolate, lock off and prove dead before dead tests; live tests by a competent person only.",
)
INSTRUMENTS = (
    "List each instrument by a short tag, on a line of its own under instruments:",
    "  TAG: {name: , serial: , checked: }",
)
_PLAIN = re.compile(r"[A-Za-z][A-Za-z0-9/._-]*")


def blank_results(installation: Installation) -> str:
    """Return the text of an empty results file: YAML, one key for each reading."""
    return "\n".join(_lines(installation)) + "\n"


def _lines(installation: Installation) -> Iterator[str]:
    job = installation.job
    yield _remark(f"Test results of {job.number} {job.title}, revision {job.revision}")
    yield from map(_remark, HEAD)
    yield "asfitted: 1"
    yield from (f"{key}:" for key in TAKEN)
    yield from map(_remark, INSTRUMENTS)
    yield "instruments:"
    if installation.supply is not None:
        yield "supply:"
        yield from _blanks(SUPPLY, 2)
        if installation.supply.system == "TT":
            yield from _blanks((ELECTRODE,), 2)
    boards = [board for board in installation.boards.values() if board.state != "removed"]
    if boards:
        yield "boards:"
    for board in boards:
        yield from _board(board)
    circuits = [one for one in installation.circuits.values() if one.state != "removed"]
    if circuits:
        yield "circuits:"
    for circuit in circuits:
        yield from _circuit(circuit, installation)


def _board(board: Board) -> Iterator[str]:
    name = f"  # {_one_line(board.name)}" if board.name not in {"", board.tag} else ""
    yield f"  {_key(board.tag)}:{name}"
    yield from _blanks(BOARD, 4)
    if board.phases == 3:
        yield from _blanks((PHASES,), 4)


def _circuit(circuit: Circuit, installation: Installation) -> Iterator[str]:
    yield f"  {_key(circuit.tag)}:  # {_one_line(f'{circuit.name}, {circuit.device.words}')}"
    if circuit.ring:
        yield from _blanks(RING, 4)
    yield from _blanks(CIRCUIT, 4)
    if may_have_rcd(circuit, installation):
        yield from _blanks(RCD, 4)
    if circuit.device.afdd:
        yield from _blanks(AFDD, 4)
    yield from _blanks(LAST, 4)


def _blanks(keys: tuple[str, ...], indent: int) -> Iterator[str]:
    return (f"{' ' * indent}{key}:" for key in keys)


def _remark(words: str) -> str:
    return f"# {_one_line(words)}" if not words.startswith(" ") else f"# {words.rstrip()}"


def _one_line(words: str) -> str:
    return " ".join(words.split())


def _key(tag: str) -> str:
    """Return a tag as a key of the file, in quotes where it needs them."""
    return tag if _PLAIN.fullmatch(tag) else json.dumps(tag, ensure_ascii=False)
