"""Runs of containment: written waypoints to corner points in the building."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal, cast

from asfitted.geometry import Point3
from asfitted.resolve.installation import Basis, Containment, State
from asfitted.resolve.positions import place_on
from asfitted.spec.problem_codes import Code

if TYPE_CHECKING:
    from asfitted.resolve.installation import Wall
    from asfitted.resolve.ledger import Ledger
    from asfitted.resolve.positions import Positions
    from asfitted.spec.containment import RunWords
    from asfitted.spec.load_yaml import SpecPath
    from asfitted.spec.words import WaypointWords

Face = Literal["T/O", "U/S", "C/L"]
_FACE: dict[str, Face] = {"perforated tray": "T/O", "wire basket": "T/O", "cable ladder": "T/O"}
_ROUND = ("steel conduit", "plastic conduit", "buried duct")


class _Trace:
    """Follows waypoints along the walls of a room and notes the corner points."""

    def __init__(self, level_mm: float, positions: Positions, tag: str) -> None:
        self.level_mm = level_mm
        self.positions = positions
        self.tag = tag
        self.wall: Wall | None = None
        self.along_mm = 0.0
        self.points: list[Point3] = []
        self.walls: list[str] = []
        self.rooms: set[str] = set()

    def step(self, words: WaypointWords, following: WaypointWords | None, path: SpecPath) -> bool:
        """Go on to one waypoint; False when the run cannot be followed any further."""
        wall = self._wall_of(words, path)
        if wall is None:
            return False
        what = f"run {self.tag}"
        if words.along_mm is not None and not self.positions.along_is_on(
            wall, words.along_mm, path, what
        ):
            return False
        if words.up_mm is not None and words.up_mm > wall.height_mm:
            message = (
                f"{what} goes {words.up_mm:g} mm up wall {wall.name}, "
                f"which is {wall.height_mm:g} mm high"
            )
            self.positions.ledger.problem(Code.POSITION, message, path)
            return False
        self.rooms.add(wall.room)
        if self.wall is None:
            return self._start(wall, words, following, path)
        if words.over:
            self._go(wall, words.along_mm or 0.0, words.up_mm, pieces_on="")
            return True
        return self._along_walls(wall, words, path)

    def _wall_of(self, words: WaypointWords, path: SpecPath) -> Wall | None:
        """Return the wall of a waypoint: of the room the run is in, where none is written."""
        near = self.wall.room if self.wall else ""
        return self.positions.wall(words.wall, path, room=words.room, near=near)

    def _start(
        self,
        wall: Wall,
        words: WaypointWords,
        following: WaypointWords | None,
        path: SpecPath,
    ) -> bool:
        along_mm = words.along_mm
        if along_mm is None:
            if following is None or following.wall in (wall.name, wall.letter):
                return self._lost(
                    f"run {self.tag} does not say where on wall {wall.name} it starts", path
                )
            next_wall = self.positions.walls[wall.next_wall]
            is_next = following.wall in (next_wall.name, next_wall.letter)
            along_mm = 0.0 if is_next else wall.length_mm
        self.wall, self.along_mm = wall, along_mm
        z = self.level_mm if words.up_mm is None else words.up_mm
        self.points.append(place_on(wall, along_mm, z))
        return True

    def _along_walls(self, wall: Wall, words: WaypointWords, path: SpecPath) -> bool:
        here = self.wall
        if here is None or (wall.name == here.name and words.along_mm is None):
            return self._lost(
                f'run {self.tag}: "{words.words}" passes a wall it is on already', path
            )
        if wall.name == here.name:
            self._go(wall, words.along_mm or 0.0, words.up_mm, pieces_on=wall.name)
            return True
        is_clockwise = here.next_wall == wall.name
        if not is_clockwise and wall.next_wall != here.name:
            message = (
                f"run {self.tag} goes from wall {here.name} to wall {wall.name}, which do not meet"
            )
            hint = f'name the walls between them, or write "over to {wall.name} 2.0 m"'
            self.positions.ledger.problem(Code.RUN, message, path, hint)
            return False
        self._go(here, here.length_mm if is_clockwise else 0.0, None, pieces_on=here.name)
        self.wall, self.along_mm = wall, 0.0 if is_clockwise else wall.length_mm
        far_mm = wall.length_mm if is_clockwise else 0.0
        along_mm = far_mm if words.along_mm is None else words.along_mm
        self._go(wall, along_mm, words.up_mm, pieces_on=wall.name)
        return True

    def _go(self, wall: Wall, along_mm: float, up_mm: float | None, *, pieces_on: str) -> None:
        """Add the pieces to a place: level at the run's height, then up or down to its own."""
        z_end = self.level_mm if up_mm is None else up_mm
        z_now = self.points[-1].z
        z_level = z_now if z_now == z_end else self.level_mm
        start_wall = self.wall.name if self.wall else pieces_on
        last = self.points[-1]
        self._add(Point3(last.x, last.y, z_level), start_wall)
        self._add(place_on(wall, along_mm, z_level), pieces_on)
        self._add(place_on(wall, along_mm, z_end), wall.name)
        self.wall, self.along_mm = wall, along_mm

    def _add(self, point: Point3, wall: str) -> None:
        if point != self.points[-1]:
            self.points.append(point)
            self.walls.append(wall)

    def _lost(self, message: str, path: SpecPath) -> bool:
        hint = 'write how far along, such as "A 3.0 m"'
        self.positions.ledger.problem(Code.RUN, message, path, hint)
        return False


def _words_of(words: RunWords) -> str:
    width_mm, height_mm = words.size
    # how deep a buried run lies is what the next person with a spade needs
    deep = f", {words.depth / 1000:g} m deep" if words.depth else ""
    if words.kind in _ROUND and width_mm == height_mm:
        return f"{width_mm:g} mm {words.kind}{deep}"
    return f"{width_mm:g} × {height_mm:g} {words.kind}{deep}"


def _level_face(tag: str, words: RunWords, ledger: Ledger) -> Face:
    if words.level and words.level.of:
        return cast("Face", words.level.of)
    face = _FACE.get(words.kind, "U/S")
    if words.level:
        reason = "bare level: tray, basket and ladder to the top of the bed, all else underside"
        ledger.default(tag, "level is to", face, reason)
    return face


def _bands(words: RunWords) -> tuple[Literal["power", "data"], ...]:
    return tuple(band for band in ("power", "data") if band in words.bands)


def _traced(tag: str, words: RunWords, positions: Positions) -> _Trace:
    ledger = positions.ledger
    path: SpecPath = ("containment", tag)
    level_mm = words.level.height_mm if words.level else 0.0
    trace = _Trace(level_mm, positions, tag)
    run = words.run or []
    if words.level is None:
        ledger.problem(Code.MISSING, f'run {tag} lacks "level"', path, "level: 2.7 m U/S")
    if len(run) < 2:
        message = f"run {tag} needs a start and an end"
        ledger.problem(Code.RUN, message, (*path, "run"), "run: [D 1.0 m, A, B 5.6 m]")
    for number, waypoint in enumerate(run):
        following = run[number + 1] if number + 1 < len(run) else None
        if not trace.step(waypoint, following, (*path, "run", number)):
            break
    return trace


def _run_of(tag: str, words: RunWords, positions: Positions) -> Containment:
    trace = _traced(tag, words, positions)
    ledger, path = positions.ledger, ("containment", tag)
    if len(trace.rooms) > 1:
        message = f"run {tag} goes from room to room; write one run in each"
        hint = (
            'and under "passages" the hole that joins them' if ledger.loaded.spec.passages else ""
        )
        ledger.problem(Code.RUN, message, path, hint)
    heights = [positions.walls[name].height_mm for name in trace.walls if name]
    if words.level and heights and words.level.height_mm > min(heights):
        message = (
            f"run {tag} is {words.level.height_mm:g} mm up, "
            f"but its walls are {min(heights):g} mm high"
        )
        ledger.problem(Code.POSITION, message, (*path, "level"))
    for key in ("start", "to"):
        if getattr(words, key) is not None:
            message = f'run {tag} has both "run" and "{"from" if key == "start" else key}"'
            ledger.problem(Code.RUN, message, path, "write one or the other")
    return Containment(
        tag=tag,
        kind=words.kind,
        words=_words_of(words),
        width_mm=words.size[0],
        height_mm=words.size[1],
        bands=_bands(words),
        state=State(words.state or "new"),
        level_mm=trace.level_mm,
        level_of=_level_face(tag, words, ledger),
        path=tuple(trace.points),
        walls=tuple(trace.walls),
        declared_length_m=None,
        declared_basis=None,
        depth_mm=words.depth,
        soil_km_w=words.soil,
        stand_off_mm=words.stand_off,
        end_words="",
    )


def _declared_of(tag: str, words: RunWords, positions: Positions) -> Containment:
    ledger: Ledger = positions.ledger
    path: SpecPath = ("containment", tag)
    for key, value in (("from", words.start), ("to", words.to), ("length", words.length)):
        if value is None:
            message = f'run {tag} lacks "{key}"'
            hint = 'a run has "level" and "run", or "from", "to" and "length"'
            ledger.problem(Code.MISSING, message, path, hint)
    start = positions.resolve(words.start, (*path, "from"), f"run {tag}") if words.start else None
    length = ledger.known(words.length, tag, "length")
    return Containment(
        tag=tag,
        kind=words.kind,
        words=_words_of(words),
        width_mm=words.size[0],
        height_mm=words.size[1],
        bands=_bands(words),
        state=State(words.state or "new"),
        level_mm=start.up_mm if start else 0.0,
        level_of="C/L",
        path=(start.at,) if start else (),
        walls=(),
        declared_length_m=length.value if length else None,
        declared_basis=length.basis if length else Basis.ASSUMED,
        depth_mm=words.depth,
        soil_km_w=words.soil,
        stand_off_mm=words.stand_off,
        end_words=words.to or "",
    )


def containment_of(positions: Positions) -> dict[str, Containment]:
    """Return every run by tag; declared runs are handed to the positions that end there."""
    runs: dict[str, Containment] = {}
    for tag, words in positions.ledger.loaded.spec.containment.items():
        positions.ledger.claim(tag, ("containment", tag))
        if words.run is None and (words.start or words.to or words.length):
            runs[tag] = positions.declared[tag] = _declared_of(tag, words, positions)
        else:
            runs[tag] = _run_of(tag, words, positions)
    return runs
