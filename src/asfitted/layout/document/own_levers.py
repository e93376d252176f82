"""What a client looks at first when one thing stops, where that is not the board alone.

A socket-outlet with its own RCD, a motor behind a starter and a sub-board stop without a lever
being down where the chart of the board would have it sought.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.layout.document.plain_words import some_of
from asfitted.resolve.starters import STARTER

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.resolve.installation import Circuit, Installation

MOST_TAGS = 6  # of one group, named


@dataclass(frozen=True)
class OwnLever:
    """One thing that stops: where to look first, and which way of which board is next."""

    what: str
    first: str
    board: str
    way: str
    tag: str  # what has the lever
    kind: str  # words of a group: "a lever on the socket-outlet itself"

    @property
    def then(self) -> str:
        """The way and its board: ``way 3TP at DB1``."""
        return f"way {self.way} at {self.board}"


def own_levers(installation: Installation) -> tuple[OwnLever, ...]:
    """Return everything with a lever of its own, in the order of the circuits."""
    found: list[OwnLever] = []
    for circuit in installation.circuits.values():
        if circuit.state != "removed":
            found += _of_circuit(circuit, installation)
    return tuple(found)


def _of_circuit(circuit: Circuit, installation: Installation) -> list[OwnLever]:
    board, way = circuit.board, circuit.way
    if circuit.feeds_board:
        fed, kind = circuit.feeds_board, "the main switch of the board itself"
        what, first = f"Everything fed from {fed}", f"main switch of {fed}"
        return [OwnLever(what, first, board, way, fed, kind)]
    found = []
    for tag in circuit.points:
        point = installation.points[tag]
        if point.state == "removed":
            continue
        if point.rcd is not None:
            first, kind = f"lever on {tag} itself", "a lever on the socket-outlet itself"
            found.append(OwnLever(circuit.name, first, board, way, tag, kind))
        elif point.kind == STARTER:
            first, kind = f"reset button of the starter {tag}", "a reset button on the starter"
            found.append(OwnLever(circuit.name, first, board, way, tag, kind))
    return found


def grouped(levers: Sequence[OwnLever]) -> tuple[str, ...]:
    """Return one line for each kind of lever and board, for a job with many."""
    groups: dict[tuple[str, str], list[OwnLever]] = {}
    for lever in levers:
        groups.setdefault((lever.kind, lever.board), []).append(lever)
    lines = []
    for (kind, board), of_group in groups.items():
        tags = some_of([lever.tag for lever in of_group], MOST_TAGS)
        ways = some_of(list(dict.fromkeys(lever.way for lever in of_group)), MOST_TAGS)
        many = "s" if len({lever.way for lever in of_group}) > 1 else ""
        lines.append(f"{tags}: {kind}; then way{many} {ways} at {board}.")
    return tuple(lines)
