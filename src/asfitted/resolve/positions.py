"""Written positions to places in the building, checked against wall, room and openings."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.geometry import Point3
from asfitted.resolve.installation import Position
from asfitted.resolve.wall_names import WallNames
from asfitted.spec.problem_codes import Code

if TYPE_CHECKING:
    from collections.abc import Mapping

    from asfitted.resolve.installation import Containment, Wall
    from asfitted.resolve.ledger import Ledger
    from asfitted.spec.load_yaml import SpecPath
    from asfitted.spec.words import PositionWords

ORIGIN = Point3(0.0, 0.0, 0.0)


def place_on(wall: Wall, along_mm: float, up_mm: float, out_mm: float = 0.0) -> Point3:
    """Return the place in the building; ``out_mm`` below nought is outside the wall."""
    return Point3(
        wall.start.x + wall.direction.x * along_mm + wall.inward.x * out_mm,
        wall.start.y + wall.direction.y * along_mm + wall.inward.y * out_mm,
        up_mm,
    )


class Positions:
    """Resolves positions of one job; holds the walls and the declared runs that have an end."""

    def __init__(self, walls: Mapping[str, Wall], ledger: Ledger) -> None:
        """Take the walls; declared runs are added as they are resolved."""
        self.walls = walls
        self.ledger = ledger
        self.declared: dict[str, Containment] = {}
        self.names = WallNames((wall.room, wall.letter or wall.name) for wall in walls.values())

    def wall(self, letter: str, path: SpecPath, *, room: str = "", near: str = "") -> Wall | None:
        """Return a wall by its letter; an unknown or unclear one is noted.

        ``room`` is the room that is written before it, ``near`` the one meant when none is.
        """
        found = self.names.find(room, letter, path, self.ledger, near=near)
        return self.walls[self.names.name(*found)] if found else None

    def along_is_on(self, wall: Wall, along_mm: float, path: SpecPath, what: str) -> bool:
        """Tell whether a distance along lies on its wall; one that does not is noted."""
        if along_mm <= wall.length_mm:
            return True
        message = (
            f"{what} is {along_mm:g} mm along wall {wall.name}, "
            f"which is {wall.length_mm:g} mm ({wall.length_mm / 1000:g} m) long"
        )
        self.ledger.problem(Code.POSITION, message, path)
        return False

    def resolve(
        self, words: PositionWords, path: SpecPath, what: str, *, default_up_mm: float | None = None
    ) -> Position | None:
        """Return a position, or None when it cannot be placed.

        A height that is left out is taken from ``default_up_mm`` and recorded; with no default it
        is a problem. The end of a declared run is placed where the run starts: only its words and
        ``end_of`` say where it really is.
        """
        if words.end_of:
            return self._end_of(words, path)
        wall = self.wall(words.wall, path, room=words.room)
        up_mm = self._up(words, path, what, default_up_mm)
        if wall is None or up_mm is None:
            return None
        self._check(words, wall, up_mm, path, what)
        out_mm = -words.out_mm if words.outside else words.out_mm
        return Position(
            words=words.words,
            wall=wall.name,
            along_mm=words.along_mm,
            up_mm=up_mm,
            out_mm=words.out_mm,
            outside=words.outside,
            at=place_on(wall, words.along_mm, up_mm, out_mm),
        )

    def _end_of(self, words: PositionWords, path: SpecPath) -> Position | None:
        run = self.declared.get(words.end_of)
        if run is None:
            self.ledger.unknown(Code.NAME, "run", words.end_of, self.declared, path)
            return None
        at = run.path[0] if run.path else ORIGIN
        return Position(run.end_words, "", 0.0, at.z, 0.0, outside=True, at=at, end_of=run.tag)

    def _up(
        self, words: PositionWords, path: SpecPath, what: str, default_up_mm: float | None
    ) -> float | None:
        if words.up_mm is not None:
            return words.up_mm
        if default_up_mm is None:
            message = f"{what} does not say how high it is"
            self.ledger.problem(Code.MISSING, message, path, 'add ", 1.5 m up"')
            return None
        reason = "usual height of its kind (common practice)"
        self.ledger.default(what, "height", f"{default_up_mm:g} mm", reason)
        return default_up_mm

    def _check(
        self, words: PositionWords, wall: Wall, up_mm: float, path: SpecPath, what: str
    ) -> None:
        self.along_is_on(wall, words.along_mm, path, what)
        if up_mm > wall.height_mm:
            message = (
                f"{what} is {up_mm:g} mm up wall {wall.name}, which is {wall.height_mm:g} mm high"
            )
            self.ledger.problem(Code.POSITION, message, path)
        if words.out_mm:
            self._check_out(words, wall, path, what)
            return
        for opening in wall.openings:
            is_beside = opening.from_mm < words.along_mm < opening.from_mm + opening.width_mm
            is_level = opening.sill_mm < up_mm < opening.sill_mm + opening.height_mm
            if is_beside and is_level:
                message = (
                    f"{what} is in the {opening.name} of wall {wall.name} "
                    f"({opening.from_mm:g} to {opening.from_mm + opening.width_mm:g} mm along)"
                )
                self.ledger.problem(Code.POSITION, message, path)

    def _check_out(self, words: PositionWords, wall: Wall, path: SpecPath, what: str) -> None:
        if words.outside:
            return
        corners = [w.start for w in self.walls.values() if w.room == wall.room]
        depth_mm = max(
            (p.x - wall.start.x) * wall.inward.x + (p.y - wall.start.y) * wall.inward.y
            for p in corners
        )
        if words.out_mm > depth_mm:
            message = (
                f"{what} is {words.out_mm:g} mm out from wall {wall.name}, "
                f"but the room ends {depth_mm:g} mm from it"
            )
            self.ledger.problem(Code.POSITION, message, path)
