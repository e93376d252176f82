"""What the ends of cables need: glands with their kits, connectors, baluns."""

from __future__ import annotations

import math
from collections import Counter
from typing import TYPE_CHECKING

from asfitted.calculate.armoured_gland import armoured_gland, gland_type
from asfitted.calculate.materials.items import GlandEnd, MaterialLine
from asfitted.errors import OutsideTableError
from asfitted.reference import cable_family

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from asfitted.calculate.armoured_gland import ArmouredGland
    from asfitted.calculate.results import CalculationResults
    from asfitted.resolve.installation import Cable, DataDevice, Installation

GLANDS_IN_A_PACK = 2
CUSTOM = "common practice"
SIZED_BY = "makers' chart or range of the gland, the larger"


def gland_ends(
    installation: Installation, results: CalculationResults
) -> tuple[tuple[GlandEnd, ...], tuple[str, ...]]:
    """Return the gland of every new armoured end, and which could not be found and why."""
    found: list[GlandEnd] = []
    missing: list[str] = []
    for cable in installation.cables.values():
        if cable.state != "new" or not cable_family.family(cable.family).is_armoured:
            continue
        try:
            gland = armoured_gland(cable, results)
        except OutsideTableError:
            missing.append(f"glands of {cable.tag}: no gland is held for its size")
            continue
        if gland is None:
            missing.append(f"glands of {cable.tag}: its size is not known")
            continue
        found += [
            _gland_end(cable.tag, end, gland, gland_type(end, installation))
            for end in (cable.from_end, cable.to_end)
        ]
    return tuple(found), tuple(missing)


def _gland_end(tag: str, end: str, gland: ArmouredGland, kind: str) -> GlandEnd:
    lengths = gland.lengths
    return GlandEnd(
        cable=tag,
        at=end,
        size=gland.size.text,
        kind=kind,
        thread=gland.thread.text if gland.thread else "",
        armour_mm=lengths.armour_mm if lengths else None,
        core_mm=lengths.cores_least_mm if lengths else None,
        source=f"by cable, {SIZED_BY} ({gland.size.provenance})",
    )


def gland_lines(glands: Sequence[GlandEnd]) -> tuple[MaterialLine, ...]:
    """Return the gland packs by size and kind, with what each pack holds."""
    counts = Counter((g.size, g.kind, g.thread) for g in glands)
    found = []
    for (size, kind, thread), ends in sorted(counts.items()):
        packs = math.ceil(ends / GLANDS_IN_A_PACK)
        place = "outside, IPx4 up or IP not recorded" if kind == "CW" else "dry inside"
        item = f"gland kit {size} {kind}, brass, {thread or 'thread not recorded'}"
        words = f"{packs} pack{'s' * (packs > 1)} of {GLANDS_IN_A_PACK}"
        basis = (
            f"{ends} armoured end{'s' * (ends > 1)}, {place}; gland, lock nut, earth tag, shroud"
        )
        known = sorted({g.source for g in glands if (g.size, g.kind) == (size, kind)})
        basis += f"; size {', '.join(known)}"
        ordered = packs * GLANDS_IN_A_PACK
        found.append(MaterialLine("Terminations", item, ends, ordered, "each", words, basis))
    return tuple(found)


def connector_lines(installation: Installation) -> tuple[MaterialLine, ...]:
    """Return the connectors of new data and camera cables, both ends."""
    counts: Counter[tuple[str, str]] = Counter()
    for cable in installation.cables.values():
        device = installation.data_devices.get(cable.to_end)
        if cable.state == "new" and cable.band == "data" and device is not None:
            counts.update(dict(_connectors(cable, device)))
    return tuple(
        MaterialLine("Terminations", item, n, n, "each", "", why)
        for (item, why), n in sorted(counts.items())
    )


def _connectors(cable: Cable, device: DataDevice) -> Iterator[tuple[tuple[str, str], int]]:
    both = f"both ends of each cable, {CUSTOM}"
    if device.baluns:
        yield ("video balun, BNC plug to pair", both), 2
        yield ("d.c. connector, screw terminals", "supply at both ends, " + CUSTOM), 2
        return
    construction = cable_family.family(cable.family).construction
    if construction in ("coax", "coax_power"):
        yield ("BNC plug", both), 2
        if construction == "coax_power":
            yield ("d.c. connector, screw terminals", "supply at both ends, " + CUSTOM), 2
        return
    if device.kind == "data outlet":
        yield ("RJ45 outlet module", "one at each data outlet, " + CUSTOM), 1
        yield ("RJ45 plug", "switch end of outlets, both ends of others, " + CUSTOM), 1
        return
    yield ("RJ45 plug", "switch end of outlets, both ends of others, " + CUSTOM), 2
