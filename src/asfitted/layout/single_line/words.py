"""What each part of the diagram says, as short phrases that are never broken inside."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from asfitted.calculate.cable_rating import FREE_AIR, capacity_words
from asfitted.calculate.network import fault_of_ipf
from asfitted.layout.figures import metres, rounded
from asfitted.layout.given_words import (
    NOT_RECORDED,
    known,
    known_fault,
    state_word,
    surge_protection_is_at,
)
from asfitted.layout.single_line.tree import cable_kind
from asfitted.reference.cables import family
from asfitted.reference.points import point_kind
from asfitted.resolve.installation import State
from asfitted.resolve.starters import BUILT_IN, NO_STARTER

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from asfitted.calculate.results import CableResult, CircuitResult
    from asfitted.layout.sheet_model import Model
    from asfitted.layout.single_line.tree import Column, Stage
    from asfitted.resolve.installation import (
        Board,
        Cable,
        Circuit,
        Device,
        PointServed,
        Position,
        Way,
    )

POLES = {1: "SP", 2: "DP", 3: "TP", 4: "4P"}
#: Kinds of device that read otherwise on paper than in the spec.
KINDS = {"rcd": "RCD", "rcbo": "RCBO", "mccb": "MCCB", "mcb": "circuit-breaker"}


def figure(value: float | None, unit: str, places: int) -> str:
    """Return a figure with so many decimals and its unit, or "not recorded"."""
    return NOT_RECORDED if value is None else f"{value:.{places}f} {unit}"


def tags_words(tags: Sequence[str]) -> str:
    """Return tags as ``S1``, ``S1, S2`` or, when three or more run on, ``S1 to S5``."""
    numbered = [re.fullmatch(r"(.*?)(\d+)", tag) for tag in tags]
    stems = {match[1] for match in numbered if match}
    if len(tags) > 2 and all(numbered) and len(stems) == 1:
        counts = [int(match[2]) for match in numbered if match]
        if counts == list(range(counts[0], counts[0] + len(counts))):
            return f"{tags[0]} to {tags[-1]}"
    return ", ".join(tags)


def way_words(ways: Sequence[Way]) -> str:
    """Return the ways of a column: ``3TP``, ``10L3, 11TP``, or ``7 to 12``."""
    if len(ways) <= 2:
        return ", ".join(way.name for way in ways)
    return f"{ways[0].name} to {ways[-1].name}"


def device_phrases(device: Device) -> list[str]:
    """Return what stands beside a protective device; its sign and way tell kind and phase."""
    rating = f"{device.curve}{device.rating_a:g}" if device.curve else f"{device.rating_a:g} A"
    phrases = [rating, device.poles]
    if device.kind == "mccb":
        phrases.insert(0, "MCCB")
    if device.kind == "fuse":
        phrases.append(device.standard)
    if device.kind not in {"rcd", "switch-disconnector"}:
        icn = "kA not recorded" if device.icn_ka is None else f"{device.icn_ka:g} kA"
        phrases.append(icn)
    return [*phrases, *_residual_phrases(device), *(["AFDD"] if device.afdd else [])]


def switch_phrases(switch: Device) -> list[str]:
    """Return what stands beside the main switch of a board: rating, kind, residual part."""
    kind = KINDS.get(switch.kind, switch.kind)
    return [f"{switch.rating_a:g} A {switch.poles}", kind, *_residual_phrases(switch)]


def _residual_phrases(device: Device) -> list[str]:
    if device.rcd is None:
        return []
    phrases = [f"{device.rcd.idn_ma:g} mA", f"type {device.rcd.type}"]
    return [*phrases, "delayed"] if device.rcd.delayed else phrases


def spare_phrases(way: Way) -> list[str]:
    """Return the words of a spare way, word by word."""
    return way.words.replace(",", "").split() or ["spare"]


def leg_phrases(model: Model, circuit: Circuit, stage: Stage, *, is_first: bool) -> list[str]:
    """Return the text of one line: its cable, described once, and how it is installed."""
    phrases = [word for word in [state_word(circuit.state)] if word and is_first]
    if not stage.cables:
        return [*phrases, f"cable {NOT_RECORDED}"]
    cables = [model.installation.cables[tag] for tag in stage.cables]
    phrases += cable_phrases(model, cables)
    if circuit.ring and cables[-1].to_end == circuit.board:
        phrases.append(f"ring back to {circuit.board}")
    own = state_word(cables[0].state)
    if own and own not in phrases:
        phrases.append(own)
    rated = [r for cable in cables if (r := model.results.cables.get(cable.tag))]
    return [*phrases, *_method_phrases(rated)]


def _method_phrases(rated: list[CableResult]) -> list[str]:
    """Return "method B, C" and, where the table is that for free air, words that say so."""
    letters = ", ".join(sorted({r.method for r in rated} - {FREE_AIR}))
    found = [f"method {letters}"] if letters else []
    if any(r.capacity_doubt for r in rated):
        return [*found, "no rating as laid"]
    return [*found, f"rated in {FREE_AIR}"] if any(r.method == FREE_AIR for r in rated) else found


def cable_phrases(model: Model, cables: list[Cable]) -> list[str]:
    """Return the tag, make-up and length of a cable, or of several that lead to one sign."""
    first, last = cables[0], cables[-1]
    tags = first.tag if len(cables) == 1 else f"{first.tag} to {last.tag}"
    size, *rest = _make_up(model, cables)
    named = [f"{tags} {size}"] if len(cables) == 1 else [tags, size]
    return [*named, *rest, _length(model, cables)]


def _make_up(model: Model, cables: list[Cable]) -> list[str]:
    """Return cores, size, type and protective conductor; a reference when they differ."""
    if len({cable_kind(cable) for cable in cables}) > 1:
        return ["cables of several kinds: see the cable schedule"]
    cable = cables[0]
    result = model.results.cables.get(cable.tag)
    if result is None:
        size = f"size {NOT_RECORDED}" if cable.csa_mm2 is None else f"{cable.csa_mm2:g} mm²"
        return [f"{cable.cores}c × {size}", family(cable.family).legend]
    head, sep, tail = result.words.partition("mm² ")
    words = [f"{head}{sep}".strip(), tail] if tail else [result.words]
    return [*words, f"cpc {result.cpc_words}"] if result.cpc_words else words


def _length(model: Model, cables: list[Cable]) -> str:
    routes = [model.results.routes.get(cable.tag) for cable in cables]
    lengths = [
        route.length_m
        for route in routes
        if route is not None and not route.broken and route.length_m > 0
    ]
    if len(lengths) < len(cables):
        return f"L {NOT_RECORDED}"
    measured = " (m)" if all(route is not None and route.measured for route in routes) else ""
    if len(lengths) <= 3:
        return f"L = {' + '.join(rounded(length, 1) for length in lengths)} m{measured}"
    return f"L = {metres(sum(lengths))} in all{measured}"


#: From here on an impedance is told without decimals: that of an earth electrode.
MANY_OHM = 10.0


def figure_phrases(model: Model, circuit: Circuit) -> list[str]:
    """Return Ib, the least Iz of its cables, drop and Zs at the worst point, and Zs's limit.

    A cable that no table rates as it lies has no part in the least Iz: it is told by its tag.
    """
    result = model.results.circuits.get(circuit.tag)
    if result is None or circuit.state is not State.NEW:
        return []
    rated = [r for tag in circuit.cables if (r := model.results.cables.get(tag)) is not None]
    return [
        *_figures([("Ib", result.design_current_a, "A", 1)]),
        *_capacity_phrases(rated),
        *_figures(_limited(result)),
    ]


def _capacity_phrases(rated: list[CableResult]) -> list[str]:
    """Return the least Iz that was checked, and each Iz that was not by the tag of its cable."""
    checked = [r.capacity_a for r in rated if r.checked_capacity_a is not None]
    doubted = [r for r in rated if r.checked_capacity_a is None]
    words = []
    if checked or not doubted:
        words = _figures([("Iz", min(checked, default=None), "A", 1)])
    for r in doubted:
        whose = "Iz" if len(rated) == 1 else f"{r.tag} Iz"
        told = capacity_words(r.capacity_a, r.capacity_doubt, unit="A")
        unrated, _, free_air = told.partition(" (")
        words += [f"{whose} {unrated}", f"({free_air}"]  # two lines: the column stays narrow
    return words


def _limited(result: CircuitResult) -> list[tuple[str, float | None, str, int]]:
    """Return drop and Zs with its limit: name, figure, unit and decimals."""
    return [
        ("drop", result.drop_pct, "%", 2),
        ("Zs", result.zs_ohm, "Ω", 2),
        (
            "of at most",
            result.zs_limit_ohm,
            "Ω",
            2 if (result.zs_limit_ohm or 0.0) < MANY_OHM else 0,
        ),
    ]


def _figures(figures: list[tuple[str, float | None, str, int]]) -> list[str]:
    """Return each figure with its name and unit; one that is not known is not checked."""
    return [
        f"{name} {value:.{places}f} {unit}" if value is not None else f"{name} not checked"
        for name, value, unit, places in figures
    ]


def point_phrases(model: Model, circuit: Circuit, stage: Stage) -> list[str]:
    """Return what a sign stands for, such as ``3 ×``, ``13 A twin socket-outlet``."""
    if stage.feeds:
        return list(flag_words("to", "000", "A0"))  # room for the words; the numbers come later
    if not stage.points:
        count = circuit.points_served
        load = load_words(circuit.load_w, circuit.load_a)
        counted = f"{count} point{'s' if count != 1 else ''}" if count else f"points {NOT_RECORDED}"
        said = [counted, *_own_state(circuit.state)]
        return [*said, f"{load} in all"] if load else said
    points = [model.installation.points[tag] for tag in stage.points]
    if stage.gathered:
        kinds = [point_kind(point.kind).key for point in points]
        return [f"{kinds.count(kind)} × {kind}" for kind in dict.fromkeys(kinds)]
    point = points[0]
    words = point_kind(point.kind).describe(
        rating_a=point.rating_a, gangs=point.gangs, fuse_a=point.fuse_a
    )
    phrases = [f"{len(points)} × {words}" if len(points) > 1 else words]
    if point.poles is not None and "isolator" in words:
        phrases.append(POLES.get(point.poles, f"{point.poles}P"))
    if point.ip and point.ip != NOT_RECORDED:
        phrases.append(point.ip)
    if point.rcd is not None:
        rated = "" if point.rcd.rated_a is None else f" {point.rcd.rated_a:g} A"
        phrases += [f"RCD{rated}", f"{point.rcd.idn_ma:g} mA type {point.rcd.type}"]
        phrases.append("in the outlet")
    if load := load_words(point.load_w, point.load_a):
        phrases.append(f"{load} each" if len(points) > 1 else load)
    phrases += _starter(point)
    if point.state is not circuit.state:
        phrases += _own_state(point.state)
    return phrases


def _starter(point: PointServed) -> list[str]:
    """Return what the spec gives of starter, overload setting and restart, at what holds them.

    A motor behind a starter of its own enclosure only names it: the rest stands there.
    """
    if point.starter not in {"", BUILT_IN, NO_STARTER}:
        return [f"started by {point.starter}"]
    own = [f"starter {point.starter}"] if point.starter == BUILT_IN else []
    if point.starter == NO_STARTER:
        own = ["no starter"]
    setting = [] if point.overload_a is None else [f"overload relay {point.overload_a:g} A"]
    restart = [f"{point.restart} restart"] if point.restart else []
    return [*own, *setting, *restart]


def load_words(power_w: float | None, current_a: float | None) -> str:
    """Return a load as given, in W, kW or A; nothing when it was not given."""
    if power_w is not None:
        return f"{power_w / 1000:g} kW" if power_w >= 1000 else f"{power_w:g} W"
    return "" if current_a is None else f"{current_a:g} A"


def _own_state(state: State) -> list[str]:
    return [word for word in [state_word(state)] if word]


def flag_words(way: str, number: str, zone: str) -> tuple[str, str]:
    """Return the two phrases beside an off-page flag."""
    return f"{way} sheet {number}", f"zone {zone}"


def name_words(model: Model, column: Column) -> str:
    """Return the name of the load, as on the circuit chart."""
    return model.installation.circuits[column.circuit].name


def place_phrases(model: Model, column: Column) -> list[str]:
    """Return where the load is: walls and heights in words, or the place given for the circuit."""
    circuit = model.installation.circuits[column.circuit]
    stage = column.stages[-1]
    if stage.feeds in model.installation.boards:
        return position_phrases([model.installation.boards[stage.feeds].position])
    positions = [model.installation.points[tag].position for tag in stage.points]
    return position_phrases(positions) or [circuit.place or f"place {NOT_RECORDED}"]


def position_phrases(positions: Iterable[Position]) -> list[str]:
    """Return ``wall B``, ``1.2 m up``, or ``walls A and B``, ``1.2 m up``, or ``end of U1``."""
    found = list(positions)
    if not found or not all(p.wall for p in found):
        return [found[0].words] if found and found[0].words else []
    walls = sorted({p.wall + (" outside" if p.outside else "") for p in found})
    heights = sorted({round(p.up_mm) for p in found})
    up = " to ".join(f"{mm / 1000:g}" for mm in dict.fromkeys((heights[0], heights[-1])))
    plural = "walls" if len(walls) > 1 else "wall"
    return [f"{plural} {' and '.join(walls)}", f"{up} m up"]


def board_phrases(model: Model, board: Board) -> list[list[str]]:
    """Return the corner label of an enclosure under its tag: three groups of phrases."""
    u0 = model.installation.supply
    volts = (
        ""
        if u0 is None
        else (f" {u0.line_v:g}/{u0.u0_v:g} V" if board.phases == 3 else f" {u0.u0_v:g} V")
    )
    rating = f"rating {NOT_RECORDED}" if board.rating_a is None else f"{board.rating_a:g} A"
    supply = f"{'3N~' if board.phases == 3 else '1N~'}{volts}"
    withstand = (
        NOT_RECORDED
        if board.short_circuit_rating_ka is None
        else f"{board.short_circuit_rating_ka:g} kA"
    )
    place = ", ".join(position_phrases([board.position])) or f"place {NOT_RECORDED}"
    ip = board.ip if board.ip != NOT_RECORDED else f"IP {NOT_RECORDED}"
    ways = f"{board.way_count} way{'s' if board.way_count != 1 else ''}"
    given = [place, rating, ways, supply, ip]
    rated = [f"short-circuit rating {withstand}", *_surge_protection(model, board)]
    return [given, rated, board_figures(model, board)]


def _surge_protection(model: Model, board: Board) -> list[str]:
    """Return the surge protection as the spec gives it, at the board it names or the first one."""
    if not surge_protection_is_at(board, model.installation):
        return []
    supply = model.installation.supply
    words = supply.surge_protection if supply is not None else ""
    return [f"surge protection {words}" if words else f"surge protection {NOT_RECORDED}"]


def board_figures(model: Model, board: Board) -> list[str]:
    """Return fault current and Zs at the busbars: as given, else as calculated."""
    result = model.results.boards.get(board.tag)
    fault = None
    if result is not None:
        fault = result.fault_max_3ph_ka if board.phases == 3 else result.fault_max_1ph_ka
    phrases = []
    if board.ipf_ka is not None:
        phrases.append(f"Ipf {known_fault(board.ipf_ka, board.phases)}")
    which = "" if fault is None else f" {fault_of_ipf(board.phases)}, calculated"
    phrases.append(f"Ipf {figure(fault, 'kA', 2)}{which}")
    if board.zs_ohm is not None:
        phrases.append(f"Zs {known(board.zs_ohm, 'Ω')}")
    zs = None if result is None else result.zs_ohm
    phrases.append(f"Zs {figure(zs, 'Ω', 2)}" + (" calculated" if zs is not None else ""))
    return phrases
