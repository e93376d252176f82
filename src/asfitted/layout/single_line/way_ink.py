"""One way from the busbar down: device, line, signs of its points, and the name of its load."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Point
from asfitted.layout.lettering import BODY, TAG, wrap
from asfitted.layout.single_line import ink
from asfitted.layout.single_line.phrases import set_phrases, wrapped
from asfitted.layout.single_line.room import (
    BLANK_X,
    DEVICE_X,
    LEG_ENDS,
    PAD,
    PITCH,
    SIGN,
    SPINE,
    STROKES,
    TEXT_X,
    beside_width_mm,
    column_width_mm,
    device_width_mm,
    foot_width_mm,
    point_lines,
    tag_lines,
)
from asfitted.layout.single_line.signs import DOT, device_sign, spare_sign
from asfitted.layout.single_line.tree import FLAG, RUNS_THROUGH
from asfitted.layout.single_line.words import flag_words
from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import Item
    from asfitted.layout.sheet_model import Model, Numbers
    from asfitted.layout.single_line.placing import Levels, PlacedDiagram
    from asfitted.layout.single_line.room import ColumnWords
    from asfitted.layout.single_line.tree import Column, Stage
    from asfitted.resolve.installation import Circuit

BRANCH_X = 8.0  # wire to the middle of a sign on a branch


@dataclass(frozen=True)
class WayPlace:
    """Where one way stands and what it may know of the sheets round it."""

    model: Model
    diagram: PlacedDiagram
    numbers: Numbers
    levels: Levels
    pitch_mm: float
    spine: float
    board: str
    column: Column
    words: ColumnWords


def way_items(place: WayPlace) -> list[Item]:
    """Return every item of one way."""
    column = place.column
    ident = f"{place.board}/{column.ways[0].name}"
    if column.kind == "blank":
        return _blank_items(place, ident)
    state = State.NEW
    if column.circuit:
        state = place.model.installation.circuits[column.circuit].state
    items = _tap_items(place, ident, state)
    if column.kind == "circuit":
        items += _circuit_items(place, place.model.installation.circuits[column.circuit])
    return items


def _blank_items(place: WayPlace, ident: str) -> list[Item]:
    """Return the names of blank ways under the busbar."""
    top = place.levels.busbar + 1.5
    room = column_width_mm(place.words, place.pitch_mm) - BLANK_X - PAD + 0.01
    lines = wrap(place.words.ways, room, TAG, bold=True)
    at = Point(place.spine - SPINE + BLANK_X, top)
    after = at.moved(dy=ink.tag_block_mm(lines))
    return [*ink.tags(f"{ident}:way", lines, at), *ink.words(f"{ident}:blank", ["blank"], after)]


def _tap_items(place: WayPlace, ident: str, state: State) -> list[Item]:
    """Return the tap from the busbar, the device with its words, and the three strokes."""
    levels, x, column = place.levels, place.spine, place.column
    lines = set_phrases(place.words.device, device_width_mm(place.pitch_mm), BODY, join=" ")
    items = ink.tags(f"{ident}:way", [place.words.ways], Point(x + 1.2, levels.busbar + 1.6))
    items += ink.words(f"{ident}:rating", lines, Point(x + DEVICE_X, levels.device + 0.6))
    name = spare_sign(column.ways[0])
    if column.circuit:
        name = device_sign(place.model.installation.circuits[column.circuit].device.kind)
    if name:
        tap = ink.wire(
            f"{ident}:tap", place.board, (x, levels.busbar), (x, levels.device), state=state
        )
        centre = Point(x, levels.device + SIGN / 2)
        items += [tap, ink.sign(f"{ident}:device", place.model, name, centre, state=state)]
        if state is State.REMOVED:
            items.append(ink.struck(f"{ident}:device", Point(x - SIGN / 2, levels.device), 6.6))
    if column.circuit and column.ways[0].phase == "TP":
        centre = Point(x, levels.device + SIGN + STROKES / 2)
        items.append(ink.strokes(f"{ident}:strokes", place.model, centre, state=state))
    return items


def _circuit_items(place: WayPlace, circuit: Circuit) -> list[Item]:
    """Return the lines and signs of a circuit, and the words at its foot."""
    levels, x = place.levels, place.spine
    start = levels.device + SIGN + (STROKES if circuit.phase == "TP" else 0.0)
    items: list[Item] = []
    last = len(place.column.stages) - 1
    for i, stage in enumerate(place.column.stages):
        top = levels.load if i == last else levels.stages[i]
        net, ident = circuit.tag, f"{circuit.tag}:{i + 1}"
        cable = ", ".join(stage.cables)
        passes = i < last and not stage.runs_through
        end = top + SIGN / 2 if passes else top
        items.append(
            ink.wire(f"{ident}:line", net, (x, start), (x, end), state=circuit.state, title=cable)
        )
        items += _leg_words(place, ident, i)
        if i == last:
            items += _last_sign(place, circuit, ident, stage)
        else:
            items += _passed_sign(place, circuit, ident, i, top)
        start = end if passes else top + RUNS_THROUGH.get(stage.symbol, SIGN)
    return items + _name_items(place, circuit)


def _leg_words(place: WayPlace, ident: str, level: int) -> list[Item]:
    """Return the turned text of a line; its lines are as few as its room allows."""
    foot = place.levels.legs[level] - LEG_ENDS / 2
    room = foot - place.levels.leg_tops[level] - LEG_ENDS / 2
    lines = set_phrases(place.words.stages[level].leg, room, BODY)
    return ink.turned(f"{ident}:cable", lines, place.spine, foot)


def _passed_sign(
    place: WayPlace, circuit: Circuit, ident: str, level: int, top: float
) -> list[Item]:
    """Return a sign that the line runs through, or passes with a branch, and its words."""
    stage, spoken = place.column.stages[level], place.words.stages[level]
    model, x = place.model, place.spine
    under = Point(x + DEVICE_X, top + SIGN + 0.4)
    width = device_width_mm(place.pitch_mm)
    if stage.runs_through:
        lines = tag_lines(spoken, beside_width_mm(place.pitch_mm))
        tags_at = Point(x + TEXT_X, top + 0.8)
        words_at = Point(under.x, max(under.y, tags_at.y + ink.tag_block_mm(lines)))
        items = [
            ink.sign(
                f"{ident}:sign", model, stage.symbol, Point(x, top + SIGN / 2), state=circuit.state
            )
        ]
    else:
        y = top + SIGN / 2
        centre = Point(x + BRANCH_X, y)
        lines, tags_at = tag_lines(spoken, width), under
        words_at = under.moved(dy=ink.tag_block_mm(lines))
        items = [
            ink.sign(f"{ident}:dot", model, DOT, Point(x, y), state=circuit.state),
            ink.wire(
                f"{ident}:branch",
                circuit.tag,
                (x, y),
                (centre.x - SIGN / 2, y),
                state=circuit.state,
            ),
            ink.sign(f"{ident}:sign", model, stage.symbol, centre, turn=270, state=circuit.state),
        ]
    items += ink.tags(f"{ident}:tags", lines, tags_at)
    return items + ink.words(f"{ident}:what", set_phrases(spoken.points, width, BODY), words_at)


def _last_sign(place: WayPlace, circuit: Circuit, ident: str, stage: Stage) -> list[Item]:
    """Return the sign at the end of a line with its tags beside it and its words under it."""
    levels, x = place.levels, place.spine
    spoken = place.words.stages[-1]
    centre = Point(x, levels.load + SIGN / 2)
    lines = tag_lines(spoken, beside_width_mm(place.pitch_mm))
    items = ink.tags(f"{ident}:tags", lines, Point(x + TEXT_X, levels.load + 1.0))
    at = Point(ink.left_of(x), levels.points + 0.8)
    if stage.symbol == FLAG and stage.feeds:
        twin = place.diagram.where(f"from:{stage.feeds}", place.numbers)
        number, zone = twin if twin is not None else ("not drawn", "")
        link = f"{number}#from:{stage.feeds}" if twin is not None else ""
        items.append(ink.flag(f"to:{stage.feeds}", centre, ink.FLAG_JOINED_ABOVE, link))
        said = flag_words("to", number, zone) if twin is not None else ("board not drawn",)
        lines = set_phrases(said, foot_width_mm(place.pitch_mm), BODY)
        return items + ink.words(f"to:{stage.feeds}:words", lines, at)
    items.append(ink.sign(f"{ident}:sign", place.model, stage.symbol, centre, state=circuit.state))
    if circuit.state is State.REMOVED:
        items.append(ink.struck(f"{ident}:sign", Point(x - SIGN / 2, levels.load), SIGN))
    return items + ink.words(f"{ident}:what", point_lines(place.words, place.pitch_mm), at)


def _name_items(place: WayPlace, circuit: Circuit) -> list[Item]:
    """Return the name of the load, its place, and its calculated figures."""
    room = foot_width_mm(place.pitch_mm)
    at = Point(ink.left_of(place.spine), place.levels.names + 0.5)
    name = wrapped(place.words.name, room, BODY, bold=True)
    items = ink.words(f"{circuit.tag}:name", name, at, bold=True)
    under = at.moved(dy=len(name) * PITCH)
    items += ink.words(f"{circuit.tag}:place", set_phrases(place.words.place, room, BODY), under)
    lowest = Point(at.x, place.levels.figures + 0.5)
    return items + ink.words(f"{circuit.tag}:figures", place.words.figures, lowest)
