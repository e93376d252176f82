"""Which thing of the newer job is which of the older: by tag, then by what it serves."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Generic, TypeVar

from asfitted.resolve.kept_tags import cable_keys

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from asfitted.resolve.installation import Circuit, Installation

T = TypeVar("T")


@dataclass(frozen=True)
class Matched(Generic[T]):
    """Things of one kind: those of both jobs, those that came and those that went."""

    both: tuple[tuple[T, T], ...]
    added: tuple[T, ...]
    removed: tuple[T, ...]


def match_tags(old: Mapping[str, T], new: Mapping[str, T]) -> Matched[T]:
    """Match things by their tag, in the order of the newer job."""
    return Matched(
        tuple((old[tag], thing) for tag, thing in new.items() if tag in old),
        tuple(thing for tag, thing in new.items() if tag not in old),
        tuple(thing for tag, thing in old.items() if tag not in new),
    )


def match_circuits(old: Mapping[str, Circuit], new: Mapping[str, Circuit]) -> Matched[Circuit]:
    """Match circuits by what they serve, so that one that went to another way is still known.

    A circuit without points is known by its way, or by its name and place.
    """
    pairs: dict[str, str] = {}  # tag of the newer to tag of the older
    taken: set[str] = set()
    for known_by in (_by_ends(old), _by_way(old), _by_name(old)):
        for tag, circuit in new.items():
            like = known_by(circuit)
            if tag not in pairs and like and like not in taken:
                pairs[tag] = like
                taken.add(like)
    gone = set(old) - taken
    return Matched(
        tuple((old[pairs[tag]], circuit) for tag, circuit in new.items() if tag in pairs),
        tuple(circuit for tag, circuit in new.items() if tag not in pairs),
        tuple(circuit for tag, circuit in old.items() if tag in gone),
    )


def _ends(circuit: Circuit) -> set[str]:
    return {*circuit.points, circuit.feeds_board} - {""}


def _by_ends(old: Mapping[str, Circuit]) -> Callable[[Circuit], str]:
    """Know a circuit by what it serves: the older one that served most of it."""
    owner = {end: circuit.tag for circuit in old.values() for end in _ends(circuit)}

    def find(circuit: Circuit) -> str:
        owners = [owner[end] for end in sorted(_ends(circuit)) if end in owner]
        return max(owners, key=lambda tag: (owners.count(tag), tag == circuit.tag), default="")

    return find


def _by_way(old: Mapping[str, Circuit]) -> Callable[[Circuit], str]:
    def find(circuit: Circuit) -> str:
        before = old.get(circuit.tag)
        if before is None:
            return ""
        both_serve = _ends(before) and _ends(circuit)
        return circuit.tag if both_serve or before.name == circuit.name else ""

    return find


def _by_name(old: Mapping[str, Circuit]) -> Callable[[Circuit], str]:
    names = {(c.name, c.place): c.tag for c in old.values() if not _ends(c)}

    def find(circuit: Circuit) -> str:
        if _ends(circuit):
            return ""
        return names.get((circuit.name, circuit.place)) or (
            circuit.tag if circuit.tag in old else ""
        )

    return find


def match_cables(old: Installation, new: Installation) -> Matched[str]:
    """Match cables by their far ends; the pairs are tags of the older and the newer job."""
    ours, theirs = cable_keys(old), cable_keys(new)
    return Matched(
        tuple((ours[key], tag) for key, tag in theirs.items() if key in ours),
        tuple(tag for key, tag in theirs.items() if key not in ours),
        tuple(tag for key, tag in ours.items() if key not in theirs),
    )
