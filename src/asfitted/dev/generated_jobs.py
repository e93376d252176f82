"""Whole jobs grown from a seed, as YAML text: for measuring that every sheet of any job holds.

Every name and figure is invented. The jobs load; they need not pass the checks of the design.
"""

from __future__ import annotations

import random
from typing import Any

import yaml

from asfitted.dev._generated_building import building_of, rooms_block, runs_block
from asfitted.dev._generated_data import data_block
from asfitted.dev._generated_power import (
    MOST_LEVELS,
    Power,
    add_board,
    add_circuit,
    add_spares,
    supply_block,
)

#: Boards and circuits asked for, by kind of job; the middle of the range is the most usual.
SIZES = (
    ((1, 1), (1, 8)),
    ((1, 1), (1, 8)),
    ((1, 3), (4, 30)),
    ((2, 6), (10, 60)),
    ((4, 12), (30, 120)),
    ((10, 40), (60, 200)),
    ((1, 2), (40, 120)),
    ((15, 40), (200, 400)),
)
#: Seeds of one known kind each, for looking at; other seeds choose by themselves.
FORTY_BOARDS, FOUR_HUNDRED_CIRCUITS = 40, 41
TITLES = ("Rewire", "New lighting and power", "Museum stores: power, lighting, cameras and data")
CLIENTS = ("Larch Lane Allotments", "The trustees of the Harbour Street Reading Rooms and Library")


class _PlainDumper(yaml.SafeDumper):
    """Writes equal blocks in full: the job language has no references."""

    def ignore_aliases(self, data: Any) -> bool:  # noqa: ARG002 - the signature is the library's
        return True


def generated_job(seed: int) -> str:
    """Return the spec of the job with this seed; the same seed gives the same text."""
    dice = random.Random(seed)  # noqa: S311 - test data, no secret
    boards, circuits = _size(dice, seed)
    phases = 3 if boards > 3 or dice.random() < 0.6 else 1
    rooms = min(9, 1 + boards // 4 + dice.choice((0, 0, 0, 1, 2)))
    building = building_of(dice, rooms)
    power = Power(dice, building)
    _grow(power, boards, circuits, phases)
    cameras = dice.choice((0, 0, 1, 4, 12, 40))
    has_data = cameras > 0 or dice.random() < 0.2
    job: dict[str, Any] = {
        "asfitted": 1,
        "job": _job_block(dice, seed),
        "supply": supply_block(dice, phases),
        "rooms": rooms_block(building),
    }
    if runs := runs_block(building):
        job["containment"] = runs
    job["boards"] = {board.tag: board.block for board in power.boards}
    job["circuits"] = power.circuits
    if has_data:
        job["data"] = data_block(dice, building, cameras, _cabinet_feed(power))
        job["rooms"] = rooms_block(building)
    return yaml.dump(job, Dumper=_PlainDumper, sort_keys=False, allow_unicode=True, width=100)


def _size(dice: random.Random, seed: int) -> tuple[int, int]:
    """Return how many boards and circuits the job is to have."""
    few, many = dice.choice(SIZES)
    boards, circuits = dice.randint(*few), dice.randint(*many)
    if seed == FORTY_BOARDS:
        return 40, 150
    if seed == FOUR_HUNDRED_CIRCUITS:
        return 20, 400
    return boards, max(circuits, boards)


def _grow(power: Power, boards: int, circuits: int, phases: int) -> None:
    """Add boards as a tree of up to four levels, then circuits till there are enough."""
    dice = power.dice
    roots = dice.choice((1, 1, 1, 2, 5)) if boards > 4 else 1
    while len(power.boards) < boards:
        parents = [board for board in power.boards if board.level < MOST_LEVELS and board.free]
        is_root = len(power.boards) < roots or not parents
        parent = None if is_root else dice.choice(parents)
        # the boards nearest to the supply are the ones with room for others
        child_phases = phases if dice.random() < 0.7 or is_root else 1
        add_board(power, parent, child_phases)
    while len(power.circuits) < circuits and add_circuit(power):
        pass
    if not power.circuits:
        add_circuit(power)
    add_spares(power)


def _job_block(dice: random.Random, seed: int) -> dict[str, Any]:
    block: dict[str, Any] = {
        "number": f"G{seed:04d}",
        "title": dice.choice(TITLES),
        "client": dice.choice(CLIENTS),
        "site": "Unit 5, Quarry Bank Works",
        "installer": "Northway Electrical",
        "designer": "R. Ashdown",
        "date": "2026-11-18",
        "revision": "P01",
        "status": dice.choice(("Preliminary", "For construction")),
    }
    if dice.random() < 0.3:
        block["paper"] = dice.choice(("A4", "A3"))
    return block


def _cabinet_feed(power: Power) -> str:
    """Return the tag of a point that can supply the cabinet, "" when there is none."""
    for circuit in power.circuits:
        for point in circuit.get("points", []):
            if point["is"] == "fused spur":
                return str(point["tag"])
    return ""
