"""How full the conduits outside the runs are: drops, and level pieces between accessories."""

from __future__ import annotations

import math
import re
from typing import TYPE_CHECKING

from asfitted.calculate.containment.leg_groups import place_of
from asfitted.calculate.containment.section_fill import cable_size, conduit_inside_area_mm2
from asfitted.calculate.results import DropFill
from asfitted.reference import containment

if TYPE_CHECKING:
    from collections.abc import Mapping

    from asfitted.calculate.results import CableRoute, RouteLeg
    from asfitted.resolve.installation import Installation

_CONDUIT = re.compile(r"(\d+) mm (?:steel|plastic) conduit$")


def drop_fills(
    installation: Installation,
    paths: Mapping[str, CableRoute],
    sizes: Mapping[str, float],
) -> tuple[DropFill, ...]:
    """Return the fill of each conduit that cables share outside the runs, fullest first.

    Cables that take the very same line in a conduit of known size are taken to share one conduit:
    that is what "drops: 20 mm steel conduit" asks for. Steel wall thickness serves for plastic.

    Args:
        installation: the job.
        paths: routes by cable tag.
        sizes: chosen cross-sections by cable tag, mm2.
    """
    lines: dict[object, dict[str, RouteLeg]] = {}
    for tag, route in paths.items():
        for leg in route.legs:
            if not leg.section and _CONDUIT.search(leg.words):
                lines.setdefault(place_of(leg), {})[tag] = leg
    found = [_fill(installation, shared, sizes) for shared in lines.values()]
    return tuple(sorted(found, key=lambda f: (-f.fill_pct, f.cables)))


def _fill(
    installation: Installation, shared: Mapping[str, RouteLeg], sizes: Mapping[str, float]
) -> DropFill:
    leg = next(iter(shared.values()))
    match = _CONDUIT.search(leg.words)
    inside = conduit_inside_area_mm2(float(match[1]) if match else math.nan)
    used = sum(cable_size(installation.cables[tag], sizes).area_mm2 for tag in shared)
    only_data = all(installation.cables[tag].band == "data" for tag in shared)
    limit = containment.space_factor_limit("conduit_data" if only_data else "conduit").value
    return DropFill(
        words=leg.words,
        cables=tuple(shared),
        used_area_mm2=used,
        inside_area_mm2=inside,
        fill_pct=100 * used / inside,
        limit_pct=100 * limit,
    )
