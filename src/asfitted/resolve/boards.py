"""Boards, their spare ways, and the circuit that feeds each."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.geometry import Point3
from asfitted.resolve.devices import device_of
from asfitted.resolve.installation import Board, Position, State
from asfitted.resolve.rating_plate import plate_of
from asfitted.resolve.ways import WayTable, read_way
from asfitted.spec.problem_codes import Code
from asfitted.spec.words import did_you_mean

if TYPE_CHECKING:
    from asfitted.resolve.installation import Circuit
    from asfitted.resolve.ledger import Ledger
    from asfitted.resolve.positions import Positions
    from asfitted.spec.boards import BoardWords
    from asfitted.spec.load_yaml import SpecPath

NOT_RECORDED = "not recorded"
SUPPLY = "supply"
#: Outline of a board whose size is not given, mm (common practice): width, then height.
THREE_PHASE_SIZE_MM = (450.0, 700.0)
SINGLE_PHASE_MODULE_MM = 18.0  # BS EN 60898 devices are made to modules of 17.5 to 18 mm
_NOWHERE = Position("", "", 0.0, 0.0, 0.0, outside=False, at=Point3(0.0, 0.0, 0.0))


def way_tables(ledger: Ledger) -> dict[str, WayTable]:
    """Return an empty table of ways for each board, its spares entered."""
    tables: dict[str, WayTable] = {}
    for tag, words in ledger.loaded.spec.boards.items():
        table = tables[tag] = WayTable(tag, words.ways, words.phases)
        for name, spare in words.spares.items():
            path = ("boards", tag, "spares", name)
            way = read_way(name)
            if way is None:
                hint = 'write the way, such as "10L2: spare, C16 SP fitted"'
                ledger.problem(Code.WAY, f'"{name}" is not a way of {tag}', path, hint)
                continue
            fault, hint = table.fault_of(way)
            if not fault and words.phases == 3 and not way.phase:
                fault, hint = f"spare way {way} of {tag} lacks its phase", f"{way}L1, or {way}TP"
            if not fault and table.taken_by(way):
                fault = f"way {way} of {tag} is written twice"
            if fault:
                ledger.problem(Code.WAY, fault, path, hint)
            else:
                table.spares[way.number, way.phase] = spare
    return tables


def _size_mm(tag: str, words: BoardWords, ledger: Ledger) -> tuple[float, float]:
    if words.size:
        return words.size
    if words.phases == 3:
        size = THREE_PHASE_SIZE_MM
    else:
        size = (SINGLE_PHASE_MODULE_MM * (words.ways + 4), 250.0)
    written = f"{size[0]:g} × {size[1]:g} mm"
    ledger.default(tag, "size", written, "usual size for its ways (common practice)")
    return size


def _feeder(tag: str, words: BoardWords, circuits: dict[str, Circuit], ledger: Ledger) -> str:
    """Return the tag of the circuit that feeds a board, or "supply"."""
    path: SpecPath = ("boards", tag)
    feeders = [c.tag for c in circuits.values() if c.feeds_board == tag]
    written = words.fed_from
    if written is None:
        fed_by = feeders[0] if feeders else SUPPLY
        if not feeders and ledger.loaded.spec.supply is None:
            message = f'{tag} is fed by no circuit, and the job has no "supply"'
            ledger.problem(
                Code.FEED, message, path, 'add "supply", or "feeds: ' + f'{tag}" to a circuit'
            )
        reason = "the circuit that feeds it" if feeders else "no circuit of the job feeds it"
        ledger.default(tag, "fed from", fed_by, reason)
        return fed_by
    if written.lower() == SUPPLY:
        if ledger.loaded.spec.supply is None:
            message = f'{tag} is fed from the supply, but the job has no "supply"'
            ledger.problem(Code.FEED, message, (*path, "fed from"))
        for feeder in feeders:
            message = f"{tag} is fed from the supply, but circuit {feeder} feeds it too"
            ledger.problem(Code.FEED, message, (*path, "fed from"))
        return SUPPLY
    return _matched_feeder(tag, written, circuits, feeders, ledger)


def _matched_feeder(
    tag: str, written: str, circuits: dict[str, Circuit], feeders: list[str], ledger: Ledger
) -> str:
    path: SpecPath = ("boards", tag, "fed from")
    circuit = circuits.get(written)
    if circuit is None:
        hint = did_you_mean(written, circuits)
        if feeders:
            hint = f'circuit {feeders[0]} feeds {tag}: write "fed from: {feeders[0]}"'
        ledger.problem(Code.FEED, f'{tag} is fed from "{written}", which is no circuit', path, hint)
    elif circuit.feeds_board != tag:
        message = f"{tag} is fed from {written}, but that circuit does not feed it"
        ledger.problem(Code.FEED, message, path, f'add "feeds: {tag}" to circuit {written}')
    for feeder in feeders:
        if feeder != written:
            message = f"{tag} is fed from {written}, but circuit {feeder} feeds it too"
            ledger.problem(Code.FEED, message, path)
    return written


def _board_of(
    tag: str,
    words: BoardWords,
    positions: Positions,
    table: WayTable,
    circuits: dict[str, Circuit],
) -> Board:
    ledger = positions.ledger
    path: SpecPath = ("boards", tag)
    size_mm = _size_mm(tag, words, ledger)
    main_switch = None
    if words.main_switch:
        where = (*path, "main switch")
        main_switch = device_of(
            words.main_switch, where, ledger, tag, three_phase=words.phases == 3
        )
    back_up = None
    if words.back_up:
        where = (*path, "back-up")
        back_up = device_of(words.back_up, where, ledger, tag, three_phase=words.phases == 3)
    return Board(
        tag=tag,
        name=words.name or tag,
        state=State(words.state or "new"),
        position=positions.resolve(words.at, (*path, "at"), tag) or _NOWHERE,
        width_mm=size_mm[0],
        height_mm=size_mm[1],
        way_count=words.ways,
        phases=words.phases,
        rating_a=words.rating,
        main_switch=main_switch,
        fed_by=_feeder(tag, words, circuits, ledger),
        ip=words.ip or NOT_RECORDED,
        short_circuit_rating_ka=words.short_circuit_rating,
        zs_ohm=ledger.known(words.zs, tag, "Zs"),
        ipf_ka=ledger.known(words.fault_current, tag, "fault current"),
        ways=table.in_order(),
        make_group=words.make_group or "",
        back_up=back_up,
        plate=plate_of(words),
    )


def _check_loops(boards: dict[str, Board], circuits: dict[str, Circuit], ledger: Ledger) -> None:
    for tag in boards:
        seen = [tag]
        here = tag
        while here in boards and boards[here].fed_by in circuits:
            here = circuits[boards[here].fed_by].board
            if here == tag:
                loop = " - ".join([*seen, tag])
                message = f"{tag} feeds itself: {loop}"
                ledger.problem(Code.FEED, message, ("boards", tag, "fed from"))
            if here in seen:
                break
            seen.append(here)


def _check_phases(boards: dict[str, Board], circuits: dict[str, Circuit], ledger: Ledger) -> None:
    supply = ledger.loaded.spec.supply
    for tag, board in boards.items():
        feeder = circuits.get(board.fed_by)
        from_one = feeder is not None and feeder.phase != "TP"
        from_one_supply = board.fed_by == SUPPLY and supply is not None and supply.phases == 1
        if board.phases == 3 and (from_one or from_one_supply):
            message = f"{tag} is a three-phase board on a single-phase feed ({board.fed_by})"
            ledger.problem(Code.FEED, message, ("boards", tag, "phases"))


def boards_of(
    positions: Positions, tables: dict[str, WayTable], circuits: dict[str, Circuit]
) -> dict[str, Board]:
    """Return every board by tag, its ways in true order."""
    ledger = positions.ledger
    boards = {}
    for tag, words in ledger.loaded.spec.boards.items():
        ledger.claim(tag, ("boards", tag))
        boards[tag] = _board_of(tag, words, positions, tables[tag], circuits)
    _check_loops(boards, circuits, ledger)
    _check_phases(boards, circuits, ledger)
    return boards
