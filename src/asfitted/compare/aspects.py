"""What can change of a thing: one aspect each, with the words that stand for it."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING, Any

from asfitted.compare.figure_words import NOT_RECORDED, given, metres, rounded
from asfitted.geometry import distance3
from asfitted.resolve.starters import OVERLOAD

if TYPE_CHECKING:
    from collections.abc import Callable

    from asfitted.compare.changes import Kind
    from asfitted.resolve.installation import (
        Board,
        Cabinet,
        Circuit,
        Containment,
        DataDevice,
        Device,
        Job,
        Known,
        PointServed,
        Position,
        Rcd,
        Supply,
        Wall,
    )


@dataclass(frozen=True)
class Aspect:
    """One aspect of a thing: two values with the same words are the same.

    ``key`` tells values apart where words would be too coarse, such as the corners of a run.
    """

    kind: Kind
    name: str  # "device", "position", "load"
    words: Callable[[Any], str]
    key: Callable[[Any], object] | None = None

    def differs(self, old: Any, new: Any) -> bool:
        """Tell whether the aspect of two things is not the same."""
        tell = self.key or self.words
        return tell(old) != tell(new)


def place_words(position: Position) -> str:
    """Return a position from its figures, so that two ways of writing it read alike."""
    if not position.wall:
        return position.words
    side = " outside" if position.outside else ""
    out = f", {metres(position.out_mm)} out" if position.out_mm else ""
    along, up = metres(position.along_mm), metres(position.up_mm)
    return f"wall {position.wall}{side}, {along} along, {up} up{out}"


def _device(device: Device | None) -> str:
    if device is None:
        return NOT_RECORDED
    return device.words + (" with AFDD" if device.afdd and "AFDD" not in device.words else "")


def _rcd(rcd: Rcd | None) -> str:
    if rcd is None:
        return "no RCD"
    rated = f"{rcd.rated_a:g} A " if rcd.rated_a is not None else ""
    return f"RCD {rated}{rcd.idn_ma:g} mA type {rcd.type}" + (" delayed" if rcd.delayed else "")


def _known(known: Known | None) -> str:
    return NOT_RECORDED if known is None else f"{known.value:g} {known.unit} {known.basis}"


def _load(thing: PointServed | Circuit) -> str:
    if thing.load_w is not None:
        return given(thing.load_w, "kW", 1000.0)
    return given(thing.load_a, "A")


def _box(thing: Board | Cabinet) -> str:
    return f"{thing.width_mm:g} × {thing.height_mm:g} mm"


def _board_position(board: Board) -> str:
    return place_words(board.position)


def _spares(board: Board) -> str:
    spare = [w for w in board.ways if not w.circuit and w.words != "blank"]
    return ", ".join(f"{way.name} {way.words}" for way in spare) or "none"


def _plate(thing: Board | PointServed | DataDevice | Cabinet) -> str:
    held = thing.plate
    parts = (("make", held.make), ("model", held.model), ("serial number", held.serial))
    return ", ".join(f"{what} {value}" for what, value in parts if value) or NOT_RECORDED


PLATE = Aspect("altered", "rating plate", _plate)
BOARD = (
    Aspect("moved", "position", _board_position),
    Aspect("re-sized", "size", _box),
    Aspect("re-sized", "ways", lambda b: f"{b.way_count} ways"),
    Aspect("re-sized", "rating", lambda b: given(b.rating_a, "A")),
    Aspect("re-protected", "main switch", lambda b: _device(b.main_switch)),
    Aspect("re-protected", "back-up device", lambda b: _device(b.back_up)),
    Aspect("re-fed", "feed", lambda b: b.fed_by),
    Aspect("altered", "state", lambda b: str(b.state)),
    Aspect("altered", "name", lambda b: b.name or NOT_RECORDED),
    Aspect("altered", "IP code", lambda b: b.ip),
    Aspect("altered", "short-circuit rating", lambda b: given(b.short_circuit_rating_ka, "kA")),
    Aspect("altered", "Zs given", lambda b: _known(b.zs_ohm)),
    Aspect("altered", "fault current given", lambda b: _known(b.ipf_ka)),
    Aspect("altered", "make group", lambda b: b.make_group or NOT_RECORDED),
    PLATE,
    Aspect(
        "altered",
        "spare ways",
        _spares,
    ),
)
CIRCUIT = (
    Aspect("re-fed", "way", lambda c: c.tag),
    Aspect("re-protected", "device", lambda c: _device(c.device)),
    Aspect("re-loaded", "load", _load),
    Aspect("re-loaded", "power factor", lambda c: f"{c.power_factor:g}"),
    Aspect("re-loaded", "third harmonic", lambda c: given(c.third_harmonic_pct, "%")),
    Aspect("altered", "name", lambda c: c.name),
    Aspect("altered", "place", lambda c: c.place),
    Aspect("altered", "state", lambda c: str(c.state)),
    Aspect("altered", "use", lambda c: c.use),
    Aspect("altered", "shape", lambda c: "ring" if c.ring else "radial"),
    Aspect("altered", "points served", lambda c: str(c.points_served)),
    Aspect("altered", "vulnerable equipment", lambda c: c.vulnerable),
)


def _kind(point: PointServed) -> str:
    """Return what a point is; its RCD and its overload relay are told apart from it."""
    return point.words.partition(", RCD")[0].partition(OVERLOAD)[0]


POINT = (
    Aspect("moved", "position", lambda p: place_words(p.position)),
    Aspect("re-protected", "RCD", lambda p: _rcd(p.rcd)),
    Aspect("re-protected", "fuse", lambda p: given(p.fuse_a, "A")),
    Aspect("re-protected", "overload setting", lambda p: given(p.overload_a, "A")),
    Aspect("re-loaded", "load", _load),
    Aspect("re-loaded", "power factor", lambda p: f"{p.power_factor:g}"),
    Aspect("altered", "kind", _kind),
    Aspect("altered", "name", lambda p: p.name or NOT_RECORDED),
    Aspect("altered", "state", lambda p: str(p.state)),
    Aspect("altered", "IP code", lambda p: p.ip),
    Aspect("altered", "restart", lambda p: p.restart or NOT_RECORDED),
    PLATE,
)


def _levels(run: Containment) -> str:
    return f"{metres(run.level_mm)} {run.level_of}"


def _path(run: Containment) -> str:
    if not run.path:
        return f"{given(run.declared_length_m, 'm')} to {run.end_words}"
    walls = list(dict.fromkeys(name or "overhead" for name in run.walls))
    length_mm = sum(distance3(a, b) for a, b in pairwise(run.path))
    return f"wall {', '.join(walls)}, {rounded(length_mm / 1000, 1)} m in all"


def _corners(run: Containment) -> object:
    corners = tuple((round(p.x), round(p.y), round(p.z - run.level_mm)) for p in run.path)
    return corners, run.declared_length_m, run.end_words


RUN = (
    Aspect("re-sized", "size", lambda r: r.words),
    Aspect("moved", "level", _levels),
    Aspect("re-routed", "path", _path, _corners),
    Aspect("altered", "use", lambda r: " and ".join(r.bands)),
    Aspect("altered", "state", lambda r: str(r.state)),
    Aspect("altered", "depth", lambda r: given(r.depth_mm, "mm")),
    Aspect("altered", "soil", lambda r: given(r.soil_km_w, "K·m/W")),
    Aspect("altered", "stand-off", lambda r: given(r.stand_off_mm, "mm")),
)
_DEVICE_FIGURES = (
    ("channel", "channel", ""),
    ("lens", "lens_mm", "mm"),
    ("pixels", "pixels", ""),
    ("target distance", "target_m", "m"),
    ("aim", "aim_deg", "°"),
    ("PoE class", "poe_class", ""),
    ("power pairs", "power_pairs", ""),
    ("ports", "ports", ""),
    ("channels", "channels", ""),
    ("PoE budget", "budget_w", "W"),
    ("disk", "disk_tb", "TB"),
    ("days kept", "keep_days", "days"),
    ("output", "output_v", "V"),
    ("rating", "rating_a", "A"),
)


def _figure_of(field: str, unit: str) -> Callable[[DataDevice], str]:
    return lambda device: given(getattr(device, field), unit).strip()


DEVICE = (
    Aspect("moved", "position", lambda d: place_words(d.position)),
    Aspect("re-fed", "port", lambda d: d.port or NOT_RECORDED),
    Aspect("re-loaded", "load", lambda d: given(d.load_w, "W")),
    *(Aspect("altered", name, _figure_of(field, unit)) for name, field, unit in _DEVICE_FIGURES),
    Aspect("altered", "kind", lambda d: d.kind),
    Aspect("altered", "name", lambda d: d.name or NOT_RECORDED),
    Aspect("altered", "state", lambda d: str(d.state)),
    Aspect("altered", "signal", lambda d: d.signal or NOT_RECORDED),
    Aspect("altered", "baluns", lambda d: "with baluns" if d.baluns else "without"),
    Aspect("altered", "sensor", lambda d: d.sensor or NOT_RECORDED),
    PLATE,
)
CABINET = (
    Aspect("moved", "position", lambda c: place_words(c.position)),
    Aspect("re-sized", "size", _box),
    Aspect("re-fed", "feed", lambda c: c.fed_from or NOT_RECORDED),
    PLATE,
)
ROOM = (
    Aspect("re-sized", "height", lambda r: metres(r.height_mm)),
    Aspect("altered", "ceiling", lambda r: r.ceiling or NOT_RECORDED),
    Aspect("altered", "walls", lambda r: ", ".join(r.walls)),
    Aspect("altered", "north", lambda r: r.north_wall or NOT_RECORDED),
)


def _openings(wall: Wall) -> str:
    return (
        "; ".join(
            f"{o.name or o.kind} {metres(o.width_mm)} × {metres(o.height_mm)} "
            f"at {metres(o.from_mm)}, sill {metres(o.sill_mm)}"
            for o in wall.openings
        )
        or "none"
    )


WALL = (
    Aspect("re-sized", "length", lambda w: metres(w.length_mm)),
    Aspect("re-sized", "height", lambda w: metres(w.height_mm)),
    Aspect("altered", "openings", _openings),
)


def _source(supply: Supply) -> str:
    if supply.source is None:
        return NOT_RECORDED
    name = type(supply.source).__name__.lower()
    return f"{name} {supply.source.rating_kva:g} kVA"


SUPPLY = (
    Aspect("altered", "system", lambda s: s.system),
    Aspect("altered", "phases", lambda s: str(s.phases)),
    Aspect("altered", "voltage", lambda s: f"{s.line_v:g}/{s.u0_v:g} V"),
    Aspect("altered", "Ze", lambda s: _known(s.ze_ohm)),
    Aspect("altered", "fault current", lambda s: _known(s.ipf_ka)),
    Aspect("re-protected", "cut-out", lambda s: _device(s.cut_out)),
    Aspect("re-sized", "tails", lambda s: given(s.tails_mm2, "mm²")),
    Aspect("lengthened", "length of tails", lambda s: given(s.tails_m, "m")),
    Aspect("re-sized", "earthing conductor", lambda s: given(s.earthing_conductor_mm2, "mm²")),
    Aspect(
        "re-sized",
        "main bonding",
        lambda s: ", ".join(f"{what} {mm2:g} mm²" for what, mm2 in s.bonds) or NOT_RECORDED,
    ),
    Aspect("altered", "electrode", lambda s: _known(s.electrode_ohm)),
    Aspect("altered", "surge protection", lambda s: s.surge_protection or NOT_RECORDED),
    Aspect("altered", "ambient", lambda s: given(s.ambient_c, "°C")),
    Aspect("altered", "source", _source),
)


def _fact(field: str) -> Callable[[Job], str]:
    return lambda job: str(getattr(job, field) or NOT_RECORDED)


JOB = tuple(
    Aspect("altered", name, _fact(field))
    for name, field in (
        ("title", "title"),
        ("client", "client"),
        ("site", "site"),
        ("installer", "installer"),
        ("telephone", "phone"),
        ("designer", "designer"),
        ("checker", "checker"),
        ("edition", "edition"),
        ("building use", "building_use"),
        ("description", "description"),
    )
)
__all__ = [
    "BOARD",
    "CABINET",
    "CIRCUIT",
    "DEVICE",
    "JOB",
    "POINT",
    "ROOM",
    "RUN",
    "SUPPLY",
    "WALL",
    "Aspect",
    "place_words",
]
