"""What the ends of cables need: glands with their kits, connectors, baluns."""

from __future__ import annotations

import math
from collections import Counter
from typing import TYPE_CHECKING

from asfitted.calculate.materials.cable_fixings import overall_mm
from asfitted.calculate.materials.items import GlandEnd, MaterialLine
from asfitted.errors import OutsideTableError
from asfitted.reference import cable_family, termination
from asfitted.reference.loader import table

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from asfitted.calculate.results import CalculationResults
    from asfitted.resolve.installation import Cable, DataDevice, Installation

GLANDS_IN_A_PACK = 2
CUSTOM = "common practice"


def gland_ends(
    installation: Installation, results: CalculationResults
) -> tuple[tuple[GlandEnd, ...], tuple[str, ...]]:
    """Return the gland of every new armoured end, and which could not be found and why."""
    found: list[GlandEnd] = []
    missing: list[str] = []
    for cable in installation.cables.values():
        if cable.state != "new" or not cable_family.family(cable.family).is_armoured:
            continue
        overall = overall_mm(cable, results)
        if overall is None:
            missing.append(f"glands of {cable.tag}: its size is not known")
            continue
        try:
            found += [
                _gland(cable, end, overall, installation) for end in (cable.from_end, cable.to_end)
            ]
        except OutsideTableError:
            missing.append(f"glands of {cable.tag}: no gland in the list takes {overall:.1f} mm")
    return tuple(found), tuple(missing)


def _gland(cable: Cable, end: str, overall: float, installation: Installation) -> GlandEnd:
    size = termination.gland_for_diameter(overall)
    thread = termination.gland_entry_thread(size.text)
    lengths = table("termination", "armour_length_by_gland")
    # sizes between the rows take the row of their number: 50S as 50
    name = size.text if any(r["gland"] == size.text for r in lengths.rows) else size.text[:2]
    row = next((r for r in lengths.rows if str(r["gland"]) == name), lengths.rows[-1])
    return GlandEnd(
        cable=cable.tag,
        at=end,
        size=size.text,
        kind="CW" if is_wet(end, installation) else "BW",
        thread=thread.text,
        armour_mm=int(row["armour"]),
        core_mm=int(row["sheath_end_to_core_end_min"]),
        source=f"{size.source} ({size.provenance})",
    )


def is_wet(tag: str, installation: Installation) -> bool:
    """Tell whether an end is outside or in an enclosure proof against jets (second figure 5 up)."""
    position = installation.position_of(tag)
    ip = ""
    if tag in installation.points:
        ip = installation.points[tag].ip
    elif tag in installation.boards:
        ip = installation.boards[tag].ip
    figure = ip[3:4]
    return position.outside or (figure.isdigit() and int(figure) >= 5)


def gland_lines(glands: Sequence[GlandEnd]) -> tuple[MaterialLine, ...]:
    """Return the gland packs by size and kind, with what each pack holds."""
    counts = Counter((g.size, g.kind, g.thread) for g in glands)
    found = []
    for (size, kind, thread), ends in sorted(counts.items()):
        packs = math.ceil(ends / GLANDS_IN_A_PACK)
        place = "wet or outside" if kind == "CW" else "dry inside"
        item = f"gland kit {size} {kind}, brass, {thread}"
        words = f"{packs} pack{'s' * (packs > 1)} of {GLANDS_IN_A_PACK}"
        basis = (
            f"{ends} armoured end{'s' * (ends > 1)}, {place}; gland, lock nut, earth tag, shroud"
        )
        basis += "; size by overall diameter (memory)"
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
