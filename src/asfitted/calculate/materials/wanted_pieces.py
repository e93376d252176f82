"""Every length that has to be cut, by the item it is cut from."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from asfitted.calculate.containment.leg_groups import place_of
from asfitted.calculate.containment.section_fill import cable_size
from asfitted.calculate.materials.item_words import (
    cable_item,
    enclosure_item,
    of_bore,
    run_item,
    without_size,
)
from asfitted.calculate.materials.items import Piece
from asfitted.errors import InputOutOfRangeError, OutsideTableError
from asfitted.reference import cable_family, containment

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from asfitted.calculate.materials.run_shape import RunShape
    from asfitted.calculate.results import CableRoute, CalculationResults, RouteLeg
    from asfitted.resolve.installation import Cable, Installation


@dataclass(frozen=True)
class Wanted:
    """The lengths of one item. ``family`` is set for a cable, ``kind`` for containment."""

    item: str
    of: Literal["cable", "containment"]
    pieces: tuple[Piece, ...]
    family: str = ""
    cores: int = 0
    csa_mm2: float | None = None
    kind: str = ""
    width_mm: float = 0.0
    height_mm: float = 0.0


@dataclass(frozen=True)
class EnclosedLine:
    """One line of conduit or trunking outside the runs, and the cables that share it."""

    item: str  # "25 mm steel conduit"
    leg: RouteLeg
    cables: tuple[str, ...]

    @property
    def mark(self) -> str:
        """Name of the piece on the cut list: the cables in it."""
        return " ".join(self.cables)


def enclosed_lines(
    installation: Installation, results: CalculationResults
) -> tuple[EnclosedLine, ...]:
    """Return the conduits and trunking outside the runs, those that cables share once."""
    routes: Mapping[str, CableRoute] = results.routes
    lines: dict[object, tuple[str, RouteLeg, list[str]]] = {}
    for tag, route in routes.items():
        if installation.cables[tag].state != "new":
            continue
        for leg in route.legs:
            item = enclosure_item(leg)
            if item:
                lines.setdefault((item, place_of(leg)), (item, leg, []))[2].append(tag)
    return tuple(
        EnclosedLine(_sized(item, tags, installation, results), leg, tuple(dict.fromkeys(tags)))
        for item, leg, tags in lines.values()
    )


def _sized(
    item: str, tags: Sequence[str], installation: Installation, results: CalculationResults
) -> str:
    """Return conduit whose size is open by the bore that its cables fill to the space factor.

    Source: On-Site Guide Appendix E, space factor of conduit.
    """
    if "conduit" not in item or re.search(r"\d", item):
        return item
    sizes = {tag: figures.csa_mm2 for tag, figures in results.cables.items()}
    try:
        areas = [cable_size(installation.cables[tag], sizes).area_mm2 for tag in set(tags)]
    except (InputOutOfRangeError, OutsideTableError):
        return item
    factor = containment.space_factor_limit("conduit").value
    return of_bore(item, math.ceil(math.sqrt(4 * sum(areas) / (math.pi * factor))))


def in_one_piece(lines: Sequence[EnclosedLine]) -> tuple[tuple[EnclosedLine, ...], ...]:
    """Return the lines, flexible conduit as one where it follows on round the same cables.

    It turns a corner in one piece, without a fitting.
    """
    chains: list[tuple[EnclosedLine, ...]] = []
    for line in lines:
        last = chains[-1][-1] if chains else None
        if (
            last is not None
            and "flexible" in line.item
            and (last.item, last.cables) == (line.item, line.cables)
            and _meet(last.leg, line.leg)
        ):
            chains[-1] = (*chains[-1], line)
        else:
            chains.append((line,))
    return tuple(chains)


def _meet(one: RouteLeg, other: RouteLeg) -> bool:
    """Tell whether two lengths of a way share an end, to the mm."""
    return any(
        max(abs(p.x - q.x), abs(p.y - q.y), abs(p.z - q.z)) < 1.0
        for p in (one.start, one.end)
        for q in (other.start, other.end)
    )


def wanted_pieces(
    installation: Installation,
    results: CalculationResults,
    shapes: Sequence[RunShape],
    lines: Sequence[EnclosedLine],
) -> tuple[Wanted, ...]:
    """Return the lengths of every item: cables first, then runs, then conduit outside the runs."""
    found: dict[str, list[Wanted]] = {}
    for one in (
        *_cables(installation, results),
        *_runs(installation, shapes),
        *map(_line, in_one_piece(lines)),
    ):
        found.setdefault(one.item, []).append(one)
    return tuple(_joined(same) for same in found.values())


def _joined(same: Sequence[Wanted]) -> Wanted:
    first = same[0]
    pieces = tuple(piece for one in same for piece in one.pieces)
    return Wanted(
        first.item,
        first.of,
        pieces,
        first.family,
        first.cores,
        first.csa_mm2,
        first.kind,
        first.width_mm,
        first.height_mm,
    )


def _cables(installation: Installation, results: CalculationResults) -> Iterator[Wanted]:
    for cable in installation.cables.values():
        route = results.routes.get(cable.tag)
        if cable.state != "new" or route is None or route.cut_m <= 0:
            continue
        yield from _conductors(cable, results, round(route.cut_m * 1000))


def _conductors(cable: Cable, results: CalculationResults, length_mm: int) -> Iterator[Wanted]:
    """Yield a cable as one length, or single conductors as so many lengths."""
    figures = results.cables.get(cable.tag)
    csa = figures.csa_mm2 if figures is not None else cable.csa_mm2
    made = cable_family.family(cable.family)
    if made.construction != "single" or csa is None:
        yield Wanted(
            cable_item(cable, results),
            "cable",
            (Piece(cable.tag, length_mm),),
            cable.family,
            cable.cores,
            csa,
        )
        return
    sizes = [csa] * cable.cores
    if figures is not None and figures.cpc_mm2 is not None:
        sizes.append(figures.cpc_mm2)
    for size in sizes:
        item = f"{size:g} mm² {made.words[0]}"
        yield Wanted(item, "cable", (Piece(cable.tag, length_mm),), cable.family, 1, size)


def _runs(installation: Installation, shapes: Sequence[RunShape]) -> Iterator[Wanted]:
    for shape in shapes:
        run = shape.run
        pieces = tuple(
            Piece(f"{run.tag} {'wall ' + s.wall if s.wall else 'overhead'}", s.length_mm)
            for s in shape.straights
        )
        yield _of_run(run_item(run), pieces, run.kind, run.width_mm, run.height_mm)
    for run in installation.containment.values():
        if run.state == "new" and run.declared_length_m and run.kind != "hidden run":
            piece = Piece(run.tag, round(run.declared_length_m * 1000))
            yield _of_run(run_item(run), (piece,), run.kind, run.width_mm, run.height_mm)


def _of_run(
    item: str, pieces: tuple[Piece, ...], kind: str, width_mm: float, height_mm: float
) -> Wanted:
    return Wanted(item, "containment", pieces, kind=kind, width_mm=width_mm, height_mm=height_mm)


def _line(chain: tuple[EnclosedLine, ...]) -> Wanted:
    line = chain[0]
    bare = without_size(line.item)
    kind = re.sub(r"^[\d.]+(?:\s*[x×]\s*[\d.]+)?\s*(?:mm)?\s+", "", bare)
    sizes = [float(n) for n in re.findall(r"[\d.]+", bare.removesuffix(kind))]
    piece = Piece(line.mark, sum(round(one.leg.length_mm) for one in chain))
    width, height = (sizes[0], sizes[-1]) if sizes else (0.0, 0.0)
    return _of_run(line.item, (piece,), kind, width, height)
