"""Data installations of any size grown from a seed, with outlets and isolators to be wired.

Every name and figure is invented and has no electrical sense; only their lengths and number matter.
"""

from __future__ import annotations

import dataclasses
import random
from types import MappingProxyType
from typing import Any

from asfitted.calculate.results import (
    CableResult,
    CalculationResults,
    DataResult,
    EquipmentResult,
)
from asfitted.draw.symbols import catalogue
from asfitted.geometry import Point3
from asfitted.layout.sheet_model import Model
from asfitted.resolve.installation import (
    Cabinet,
    Cable,
    Circuit,
    DataDevice,
    Device,
    Installation,
    Job,
    PointServed,
    Position,
    Rcd,
    State,
    Supply,
)

VIEWS = ("door", "", "the goods lift lobby and the stair down to the lower stores of the east wing")
NAMES = ("", "-OF-THE-GATEHOUSE-BY-THE-LOWER-MILL-POND-AND-WEIR")
SIZES = (1.5, 2.5, 6.0, 16.0, 25.0, 50.0)
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
    ze_ohm=None,
    ipf_ka=None,
    cut_out=None,
    cut_out_basis=None,
    tails_mm2=25,
    tails_m=None,
    earthing_conductor_mm2=16,
    bonds=(),
    electrode_ohm=None,
    ambient_c=30,
)


@dataclasses.dataclass
class Grown:
    """What has grown so far."""

    dice: random.Random
    points: dict[str, PointServed] = dataclasses.field(default_factory=dict)
    circuits: dict[str, Circuit] = dataclasses.field(default_factory=dict)
    cables: dict[str, Cable] = dataclasses.field(default_factory=dict)
    sized: dict[str, CableResult] = dataclasses.field(default_factory=dict)
    devices: dict[str, DataDevice] = dataclasses.field(default_factory=dict)
    data: dict[str, DataResult] = dataclasses.field(default_factory=dict)


def grown_model(seed: int, paper: Any = "A3") -> Model:
    """Return a model with cameras, data points, socket-outlets and isolators."""
    dice = random.Random(seed)  # noqa: S311 - test data
    grown = Grown(dice)
    for number in range(dice.choice((0, 1, 3, 12, 40))):
        _grow_power(grown, number)
    cameras, points = dice.choice((0, 1, 4, 12, 40)), dice.choice((0, 2, 30))
    _grow_data(grown, cameras, points)
    cabinet = Cabinet("CAB1", _place(dice), 600, 450, dice.choice(("", *list(grown.points)[:1])))
    if dice.random() < 0.7:  # the rest stands elsewhere
        for tag in [t for t, d in grown.devices.items() if d.kind in {"recorder", "PoE switch"}][
            :3
        ]:
            grown.devices[tag] = dataclasses.replace(grown.devices[tag], position=cabinet.position)
    installation = Installation(
        job=dataclasses.replace(JOB, paper=paper),
        supply=dice.choice((None, SUPPLY)),
        points=MappingProxyType(grown.points),
        circuits=MappingProxyType(grown.circuits),
        cables=MappingProxyType(grown.cables),
        data_devices=MappingProxyType(grown.devices),
        cabinet=dice.choice((cabinet, None)),
    )
    totals = tuple(
        EquipmentResult(d.tag, what, 3.25, dice.choice((None, 8.0)), unit)
        for d in grown.devices.values()
        for what, unit in (("channels", "channels"), ("storage", "TB"))
        if d.kind == "recorder"
    )
    results = CalculationResults(
        cables=MappingProxyType(grown.sized), data=MappingProxyType(grown.data), equipment=totals
    )
    report: Any = None  # neither diagram nor details read findings
    return Model(installation, results, report, catalogue())


def _place(dice: random.Random) -> Position:
    wall, up = dice.choice(("A", "B12", "")), dice.randint(300, 3000)
    words = f"wall {wall}, 1.0 m along" if wall else "post at the far gate of the yard, by the lane"
    return Position(words, wall, 0, up, 0, dice.random() < 0.3, Point3(up, 0, 0))


def _grow_power(grown: Grown, number: int) -> None:
    """Add an outlet, or an isolator with or without a machine."""
    dice, circuit = grown.dice, f"DB{number % 7 + 1}/{number + 1}TP"
    device = Device("C32 TP 6 kA", "mcb", "BS EN 60898", 32, "TP", "C", 6, None)
    kind = dice.choice(("5-pin socket", "3-pin socket", "isolator", "isolator"))
    tag = f"{'Q' if kind == 'isolator' else 'X'}{number + 1}{dice.choice(('', '-EAST'))}"
    family = dice.choice(("swa", "swa_lsf", "singles", "twin_earth", "flex_rubber"))
    cores = {"twin_earth": 2, "singles": 4}.get(family, dice.choice((2, 3, 4, 5)))
    _add_point(grown, tag, kind, circuit)
    _add_cable(grown, f"W{number + 1:02d}", circuit, (f"DB{number % 7 + 1}", tag), (family, cores))
    tags = [tag]
    if kind == "isolator" and dice.random() < 0.8:
        fed = f"M{number + 1}"
        _add_point(grown, fed, dice.choice(("motor", "fan", "heating load", "equipment")), circuit)
        tail = dice.choice(("swa", "flex_rubber"))
        _add_cable(
            grown, f"W{number + 1:02d}-2", circuit, (tag, fed), (tail, dice.choice((3, 4, 5)))
        )
        tags.append(fed)
    grown.circuits[circuit] = Circuit(
        circuit, number, "grown", "", State.NEW, "DB1", "1", "TP", "power", device, tuple(tags),
        1, (), "", None, None, 1, "none",
    )  # fmt: skip


def _add_point(grown: Grown, tag: str, kind: str, circuit: str) -> None:
    dice = grown.dice
    grown.points[tag] = PointServed(
        tag=tag,
        kind=kind,
        words=kind,
        name=dice.choice(("", "extract fan over the bench by the north door")),
        state=dice.choice((State.NEW, State.NEW, State.NEW, State.EXISTING)),
        position=_place(dice),
        rating_a=dice.choice((None, 32.0)),
        poles=dice.choice((None, 2, 3, 4)),
        gangs=1,
        fuse_a=None,
        ip=dice.choice(("not recorded", "IP44")),
        rcd=dice.choice((None, Rcd(30, "A", 40))),
        load_w=None,
        load_a=None,
        power_factor=1,
        circuit=circuit,
    )


def _add_cable(
    grown: Grown, tag: str, circuit: str, ends: tuple[str, str], make: tuple[str, int]
) -> None:
    dice, (family, cores) = grown.dice, make
    cpc: Any = "separate" if family == "singles" else dice.choice(("core", "armour"))
    if family in {"flex_rubber", "twin_earth"}:
        cpc = "core"
    size = dice.choice((None, *SIZES))
    grown.cables[tag] = Cable(
        tag, circuit, "power", family, cores, size, cpc, *ends, State.NEW, None, (), None,
        dice.choice(("clipped", "flexible conduit", "25 mm steel conduit")), 30,
    )  # fmt: skip
    if size is not None and dice.random() < 0.9:
        zeros: Any = dict.fromkeys(("design_current_a", "tabulated_a", "capacity_a", "drop_v"), 1.0)
        grown.sized[tag] = CableResult(
            tag=tag, circuit=circuit, csa_mm2=size, cpc_mm2=None, cpc_words="core",
            size_chosen=True, tried=(), words=f"{cores}c × {size:g} mm² XLPE/SWA/PVC",
            overall_mm=15.5, method="C", governing_section="", group_count=1, factors=(),
            required_tabulated_a=1, drop_to_end_pct=1, r1r2_ohm=1, zs_end_ohm=1, steps=(), **zeros,
        )  # fmt: skip


def _grow_data(grown: Grown, cameras: int, points: int) -> None:
    dice = grown.dice
    if not cameras + points:
        return
    end = dice.choice(NAMES)
    recorders = [f"REC{n}{end}" for n in range(1, cameras // 16 + 2)]
    switches = [f"SW{n}{end}" for n in range(1, (cameras + points) // 16 + 2)]
    for i, tag in enumerate(recorders):
        port = dice.choice(("", f"{switches[i % len(switches)]}/{16 + i}"))
        _add_device(grown, tag, "recorder", channels=16, disk_tb=4.0, keep_days=14.0, port=port)
    for tag in switches:
        _add_device(grown, tag, "PoE switch", ports=24, budget_w=130.0)
    _add_device(grown, "PS1", "12 V supply", output_v=13.0, rating_a=10.0)
    for n in range(1, cameras + 1):
        _grow_camera(grown, n, recorders, switches, end)
    for n in range(1, points + 1):
        kind: Any = dice.choice(("data outlet", "access point"))
        switch = dice.choice(switches)
        _add_device(grown, f"D{n}", kind, port=f"{switch}/{n % 24 + 1}", poe_class=4)
        _add_link(grown, f"D{n}", switch, "cat6", supply=switch if kind != "data outlet" else "")


def _grow_camera(
    grown: Grown, number: int, recorders: list[str], switches: list[str], end: str
) -> None:
    dice, tag = grown.dice, f"CAM{number}{end}"
    kind = dice.choice(("poe", "coax", "coax_power", "balun", "none"))
    facts: dict[str, Any] = {"views": dice.choice(VIEWS), "channel": dice.choice((None, number))}
    if kind == "poe":
        switch = dice.choice(switches)
        facts |= {"port": f"{switch}/{number % 24 + 1}", "poe_class": dice.choice((None, 3))}
        _add_device(grown, tag, "camera", **facts)
        _add_link(grown, tag, switch, "cat6", supply=switch)
        return
    pairs = dice.choice((None, 1, 2, 3))
    _add_device(grown, tag, "camera", baluns=kind == "balun", power_pairs=pairs, **facts)
    if kind != "none":
        family = "cat6" if kind == "balun" else kind
        supply = "" if kind == "coax" else dice.choice(("", "PS1"))
        _add_link(grown, tag, dice.choice(recorders), family, supply=supply)


def _add_device(grown: Grown, tag: str, kind: Any, **facts: Any) -> None:
    state = grown.dice.choice((State.NEW, State.NEW, State.EXISTING))
    grown.devices[tag] = DataDevice(
        tag, kind, kind, state, _place(grown.dice), target_m=8.0, **facts
    )


def _add_link(grown: Grown, tag: str, start: str, family: str, *, supply: str) -> None:
    dice, cable = grown.dice, f"D{len(grown.data) + 1:02d}"
    grown.cables[cable] = Cable(
        cable, tag, "data", family, 8, None, "none", start, tag,
        dice.choice((State.NEW, State.EXISTING)), dice.choice((None, 12.0)), (), None, "clipped",
        30,
    )  # fmt: skip
    length = dice.choice((None, 12.3, 1234.5))
    grown.data[tag] = DataResult(
        tag, cable, length, dice.choice(("Cat6", "Cat6 with baluns")), dice.choice((None, 90.0)),
        "", supply, dice.choice((None, 13.0)), 0.4, dice.choice((None, 9.4, 12.2)), (10.8, 13.2),
        dice.choice((None, 12.95)), 7.0, dice.choice((None, 166.0)), "recognise", 90.0,
    )  # fmt: skip
