"""How many other power cables lie beside each leg of a cable, for the grouping factor."""

from __future__ import annotations

from dataclasses import dataclass
from types import MappingProxyType
from typing import TYPE_CHECKING

from asfitted.calculate.containment.containment_kinds import (
    drop_arrangement,
    is_run_kind,
    kind_of,
)

if TYPE_CHECKING:
    from collections.abc import Mapping

    from asfitted.calculate.results import CableRoute, RouteLeg
    from asfitted.resolve.installation import Installation


@dataclass(frozen=True)
class LegGroup:
    """The company of one leg.

    Attributes:
        leg: Index of the leg in the route.
        where: Section ident, or the words of the leg.
        others: Other power cables beside it, whatever they carry.
        arrangement: Row of ``reference.factors.grouping``.
        method: Reference method letter of the leg.
        enclosure: What the leg runs in.
        length_mm: Length of the leg, mm.
        company: Tags of those other cables.
    """

    leg: int
    where: str
    others: int
    arrangement: str
    method: str
    enclosure: str
    length_mm: float
    company: frozenset[str] = frozenset()


def companions(
    installation: Installation, paths: Mapping[str, CableRoute]
) -> Mapping[str, tuple[LegGroup, ...]]:
    """Return, for each cable with legs, the company of each of its legs.

    Cables are together when they lie in one section of a run, or take the very same line outside
    containment: two cables that drop to one socket count as two in one conduit. Only power cables
    are counted; a cable that passes a place twice counts once there.
    """
    together: dict[object, set[str]] = {}
    for tag, route in paths.items():
        if installation.cables[tag].band == "power":
            for leg in route.legs:
                together.setdefault(place_of(leg), set()).add(tag)
    return MappingProxyType(
        {
            tag: tuple(
                _group(number, leg, frozenset(together.get(place_of(leg), set()) - {tag}))
                for number, leg in enumerate(route.legs)
            )
            for tag, route in paths.items()
            if route.legs
        }
    )


def place_of(leg: RouteLeg) -> object:
    """Return what two legs share that lie together: section, passage, or enclosure and line."""
    if leg.section or leg.passage:
        return leg.section or ("passage", leg.passage)
    ends = sorted(tuple(round(value, 1) for value in place) for place in (leg.start, leg.end))
    return (leg.enclosure, *ends)


def _group(number: int, leg: RouteLeg, company: frozenset[str]) -> LegGroup:
    if leg.section or (leg.passage and is_run_kind(leg.enclosure)):
        arrangement = kind_of(leg.enclosure).arrangement
    else:
        arrangement = drop_arrangement(leg.enclosure)
    return LegGroup(
        leg=number,
        where=leg.section or leg.words,
        others=len(company),
        arrangement=arrangement,
        method=leg.method,
        enclosure=leg.enclosure,
        length_mm=leg.length_mm,
        company=company,
    )
