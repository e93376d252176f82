"""Where the things on an elevation lead: to the chart of the board that feeds them."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Numbers
    from asfitted.resolve.installation import Installation


def links_of(installation: Installation, numbers: Numbers) -> dict[str, str]:
    """Return by tag of a thing the place of its circuit: the row of the door chart of its board.

    Boards lead to their own chart. Where no chart is in the set there is no link.
    """
    links = {}
    for tag, point in installation.points.items():
        circuit = installation.circuits.get(point.circuit)
        if circuit is not None:
            links[tag] = _row(numbers, circuit.board, circuit.way)
    for tag in installation.boards:
        links[tag] = _row(numbers, tag, "heading")
    return {tag: link for tag, link in links.items() if link}


def _row(numbers: Numbers, board: str, way: str) -> str:
    key = f"door-chart/{board}"
    sheet = numbers.by_key.get(key) or numbers.by_key.get(f"{key}-1", "")
    return f"{sheet}#{key}:{way}" if sheet else ""
