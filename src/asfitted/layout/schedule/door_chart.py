"""The chart for the door of a board: every way once, in true order."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.network import fault_of_ipf
from asfitted.layout.figures import metres
from asfitted.layout.given_words import NOT_RECORDED, state_behind, surge_protection_is_at
from asfitted.layout.schedule.words import (
    NOT_CHECKED,
    device_words,
    figure,
    length_words,
    place,
    size,
)
from asfitted.layout.table import Column, Table
from asfitted.layout.title_block import supply_words
from asfitted.reference.cables import family

if TYPE_CHECKING:
    from asfitted.calculate.results import BoardResult
    from asfitted.layout.sheet_model import Model
    from asfitted.resolve.installation import Board, Circuit, Position, Rcd, Way

SHORT = "n/r"  # explained under the heading
COLUMNS = (
    Column("Way"),
    Column("Circuit and place"),
    Column("Pts", align="middle"),
    Column("Device"),
    Column("RCD"),
    Column("Cable"),
    Column("Length", align="end"),
    Column("Upset by tests"),
    Column("Max Zs", align="end", wraps=False),
)


def door_chart(board: Board, model: Model) -> Table:
    """Return the chart of one board. Neighbouring blank ways share a row that names each."""
    rows: list[tuple[str, ...]] = []
    idents: list[str] = []
    tinted: set[int] = set()
    blanks: list[Way] = []
    for way in board.ways:
        if not way.circuit and way.words == "blank":
            blanks.append(way)
            continue
        if blanks:
            tinted.add(len(rows))
            rows.append(_blank(blanks))
            idents.append(blanks[0].name)
            blanks = []
        if way.circuit:
            rows.append(_circuit(model.installation.circuits[way.circuit], model))
        else:
            tinted.add(len(rows))
            rows.append((way.name, way.words, *["–"] * (len(COLUMNS) - 2)))
        idents.append(way.name)
    if blanks:
        tinted.add(len(rows))
        rows.append(_blank(blanks))
        idents.append(blanks[0].name)
    return Table(COLUMNS, tuple(rows), tuple(idents), tinted_rows=frozenset(tinted))


def _blank(ways: list[Way]) -> tuple[str, ...]:
    return (", ".join(w.name for w in ways), "blank", *["–"] * (len(COLUMNS) - 2))


def _circuit(circuit: Circuit, model: Model) -> tuple[str, ...]:
    """Return the row of a circuit."""
    results = model.results
    figures = results.circuits.get(circuit.tag)
    return (
        circuit.way,
        _name_and_place(circuit, model),
        _points(circuit),
        device_words(circuit.device),
        _rcd(circuit, model),
        _cable(circuit, model),
        _length(circuit, model),
        SHORT if circuit.vulnerable == NOT_RECORDED else circuit.vulnerable,
        figure(figures.zs_limit_ohm if figures else None, 2, "Ω"),
    )


def _name_and_place(circuit: Circuit, model: Model) -> str:
    return f"{circuit.name}{state_behind(circuit.state)}: {_places(circuit, model)}"


def _points(circuit: Circuit) -> str:
    if circuit.feeds_board:
        return "–"
    return str(circuit.points_served) if circuit.points_served else SHORT


def _places(circuit: Circuit, model: Model) -> str:
    if circuit.place and circuit.place != NOT_RECORDED:
        return circuit.place
    if circuit.feeds_board:
        return _wall(model.installation.boards[circuit.feeds_board].position)
    if not circuit.points:
        return NOT_RECORDED
    places = [model.installation.points[p].position for p in circuit.points]
    if sum(p.out_mm > 0 for p in places) > len(places) / 2:
        return model.installation.walls[places[-1].wall].room
    walls = sorted({p.wall for p in places} - {""})
    if len(circuit.points) == 1:
        return _wall(model.installation.points[circuit.points[0]].position)
    return ("walls " if len(walls) > 1 else "wall ") + ", ".join(walls)


def _wall(position: Position) -> str:
    """Return wall and height only: the elevations hold the rest."""
    if not position.wall:
        return position.words
    return f"wall {position.wall}{' outside' if position.outside else ''}, +{position.up_mm:.0f}"


def _rcd(circuit: Circuit, model: Model) -> str:
    """Return the RCD at the board, or where else it sits."""
    if circuit.device.rcd is not None:
        return _rcd_words(circuit.device.rcd)
    in_outlet = [model.installation.points[p].rcd for p in circuit.points]
    rcds = [r for r in in_outlet if r is not None]
    if rcds:
        return "in outlet"
    return "none" if circuit.state == "new" else SHORT


def _rcd_words(rcd: Rcd) -> str:
    return f"{rcd.idn_ma:g} mA {rcd.type}"


def _cable(circuit: Circuit, model: Model) -> str:
    """Return the first cable as said on site: ``4c × 6 mm² SWA, cpc armour``."""
    if not circuit.cables or circuit.cables[0] not in model.results.cables:
        return SHORT
    first, cable = (
        model.results.cables[circuit.cables[0]],
        model.installation.cables[circuit.cables[0]],
    )
    size_words = first.words.split(" mm²")[0] + " mm²"
    words = f"{size_words} {family(cable.family).words[0]}"
    return f"{words}, cpc armour" if cable.cpc == "armour" else words


def _length(circuit: Circuit, model: Model) -> str:
    """Return the length of the whole circuit, board to last point."""
    routes = [model.results.routes.get(c) for c in circuit.cables]
    known = [r.length_m for r in routes if r is not None]
    if not known:
        return SHORT
    cable = model.installation.cables[circuit.cables[0]]
    if len(known) == 1:
        return length_words(cable, known[0])
    return metres(sum(known))


def header_lines(board: Board, model: Model) -> tuple[tuple[str, str], ...]:
    """Return what the head of the chart says: (label, words) in reading order."""
    installation = model.installation
    job, supply = installation.job, installation.supply
    figures = model.results.boards.get(board.tag)
    fed = "supply cut-out" if board.fed_by == "supply" else _fed_from(board, model)
    switch = board.main_switch.words if board.main_switch else NOT_RECORDED
    system = supply.system if supply else NOT_RECORDED
    fault = figure(figures.fault_max_3ph_ka if figures else None, 1, "kA")
    if board.phases == 1:
        fault = figure(figures.fault_max_1ph_ka if figures else None, 1, "kA")
    zs = figure(figures.zs_ohm if figures else None, 2, "Ω")
    measured = board.zs_ohm
    zs_words = (
        f"{zs} calculated" if measured is None else f"{measured.value:g} Ω ({measured.basis[0]})"
    )
    return (
        ("Board", ", ".join(_once(board.tag, board.name, place(board.position)))),
        ("Fed from", fed),
        ("Main switch", f"{switch}; board {figure(board.rating_a, 0, 'A', NOT_RECORDED)}"),
        ("Supply", supply_words(supply).removeprefix("Supply: ")),
        (
            "Zs and fault current here",
            f"{zs_words}; {fault} {fault_of_ipf(board.phases)}, calculated",
        ),
        ("Surge protection", _surge(board, model)),
        ("Demand", _demand(figures)),
        (
            "Protective measure",
            f"automatic disconnection of supply (ADS), {system}; 30 mA RCD where listed",
        ),
        ("To call", f"{job.installer}, {job.phone}"),
        (SHORT, "not recorded; RCD in outlet: at the socket-outlet, not in this board"),
        ("Max Zs", "at working temperature; read cold it should not exceed 80 % of this"),
        ("Devices", device_standards(board, model)),
    )


def device_standards(board: Board, model: Model) -> str:
    """Return the product standards of the devices in the board, each once."""
    circuits = [model.installation.circuits[w.circuit] for w in board.ways if w.circuit]
    found = dict.fromkeys(c.device.standard for c in circuits)
    return ", ".join(found) if found else NOT_RECORDED


def _surge(board: Board, model: Model) -> str:
    """Return the surge protection that the spec names for this board."""
    supply = model.installation.supply
    words = supply.surge_protection if supply else ""
    if not words:
        return NOT_RECORDED
    here = surge_protection_is_at(board, model.installation)
    return words if here or board.fed_by == "supply" else f"at the origin: {words}"


def _demand(figures: BoardResult | None) -> str:
    """Return the demand of each line after diversity, and of the neutral."""
    if figures is None:
        return NOT_CHECKED
    lines = [a for a in figures.demand_a if a > 0] or [0.0]
    if len(lines) == 1:
        return f"{lines[0]:.0f} A after diversity, calculated"
    each = ", ".join(f"L{i} {a:.0f}" for i, a in enumerate(figures.demand_a, start=1))
    return f"{each} A after diversity, neutral {figures.neutral_a:.0f} A, calculated"


def _once(*words: str) -> list[str]:
    """Return the words that say something, each once."""
    return [w for i, w in enumerate(words) if w and w not in words[:i]]


def _fed_from(board: Board, model: Model) -> str:
    circuit = model.installation.circuits[board.fed_by]
    words = circuit.device.words
    if circuit.cables and circuit.cables[0] in model.results.cables:
        cable = model.results.cables[circuit.cables[0]]
        return f"{circuit.tag}, {words}, {cable.tag} {cable.words}"
    return f"{circuit.tag}, {words}, cable {size(None)}"
