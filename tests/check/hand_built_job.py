"""A small job built by hand in which everything is right, so that one edit makes one fault."""

from __future__ import annotations

from types import MappingProxyType
from typing import TYPE_CHECKING, Any

import hand_readings

from asfitted.calculate import results as res
from asfitted.errors import Place
from asfitted.geometry import Point, Point3
from asfitted.resolve import installation as ins

if TYPE_CHECKING:
    from collections.abc import Iterable

NEW = ins.State.NEW
RCD = ins.Rcd(idn_ma=30, type="A", rated_a=40)
WALLS = {
    "A": ins.Wall(
        name="A",
        room="Floor",
        length_mm=8000,
        height_mm=3600,
        start=Point(0, 0),
        direction=Point(1, 0),
        inward=Point(0, -1),
        next_wall="B",
        openings=(ins.Opening("door", "entrance door", 600, 900, 0, 2100),),
    ),
    "B": ins.Wall(
        name="B",
        room="Floor",
        length_mm=6000,
        height_mm=3600,
        start=Point(8000, 0),
        direction=Point(0, -1),
        inward=Point(-1, 0),
        next_wall="A",
        openings=(),
    ),
}


def tagged(things: Iterable[Any]) -> MappingProxyType[str, Any]:
    """Return things by their tag, in order."""
    return MappingProxyType({thing.tag: thing for thing in things})


def spot(wall: str, along: float, up: float, *, out: float = 0, outside: bool = False) -> Any:
    """Return a position on a wall."""
    w = WALLS[wall]
    at = Point3(w.start.x + w.direction.x * along, w.start.y + w.direction.y * along, up)
    return ins.Position(f"wall {wall}, {along} along", wall, along, up, out, outside, at)


def breaker(words: str, curve: str, rating: float, poles: Any, rcd: Any = None) -> ins.Device:
    """Return a 6 kA breaker, or an RCBO when it has an RCD."""
    kind: Any = "rcbo" if rcd else "mcb"
    return ins.Device(words, kind, "BS EN 60898", rating, poles, curve, 6.0, rcd)


def board(tag: str, fed_by: str, wall: str, rating: float) -> ins.Board:
    """Return a three-phase board 600 mm high."""
    switch = ins.Device("main switch", "switch-disconnector", "BS EN 60947-3", rating, "4P")
    return ins.Board(
        tag=tag,
        name=tag,
        state=NEW,
        position=spot(wall, 5000, 1600),
        width_mm=400,
        height_mm=600,
        way_count=8,
        phases=3,
        rating_a=rating,
        main_switch=switch,
        fed_by=fed_by,
        ip="IP40",
        short_circuit_rating_ka=10.0,
        zs_ohm=None,
        ipf_ka=None,
        ways=(),
        make_group="first make",
    )


def point(tag: str, kind: str, circuit: str, position: Any, **facts: Any) -> ins.PointServed:
    """Return a point served."""
    plain: dict[str, Any] = {
        "words": kind,
        "name": tag,
        "state": NEW,
        "rating_a": None,
        "poles": None,
        "gangs": 1,
        "fuse_a": None,
        "ip": "IP44",
        "rcd": None,
        "load_w": None,
        "load_a": None,
        "power_factor": 1.0,
    }
    plain |= facts
    return ins.PointServed(tag=tag, kind=kind, circuit=circuit, position=position, **plain)


def cable(tag: str, circuit: str, family: str, ends: tuple[str, str], **facts: Any) -> ins.Cable:
    """Return a cable of three cores."""
    plain: dict[str, Any] = {
        "band": "power",
        "cores": 3,
        "csa_mm2": None,
        "cpc": "core",
        "state": NEW,
        "measured_length_m": None,
        "via": (),
        "clipped_up_mm": None,
        "drop": "20 mm steel conduit",
        "ambient_c": 30.0,
    }
    plain |= facts
    return ins.Cable(
        tag=tag, circuit=circuit, family=family, from_end=ends[0], to_end=ends[1], **plain
    )


def circuit(
    tag: str, name: str, use: Any, device: ins.Device, *, points: str, cables: str, feeds: str = ""
) -> ins.Circuit:
    """Return a circuit whose points and cables are named in words."""
    own, way = tag.split("/")
    phase: Any = "TP" if way.endswith("TP") else way[-2:]
    return ins.Circuit(
        tag=tag,
        number=1,
        name=name,
        place="making floor",
        state=NEW,
        board=own,
        way=way,
        phase=phase,
        use=use,
        device=device,
        points=tuple(points.split()),
        points_served=len(points.split()),
        cables=tuple(cables.split()),
        feeds_board=feeds,
        load_w=None,
        load_a=None,
        power_factor=1.0,
        vulnerable="none",
    )


CIRCUITS = (
    circuit(
        "DB1/1L1",
        "Bench sockets",
        "sockets",
        breaker("B32", "B", 32, "SP+N", RCD),
        points="S1",
        cables="W01",
    ),
    circuit(
        "DB1/2TP",
        "Pug mill",
        "motor",
        breaker("C16 TP", "C", 16, "TP"),
        points="Q1 M1",
        cables="W02 W02-2",
    ),
    circuit(
        "DB1/3TP",
        "Sub-board",
        "board",
        breaker("C40 TP", "C", 40, "TP"),
        points="",
        cables="W03",
        feeds="DB2",
    ),
    circuit(
        "DB1/4TP",
        "Drying cabinet",
        "sockets",
        breaker("C32 TP", "C", 32, "TP"),
        points="X1",
        cables="W04",
    ),
    circuit(
        "DB2/1L1",
        "Floor lights",
        "lighting",
        breaker("B6", "B", 6, "SP+N", RCD),
        points="LS1 L1",
        cables="W05 W05-2",
    ),
    circuit(
        "DB2/1L2",
        "Yard light",
        "lighting",
        breaker("C6", "C", 6, "SP+N", RCD),
        points="F1 FL1",
        cables="W06 W06-2",
    ),
)
POINTS = (
    point("S1", "13 A socket", "DB1/1L1", spot("A", 2000, 1200), rating_a=13),
    point("Q1", "isolator", "DB1/2TP", spot("B", 2000, 1500), rating_a=20, poles=4),
    point("M1", "motor", "DB1/2TP", spot("B", 3000, 1000), load_w=370.0),
    point("X1", "5-pin socket", "DB1/4TP", spot("B", 1000, 1300), rating_a=32, rcd=RCD),
    point("LS1", "light switch", "DB2/1L1", spot("A", 1750, 1200)),
    point("L1", "linear luminaire", "DB2/1L1", spot("A", 2000, 3500, out=1600), load_w=45.0),
    point("F1", "fused spur", "DB2/1L2", spot("A", 7500, 1200), fuse_a=3.0),
    point("FL1", "floodlight", "DB2/1L2", spot("A", 7500, 3200, outside=True), ip="IP65"),
)
CABLES = (
    cable("W01", "DB1/1L1", "twin_earth", ("DB1", "S1"), cores=2),
    cable("W02", "DB1/2TP", "swa", ("DB1", "Q1"), cores=4, cpc="armour"),
    cable("W02-2", "DB1/2TP", "flex_rubber", ("Q1", "M1"), cores=4, drop="flexible conduit"),
    cable("W03", "DB1/3TP", "swa", ("DB1", "DB2"), cores=4, cpc="armour"),
    cable("W04", "DB1/4TP", "swa", ("DB1", "X1"), cores=4, cpc="armour"),
    cable("W05", "DB2/1L1", "twin_earth", ("DB2", "LS1"), cores=2),
    cable("W05-2", "DB2/1L1", "twin_earth", ("LS1", "L1"), cores=2),
    cable("W06", "DB2/1L2", "swa", ("DB2", "F1")),
    cable("W06-2", "DB2/1L2", "swa", ("F1", "FL1")),
    cable("D01", "CAM1", "coax_power", ("REC1", "CAM1"), band="data", cores=2, csa_mm2=0.75),
    cable("D02", "CAM2", "cat6", ("SW1", "CAM2"), band="data", cores=8),
    cable("D03", "D1", "cat6", ("SW1", "D1"), band="data", cores=8),
)
SHELF = spot("B", 4000, 1800)
DEVICES = (
    ins.DataDevice("REC1", "recorder", "recorder", NEW, SHELF, channels=8, disk_tb=4.0),
    ins.DataDevice("PS1", "12 V supply", "supply", NEW, SHELF, output_v=13.0, rating_a=5.0),
    ins.DataDevice("SW1", "PoE switch", "switch", NEW, SHELF, ports=8, budget_w=65.0),
    ins.DataDevice(
        "CAM1", "camera", "hall", NEW, spot("A", 7000, 2600), signal="HD 1080p", load_w=5, channel=1
    ),
    ins.DataDevice(
        "CAM2",
        "camera",
        "door",
        NEW,
        spot("B", 500, 2600),
        load_w=7,
        channel=2,
        port="SW1/1",
        poe_class=3,
    ),
    ins.DataDevice("D1", "data outlet", "outlet", NEW, spot("B", 5500, 1200), port="SW1/2"),
)


def run(tag: str, kind: str, band: Any, z: float) -> ins.Containment:
    """Return a straight run along wall B."""
    return ins.Containment(
        tag=tag,
        kind=kind,
        words=f"100 mm {kind}",
        width_mm=100,
        height_mm=50,
        bands=(band,),
        state=NEW,
        level_mm=z,
        level_of="U/S",
        path=(Point3(8000, -500, z), Point3(8000, -5800, z)),
        walls=("B",),
        declared_length_m=None,
        declared_basis=None,
        depth_mm=None,
        end_words="",
    )


RUNS = (
    run("T1", "perforated tray", "power", 2900),
    run("T2", "wire basket", "data", 2550),
    run("TR1", "steel trunking", "power", 3000),
    run("C1", "steel conduit", "power", 3100),
)


def installation() -> ins.Installation:
    """Return the job as resolved."""
    places = {tag: Place("job.yaml", n, 1) for n, tag in enumerate(("DB1", "DB1/2TP", "T1"), 10)}
    return ins.Installation(
        job=ins.Job(
            number="J1",
            title="Test",
            client="Client",
            site="Site",
            installer="Installer",
            phone="",
            designer="A. Designer",
            checker="not recorded",
            edition="BS 7671:2018+A4:2026",
            date="2026-11-20",
            revision="P01",
            status="For construction",
            description="",
        ),
        readings=hand_readings.readings(),
        supply=ins.Supply(
            system="TN-C-S",
            phases=3,
            u0_v=230,
            line_v=400,
            frequency_hz=50,
            ze_ohm=ins.Known(0.15, "Ω", ins.Basis.MEASURED),
            ipf_ka=ins.Known(4.2, "kA", ins.Basis.MEASURED),
            cut_out=ins.Device("100 A BS 88-3", "fuse", "BS 88-3", 100, "TP"),
            cut_out_basis=ins.Basis.DECLARED,
            tails_mm2=25,
            tails_m=2,
            earthing_conductor_mm2=16,
            bonds=(("water pipe", 10),),
            electrode_ohm=None,
            ambient_c=30,
        ),
        walls=MappingProxyType(WALLS),
        boards=tagged((board("DB1", "supply", "A", 100), board("DB2", "DB1/3TP", "B", 63))),
        circuits=tagged(CIRCUITS),
        points=tagged(POINTS),
        cables=tagged(CABLES),
        containment=tagged(RUNS),
        data_devices=tagged(DEVICES),
        places=MappingProxyType(places),
    )


def circuit_result(tag: str) -> res.CircuitResult:
    """Return figures of a circuit, all within their limits."""
    return res.CircuitResult(
        tag=tag,
        design_current_a=5,
        demand_basis="",
        line_currents_a=(5, 5, 5),
        drop_pct=1.5,
        drop_limit_pct=3,
        worst_point="its last point",
        zs_ohm=0.4,
        zs_limit_ohm=1,
        zs_limit_measured_ohm=0.8,
        zs_limit_source="Table 41.3",
        disconnection_limit_s=0.4,
        fault_min_a=500,
        fault_max_ka=4.2,
        cpc_needed_mm2=1,
        cpc_has_mm2=2.5,
        line_energy_a2s=10000,
        line_withstand_a2s=80000,
        steps=(),
    )


def cable_result(tag: str, csa: float = 4.0, capacity: float = 45.0) -> res.CableResult:
    """Return figures of a cable, all within their limits."""
    return res.CableResult(
        tag=tag,
        circuit="",
        csa_mm2=csa,
        cpc_mm2=2.5,
        cpc_words="2.5 mm² core",
        size_chosen=True,
        tried=(),
        words=f"{csa:g} mm² cable",
        overall_mm=12,
        design_current_a=2,
        method="E",
        governing_section="T1/1",
        group_count=1,
        tabulated_a=50,
        factors=(),
        capacity_a=capacity,
        required_tabulated_a=40,
        drop_v=1,
        drop_to_end_pct=1,
        r1r2_ohm=0.2,
        zs_end_ohm=0.4,
        steps=(),
    )


def board_result(tag: str) -> res.BoardResult:
    """Return figures of a board, all within their limits."""
    return res.BoardResult(
        tag=tag,
        fault_max_3ph_ka=4.2 if tag == "DB1" else 0.15,
        fault_max_1ph_ka=2.1,
        zs_ohm=0.2,
        drop_pct=0.5,
        demand_a=(30, 28, 29),
        connected_a=(40, 40, 40),
        neutral_a=2,
        imbalance_pct=7,
        ways_used=4,
        ways_total=8,
    )


def leg(kind: Any, wall: str, start: Any, end: Any, enclosure: str) -> res.RouteLeg:
    """Return one leg of a route."""
    return res.RouteLeg(kind, "", "", wall, kind, start, end, 1000, "C", enclosure)


def route(tag: str, *legs: res.RouteLeg) -> res.CableRoute:
    """Return a route over legs."""
    return res.CableRoute(tag, legs, 10, 1, 11, measured=False, cut_m=12, parts=())


TRAY_LEG = leg("containment", "B", Point3(8000, -500, 2900), Point3(8000, -900, 2900), "tray")
DROP_LEG = leg("drop", "A", Point3(2000, 0, 2900), Point3(2000, 0, 1200), "steel conduit")


def section(ident: str, tags: str, diameters: tuple[float, ...]) -> res.Section:
    """Return a piece of containment that is half full."""
    return res.Section(
        ident=ident,
        containment=ident.partition("/")[0],
        wall="B",
        start=Point3(8000, -500, 2900),
        end=Point3(8000, -5800, 2900),
        cables=tuple(tags.split()),
        overall_mm=diameters,
        power_circuits=2,
        used_mm=None,
        used_area_mm2=None,
        fill_pct=30,
        limit_pct=45,
        mass_kg_m=5,
    )


def data_result(tag: str, cable_tag: str, **facts: Any) -> res.DataResult:
    """Return figures of a data device, all within their limits."""
    plain: dict[str, Any] = {
        "length_m": 20.0,
        "medium": "Cat6",
        "signal_limit_m": None,
        "signal_source": "",
        "supply": "SW1",
        "supply_v": None,
        "current_a": None,
        "at_device_v": None,
        "window_v": None,
        "poe_class_w": None,
        "load_w": None,
        "density_px_m": 200.0,
        "density_class": "recognise",
        "field_of_view_deg": 80.0,
    }
    return res.DataResult(tag=tag, cable=cable_tag, **(plain | facts))


def run_result(tag: str, fullest: str, beside: str = "") -> res.ContainmentResult:
    """Return figures of a run, all within their limits."""
    return res.ContainmentResult(
        tag=tag,
        length_m=5,
        fullest=fullest,
        fill_pct=30,
        limit_pct=45,
        width_needed_mm=None,
        width_to_order_mm=None,
        mass_kg_m=5,
        separation_needed_mm=100.0 if beside else None,
        separation_mm=300.0 if beside else None,
        separation_from=beside,
    )


def results() -> res.CalculationResults:
    """Return the figures of the job."""
    return res.CalculationResults(
        routes=MappingProxyType(
            {c.tag: route(c.tag, TRAY_LEG, *([DROP_LEG] * (c.tag == "W01"))) for c in CABLES}
        ),
        sections=MappingProxyType(
            {
                "T1/1": section("T1/1", "W02 W03", (15, 22)),
                "T2/1": section("T2/1", "D02 D03", (6, 6)),
                "TR1/1": section("TR1/1", "W01", (12,)),
                "C1/1": section("C1/1", "W05", (10,)),
            }
        ),
        drop_fills=(
            res.DropFill(
                words="drop on wall A from +2900 to +1200 in 25 mm steel conduit",
                cables=("W05",),
                used_area_mm2=152.0,
                inside_area_mm2=373.3,
                fill_pct=40.7,
                limit_pct=45.0,
            ),
        ),
        cables=tagged(cable_result(c.tag) for c in CABLES if c.band == "power"),
        circuits=tagged(circuit_result(c.tag) for c in CIRCUITS),
        boards=tagged((board_result("DB1"), board_result("DB2"))),
        data=tagged(
            (
                data_result(
                    "CAM1",
                    "D01",
                    medium="RG59+2",
                    signal_limit_m=250.0,
                    supply="PS1",
                    supply_v=13.0,
                    current_a=0.46,
                    at_device_v=12.2,
                    window_v=(10.8, 13.2),
                ),
                data_result("CAM2", "D02", poe_class_w=12.95, load_w=7.0, current_a=0.2),
                data_result("D1", "D03"),
            )
        ),
        equipment=(
            res.EquipmentResult("REC1", "channels", 2, 8, ""),
            res.EquipmentResult("REC1", "storage", 2.6, 4, "TB"),
            res.EquipmentResult("PS1", "current", 0.5, 5, "A"),
            res.EquipmentResult("SW1", "ports", 2, 8, ""),
            res.EquipmentResult("SW1", "PoE budget", 15.4, 65, "W"),
        ),
        containment=tagged(
            (
                run_result("T1", "T1/1"),
                run_result("T2", "T2/1", "T1"),
                run_result("TR1", "TR1/1"),
                run_result("C1", "C1/1"),
            )
        ),
        expected=hand_readings.expected(),
        max_demand_a=62,
        demand_basis="",
    )
