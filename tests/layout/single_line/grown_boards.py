"""Installations of any size grown from a seed: boards, ways, circuits, points, cables, figures.

Every name and figure is invented and has no electrical sense; only their lengths and number matter.
"""

from __future__ import annotations

import random
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Any

from asfitted.calculate.results import (
    BoardResult,
    CableResult,
    CableRoute,
    CalculationResults,
    CircuitResult,
)
from asfitted.draw.symbols import catalogue
from asfitted.geometry import Point3
from asfitted.layout.sheet_model import Model
from asfitted.resolve.installation import (
    Basis,
    Board,
    Cable,
    Circuit,
    Device,
    Installation,
    Job,
    Known,
    PointServed,
    Position,
    Rcd,
    State,
    Supply,
    Way,
)

NAMES = (
    "Lathe",
    "Office socket-outlets, first floor, north side",
    "Paint store extract ventilation unit",
    "Outside lighting",
    "Kettle",
    "Compressor in the plant enclosure behind the loading bay",
)
#: Chains of points, by the words of their kinds.
CHAINS = (
    (),
    ("13 A socket",),
    ("13 A socket", "13 A socket", "13 A socket"),
    ("light switch", "linear luminaire", "linear luminaire"),
    ("isolator", "motor"),
    ("fused spur", "junction box", "floodlight"),
    ("13 A socket", "fused spur", "13 A socket"),
    ("isolator", "junction box", "13 A socket", "fused spur", "junction box", "floodlight"),
    ("heating load",),
)
JOB = Job(
    number="T1",
    title="grown",
    client="none",
    site="none",
    installer="none",
    phone="not recorded",
    designer="none",
    checker="not recorded",
    edition="BS 7671:2018+A4:2026",
    date="2026-01-01",
    revision="P01",
    status="Preliminary",
    description="",
)
SUPPLY = Supply(
    system="TN-C-S",
    phases=3,
    u0_v=230,
    line_v=400,
    frequency_hz=50,
    ze_ohm=Known(0.2, "ohm", Basis.DECLARED),
    ipf_ka=None,
    cut_out=Device("100 A BS 88-3", "fuse", "BS 88-3", 100, "TP"),
    cut_out_basis=Basis.ASSUMED,
    tails_mm2=25,
    tails_m=None,
    earthing_conductor_mm2=16,
    bonds=(("water pipe", 10), ("steel frame of the building", 10)),
    electrode_ohm=None,
    ambient_c=30,
)


@dataclass
class Growing:
    """What has grown so far."""

    dice: random.Random
    boards: dict[str, Board] = field(default_factory=dict)
    circuits: dict[str, Circuit] = field(default_factory=dict)
    points: dict[str, PointServed] = field(default_factory=dict)
    cables: dict[str, Cable] = field(default_factory=dict)


def grown_model(seed: int, *, boards: int, ways: int, on_supply: int = 1, phases: Any = 3) -> Model:
    """Return a model with so many boards of up to so many ways, fed as a tree from the supply."""
    grown = Growing(random.Random(seed))  # noqa: S311 - test data
    fed_by: dict[int, str] = dict.fromkeys(range(on_supply), "supply")
    waiting = list(range(on_supply, boards))
    for i in range(boards):
        feeds = [waiting.pop(0) for _ in range(min(3, len(waiting)))]
        _grow_board(grown, i, ways, fed_by, feeds, phases=phases)
    installation = Installation(
        job=JOB,
        supply=SUPPLY,
        boards=MappingProxyType(grown.boards),
        circuits=MappingProxyType(grown.circuits),
        points=MappingProxyType(grown.points),
        cables=MappingProxyType(grown.cables),
    )
    report: Any = None  # the diagram reads no findings
    return Model(installation, _results(grown), report, catalogue())


def _grow_board(
    grown: Growing, index: int, ways: int, fed_by: dict[int, str], feeds: list[int], *, phases: Any
) -> None:
    dice, tag = grown.dice, f"DB{index + 1}"
    count = max(len(feeds) + 1, dice.randint(max(1, ways // 2), ways))
    rows: list[Way] = []
    for number in range(1, count + 1):
        poles = ("",) if phases == 1 else dice.choice((("TP",), ("L1", "L2", "L3")))
        for phase in poles:
            name = f"{number}{phase}"
            circuit, words = f"{tag}/{name}", ""
            if feeds:
                child = feeds.pop(0)
                fed_by[child] = circuit
                _grow_circuit(grown, tag, name, phase, feeds_board=f"DB{child + 1}")
            elif dice.random() < 0.3:
                circuit, words = "", dice.choice(("blank", "blank", "spare, C16 SP fitted"))
            else:
                _grow_circuit(grown, tag, name, phase)
            rows.append(Way(name, number, phase, circuit, words))  # type: ignore[arg-type]
    grown.boards[tag] = Board(
        tag=tag,
        name=tag,
        state=dice.choice((State.NEW, State.EXISTING)),
        position=_place(dice),
        width_mm=450,
        height_mm=700,
        way_count=count,
        phases=phases,
        rating_a=dice.choice((None, 125.0)),
        main_switch=dice.choice(
            (None, Device("100 A", "switch-disconnector", "BS EN 60947-3", 100, "4P"))
        ),
        fed_by=fed_by[index],
        ip=dice.choice(("not recorded", "IP44")),
        short_circuit_rating_ka=dice.choice((None, 10.0)),
        zs_ohm=None,
        ipf_ka=dice.choice((None, Known(3.1, "kA", Basis.MEASURED))),
        ways=tuple(rows),
    )


def _place(dice: random.Random) -> Position:
    return Position(
        "", dice.choice("ABCD"), 0, dice.randint(300, 3000), 0, dice.random() < 0.2, Point3(0, 0, 0)
    )


def _grow_circuit(grown: Growing, board: str, way: str, phase: Any, feeds_board: str = "") -> None:
    dice, tag, number = grown.dice, f"{board}/{way}", len(grown.circuits) + 1
    state = State.NEW if feeds_board or dice.random() < 0.8 else State.EXISTING
    kinds = () if feeds_board or state is State.EXISTING else dice.choice(CHAINS)
    rcd = Rcd(30, "A", 40) if dice.random() < 0.4 else None
    tags, ends = [], [feeds_board] if feeds_board else []
    for i, kind in enumerate(kinds):
        point = f"P{number}{'abcdef'[i]}" if dice.random() < 0.5 else f"X{number}{i}"
        grown.points[point] = PointServed(
            tag=point,
            kind=kind,
            words=kind,
            name=kind,
            state=State.NEW,
            position=_place(dice),
            rating_a=20,
            poles=4,
            gangs=dice.choice((1, 2)),
            fuse_a=13,
            ip="IP65",
            rcd=None,
            load_w=dice.choice((None, 1500.0)),
            load_a=None,
            power_factor=1,
            circuit=tag,
        )
        tags.append(point)
        ends.append(point)
    names = []
    for i, end in enumerate(ends):
        cable = f"W{number:02d}" + (f"-{i + 1}" if i else "")
        size = dice.choice((1.5, 2.5, 16.0))
        grown.cables[cable] = Cable(
            cable, tag, "power", dice.choice(("swa", "twin_earth")), 4, size, "core", "", end,
            state, None, (), None, "clipped", 30,
        )  # fmt: skip
        names.append(cable)
    grown.circuits[tag] = Circuit(
        tag=tag,
        number=number,
        name=dice.choice(NAMES),
        place="" if kinds else "ground floor",
        state=state,
        board=board,
        way=way,
        phase=phase,
        use=dice.choice(("power", "sockets", "lighting", "heating", "motor")),
        device=Device(
            "C32", "rcbo" if rcd else "mcb", "BS EN 61009", 32, "TP" if phase == "TP" else "SP+N",
            "C", 6, rcd,
        ),
        points=tuple(tags),
        points_served=len(kinds),
        cables=tuple(names),
        feeds_board=feeds_board,
        load_w=None,
        load_a=None,
        power_factor=1,
        vulnerable="none",
    )  # fmt: skip


def _results(grown: Growing) -> CalculationResults:
    """Return figures for most things; some stay not checked."""
    dice = grown.dice
    cables = {
        tag: CableResult(
            tag=tag,
            circuit=cable.circuit,
            csa_mm2=cable.csa_mm2 or 0,
            cpc_mm2=None,
            cpc_words="steel armour 23 mm²" if cable.family == "swa" else "1.5 mm² core",
            size_chosen=True,
            tried=(),
            words=f"{cable.cores}c × {cable.csa_mm2:g} mm² XLPE/SWA/PVC",
            overall_mm=15,
            design_current_a=12.3,
            method="C",
            governing_section="",
            group_count=1,
            tabulated_a=40,
            factors=(),
            capacity_a=33.3,
            required_tabulated_a=20,
            drop_v=1,
            drop_to_end_pct=1,
            r1r2_ohm=0.1,
            zs_end_ohm=0.5,
            steps=(),
        )
        for tag, cable in grown.cables.items()
        if dice.random() < 0.9
    }
    routes = {
        tag: CableRoute(tag, (), 10, 1, dice.uniform(1, 120), measured, 12, ())
        for tag in grown.cables
        if (measured := dice.random() < 0.5) or dice.random() < 0.9
    }
    circuits = {
        tag: CircuitResult(
            tag, 12.3, "", (1, 1, 1), 1.234, 5, "", dice.choice((None, 0.55)), 1, 1, "", 0.4, 100,
            1, 1, 1, 1, 1, (),
        )
        for tag in grown.circuits
    }  # fmt: skip
    boards = {
        tag: BoardResult(tag, 3.3, 2.2, 0.3, 1, (1, 1, 1), (1, 1, 1), 1, 1, 1, 1)
        for tag in grown.boards
        if dice.random() < 0.9
    }
    return CalculationResults(
        routes=MappingProxyType(routes),
        cables=MappingProxyType(cables),
        circuits=MappingProxyType(circuits),
        boards=MappingProxyType(boards),
    )
