"""Circuits: way and phase settled, device and use looked up."""

from __future__ import annotations

import itertools
from dataclasses import replace
from typing import TYPE_CHECKING, Literal, cast

from asfitted.reference.points import point_kinds
from asfitted.resolve.devices import device_of
from asfitted.resolve.installation import Circuit, Device, State
from asfitted.resolve.points import NO_LOAD, NOT_RECORDED, point_of
from asfitted.resolve.ways import Seat, WayName, WayTable, read_way
from asfitted.spec.problem_codes import Code

if TYPE_CHECKING:
    from asfitted.resolve.installation import PointServed
    from asfitted.resolve.ledger import Ledger
    from asfitted.resolve.positions import Positions
    from asfitted.spec.circuits import CircuitWords
    from asfitted.spec.load_yaml import SpecPath

Use = Literal["power", "sockets", "lighting", "heating", "motor", "board"]

#: Power factor of a circuit whose load is given as a whole (common practice).
_USE_POWER_FACTOR: dict[str, float] = {"lighting": 0.95, "heating": 1.0, "motor": 0.8}
_OTHER_POWER_FACTOR = 0.95
_U0_V = 230.0  # only to weigh loads against each other when a phase is chosen


def _load_a(words: CircuitWords) -> float:
    """Return a load to weigh the circuit by, A: its device's rating when none is given."""
    loads = [words.load, *(p.load for p in words.points)]
    total = sum(load.current_a or (load.power_w or 0.0) / _U0_V for load in loads if load)
    return total or words.device.rating_a or 0.0


def _read_seat(
    words: CircuitWords, path: SpecPath, tables: dict[str, WayTable], ledger: Ledger
) -> Seat | None:
    board, _, name = words.way.partition("/")
    where = (*path, "way")
    way = read_way(name)
    if way is None:
        hint = 'write board and way: "DB1/3TP", "DB1/5L1", or "CU1/4" on a single-phase board'
        ledger.problem(Code.WAY, f'"{words.way}" is not a way', where, hint)
        return None
    if board not in tables:
        ledger.unknown(Code.NAME, "board", board, tables, where)
        return None
    fault, hint = tables[board].fault_of(way)
    if fault:
        ledger.problem(Code.WAY, fault, where, hint)
        return None
    return Seat(board, way)


def _take(
    seat: Seat, words: CircuitWords, path: SpecPath, tables: dict[str, WayTable], ledger: Ledger
) -> Seat | None:
    table = tables[seat.board]
    taken = table.taken_by(seat.way)
    if taken:
        message = f"way {seat.tag} is taken already: {taken}"
        ledger.problem(Code.WAY, message, (*path, "way"), "give each circuit its own way")
        return None
    table.put(seat.way, seat.tag, _load_a(words), words.name)
    return seat


def _choose_phase(
    seat: Seat, words: CircuitWords, path: SpecPath, tables: dict[str, WayTable], ledger: Ledger
) -> Seat | None:
    table = tables[seat.board]
    free = table.free_poles(seat.way.number)
    if not free:
        message = f"way {seat.tag} has no free pole"
        ledger.problem(Code.WAY, message, (*path, "way"), "use another way")
        return None
    phase = table.least_loaded(free)
    chosen = Seat(seat.board, WayName(seat.way.number, phase))
    reason = "no phase was given; the least loaded free phase of its way"
    ledger.default(chosen.tag, "phase", phase, reason)
    return _take(chosen, words, path, tables, ledger)


def seats_of(tables: dict[str, WayTable], ledger: Ledger) -> dict[int, Seat]:
    """Return the way of each circuit by its place in the file.

    Circuits that name their phase are seated first; the others then go, in the order of the file,
    to the least loaded phase that is free on their way.
    """
    seats: dict[int, Seat] = {}
    later: list[tuple[int, Seat]] = []
    circuits = ledger.loaded.spec.circuits
    for index, words in enumerate(circuits):
        seat = _read_seat(words, ("circuits", index), tables, ledger)
        if seat and tables[seat.board].phases == 3 and not seat.way.phase:
            later.append((index, seat))
        elif seat and (taken := _take(seat, words, ("circuits", index), tables, ledger)):
            seats[index] = taken
    for index, seat in later:
        chosen = _choose_phase(seat, circuits[index], ("circuits", index), tables, ledger)
        if chosen:
            seats[index] = chosen
    return seats


def _use_of(words: CircuitWords, points: list[PointServed], tag: str, ledger: Ledger) -> Use:
    if words.use:
        return cast("Use", words.use)
    uses = [point_kinds()[p.kind].use for p in points]
    serving = [u for p, u in zip(points, uses, strict=True) if point_kinds()[p.kind].serves and u]
    if words.feeds:
        use, reason = "board", f"it feeds {words.feeds}"
    elif serving or any(uses):
        use, reason = (serving or [u for u in uses if u])[0], "from the points it serves"
    else:
        use, reason = "power", "none was given"
    ledger.default(tag, "use", use, reason)
    return cast("Use", use)


def _points_served(words: CircuitWords, points: list[PointServed], tag: str, ledger: Ledger) -> int:
    if words.points_served is not None:
        return words.points_served
    feeding = {w.after or before.tag for before, w in itertools.pairwise(words.points)}
    kinds = [(p.tag, point_kinds()[p.kind]) for p in points]
    served = sum(kind.serves or (own not in feeding and bool(kind.use)) for own, kind in kinds)
    if words.state != "existing":
        ledger.default(tag, "points served", str(served), "counted from its points")
    return served


def _check_device(device: Device, seat: Seat, path: SpecPath, ledger: Ledger) -> None:
    is_three = device.poles in ("TP", "TP+N", "4P")
    if is_three and seat.way.phase != "TP":
        message = f'"{device.words}" has three poles, but way {seat.tag} is single-pole'
        hint = f'write "way: {seat.board}/{seat.way.number}TP" if it takes the whole way'
        ledger.problem(Code.WAY, message, (*path, "device"), hint)
    if not is_three and seat.way.phase == "TP":
        message = f'"{device.words}" does not fill the three-pole way {seat.tag}'
        hint = f'write "TP" in the device, or "way: {seat.board}/{seat.way.number}L1"'
        ledger.problem(Code.WAY, message, (*path, "device"), hint)


def _check_feeds(words: CircuitWords, path: SpecPath, ledger: Ledger) -> None:
    boards = ledger.loaded.spec.boards
    if words.feeds and words.feeds not in boards:
        ledger.unknown(Code.NAME, "board", words.feeds, boards, (*path, "feeds"))
    if words.feeds or words.points or words.state in {"existing", "removed"}:
        return
    message = f'circuit "{words.name}" serves nothing'
    hint = "add points, or feeds: DB2, or state: existing"
    ledger.problem(Code.CIRCUIT, message, path, hint)


def _check_ring(words: CircuitWords, seat: Seat, path: SpecPath, ledger: Ledger) -> None:
    """Note a ring that cannot be one: three-phase, to a board, or with too few points on it."""
    if not words.ring:
        return
    where = (*path, "ring")
    if seat.way.phase == "TP" or words.feeds:
        message = f'ring of circuit "{words.name}": only a single-phase final circuit can be one'
        ledger.problem(Code.CIRCUIT, message, where, "take ring away")
    on_ring = [point for point in words.points if point.after is None]
    if len(on_ring) < 2 and words.state not in {"existing", "removed"}:
        message = f'ring of circuit "{words.name}" joins fewer than two points'
        ledger.problem(Code.CIRCUIT, message, where, "a point with after: is a spur off the ring")


def _power_factor(
    words: CircuitWords, points: list[PointServed], use: Use, tag: str, ledger: Ledger
) -> float:
    if words.power_factor is not None:
        return words.power_factor
    loads = [p for p in points if p.load_w is not None or p.load_a is not None]
    if loads and words.load is None:
        return min(p.power_factor for p in loads)
    value = _USE_POWER_FACTOR.get(use, _OTHER_POWER_FACTOR)
    if words.load is not None:
        ledger.default(tag, "power factor", f"{value:g}", f"usual for {use} (common practice)")
    return value


def circuit_of(
    index: int, seat: Seat, positions: Positions, points: dict[str, PointServed]
) -> Circuit | None:
    """Return one circuit without its cables; its points are added to ``points``."""
    ledger = positions.ledger
    words = ledger.loaded.spec.circuits[index]
    path: SpecPath = ("circuits", index)
    ledger.mark(seat.tag, path)
    _check_feeds(words, path, ledger)
    _check_ring(words, seat, path, ledger)
    phase = seat.way.phase
    device = device_of(words.device, (*path, "device"), ledger, seat.tag, three_phase=phase == "TP")
    own: list[PointServed] = []
    for number, point in enumerate(words.points):
        where = (*path, "points", number)
        ledger.claim(point.tag, where)
        built = point_of(point, where, words, seat, positions)
        if built:
            own.append(built)
    points.update({p.tag: p for p in own})
    if device is None:
        return None
    if words.afdd:
        device = replace(device, afdd=True)
    _check_device(device, seat, path, ledger)
    return _built(index, words, seat, device=device, own=own, ledger=ledger)


def _built(
    index: int,
    words: CircuitWords,
    seat: Seat,
    *,
    device: Device,
    own: list[PointServed],
    ledger: Ledger,
) -> Circuit:
    use = _use_of(words, own, seat.tag, ledger)
    load = words.load or NO_LOAD
    return Circuit(
        tag=seat.tag,
        number=ledger.tags.circuit_number(
            seat.tag, [*(p.tag for p in own), *([words.feeds] if words.feeds else [])], index
        ),
        name=words.name,
        place=words.place or NOT_RECORDED,
        state=State(words.state or "new"),
        board=seat.board,
        way=str(seat.way),
        phase=seat.way.phase,
        use=use,
        device=device,
        points=tuple(p.tag for p in own),
        points_served=_points_served(words, own, seat.tag, ledger),
        cables=(),
        feeds_board=words.feeds or "",
        load_w=load.power_w,
        load_a=load.current_a,
        power_factor=_power_factor(words, own, use, seat.tag, ledger),
        vulnerable=words.vulnerable or NOT_RECORDED,
        ring=bool(words.ring),
        third_harmonic_pct=words.harmonics,
    )


def with_cables(circuit: Circuit, cable_tags: tuple[str, ...]) -> Circuit:
    """Return the circuit with the tags of its cables."""
    return replace(circuit, cables=cable_tags)
