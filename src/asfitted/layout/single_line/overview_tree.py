"""Which board feeds which, as a tree in true way order; and what each box of the overview says."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.calculate.network import fault_of_ipf
from asfitted.layout.given_words import NOT_RECORDED, known, known_fault, state_word
from asfitted.layout.lettering import BODY, TAG
from asfitted.layout.single_line import words as say
from asfitted.layout.single_line.parts import SUPPLY
from asfitted.layout.single_line.phrases import set_phrases, wrapped

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.layout.sheet_model import Model
    from asfitted.resolve.installation import Board, Installation


@dataclass(frozen=True)
class Node:
    """A board, or the supply where it feeds several, with the boards fed from it."""

    tag: str
    children: tuple[Node, ...]

    @property
    def depth(self) -> int:
        """How many boxes stand one behind the other, this one counted."""
        return 1 + max((child.depth for child in self.children), default=0)


def distribution_tree(installation: Installation) -> Node:
    """Return the tree of a job with boards; the supply is its root where it feeds several."""
    reached: set[str] = set()
    roots = [b for b in installation.boards.values() if b.fed_by not in installation.circuits]
    nodes = [_node(board, installation, reached) for board in roots]
    return nodes[0] if len(nodes) == 1 else Node(SUPPLY, tuple(nodes))


def _node(board: Board, installation: Installation, reached: set[str]) -> Node:
    reached.add(board.tag)
    fed = [
        installation.boards[installation.circuits[way.circuit].feeds_board]
        for way in board.ways
        if way.circuit and installation.circuits[way.circuit].feeds_board in installation.boards
    ]
    fresh = [child for child in fed if child.tag not in reached]
    return Node(board.tag, tuple(_node(child, installation, reached) for child in fresh))


def walk(node: Node) -> Iterator[Node]:
    """Return a node and all below it, in order."""
    yield node
    for child in node.children:
        yield from walk(child)


def box_heading(model: Model, node: Node, room_mm: float, *, continued: bool) -> list[str]:
    """Return the heading of a box in lines of tags."""
    if node.tag == SUPPLY:
        return ["Supply", *(["continued"] if continued else [])]
    board = model.installation.boards[node.tag]
    name = board.name if board.name != board.tag else ""
    words = [board.tag, "continued"] if continued else [board.tag, name, state_word(board.state)]
    return wrapped(" · ".join(word for word in words if word), room_mm, TAG, bold=True)


def box_lines(model: Model, node: Node, room_mm: float) -> list[str]:
    """Return what a box says under its heading: place, feed, cable, figures."""
    if node.tag == SUPPLY:
        return []
    board = model.installation.boards[node.tag]
    groups = [_place(model, board), *_feed(model, board), _figures(model, board)]
    return [line for group in groups for line in set_phrases(group, room_mm, BODY)]


def compact_lines(model: Model, node: Node, room_mm: float) -> list[str]:
    """Return what a low box says: place and size, then feed, tag and size of its cable, figures."""
    if node.tag == SUPPLY:
        return []
    board = model.installation.boards[node.tag]
    feed = [phrase for group in _feed(model, board) for phrase in group[:1]]
    groups = [_place(model, board), [*feed, *_figures(model, board)]]
    return [line for group in groups for line in set_phrases(group, room_mm, BODY)]


def _place(model: Model, board: Board) -> list[str]:
    place = ", ".join(say.position_phrases([board.position])) or f"place {NOT_RECORDED}"
    rating = f"rating {NOT_RECORDED}" if board.rating_a is None else f"{board.rating_a:g} A"
    phases = "three-phase" if board.phases == 3 else "single-phase"
    return [place, rating, phases, ways_words(board), *_switch(model, board)]


def _switch(model: Model, board: Board) -> list[str]:
    """Return the main switch of a board that hangs on the supply: it isolates the installation."""
    if board.fed_by in model.installation.circuits:
        return []
    switch = board.main_switch
    if switch is None:
        return [f"main switch {NOT_RECORDED}"]
    rating, kind, *residual = say.switch_phrases(switch)
    said = [kind, *residual] if residual else []
    return [" ".join(("main switch", rating, *said))]


def ways_words(board: Board) -> str:
    """Return how many ways a board has and how many of them are free: ``12 ways: 9 used``."""
    used = {way.number for way in board.ways if way.circuit}
    spare = {way.number for way in board.ways if not way.circuit} - used
    plural = "s" if board.way_count != 1 else ""
    return f"{board.way_count} way{plural}: {len(used)} used, {len(spare)} free"


def _feed(model: Model, board: Board) -> list[list[str]]:
    """Return what protects the feed of a board, and the cable that comes in."""
    circuit = model.installation.circuits.get(board.fed_by)
    if circuit is None:
        return []
    device = " ".join(say.device_phrases(circuit.device))
    cables = [model.installation.cables[tag] for tag in circuit.cables]
    if not cables:
        return [[f"from {circuit.tag}: {device}"], [f"cable {NOT_RECORDED}"]]
    phrases = say.cable_phrases(model, cables)
    return [[f"from {circuit.tag}: {device}"], phrases]


def _figures(model: Model, board: Board) -> list[str]:
    """Return fault current and Zs at the busbars: as given, then as calculated."""
    result = model.results.boards.get(board.tag)
    fault = zs = None
    if result is not None:
        fault = result.fault_max_3ph_ka if board.phases == 3 else result.fault_max_1ph_ka
        zs = result.zs_ohm
    given = []
    if board.ipf_ka is not None:
        given.append(f"Ipf {known_fault(board.ipf_ka, board.phases)}")
    if board.zs_ohm is not None:
        given.append(f"Zs {known(board.zs_ohm, 'Ω')}")
    if fault is None or zs is None:
        return [*given, f"Ipf {say.figure(fault, 'kA', 2)}", f"Zs {say.figure(zs, 'Ω', 2)}"]
    which = fault_of_ipf(board.phases)
    return [*given, f"Ipf {fault:.2f} kA {which} and Zs {zs:.2f} Ω calculated"]
