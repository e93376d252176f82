"""Clear distance of data runs from power beside them, against the need of BS EN 50174-2.

Compared are lines on one wall that go the same way and pass each other: sections of data runs with
sections of power runs and with power cables clipped to the wall. Crossings are not looked at.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, NamedTuple

from asfitted.calculate.containment.containment_kinds import PowerContainment, kind_of
from asfitted.calculate.routes.wall_strip import spot_of
from asfitted.calculate.working import Step
from asfitted.errors import OutsideTableError
from asfitted.reference import segregation

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from asfitted.calculate.containment.section_fill import CableSize
    from asfitted.calculate.results import CableRoute, RouteLeg, Section
    from asfitted.calculate.routes.containment_runs import Run
    from asfitted.geometry import Point3
    from asfitted.resolve.installation import Containment, Installation, Wall

_PASSING_MM = 1.0


@dataclass(frozen=True)
class Separation:
    """The tightest neighbour of a run: the one with the least distance to spare."""

    run: str
    other: str  # tag of the run, or of the clipped cable
    needed_mm: float
    clear_mm: float
    steps: tuple[Step, ...]

    @property
    def spare_mm(self) -> float:
        """Clear distance over what is needed, mm; below nought: too near."""
        return self.clear_mm - self.needed_mm


class _Extent(NamedTuple):
    """Where a line is on its wall: how far it reaches, and its two edges across, mm."""

    is_upright: bool
    begin: float
    end: float
    low: float
    high: float


@dataclass(frozen=True)
class _Line:
    owner: str
    extent: _Extent
    cables: tuple[str, ...]
    screen: PowerContainment


@dataclass(frozen=True)
class _WallLines:
    power: list[_Line]
    data: list[_Line]


def separations(
    installation: Installation,
    paths: Mapping[str, CableRoute],
    runs: Mapping[str, Run],
    sections: Mapping[str, Section],
    sizes: Mapping[str, CableSize],
) -> Mapping[str, Separation]:
    """Return the tightest neighbour of the other band for every run that has one.

    A run with power and data in one section is its own neighbour at no distance. Circuits are
    counted one per phase and per 20 A begun. A power run is given the same figures as the data
    run it is nearest to.
    """
    found: dict[str, Separation] = {}
    for judged in _shared_sections(installation, sections):
        _keep(found, judged)
    for lines in _lines_by_wall(installation, paths, runs, sections, sizes).values():
        for judged in _neighbours(installation, lines):
            _keep(found, judged)
            if judged.other in runs:
                _keep(found, _seen_from(judged))
    return found


def _shared_sections(
    installation: Installation, sections: Mapping[str, Section]
) -> Iterator[Separation]:
    for section in sections.values():
        power, data = _by_band(installation, section.cables)
        if power and data:
            yield _judged(
                installation,
                run=section.containment,
                other=section.containment,
                power=power,
                data=data,
                screen="none_or_plastic",
                clear_mm=0.0,
            )


def _neighbours(installation: Installation, lines: _WallLines) -> Iterator[Separation]:
    for data in lines.data:
        for power in lines.power:
            clear_mm = _clear(data.extent, power.extent)
            if clear_mm is not None and data.owner != power.owner:
                yield _judged(
                    installation,
                    run=data.owner,
                    other=power.owner,
                    power=power.cables,
                    data=data.cables,
                    screen=power.screen,
                    clear_mm=clear_mm,
                )


def _keep(found: dict[str, Separation], judged: Separation) -> None:
    known = found.get(judged.run)
    key = (judged.spare_mm, judged.other)
    if known is None or key < (known.spare_mm, known.other):
        found[judged.run] = judged


def _seen_from(judged: Separation) -> Separation:
    return Separation(judged.other, judged.run, judged.needed_mm, judged.clear_mm, judged.steps)


def _by_band(
    installation: Installation, cables: Iterable[str]
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    tags = tuple(cables)
    power = tuple(tag for tag in tags if installation.cables[tag].band == "power")
    return power, tuple(tag for tag in tags if tag not in power)


def _judged(
    installation: Installation,
    *,
    run: str,
    other: str,
    power: tuple[str, ...],
    data: tuple[str, ...],
    screen: PowerContainment,
    clear_mm: float,
) -> Separation:
    circuits = counted_circuits(installation, power)
    letter = worst_class(installation.cables[tag].family for tag in data)
    base, p = segregation.base_separation_mm(letter, screen), segregation.power_factor_p(circuits)
    needed = base.value * p.value
    step = Step(
        "A",
        f"separation of {run} from {other}: class {letter}, {circuits} circuits of 20 A",
        "S × P",
        f"{base.value:g} × {p.value:g}",
        needed,
        "mm",
        f"{base.source} ({base.provenance}); clear {clear_mm:.0f} mm",
    )
    return Separation(run, other, needed, clear_mm, (step,))


def counted_circuits(installation: Installation, power: Iterable[str]) -> int:
    """Return the 230 V, 20 A circuits that power cables count as; each circuit once."""
    names = dict.fromkeys(installation.cables[tag].circuit for tag in power)
    circuits = [installation.circuits[name] for name in names if name in installation.circuits]
    counted = sum(
        segregation.counted_circuits(circuit.device.rating_a, 3 if circuit.phase == "TP" else 1)
        for circuit in circuits
    )
    return max(counted, 1)


def worst_class(families: Iterable[str]) -> str:
    """Return the segregation class of several data cables that needs most; "a" if unknown."""

    def letter(family: str) -> str:
        try:
            return segregation.segregation_class(family)
        except OutsideTableError:
            return "a"

    return min(letter(family) for family in families)


def _clear(a: _Extent, b: _Extent) -> float | None:
    """Return the clear distance of two lines that pass each other, or None."""
    if a.is_upright != b.is_upright:
        return None
    if min(a.end, b.end) - max(a.begin, b.begin) <= _PASSING_MM:
        return None
    return max(a.low - b.high, b.low - a.high, 0.0)


def _lines_by_wall(
    installation: Installation,
    paths: Mapping[str, CableRoute],
    runs: Mapping[str, Run],
    sections: Mapping[str, Section],
    sizes: Mapping[str, CableSize],
) -> dict[str, _WallLines]:
    found: dict[str, _WallLines] = {}
    for section in sections.values():
        wall = installation.walls.get(section.wall)
        if wall is None or not section.cables:
            continue
        run = runs[section.containment].containment
        extent = _extent(wall, section.start, section.end, *_edges(run, section))
        power, data = _by_band(installation, section.cables)
        lines = found.setdefault(wall.name, _WallLines([], []))
        screen = kind_of(run.kind).screen
        if power:
            lines.power.append(_Line(run.tag, extent, power, screen))
        if data:
            lines.data.append(_Line(run.tag, extent, data, screen))
    for wall, line in _clipped_power(installation, paths, sizes):
        found.setdefault(wall.name, _WallLines([], [])).power.append(line)
    return found


def _edges(run: Containment, section: Section) -> tuple[float, float]:
    """Return how far a run reaches below and above the level it is drawn at."""
    if section.start.z != section.end.z:
        return run.width_mm / 2, run.width_mm / 2
    return {
        "T/O": (run.height_mm, 0.0),
        "U/S": (0.0, run.height_mm),
        "C/L": (run.height_mm / 2, run.height_mm / 2),
    }[run.level_of]


def _extent(wall: Wall, start: Point3, end: Point3, below: float, above: float) -> _Extent:
    a, b = spot_of(wall, start)[0], spot_of(wall, end)[0]
    is_upright = start.z != end.z
    low, high = (start.z, end.z) if is_upright else (a, b)
    across = a if is_upright else start.z
    return _Extent(is_upright, min(low, high), max(low, high), across - below, across + above)


def _clipped_power(
    installation: Installation,
    paths: Mapping[str, CableRoute],
    sizes: Mapping[str, CableSize],
) -> Iterator[tuple[Wall, _Line]]:
    """Yield power cables on the inner face of walls outside containment."""
    for tag, route in paths.items():
        if installation.cables[tag].band != "power":
            continue
        for leg in route.legs:
            wall = installation.walls.get(leg.wall)
            if wall is None or leg.kind not in ("clipped", "drop") or _is_outside(wall, leg):
                continue
            half = sizes[tag].overall_mm / 2 if tag in sizes else 0.0
            extent = _extent(wall, leg.start, leg.end, half, half)
            screen: PowerContainment = (
                "solid_metal" if "steel" in leg.enclosure else "none_or_plastic"
            )
            yield wall, _Line(tag, extent, (tag,), screen)


def _is_outside(wall: Wall, leg: RouteLeg) -> bool:
    return spot_of(wall, leg.start)[1] < -_PASSING_MM
