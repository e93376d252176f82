"""Installations and routes built by hand, so that the sums of a job can be checked on paper."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from types import MappingProxyType
from typing import TYPE_CHECKING, Any

from asfitted.calculate.calculate import Ways, calculate_along
from asfitted.calculate.results import CableRoute, CalculationResults, RouteLeg
from asfitted.geometry import Point3
from asfitted.resolve.installation import (
    Basis,
    Board,
    Cable,
    Circuit,
    DataDevice,
    Device,
    Installation,
    Job,
    Known,
    PointServed,
    Position,
    Rcd,
    State,
    Supply,
)

if TYPE_CHECKING:
    from collections.abc import Mapping

TRAY = ("perforated tray", "E", "perforated_tray")
CLIPPED = ("clipped", "C", "single_layer_wall")
CONDUIT = ("steel conduit", "B", "bunched")
FREE = ("free air", "E", "bunched")

JOB = Job(
    number="T1",
    title="test",
    client="none",
    site="none",
    installer="none",
    phone="not recorded",
    designer="none",
    checker="not recorded",
    edition="BS 7671:2018+A4:2026",
    date="2026-01-01",
    revision="P01",
    status="Draft",
    description="",
)
NOWHERE = Position("", "", 0, 0, 0, False, Point3(0, 0, 0))  # noqa: FBT003 - outside
RCD_30 = Rcd(idn_ma=30, type="A", rated_a=40)


def device(words: str, *, icn_ka: float | None = 6, rcd: Rcd | None = None) -> Device:
    """Return a breaker from words such as "C32 TP"."""
    name, poles = words.split()
    kind: Any = "rcbo" if rcd else "mcb"
    standard = "BS EN 61009" if rcd else "BS EN 60898"
    return Device(words, kind, standard, float(name[1:]), poles, name[0], icn_ka, rcd)  # type: ignore[arg-type]


def supply(**changes: Any) -> Supply:
    """Return a 400/230 V TN-C-S supply, Ze 0.15 ohm, 4.2 kA, without recorded tails."""
    plain = Supply(
        system="TN-C-S",
        phases=3,
        u0_v=230,
        line_v=400,
        frequency_hz=50,
        ze_ohm=Known(0.15, "ohm", Basis.MEASURED),
        ipf_ka=Known(4.2, "kA", Basis.MEASURED),
        cut_out=None,
        cut_out_basis=None,
        tails_mm2=None,
        tails_m=None,
        earthing_conductor_mm2=16,
        bonds=(),
        electrode_ohm=None,
        ambient_c=30,
    )
    return replace(plain, **changes)


@dataclass
class Run:
    """One cable of a hand-built circuit: to which tag, and over which legs (m, way, others)."""

    to: str
    legs: list[tuple[float, tuple[str, str, str], int]]
    family: str = "swa"
    cores: int = 4
    cpc: str = "armour"
    csa_mm2: float | None = None


@dataclass
class HandJob:
    """Collects boards, circuits and routes and then calculates."""

    supply: Supply | None = field(default_factory=supply)
    boards: dict[str, Board] = field(default_factory=dict)
    circuits: dict[str, Circuit] = field(default_factory=dict)
    points: dict[str, PointServed] = field(default_factory=dict)
    cables: dict[str, Cable] = field(default_factory=dict)
    routes: dict[str, CableRoute] = field(default_factory=dict)
    sharing: dict[str, list[tuple[int, str]]] = field(default_factory=dict)
    devices: dict[str, DataDevice] = field(default_factory=dict)

    def board(self, tag: str, *, fed_by: str = "supply", phases: int = 3, **changes: Any) -> None:
        """Add a board."""
        plain = Board(
            tag, tag, State.NEW, NOWHERE, 400, 400, 12, phases, 100, None, fed_by, "IP40",  # type: ignore[arg-type]
            10, None, None, (),
        )  # fmt: skip
        self.boards[tag] = replace(plain, **changes)

    def circuit(
        self,
        tag: str,
        breaker: Device,
        points: list[PointServed],
        runs: list[Run],
        **changes: Any,
    ) -> None:
        """Add a circuit, its points and its cables, the first cable starting at the board."""
        board, way = tag.split("/")
        phase = "TP" if way.endswith("TP") else f"L{way[-1]}" if "L" in way else ""
        cables, start = [], board
        for number, run in enumerate(runs, 1):
            cable = f"{tag}-{number}"
            cables.append(cable)
            self._cable(cable, tag, start, run)
            start = run.to
        for point in points:
            self.points[point.tag] = replace(point, circuit=tag)
        plain = Circuit(
            tag, len(self.circuits) + 1, tag, "", State.NEW, board, way, phase, "power", breaker,  # type: ignore[arg-type]
            tuple(p.tag for p in points), len(points), tuple(cables), "", None, None, 1.0, "none",
        )  # fmt: skip
        self.circuits[tag] = replace(plain, **changes)

    def _cable(self, tag: str, circuit: str, start: str, run: Run) -> None:
        self.cables[tag] = Cable(
            tag, circuit, "power", run.family, run.cores, run.csa_mm2, run.cpc, start, run.to,  # type: ignore[arg-type]
            State.NEW, None, (), None, "clipped", 30,
        )  # fmt: skip
        legs = tuple(_leg(*leg[:2], number) for number, leg in enumerate(run.legs, 1))
        self.routes[tag] = route(tag, legs)
        self.sharing[tag] = [(others, way[2]) for _, way, others in run.legs]

    def installation(self, **more: Any) -> Installation:
        """Return the installation as it stands."""
        return Installation(
            JOB,
            self.supply,
            boards=MappingProxyType(self.boards),
            circuits=MappingProxyType(self.circuits),
            points=MappingProxyType(self.points),
            cables=MappingProxyType(self.cables),
            data_devices=MappingProxyType(self.devices),
            **more,
        )

    def ways(self) -> Ways:
        """Return the routes and who shares each leg."""
        sharing: Mapping[str, Any] = {tag: tuple(each) for tag, each in self.sharing.items()}
        return Ways(routes=self.routes, sharing=sharing)

    def results(self) -> CalculationResults:
        """Calculate along the hand-built routes."""
        return calculate_along(self.installation(), self.ways())


def _leg(length_m: float, way: tuple[str, str, str], number: int) -> RouteLeg:
    enclosure, method, _ = way
    section = f"T1/{number}" if method == "E" else ""
    return RouteLeg(
        "containment" if section else "clipped", section, "T1" if section else "", "A",
        f"leg {number}", Point3(0, 0, 0), Point3(0, 0, 0), length_m * 1000, method, enclosure,
    )  # fmt: skip


def route(tag: str, legs: tuple[RouteLeg, ...]) -> CableRoute:
    """Return a route over legs, its length that of the legs."""
    length = sum(leg.length_mm for leg in legs) / 1000
    return CableRoute(tag, legs, length, 0, length, False, length, ())  # noqa: FBT003 - measured


def known(figure: float | None) -> float:
    """Return a figure that a test expects to be known."""
    assert figure is not None
    return figure


def point(tag: str, kind: str, **facts: Any) -> PointServed:
    """Return a point served."""
    plain = PointServed(
        tag, kind, kind, tag, State.NEW, NOWHERE, None, None, 1, None, "", None, None, None, 1.0, ""
    )
    return replace(plain, **facts)
