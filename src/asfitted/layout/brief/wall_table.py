"""The table under the sketch of a wall: what is to be done there, where and how high."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.brief.card_words import named_words
from asfitted.layout.brief.in_place import FOUND, NOTHING_TO_DO, in_place
from asfitted.layout.elevation.wall_view import height_words
from asfitted.layout.table import Column, Table

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from asfitted.layout.brief.wall_sketch import WallWork
    from asfitted.layout.elevation.things_on_wall import Thing
    from asfitted.layout.sheet_model import Model
    from asfitted.resolve.job_record import SiteMark

BOX = "☐"
COLUMNS = (
    Column("Tag", least_mm=14.0),
    Column("What is to be done"),
    Column("Along mm", align="end", wraps=False, least_mm=24.0),
    Column("Height mm", align="end", wraps=False),
    Column("Done", align="middle", wraps=False),
)


def work_table(work: WallWork, model: Model) -> Table:
    """Return what is to be done on a wall, left to right: runs, things, then drops."""
    rows: list[tuple[str, ...]] = []
    content, found = work.content, in_place(model.installation)
    for piece in content.pieces:
        what, done = _to_do(piece.run.tag, str(piece.run.state), piece.run.words, found)
        ends = f"{piece.start.along:.0f} to {piece.end.along:.0f}"
        along = ends if piece.is_level else f"{piece.start.along:.0f}"
        rows.append((piece.run.tag, what, along, piece.level, done))
    for thing in sorted(content.things, key=lambda t: t.at.along):
        if thing.state == "existing":
            what, done = f"{thing.words}: existing, live until proved dead", "–"
        else:
            face = " on the outer face" if thing.is_outside else ""
            words = f"{_named(thing, model)}{face}"
            what, done = _to_do(thing.tag, str(thing.state), words, found)
        rows.append((thing.tag, what, f"{thing.at.along:.0f}", height_words(thing.at.up), done))
    rows += _passage_rows(work, model)
    rows += _stretch_rows(work, model)
    idents = tuple(f"{content.wall.name}/{i}" for i in range(len(rows)))
    return Table(COLUMNS, tuple(rows), idents)


def _named(thing: Thing, model: Model) -> str:
    """Return a thing by its own name first: "kiln, heating load"."""
    point = model.installation.points.get(thing.tag)
    return named_words(point.name if point is not None else "", thing.words)


def _to_do(tag: str, state: str, words: str, found: Mapping[str, SiteMark]) -> tuple[str, str]:
    """Return what is to be done with a thing, and the box to tick, or that it is in place."""
    if state == "removed":
        return f"take out {words}", BOX
    if tag in found:
        return f"{words}: {FOUND}", NOTHING_TO_DO
    return f"fix {words}", BOX


def _passage_rows(work: WallWork, model: Model) -> Iterator[tuple[str, ...]]:
    """Yield a row for each new hole to another room."""
    for passage in work.content.passages:
        if model.installation.passages[passage.tag].state == "new":
            size = f"{passage.width_mm:.0f} × {passage.height_mm:.0f}"
            what = f"hole {size} through the {passage.through} to {passage.to_room}, sealed after"
            up = height_words(passage.at.up)
            yield passage.tag, what, f"{passage.at.along:.0f}", up, BOX


def _stretch_rows(work: WallWork, model: Model) -> Iterator[tuple[str, ...]]:
    """Yield a row for each drop, clipped length and hole, left to right."""
    found = in_place(model.installation)
    for s in sorted(work.content.stretches, key=lambda s: s.start.along):
        tags = [c for c in s.cables if model.installation.cables[c].state != "existing"]
        levels = " to ".join(dict.fromkeys(height_words(p.up) for p in (s.start, s.end)))
        along = " to ".join(dict.fromkeys(f"{p.along:.0f}" for p in (s.start, s.end)))
        words, is_found = _way_words(s.way, s.holder), all(tag in found for tag in tags)
        told = f"{words}: {FOUND}" if is_found else words
        yield ", ".join(tags), told, along, levels, NOTHING_TO_DO if is_found else BOX


def _way_words(way: str, holder: str) -> str:
    if way == "through-wall":
        return "hole through the wall, made good after"
    if way == "off-wall":
        return "leaves the wall into the room: see its card"
    return f"cable, {holder}" if holder == "clipped" else f"{holder} with the cable in it"
