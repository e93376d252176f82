"""What hangs on what: the columns of each board in way order, and the chain of each circuit."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Literal

from asfitted.reference.points import point_kind
from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from asfitted.resolve.installation import (
        Board,
        Cable,
        Circuit,
        Installation,
        PointServed,
        Way,
    )

BLANK = "blank"
STARTER_SIGN = "direct_on_line_starter"
FLAG = "off_page"
#: Sign of a circuit whose points were not recorded, by its use.
SIGN_OF_USE = {
    "sockets": "socket",
    "lighting": "luminaire",
    "heating": "heater",
    "motor": "motor_1ph",
}


#: Signs that the line runs through, and how far down their 10 mm box it leaves them, mm.
RUNS_THROUGH = {
    "isolator_enclosed": 10.0,
    "isolator": 10.0,
    STARTER_SIGN: 10.0,
    "switch_disconnector": 10.0,
    "fused_spur": 10.0,
    "junction_box": 10.0,
    "light_switch": 7.6,
    "terminal": 10.0,
}


@dataclass(frozen=True)
class Stage:
    """One sign of a chain with the cables that lead to it.

    Attributes:
        points: tags of the points it stands for; empty for a board or an unrecorded load.
        symbol: name of the sign.
        cables: tags of the cables from the sign before; several where like points are gathered.
        feeds: tag of the board that the chain goes on to, or "".
        gathered: unlike points stand under this one sign; the cable schedule tells them apart.
    """

    points: tuple[str, ...]
    symbol: str
    cables: tuple[str, ...]
    feeds: str = ""
    gathered: bool = False

    @property
    def runs_through(self) -> bool:
        """Whether a line that goes on runs through the sign, or passes it with a branch."""
        return self.symbol in RUNS_THROUGH


@dataclass(frozen=True)
class Column:
    """One place on a busbar: a way in use, a spare, or neighbouring blank ways gathered."""

    kind: Literal["circuit", "spare", "blank"]
    ways: tuple[Way, ...]
    circuit: str = ""
    stages: tuple[Stage, ...] = ()


@dataclass(frozen=True)
class BoardTree:
    """A board with its columns in true way order."""

    tag: str
    columns: tuple[Column, ...]


def board_trees(installation: Installation) -> tuple[BoardTree, ...]:
    """Return every board with its columns, in the order of feeding, then of the spec."""
    return tuple(
        BoardTree(board.tag, _columns(board, installation))
        for board in _feeding_order(installation)
    )


def _feeding_order(installation: Installation) -> list[Board]:
    """Return boards so that each comes after the one that feeds it, where one does."""
    boards, circuits = installation.boards, installation.circuits
    children: dict[str, list[Board]] = {}
    for board in boards.values():
        feeder = circuits.get(board.fed_by)
        parent = feeder.board if feeder is not None and feeder.board in boards else ""
        children.setdefault(parent, []).append(board)
    order: list[Board] = []
    waiting = list(children.get("", []))
    while waiting:
        board = waiting.pop(0)
        order.append(board)
        waiting.extend(children.get(board.tag, []))
    seen = {board.tag for board in order}
    return order + [board for board in boards.values() if board.tag not in seen]


def _columns(board: Board, installation: Installation) -> tuple[Column, ...]:
    columns: list[Column] = []
    for way in board.ways:
        if way.circuit:
            circuit = installation.circuits[way.circuit]
            columns.append(Column("circuit", (way,), way.circuit, chain(circuit, installation)))
        elif way.words != BLANK:
            columns.append(Column("spare", (way,)))
        elif columns and columns[-1].kind == "blank":
            columns[-1] = replace(columns[-1], ways=(*columns[-1].ways, way))
        else:
            columns.append(Column("blank", (way,)))
    return tuple(columns)


def chain(circuit: Circuit, installation: Installation) -> tuple[Stage, ...]:
    """Return the signs of a circuit in order from the board; like neighbours are gathered.

    The cable that closes a ring is told with those that lead to the last sign.
    """
    cables = [installation.cables[tag] for tag in circuit.cables]
    if circuit.feeds_board:
        tags = tuple(cable.tag for cable in cables)
        return (Stage((), FLAG, tags, feeds=circuit.feeds_board),)
    if not circuit.points:
        return (Stage((), _sign_of_use(circuit), tuple(cable.tag for cable in cables)),)
    stages: list[Stage] = []
    for tag in circuit.points:
        point = installation.points[tag]
        leading = tuple(cable.tag for cable in cables if cable.to_end == tag)
        stage = Stage((tag,), _sign_of_point(point, circuit), leading)
        if stages and _alike(stages[-1], stage, installation):
            before = stages[-1]
            stages[-1] = replace(
                before, points=(*before.points, tag), cables=(*before.cables, *leading)
            )
        else:
            stages.append(stage)
    if circuit.ring:
        closing = tuple(cable.tag for cable in cables if cable.to_end == circuit.board)
        stages[-1] = replace(stages[-1], cables=(*stages[-1].cables, *closing))
    return tuple(stages)


def shortened_chain(stages: tuple[Stage, ...], most: int) -> tuple[Stage, ...]:
    """Return at most ``most`` signs: the rest of a long chain stands under its last sign.

    A starter is drawn with what it starts, however long the chain is up to there.
    """
    starters = [i for i, stage in enumerate(stages) if stage.symbol == STARTER_SIGN]
    most = max([most, *(i + 2 for i in starters)])
    if len(stages) <= most:
        return stages
    tail = stages[most - 1 :]
    last = Stage(
        tuple(tag for stage in tail for tag in stage.points),
        tail[-1].symbol,
        tuple(tag for stage in tail for tag in stage.cables),
        gathered=True,
    )
    return (*stages[: most - 1], last)


def _sign_of_use(circuit: Circuit) -> str:
    if circuit.use == "motor" and circuit.phase == "TP":
        return "motor_3ph"
    return SIGN_OF_USE.get(circuit.use, "terminal")


def _sign_of_point(point: PointServed, circuit: Circuit) -> str:
    return point_kind(point.kind).symbol_for(
        has_rcd=point.rcd is not None, is_three_phase=circuit.phase == "TP", gangs=point.gangs
    )


def _alike(stage: Stage, new: Stage, installation: Installation) -> bool:
    """Tell whether a point may join the sign before it: same thing, same cable, same state."""
    first, point = installation.points[stage.points[0]], installation.points[new.points[0]]
    same_thing = stage.symbol == new.symbol and _facts(first) == _facts(point)
    # an isolator or a box is never gathered: the supply passes through each in its own right
    passes_on = not point_kind(point.kind).serves
    kinds = {cable_kind(installation.cables[tag]) for tag in (*stage.cables, *new.cables)}
    return same_thing and not passes_on and len(kinds) <= 1


def _facts(point: PointServed) -> tuple[object, ...]:
    return (
        point.kind,
        point.gangs,
        point.fuse_a,
        point.rating_a,
        point.poles,
        point.rcd,
        point.state,
    )


def cable_kind(cable: Cable) -> tuple[object, ...]:
    """Return what makes two cables the same for a drawing: all but tag, ends and length."""
    return (cable.family, cable.cores, cable.csa_mm2, cable.cpc, cable.state)


def is_drawn_narrow(state: State) -> bool:
    """Tell whether a thing is drawn narrow: everything that this job does not bring."""
    return state is not State.NEW
