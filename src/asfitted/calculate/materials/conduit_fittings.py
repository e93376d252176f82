"""Fittings of conduit outside the runs: couplers, bends, boxes, and what ends it.

Counted from the geometry by trade custom: bars are joined by couplers; a conduit that turns round
the same cables has a bend; where it serves a luminaire or parts, it has a box; a straight is
drawn in over 10 m at most. Circular boxes have spouts, so that bushes stand at the other ends only.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from asfitted.calculate.materials.item_words import listed_item
from asfitted.calculate.materials.items import MaterialLine
from asfitted.calculate.materials.wanted_pieces import in_one_piece
from asfitted.geometry import distance3
from asfitted.reference.loader import table

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from asfitted.calculate.materials.wanted_pieces import EnclosedLine
    from asfitted.calculate.results import CalculationResults
    from asfitted.geometry import Point3
    from asfitted.resolve.installation import Installation

CUSTOM = "common practice"
#: Boxes by how many conduits come in; two in one line or at a corner.
_BOXES = {1: "terminal box", 2: "through box", 3: "tee box", 4: "four-way box"}
_ANGLE_BOX = "angle box"
#: Devices that sit on a box of the conduit, as luminaires do.
_ON_A_BOX = ("access point", "camera")


_Place = tuple[int, int, int]


@dataclass(frozen=True)
class _Ends:
    """Places, to the mm, where luminaires hang on a box, and where conduit comes to an end."""

    hung: frozenset[_Place]
    ending: frozenset[_Place]  # at accessories, machines and runs


@dataclass
class _Node:
    """A place where conduits of one item end."""

    at: Point3
    lines: list[EnclosedLine] = field(default_factory=list)


def conduit_fitting_lines(
    installation: Installation,
    results: CalculationResults,
    lines: Sequence[EnclosedLine],
    bars_mm: Mapping[str, int],
) -> tuple[MaterialLine, ...]:
    """Return couplers, bends, boxes, and bushes or glands of conduit outside the runs.

    Args:
        installation: the job.
        results: its figures; routes are read, for where conduit comes to a run.
        lines: conduit and trunking outside the runs.
        bars_mm: length of a bar of each item, mm.
    """
    by_item: dict[str, list[EnclosedLine]] = defaultdict(list)
    for line in lines:
        by_item[line.item].append(line)
    ends = _Ends(_hung(installation), _ending(installation, results))
    made: list[MaterialLine] = []
    for item, same in by_item.items():
        if "flexible" in item:
            made.append(_glands(item, len(in_one_piece(same))))
        elif "conduit" in item:
            made += _of_conduit(item, same, bars_mm.get(item, 3000), ends)
    return tuple(made)


def _glands(item: str, count: int) -> MaterialLine:
    words = f"both ends of {count} line{'s' * (count > 1)}, {CUSTOM}"
    return _line(f"gland, {listed_item(item)}", 2 * count, words)


def _of_conduit(
    item: str, lines: Sequence[EnclosedLine], bar_mm: int, ends: _Ends
) -> Iterator[MaterialLine]:
    counts: Counter[tuple[str, str]] = Counter()
    for line in lines:
        length_mm = round(line.leg.length_mm)
        joined = max(-(-length_mm // bar_mm) - 1, 0)
        counts["coupler", "between bars"] += joined
        counts["through box", "to draw in over more than 10 m"] += max(
            -(-length_mm // _drawn_in_mm()) - 1, 0
        )
    for node in _nodes(lines):
        what, why, number = _at(node, ends)
        counts[what, why] += number
    found: dict[str, dict[str, int]] = defaultdict(dict)
    for (what, why), count in counts.items():
        if count:
            found[what][why] = count
    for what, reasons in found.items():
        told = ", ".join(f"{n} {why}" for why, n in reasons.items())
        yield _line(
            f"{what}, {listed_item(item)}", sum(reasons.values()), f"geometry, {CUSTOM}: {told}"
        )


def _at(node: _Node, ends: _Ends) -> tuple[str, str, int]:
    """Return the fitting at a place where conduits end, why, and how many of it."""
    count = len(node.lines)
    is_hung = _key(node.at) in ends.hung
    straight = count == 2 and _is_straight(node)
    if not is_hung and (count == 1 or _key(node.at) in ends.ending):
        return "bush and lock nut", "at ends in boxes, boards and trays", count
    if not is_hung and count == 2 and node.lines[0].cables == node.lines[1].cables:
        return ("coupler", "where two meet", 1) if straight else ("bend 90°", "at corners", 1)
    where = "at luminaires and devices" if is_hung else "where conduit parts"
    if count == 2 and not straight:
        return _ANGLE_BOX, where, 1
    return _BOXES.get(count, f"box for {count} conduits"), where, 1


def _is_straight(node: _Node) -> bool:
    """Tell whether two lines go on in one direction."""
    away = []
    for line in node.lines:
        leg = line.leg
        near = distance3(leg.start, node.at) <= distance3(leg.end, node.at)
        far = leg.end if near else leg.start
        length = distance3(far, node.at) or 1.0
        away.append(
            (
                (far.x - node.at.x) / length,
                (far.y - node.at.y) / length,
                (far.z - node.at.z) / length,
            )
        )
    one, other = away
    return sum(a * b for a, b in zip(one, other, strict=True)) < -1 + 1e-3


def _nodes(lines: Sequence[EnclosedLine]) -> list[_Node]:
    """Return the places where lines end, those that share an end once."""
    found: dict[_Place, _Node] = {}
    for line in lines:
        for place in (line.leg.start, line.leg.end):
            found.setdefault(_key(place), _Node(place)).lines.append(line)
    return list(found.values())


def _key(place: Point3) -> _Place:
    return round(place.x), round(place.y), round(place.z)


def _hung(installation: Installation) -> frozenset[_Place]:
    """Return the places of luminaires and devices that have no box of their own."""
    points = [p.position.at for p in installation.points.values() if "luminaire" in p.kind]
    devices = [d for d in installation.data_devices.values() if d.kind in _ON_A_BOX]
    return frozenset(map(_key, (*points, *(d.position.at for d in devices))))


def _ending(installation: Installation, results: CalculationResults) -> frozenset[_Place]:
    """Return the places of accessories and machines, and where cables leave a run."""
    things = [
        *(point.position.at for point in installation.points.values()),
        *(device.position.at for device in installation.data_devices.values()),
    ]
    at_runs = [
        place
        for route in results.routes.values()
        for leg in route.legs
        if leg.containment
        for place in (leg.start, leg.end)
    ]
    return frozenset(map(_key, (*things, *at_runs)))


def _drawn_in_mm() -> int:
    """Return how long a straight may be drawn in without a box, mm."""
    found = (
        row.get("draw_in_straight_max_m") for row in table("containment", "conduit_stock").rows
    )
    return round(1000 * next(float(metres) for metres in found if metres is not None))


def _line(item: str, count: int, basis: str) -> MaterialLine:
    return MaterialLine("Containment", item, count, count, "each", "", basis)
