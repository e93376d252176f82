"""Sentences of a comparison: what a thing is called, and what happened to it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.compare.aspects import place_words
from asfitted.compare.figure_words import given

if TYPE_CHECKING:
    from asfitted.resolve.installation import (
        Board,
        Cable,
        Circuit,
        Containment,
        DataDevice,
        PointServed,
    )


def circuit_name(circuit: Circuit) -> str:
    """Return tag and name of a circuit."""
    return f"{circuit.tag} {circuit.name}"


def point_name(point: PointServed) -> str:
    """Return tag and kind of a point, or its name."""
    return f"{point.tag} ({point.name or point.words.partition(',')[0]})"


def board_name(board: Board) -> str:
    """Return tag and name of a board."""
    return f"board {board.tag}" + (f" {board.name}" if board.name not in {"", board.tag} else "")


def cable_name(cable: Cable) -> str:
    """Return tag and ends of a cable."""
    return f"cable {cable.tag} ({cable.from_end} to {cable.to_end})"


def run_name(run: Containment) -> str:
    """Return tag and kind of a run."""
    return f"{run.tag} ({run.kind})"


def device_name(device: DataDevice) -> str:
    """Return tag and kind of a data device."""
    return f"{device.tag} ({device.kind})"


def circuit_facts(circuit: Circuit) -> str:
    """Return what is said of a circuit that came or went."""
    load = given(circuit.load_w, "kW", 1000.0) if circuit.load_w is not None else ""
    serves = ", ".join((*circuit.points, circuit.feeds_board)).strip(", ")
    parts = [circuit.device.words, load, f"serves {serves}" if serves else ""]
    return ", ".join(part for part in parts if part)


def point_facts(point: PointServed) -> str:
    """Return what is said of a point that came or went."""
    return f"{point.words}, {place_words(point.position)}, on {point.circuit}"


def board_facts(board: Board) -> str:
    """Return what is said of a board that came or went."""
    return f"{board.way_count} ways, fed from {board.fed_by}, {place_words(board.position)}"


def run_facts(run: Containment) -> str:
    """Return what is said of a run that came or went."""
    walls = ", ".join(dict.fromkeys(name or "overhead" for name in run.walls))
    return f"{run.words} for {' and '.join(run.bands)}" + (f", wall {walls}" if walls else "")


def device_facts(device: DataDevice) -> str:
    """Return what is said of a data device that came or went."""
    return f"{device.kind}, {place_words(device.position)}"


def sentence(words: str) -> str:
    """Return words that start with a capital."""
    return words[:1].upper() + words[1:]


def altered(name: str, aspect: str, old: str, new: str) -> str:
    """Return the sentence for one aspect that changed."""
    if aspect == "position":
        return sentence(f"{name} moved: from {old} to {new}")
    if old == new:
        return sentence(f"{name}: another {aspect}, still {new}")
    return sentence(f"{name}: {aspect} now {new}, was {old}")
