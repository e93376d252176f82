"""What is hung from a ceiling or roof: its fixing at the top is counted, its kind is not known.

What the structure is, and what it can bear, is in no spec: the kind is left to be chosen, and said
so. Counts are common practice: two rods to a hanger, two places to a linear luminaire, one else.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.materials.items import MaterialLine, TopFixing

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from asfitted.calculate.materials.items import Fixing
    from asfitted.resolve.installation import Installation

TO_CHOOSE = "not recorded, choose for the structure (not to roof sheets)"
OFF = "off "  # how the place of a fixing begins that no wall carries
_TO_A_HANGER = 2
_TO_A_LINEAR = 2


def top_fixings(installation: Installation, fixings: Sequence[Fixing]) -> tuple[TopFixing, ...]:
    """Return the top fixings of all that is hung and new, in the order rods, things, conduit.

    Args:
        installation: the job.
        fixings: supports of runs and of conduit, as counted.
    """
    return (*_rods(fixings), *_things(installation), *_conduit(fixings))


def top_fixing_lines(found: Sequence[TopFixing]) -> tuple[MaterialLine, ...]:
    """Return a line of materials for each kind of thing that hangs."""
    kinds: dict[str, list[TopFixing]] = {}
    for one in found:
        kinds.setdefault(one.what, []).append(one)
    lines = []
    for what, same in kinds.items():
        count = sum(one.count for one in same)
        counts: dict[str, int] = {}
        for one in same:
            counts[one.tag] = counts.get(one.tag, 0) + one.count
        told = ", ".join(f"{tag} {n}" for tag, n in counts.items())
        basis = f"kind {TO_CHOOSE}; count common practice: {told}"
        lines.append(
            MaterialLine(
                "Supports and fixings", f"top fixing, {what}", count, count, "each", "", basis
            )
        )
    return tuple(lines)


def _rods(fixings: Sequence[Fixing]) -> Iterator[TopFixing]:
    for fixing in fixings:
        if fixing.what.startswith("trapeze"):
            yield TopFixing(fixing.subject, "threaded rod M10", _TO_A_HANGER * fixing.count)


def _things(installation: Installation) -> Iterator[TopFixing]:
    for point in installation.points.values():
        if point.state == "new" and "luminaire" in point.kind and point.position.out_mm > 0:
            count = _TO_A_LINEAR if "linear" in point.kind else 1
            yield TopFixing(point.tag, "luminaires and devices", count)
    for device in installation.data_devices.values():
        if device.state == "new" and device.position.out_mm > 0:
            yield TopFixing(device.tag, "luminaires and devices", 1)


def _conduit(fixings: Sequence[Fixing]) -> Iterator[TopFixing]:
    for fixing in fixings:
        if fixing.where.startswith(OFF) and "conduit" in fixing.what:
            yield TopFixing(fixing.subject, "conduit off the walls", fixing.count)
