"""A small installation built by hand for the tests of ways, lengths and sections.

One room 8 m by 6 m, 3 m high. Walls clockwise on plan: A along the top (east), B down the right,
C back along the bottom, D up the left, as seen from inside, left to right.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any

from asfitted.geometry import Point, Point3
from asfitted.resolve.installation import (
    Basis,
    Board,
    Cable,
    Circuit,
    Containment,
    Device,
    Installation,
    Job,
    Opening,
    PointServed,
    Position,
    Room,
    State,
    Wall,
)

if TYPE_CHECKING:
    from collections.abc import Iterable

WIDE_MM, DEEP_MM, HIGH_MM = 8000.0, 6000.0, 3000.0


def walls(
    openings: dict[str, tuple[Opening, ...]] | None = None, room: str = "Room", names: str = "ABCD"
) -> dict[str, Wall]:
    found = openings or {}
    corners = [(0.0, 0.0), (WIDE_MM, 0.0), (WIDE_MM, -DEEP_MM), (0.0, -DEEP_MM)]
    along = [(1.0, 0.0), (0.0, -1.0), (-1.0, 0.0), (0.0, 1.0)]
    lengths = [WIDE_MM, DEEP_MM, WIDE_MM, DEEP_MM]
    return {
        name: Wall(
            name=name,
            room=room,
            length_mm=lengths[n],
            height_mm=HIGH_MM,
            start=Point(*corners[n]),
            direction=Point(*along[n]),
            inward=Point(along[n][1], -along[n][0]),
            next_wall=names[(n + 1) % 4],
            openings=found.get(name, ()),
        )
        for n, name in enumerate(names)
    }


def place(wall: Wall, along_mm: float, up_mm: float, out_mm: float = 0.0) -> Point3:
    return Point3(
        wall.start.x + wall.direction.x * along_mm + wall.inward.x * out_mm,
        wall.start.y + wall.direction.y * along_mm + wall.inward.y * out_mm,
        up_mm,
    )


def position(
    wall: Wall, along: float, up: float, out: float = 0.0, *, outside: bool = False
) -> Position:
    at = place(wall, along, up, -out if outside else out)
    return Position("", wall.name, along, up, out, outside, at)


def run(
    tag: str,
    corners: Iterable[tuple[Wall, float, float]],
    on: tuple[str, ...],
    *,
    bands: tuple[Any, ...] = ("power",),
    **changes: Any,
) -> Containment:
    """Return a tray from corner points (wall, along, up) and the wall of each piece."""
    made = Containment(
        tag=tag,
        kind="perforated tray",
        words="150 × 25 perforated tray",
        width_mm=150.0,
        height_mm=25.0,
        bands=bands,
        state=State.NEW,
        level_mm=2500.0,
        level_of="T/O",
        path=tuple(place(*corner) for corner in corners),
        walls=on,
        declared_length_m=None,
        declared_basis=None,
        depth_mm=None,
        end_words="",
    )
    return replace(made, **changes)


def declared(tag: str, start: Point3, length_m: float, **changes: Any) -> Containment:
    """Return a buried duct of a declared length."""
    made = run(tag, (), (), kind="buried duct", bands=("power",), width_mm=50.0, height_mm=50.0)
    made = replace(
        made,
        path=(start,),
        declared_length_m=length_m,
        declared_basis=Basis.MEASURED,
        depth_mm=500.0,
    )
    return replace(made, **changes)


def point(tag: str, where: Position, kind: str = "13 A socket", **changes: Any) -> PointServed:
    made = PointServed(
        tag=tag,
        kind=kind,
        words="",
        name="",
        state=State.NEW,
        position=where,
        rating_a=None,
        poles=None,
        gangs=1,
        fuse_a=None,
        ip="",
        rcd=None,
        load_w=None,
        load_a=None,
        power_factor=1.0,
        circuit="DB1/1",
    )
    return replace(made, **changes)


def board(where: Position, tag: str = "DB1", height_mm: float = 600.0) -> Board:
    return Board(
        tag=tag,
        name="",
        state=State.NEW,
        position=where,
        width_mm=400.0,
        height_mm=height_mm,
        way_count=8,
        phases=3,
        rating_a=100.0,
        main_switch=None,
        fed_by="supply",
        ip="",
        short_circuit_rating_ka=None,
        zs_ohm=None,
        ipf_ka=None,
        ways=(),
    )


def cable(tag: str, from_end: str, to_end: str, **changes: Any) -> Cable:
    made = Cable(
        tag=tag,
        circuit="DB1/1",
        band="power",
        family="swa",
        cores=4,
        csa_mm2=6.0,
        cpc="armour",
        from_end=from_end,
        to_end=to_end,
        state=State.NEW,
        measured_length_m=None,
        via=(),
        clipped_up_mm=None,
        drop="clipped",
        ambient_c=30.0,
    )
    return replace(made, **changes)


def circuit(tag: str = "DB1/1", rating_a: float = 20.0, phase: Any = "TP") -> Circuit:
    device = Device(f"C{rating_a:g} TP", "mcb", "BS EN 60898", rating_a, "TP", "C")
    return Circuit(
        tag=tag,
        number=1,
        name="",
        place="",
        state=State.NEW,
        board="DB1",
        way="1",
        phase=phase,
        use="power",
        device=device,
        points=(),
        points_served=1,
        cables=(),
        feeds_board="",
        load_w=None,
        load_a=None,
        power_factor=1.0,
        vulnerable="none",
    )


def installation(
    *,
    on: dict[str, Wall],
    boards: Iterable[Board] = (),
    points: Iterable[PointServed] = (),
    cables: Iterable[Cable] = (),
    runs: Iterable[Containment] = (),
    **more: Any,
) -> Installation:
    rooms: dict[str, Room] = {}
    for wall in on.values():
        names = tuple(name for name, other in on.items() if other.room == wall.room)
        rooms[wall.room] = Room(wall.room, HIGH_MM, "", "", names)
    words: dict[str, Any] = dict.fromkeys(
        (
            "number",
            "title",
            "client",
            "site",
            "installer",
            "phone",
            "designer",
            "checker",
            "edition",
            "date",
            "revision",
            "status",
            "description",
        ),
        "not recorded",
    )
    return Installation(
        job=Job(**words),
        supply=None,
        rooms=rooms,
        walls=on,
        boards={b.tag: b for b in boards},
        circuits={"DB1/1": circuit()},
        points={p.tag: p for p in points},
        cables={c.tag: c for c in cables},
        containment={r.tag: r for r in runs},
        **more,
    )
