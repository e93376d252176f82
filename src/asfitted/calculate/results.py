"""Every computed figure of a job, with the working that leads to it. Frozen; nothing is judged.

A figure that could not be worked out is None, and the reason stands in ``not_known``.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from types import MappingProxyType
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from collections.abc import Mapping

    from asfitted.calculate.materials.items import TakeOff
    from asfitted.calculate.working import Step
    from asfitted.geometry import Point3
    from asfitted.resolve.installation import Known


@dataclass(frozen=True)
class RouteLeg:
    """One straight piece of a cable's way from one end to the other, in order.

    ``section`` names the piece of containment ("T1/3") and is empty for a drop, a clipped leg or a
    leg in free space. ``method`` is the BS 7671 reference method letter of the leg.

    A leg through a ``passage`` ends in another room: its two ends are each in the coordinates of
    their own room, so that only ``length_mm`` tells how long it is.
    """

    kind: Literal[
        "containment", "drop", "clipped", "off-wall", "through-wall", "declared", "passage"
    ]
    section: str
    containment: str  # tag, "" when none
    wall: str  # wall that carries the leg, "" for overhead, declared, off-wall
    words: str  # "along T1 on wall A", "drop on wall B from +2900 to +1300 in 20 mm steel conduit"
    start: Point3
    end: Point3
    length_mm: float
    method: str
    enclosure: str  # "perforated tray", "steel conduit", "clipped", "buried duct", ...
    passage: str = ""  # tag of the passage that the leg goes through


@dataclass(frozen=True)
class LengthPart:
    """One term of a cut length: words and metres, printed as the arithmetic of the length."""

    words: str
    length_m: float


@dataclass(frozen=True)
class CableRoute:
    """The path of one cable and the lengths that follow from it.

    ``length_m`` is what calculations and drawings use: the measured length where one was given
    (``measured``), else the drawn path with tails. ``cut_m`` is what to cut, rounded up.
    """

    cable: str
    legs: tuple[RouteLeg, ...]
    path_m: float
    tails_m: float
    length_m: float
    measured: bool
    cut_m: float
    parts: tuple[LengthPart, ...]
    broken: str = ""  # why no permitted path was found; then legs are empty
    forbidden: tuple[str, ...] = ()  # runs used although they do not permit this cable
    passages: tuple[str, ...] = ()  # tags of the passages it goes through, in order
    way_surveyed: bool = True  # False: found longer or shorter on site, drawn as designed


@dataclass(frozen=True)
class Section:
    """A straight piece of a containment run on which the same cables lie, with what fills it."""

    ident: str  # "T1/3"
    containment: str
    wall: str
    start: Point3
    end: Point3
    cables: tuple[str, ...]  # cable tags in lay order, power then data
    overall_mm: tuple[float, ...]  # their overall diameters (flat cables: longer axis)
    power_circuits: int
    used_mm: float | None  # tray and basket: width covered, with edges
    used_area_mm2: float | None  # trunking, conduit, duct: sum of cable areas
    fill_pct: float  # of usable width, or of internal area
    limit_pct: float
    mass_kg_m: float


@dataclass(frozen=True)
class Factor:
    """One rating factor with its reason and source."""

    symbol: str  # Ca, Cg, Ci, Cs, Cd, Cc
    value: float
    words: str
    source: str


@dataclass(frozen=True)
class SizeTried:
    """A size that was considered, and why it does not do (empty reason: it does)."""

    csa_mm2: float
    reason: str


@dataclass(frozen=True)
class CableResult:
    """What is known of one power cable after calculation."""

    tag: str
    circuit: str
    csa_mm2: float
    cpc_mm2: float | None  # copper core; None when the armour serves or unknown
    cpc_words: str  # "2.5 mm² core", "steel armour 23 mm²"
    size_chosen: bool  # True: by the tool; False: given in the spec
    tried: tuple[SizeTried, ...]
    words: str  # "4c × 6 mm² SWA/XLPE/PVC"
    overall_mm: float
    design_current_a: float
    method: str  # letter of the table its rating is read from, or "free air"
    governing_section: str  # "T1/3" or the words of the leg that governs
    group_count: int
    tabulated_a: float
    factors: tuple[Factor, ...]
    capacity_a: float  # Iz
    required_tabulated_a: float  # It,min
    drop_v: float  # this cable alone, line to neutral for one phase, line to line for three
    drop_to_end_pct: float  # from the origin to its far end, per cent of nominal
    r1r2_ohm: float  # this cable, at operating temperature
    zs_end_ohm: float | None  # at its far end, from the origin, at operating temperature
    steps: tuple[Step, ...]
    not_known: tuple[str, ...] = ()
    capacity_doubt: str = ""  # why no table gives its capacity as it lies

    @property
    def checked_capacity_a(self) -> float | None:
        """Iz, A; None where no table gives it as the cable lies."""
        return None if self.capacity_doubt else self.capacity_a


@dataclass(frozen=True)
class RingFigures:
    """A ring final circuit end to end, for comparison with the readings of a test at 20 °C."""

    length_m: float  # of cable, from the board round to the board
    r1_ohm: float  # line, end to end, 20 °C
    rn_ohm: float  # neutral
    r2_ohm: float | None  # protective conductor
    quarter_ohm: float | None  # (r1 + r2) / 4 at 20 °C, to expect at each socket cross-connected
    r1r2_hot_ohm: float | None  # the same at working temperature, for Zs
    ends_a: tuple[float, float]  # current in the first and in the last leg


@dataclass(frozen=True)
class LeastCpc:
    """The protective conductor of a circuit that conducts least, and the cables it runs in."""

    words: str  # "1.5 mm² core", "steel armour 23 mm²", "none"
    cables: tuple[str, ...]  # tags, in order from the board
    throughout: bool  # the same in every cable of the circuit


@dataclass(frozen=True)
class CircuitResult:
    """What is known of one circuit after calculation."""

    tag: str
    design_current_a: float | None  # Ib
    demand_basis: str  # how Ib was got
    line_currents_a: tuple[float, float, float]  # contribution to L1, L2, L3 with its phase
    drop_pct: float | None  # to the worst point, from the origin
    drop_limit_pct: float | None
    worst_point: str
    zs_ohm: float | None
    zs_limit_ohm: float | None  # for the device at the board, in the time below
    zs_limit_measured_ohm: float | None  # 80 % rule, for a cold reading
    zs_limit_source: str
    disconnection_limit_s: float | None
    fault_min_a: float | None  # line to earth at the far end, hot, Cmin
    fault_max_ka: float | None  # at the device (board)
    cpc_needed_mm2: float | None  # adiabatic, in the material of the cpc that governs
    cpc_has_mm2: float | None
    line_energy_a2s: float | None  # let-through or I2t that the line conductor sees
    line_withstand_a2s: float | None  # k2 S2
    steps: tuple[Step, ...]
    not_known: tuple[str, ...] = ()
    ring: RingFigures | None = None
    least_cpc: LeastCpc | None = None  # None = a cable of the circuit is not known
    cpc_checked: str = ""  # cable whose cpc ``cpc_needed_mm2`` and ``cpc_has_mm2`` are of
    line_checked: str = ""  # size and cable of the line that the sums under fault are of
    neutral_a: float | None = None  # in the neutral; None on three lines if harmonics not recorded


@dataclass(frozen=True)
class ExpectedReading:
    """What an instrument should read at the far end of a circuit, conductors at 20 °C."""

    r1r2_ohm: float
    zs_ohm: float | None


@dataclass(frozen=True)
class BoardResult:
    """What is known at the busbars of a board."""

    tag: str
    fault_max_3ph_ka: float | None
    fault_max_1ph_ka: float | None
    zs_ohm: float | None
    drop_pct: float | None
    demand_a: tuple[float, float, float]  # after diversity, L1 L2 L3 (single-phase: L1 only)
    connected_a: tuple[float, float, float]
    neutral_a: float  # vector sum of the lines, harmonics not counted
    imbalance_pct: float
    ways_used: int
    ways_total: int
    steps: tuple[Step, ...] = ()
    not_known: tuple[str, ...] = ()
    line_to_neutral_v: tuple[float, ...] = ()  # expected, by line; empty when not known
    line_a: tuple[float, ...] = ()  # line currents with their power factors, by line
    moves: tuple[tuple[str, str, str], ...] = ()  # circuit, from line, to line: better balance
    imbalance_after_pct: float | None = None  # with the moves made; None without moves


@dataclass(frozen=True)
class OriginResult:
    """What is known at the origin, and whether given or calculated from the source named."""

    ze_ohm: Known | None
    fault_3ph_ka: Known | None
    fault_1ph_ka: Known | None
    steps: tuple[Step, ...] = ()
    not_known: tuple[str, ...] = ()


@dataclass(frozen=True)
class DataResult:
    """What is known of one camera, outlet or access point and its cable."""

    tag: str
    cable: str
    length_m: float | None
    medium: str  # "RG59+2", "Cat6 with baluns", "Cat6"
    signal_limit_m: float | None
    signal_source: str
    supply: str  # tag of the supply: "PS1", "SW1"
    supply_v: float | None
    current_a: float | None
    at_device_v: float | None
    window_v: tuple[float, float] | None  # least and greatest volts at the device
    poe_class_w: float | None  # power the class gives at the device
    load_w: float | None
    density_px_m: float | None  # pixels per metre at the target
    density_class: str
    field_of_view_deg: float | None
    steps: tuple[Step, ...] = ()
    not_known: tuple[str, ...] = ()


@dataclass(frozen=True)
class EquipmentResult:
    """Totals of a recorder, a 12 V supply or a PoE switch: used against available."""

    tag: str
    what: str  # "channels", "current", "ports", "PoE budget", "storage"
    used: float
    available: float | None
    unit: str
    steps: tuple[Step, ...] = ()


@dataclass(frozen=True)
class ContainmentResult:
    """A run as a whole: its fullest piece, the stock width it needs, and who runs beside it."""

    tag: str
    length_m: float
    fullest: str  # section ident, "" when nothing runs in it
    fill_pct: float
    limit_pct: float
    width_needed_mm: float | None
    width_to_order_mm: float | None
    mass_kg_m: float
    separation_needed_mm: float | None  # from the nearest run of the other band
    separation_mm: float | None
    separation_from: str
    steps: tuple[Step, ...] = ()


@dataclass(frozen=True)
class DropFill:
    """The fill of a conduit outside the runs that some cables share."""

    words: str  # "drop on wall B from +2900 to +1200 in 25 mm steel conduit"
    cables: tuple[str, ...]
    used_area_mm2: float
    inside_area_mm2: float
    fill_pct: float
    limit_pct: float


@dataclass(frozen=True)
class PassageResult:
    """What goes through one passage. Areas are None where the size is not recorded."""

    tag: str
    cables: tuple[str, ...]  # cable tags, power then data, each in the order of the spec
    used_area_mm2: float  # sum of cable areas
    opening_area_mm2: float | None
    fill_pct: float | None


@dataclass(frozen=True)
class CalculationResults:
    """All figures of a job. Mappings are keyed by tag and keep the order of the spec."""

    routes: Mapping[str, CableRoute] = field(default_factory=lambda: MappingProxyType({}))
    sections: Mapping[str, Section] = field(default_factory=lambda: MappingProxyType({}))
    cables: Mapping[str, CableResult] = field(default_factory=lambda: MappingProxyType({}))
    circuits: Mapping[str, CircuitResult] = field(default_factory=lambda: MappingProxyType({}))
    boards: Mapping[str, BoardResult] = field(default_factory=lambda: MappingProxyType({}))
    data: Mapping[str, DataResult] = field(default_factory=lambda: MappingProxyType({}))
    equipment: tuple[EquipmentResult, ...] = ()
    containment: Mapping[str, ContainmentResult] = field(
        default_factory=lambda: MappingProxyType({})
    )
    drop_fills: tuple[DropFill, ...] = ()
    passages: Mapping[str, PassageResult] = field(default_factory=lambda: MappingProxyType({}))
    max_demand_a: float | None = None  # of the most loaded line at the origin
    demand_basis: str = ""
    origin: OriginResult | None = None
    take_off: TakeOff | None = None  # what to cut, fix and buy
    expected: Mapping[str, ExpectedReading] = field(default_factory=lambda: MappingProxyType({}))
