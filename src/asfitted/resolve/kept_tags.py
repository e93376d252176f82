"""Cable tags that stay from issue to issue, wherever in the file a new circuit is written.

A first issue numbers its circuits and data devices in the order of the file. Once issued, a cable
keeps its tag, for labels on site bear it; what is new takes the numbers after the last.
"""

from __future__ import annotations

import re
from dataclasses import replace
from types import MappingProxyType
from typing import TYPE_CHECKING, TypeVar

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from asfitted.resolve.installation import Cable, Installation

T = TypeVar("T")


def ordered_as_issued(job: Installation, issued: Installation | None) -> Installation:
    """Return a job whose things stand in the order of the issue before it."""
    if issued is None:
        return job
    return replace(
        job,
        boards=in_issued_order(job.boards, issued.boards),
        circuits=in_issued_order(job.circuits, issued.circuits),
        points=in_issued_order(job.points, issued.points),
        cables=in_issued_order(job.cables, issued.cables),
        containment=in_issued_order(job.containment, issued.containment),
        data_devices=in_issued_order(job.data_devices, issued.data_devices),
    )


def cable_key(cable: Cable, board: str) -> str:
    """Return what a cable is known by whatever its tag: its far end, or the ring it closes."""
    return f"{cable.circuit} ring" if cable.to_end == board else cable.to_end


def cable_keys(installation: Installation) -> dict[str, str]:
    """Return the tag of every cable by what it is known by."""
    found: dict[str, str] = {}
    for cable in installation.cables.values():
        circuit = installation.circuits.get(cable.circuit)
        found.setdefault(cable_key(cable, circuit.board if circuit else ""), cable.tag)
    return found


class TagKeeper:
    """Gives tags while a job is resolved; without an issued job by the order of the file."""

    def __init__(self, issued: Installation | None) -> None:
        """Learn the tags of the issued job."""
        self._is_first = issued is None
        self._cables = cable_keys(issued) if issued else {}
        self._circuits = {c.tag: c.number for c in issued.circuits.values()} if issued else {}
        self._used = set(self._cables.values())
        numbers = [_number(tag) for tag in self._used if tag.startswith("D")]
        self._last_data = max(numbers, default=0)
        self._last_circuit = max(self._circuits.values(), default=0)
        self._owner = {
            point: circuit.number
            for circuit in (issued.circuits.values() if issued else ())
            for point in (*circuit.points, circuit.feeds_board)
            if point
        }
        self._taken: set[int] = set()

    def circuit_number(self, tag: str, ends: Iterable[str], index: int) -> int:
        """Return the number of a circuit: that of its issue, also after a move to another way."""
        if self._is_first:
            return index + 1
        moved = [self._owner[end] for end in ends if end in self._owner]
        for number in (self._circuits.get(tag), *moved):
            if number is not None and number not in self._taken:
                self._taken.add(number)
                return number
        self._last_circuit += 1
        return self._last_circuit

    def leg_tag(self, number: int, key: str, made: int) -> str:
        """Return the tag of a cable of a circuit that has ``made`` cables so far."""
        if not self._is_first and key in self._cables:
            return self._cables[key]
        base = f"W{number:02d}"
        tags = [base if n == 0 else f"{base}-{n + 1}" for n in range(made, made + 200)]
        tag = next(t for t in tags if t not in self._used)
        self._used.add(tag)
        return tag

    def data_tag(self, device: str, number: int) -> str:
        """Return the tag of the cable of a data device."""
        if self._is_first:
            return f"D{number:02d}"
        if device in self._cables:
            return self._cables[device]
        self._last_data += 1
        return f"D{self._last_data:02d}"


def _number(tag: str) -> int:
    match = re.search(r"\d+", tag)
    return int(match[0]) if match else 0


def in_issued_order(found: Mapping[str, T], issued: Mapping[str, T] | None) -> Mapping[str, T]:
    """Return things in the order of the issue before, each new one after its neighbour.

    Schedules and drawings stay as they were when the lines of a file are put in another order.
    """
    if issued is None:
        return found
    new_after: dict[str, list[str]] = {}
    neighbour = ""
    for tag in found:
        if tag in issued:
            neighbour = tag
        else:
            new_after.setdefault(neighbour, []).append(tag)
    order = list(new_after.get("", ()))
    for tag in (tag for tag in issued if tag in found):
        order += [tag, *new_after.get(tag, ())]
    return MappingProxyType({tag: found[tag] for tag in order})
