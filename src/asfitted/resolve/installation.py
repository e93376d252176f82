"""The installation as meant: every name looked up, every default filled and recorded.

Frozen results of the resolve stage. No current, impedance or length of cable is worked out here.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from types import MappingProxyType
from typing import TYPE_CHECKING, Literal

from asfitted.resolve.building_facts import Opening, Passage, Position, Room, Wall
from asfitted.resolve.handover_facts import HandoverFacts
from asfitted.resolve.rating_plate import Plate
from asfitted.resolve.stock_facts import StockFacts
from asfitted.resolve.supply_facts import (
    Basis,
    Device,
    Generator,
    Known,
    Rcd,
    State,
    Supply,
    Transformer,
)

if TYPE_CHECKING:
    from collections.abc import Mapping

    from asfitted.errors import Place
    from asfitted.geometry import Point3
    from asfitted.resolve.job_record import Firm, Revision, SiteMark
    from asfitted.resolve.readings import Readings

__all__ = [
    "Basis",
    "Board",
    "Cabinet",
    "Cable",
    "Circuit",
    "Containment",
    "DataDevice",
    "Default",
    "Device",
    "Generator",
    "Installation",
    "Job",
    "Known",
    "Opening",
    "Passage",
    "Plate",
    "PointServed",
    "Position",
    "Rcd",
    "Room",
    "State",
    "Supply",
    "Transformer",
    "Waiver",
    "Wall",
    "Way",
]


@dataclass(frozen=True)
class Job:
    """Title-block facts. Empty facts are the words "not recorded", never blank."""

    number: str
    title: str
    client: str
    site: str
    installer: str
    phone: str
    designer: str
    checker: str
    edition: str
    date: str  # ISO
    revision: str
    status: str
    description: str
    building_use: str = ""  # "care home", "dwelling"; empty = not recorded
    paper: Literal["A3", "A4"] = "A3"  # preferred size of the drawings
    firm: Firm | None = None
    revisions: tuple[Revision, ...] = ()  # oldest first; the last is ``revision``
    not_seen: tuple[str, ...] | None = None  # on site; None = not said, () = "none" was said


@dataclass(frozen=True)
class Way:
    """One way of a board in true order. ``circuit`` is empty for a spare or blank way.

    ``name`` is "3TP", "5L1", or "4" on a single-phase board.
    """

    name: str
    number: int
    phase: Literal["L1", "L2", "L3", "TP", ""]
    circuit: str  # circuit tag, "" when none
    words: str  # "spare, C16 SP fitted" or "blank" when there is no circuit


@dataclass(frozen=True)
class Board:
    """A distribution board or consumer unit."""

    tag: str
    name: str
    state: State
    position: Position
    width_mm: float
    height_mm: float
    way_count: int
    phases: Literal[1, 3]
    rating_a: float | None
    main_switch: Device | None
    fed_by: str  # circuit tag, or "supply"
    ip: str
    short_circuit_rating_ka: float | None
    zs_ohm: Known | None
    ipf_ka: Known | None
    ways: tuple[Way, ...]
    make_group: str = ""  # our own word for "same make"; empty = not recorded
    back_up: Device | None = None  # device upstream that its short-circuit rating rests on
    plate: Plate = field(default_factory=Plate)


@dataclass(frozen=True)
class PointServed:
    """A point served: socket-outlet, isolator, luminaire, machine.

    ``load_w`` is the demand of the load (W, real power) and ``load_a`` the demand in A; both None
    when only the rating is known.
    """

    tag: str
    kind: str  # key of reference.points
    words: str  # "32 A 5-pin socket-outlet, RCD 40 A 30 mA type A"
    name: str
    state: State
    position: Position
    rating_a: float | None
    poles: int | None
    gangs: int
    fuse_a: float | None
    ip: str
    rcd: Rcd | None
    load_w: float | None
    load_a: float | None
    power_factor: float
    circuit: str
    overload_a: float | None = None  # setting of the overload relay of a motor
    restart: Literal["manual", "automatic", ""] = ""  # after a loss of supply; empty = not recorded
    plate: Plate = field(default_factory=Plate)
    starter: str = ""  # of a motor: tag of its starter, "built in" or "none"; empty = not recorded


@dataclass(frozen=True)
class Cable:
    """One piece of cable between two ends, as asked for (size may still be open).

    Ends are tags: a board, a point, a data device. ``csa_mm2`` None means "choose it".
    """

    tag: str  # "W05", "W05-2", "D03"
    circuit: str  # circuit tag, or data link tag
    band: Literal["power", "data"]
    family: str  # id of reference.cables
    cores: int
    csa_mm2: float | None
    cpc: Literal["core", "armour", "none", "separate"]
    from_end: str
    to_end: str
    state: State
    measured_length_m: float | None
    via: tuple[str, ...]  # containment it must use
    clipped_up_mm: float | None  # clipped direct at this height instead of containment
    drop: str  # what the drops run in: "clipped", "20 mm steel conduit"
    ambient_c: float
    insulation_mm: float = 0.0  # length totally surrounded by thermal insulation
    extra_m: float = 0.0  # longer than its drawn way by so much, as found on site
    way_surveyed: bool = True  # False: its length was found on site, the drawn way is the designed


@dataclass(frozen=True)
class Circuit:
    """A circuit: one way, one protective device, its points and cables in order from the board."""

    tag: str  # "DB1/3TP"
    number: int  # order in the job, used in cable tags
    name: str
    place: str
    state: State
    board: str
    way: str
    phase: Literal["L1", "L2", "L3", "TP", ""]
    use: Literal["power", "sockets", "lighting", "heating", "motor", "board"]
    device: Device
    points: tuple[str, ...]  # point tags in order
    points_served: int
    cables: tuple[str, ...]  # cable tags in order
    feeds_board: str  # tag of the board fed, or ""
    load_w: float | None  # given for the circuit as a whole
    load_a: float | None
    power_factor: float
    vulnerable: str  # equipment vulnerable to a typical test, or "none"/"not recorded"
    ring: bool = False  # the last cable returns to the board
    third_harmonic_pct: float | None = None  # share of the line current; None = not recorded


@dataclass(frozen=True)
class Containment:
    """A run of tray, basket, trunking, conduit or a declared (buried, hidden) length.

    ``path`` holds the corner points of the run in the building (mm); ``walls`` names the wall of
    each straight piece between them, "" for an overhead crossing or a declared length.
    """

    tag: str
    kind: str  # "perforated tray", "wire basket", "steel trunking", "steel conduit", "buried duct"
    words: str  # "150 × 25 perforated tray"
    width_mm: float
    height_mm: float
    bands: tuple[Literal["power", "data"], ...]
    state: State
    level_mm: float
    level_of: Literal["T/O", "U/S", "C/L"]
    path: tuple[Point3, ...]
    walls: tuple[str, ...]
    declared_length_m: float | None
    declared_basis: Basis | None
    depth_mm: float | None
    end_words: str  # where a declared length ends, in words
    soil_km_w: float | None = None  # thermal resistivity of the soil; None = not recorded
    stand_off_mm: float | None = None  # from the wall to its back; None = not recorded


@dataclass(frozen=True)
class DataDevice:
    """Recorder, 12 V supply, PoE switch, camera, outlet, access point."""

    tag: str
    kind: Literal[
        "recorder",
        "12 V supply",
        "PoE switch",
        "camera",
        "data outlet",
        "access point",
    ]
    name: str
    state: State
    position: Position
    ports: int | None = None
    budget_w: float | None = None
    channels: int | None = None
    disk_tb: float | None = None
    keep_days: float | None = None
    output_v: float | None = None
    rating_a: float | None = None
    signal: str = ""  # "HD 1080p"
    load_w: float | None = None
    channel: int | None = None
    port: str = ""  # "SW1/2"
    poe_class: int | None = None
    power_pairs: int | None = None  # conductors in parallel each way for a d.c. supply leg
    baluns: bool = False
    views: str = ""
    lens_mm: float | None = None
    sensor: str = ""
    pixels: int | None = None
    target_m: float | None = None
    aim_deg: float | None = None  # clockwise on plan from straight out of the wall
    plate: Plate = field(default_factory=Plate)


@dataclass(frozen=True)
class Cabinet:
    """The data cabinet or shelf that holds the equipment."""

    tag: str
    position: Position
    width_mm: float
    height_mm: float
    fed_from: str = ""  # tag of the point that supplies it; empty = not recorded
    plate: Plate = field(default_factory=Plate)


@dataclass(frozen=True)
class Default:
    """A fact that the spec left out and the tool filled in, so that it can be printed."""

    subject: str
    what: str
    value: str
    reason: str


@dataclass(frozen=True)
class Waiver:
    """An accepted departure: one rule, one subject, a reason and a person."""

    rule: str
    subject: str
    reason: str
    by: str


@dataclass(frozen=True)
class Installation:
    """Everything that later stages may know of the job. Mappings keep the order of the spec."""

    job: Job
    supply: Supply | None
    rooms: Mapping[str, Room] = field(default_factory=lambda: MappingProxyType({}))
    walls: Mapping[str, Wall] = field(default_factory=lambda: MappingProxyType({}))
    boards: Mapping[str, Board] = field(default_factory=lambda: MappingProxyType({}))
    circuits: Mapping[str, Circuit] = field(default_factory=lambda: MappingProxyType({}))
    points: Mapping[str, PointServed] = field(default_factory=lambda: MappingProxyType({}))
    cables: Mapping[str, Cable] = field(default_factory=lambda: MappingProxyType({}))
    containment: Mapping[str, Containment] = field(default_factory=lambda: MappingProxyType({}))
    data_devices: Mapping[str, DataDevice] = field(default_factory=lambda: MappingProxyType({}))
    cabinet: Cabinet | None = None
    passages: Mapping[str, Passage] = field(default_factory=lambda: MappingProxyType({}))
    defaults: tuple[Default, ...] = ()
    waivers: tuple[Waiver, ...] = ()
    places: Mapping[str, Place] = field(default_factory=lambda: MappingProxyType({}))  # tag -> spec
    stock: StockFacts = field(default_factory=StockFacts)
    handover: HandoverFacts = field(default_factory=HandoverFacts)
    readings: Readings | None = None  # measured on site; None = none given
    site_marks: tuple[SiteMark, ...] = ()  # what was found on site and laid over the design

    def position_of(self, tag: str) -> Position:
        """Return where a board, point or data device is.

        Raises:
            KeyError: no such tag.
        """
        for group in (self.boards, self.points, self.data_devices):
            if tag in group:
                return group[tag].position
        raise KeyError(tag)
