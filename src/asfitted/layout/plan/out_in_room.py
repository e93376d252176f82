"""What hangs out in the room: its place in figures, and the cables that reach it off the walls."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.elevation.wall_view import height_words, on_wall
from asfitted.layout.table import Column, Table

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.calculate.results import CableRoute, CalculationResults
    from asfitted.resolve.installation import DataDevice, Installation, PointServed

TITLE = "Out in the room"
COLUMNS = (
    Column("Tag", wraps=False),
    Column("What"),
    Column("From wall"),
    Column("Along mm", "end"),
    Column("Out mm", "end"),
    Column("C/L mm", "end"),
    Column("Cables off the walls"),
)


def out_table(installation: Installation, results: CalculationResults) -> Table | None:
    """Return a row for each thing that is held off its wall, or None when there are none.

    "Along" runs from the left-hand corner of the wall as seen from inside, "out" from its face.
    """
    things = _things(installation)
    if not things:
        return None
    cables = _cables(installation, results, things)
    rows = tuple(
        (
            tag,
            _kind_words(thing),
            thing.position.wall,
            f"{thing.position.along_mm:.0f}",
            f"{thing.position.out_mm:.0f}",
            height_words(thing.position.up_mm),
            "\n".join(cables[tag]) or "none off the walls",
        )
        for tag, thing in things.items()
    )
    return Table(COLUMNS, rows, tuple(f"out:{tag}" for tag in things))


def _things(installation: Installation) -> dict[str, PointServed | DataDevice]:
    groups = (installation.points, installation.data_devices)
    return {
        tag: thing
        for group in groups
        for tag, thing in group.items()
        if thing.position.wall and not thing.position.outside and thing.position.out_mm > 0
    }


def _kind_words(thing: PointServed | DataDevice) -> str:
    state = "" if thing.state == "new" else f", {thing.state}"
    return f"{thing.kind}{state}"


def _cables(
    installation: Installation,
    results: CalculationResults,
    things: dict[str, PointServed | DataDevice],
) -> dict[str, list[str]]:
    """Return for each thing its cables that leave the walls: from where, and in what."""
    found: dict[str, list[str]] = {tag: [] for tag in things}
    for name, route in results.routes.items():
        cable = installation.cables.get(name)
        holders = tuple(
            dict.fromkeys(leg.enclosure for leg in route.legs if leg.kind == "off-wall")
        )
        if cable is None or not holders:
            continue
        here, there = cable.to_end, cable.from_end
        if here not in things:
            here, there = there, here
        if here in things:
            wall = "" if there in things else next(_walls(installation, route), "")
            start = wall or there
            side = "from" if here == cable.to_end else "to"
            unknown = "" if route.way_surveyed else ", way not surveyed"
            words = cable.drop if cable.drop and "clipped" not in holders else ", ".join(holders)
            found[here].append(f"{name} {side} {start}, {words}{unknown}")
    return found


def _walls(installation: Installation, route: CableRoute) -> Iterator[str]:
    """Yield where a cable leaves a wall for the room: "wall A at 2000"."""
    for leg in route.legs:
        wall = installation.walls.get(leg.wall)
        if leg.kind == "off-wall" and wall is not None:
            ends = [on_wall(wall, leg.start), on_wall(wall, leg.end)]
            nearest = min(ends, key=lambda end: abs(end.out))
            yield f"wall {wall.name} at {round(nearest.along)}"
