"""Where data and power cross on the inner face of a wall: a run over a run, or over drops."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from asfitted.layout.elevation.drops_on_wall import Stretch
    from asfitted.layout.elevation.runs_on_wall import RunPiece
    from asfitted.layout.elevation.wall_view import WallPoint
    from asfitted.resolve.installation import Containment, Installation

CLEAR_MM = 1.0  # lines that only meet at an end do not cross


@dataclass(frozen=True)
class _Line:
    """A run or the cables of a drop, as a level or upright line on the wall."""

    names: tuple[str, ...]
    is_run: bool
    is_data: bool
    is_level: bool
    start: WallPoint
    end: WallPoint

    def crosses(self, other: _Line) -> bool:
        """Tell whether the two cross one another away from their ends."""
        if self.is_level == other.is_level:
            return False
        level, upright = (self, other) if self.is_level else (other, self)
        return (
            level.start.along + CLEAR_MM < upright.start.along < level.end.along - CLEAR_MM
            and upright.start.up + CLEAR_MM < level.start.up < upright.end.up - CLEAR_MM
        )


def data_crossings(
    installation: Installation, pieces: Sequence[RunPiece], stretches: Sequence[Stretch]
) -> tuple[str, ...]:
    """Return in words what each data run or cable crosses: "T3 crosses T4 and drops W09 W10"."""
    lines = [*_runs(pieces), *_drops(installation, stretches)]
    runs: dict[str, list[str]] = {}
    drops: dict[str, list[str]] = {}
    for data in (line for line in lines if line.is_data):
        for power in (line for line in lines if not line.is_data):
            if data.crosses(power):
                found = runs if power.is_run else drops
                found.setdefault(" ".join(data.names), []).extend(power.names)
    told = tuple(
        f"{name} crosses {_words(runs.get(name, ()), drops.get(name, ()))}"
        f"{_in_front(installation.containment.get(name))}"
        for name in dict.fromkeys([*runs, *drops])
    )
    return (*told, *_passed_behind(installation, lines))


def _passed_behind(installation: Installation, lines: Sequence[_Line]) -> Iterator[str]:
    """Yield what crosses power runs of a known stand-off: "T1 passes in front of W10-3"."""
    behind: dict[str, list[str]] = {}
    for run in (line for line in lines if line.is_run and not line.is_data):
        for other in (line for line in lines if not line.is_run):
            if run.crosses(other):
                behind.setdefault(run.names[0], []).extend(other.names)
    for name, cables in behind.items():
        off = installation.containment[name].stand_off_mm
        if off:
            told = " ".join(dict.fromkeys(cables))
            yield f"{name} passes in front of {told}, {off:g} off the wall"


def _in_front(run: Containment | None) -> str:
    """Return that a run passes in front where its stand-off from the wall is given."""
    if run is None or not run.stand_off_mm:
        return ""
    return f"; it passes in front, {run.stand_off_mm:g} off the wall"


def _words(runs: Sequence[str], drops: Sequence[str]) -> str:
    cables = " ".join(dict.fromkeys(drops))
    parts = [", ".join(dict.fromkeys(runs)), f"cables {cables}" if cables else ""]
    return " and ".join(part for part in parts if part)


def _runs(pieces: Sequence[RunPiece]) -> Iterator[_Line]:
    for piece in pieces:
        if len(piece.run.bands) == 1:  # where power and data share a run, it divides them itself
            is_data = piece.run.bands[0] == "data"
            tag = (piece.run.tag,)
            yield _Line(
                tag,
                is_run=True,
                is_data=is_data,
                is_level=piece.is_level,
                start=piece.start,
                end=piece.end,
            )


def _drops(installation: Installation, stretches: Sequence[Stretch]) -> Iterator[_Line]:
    for stretch in stretches:
        if stretch.way not in ("drop", "clipped") or stretch.is_outside:
            continue
        for is_data in (True, False):
            names = tuple(
                tag
                for tag in stretch.cables
                if tag in installation.cables
                and (installation.cables[tag].band == "data") == is_data
            )
            if names:
                yield _Line(
                    names,
                    is_run=False,
                    is_data=is_data,
                    is_level=not stretch.is_upright,
                    start=stretch.start,
                    end=stretch.end,
                )
