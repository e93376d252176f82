"""Notes of an elevation: what the levels mean, tolerances, fixing, segregation, drilling."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.errors import OutsideTableError
from asfitted.reference.containment import support_spacing

if TYPE_CHECKING:
    from collections.abc import Iterable

    from asfitted.calculate.results import CalculationResults
    from asfitted.layout.elevation.wall_content import WallContent
    from asfitted.layout.elevation.wall_drawing import WallDrawing
    from asfitted.layout.sheet_model import Numbers
    from asfitted.resolve.installation import Containment

SCAN = "SCAN BEFORE DRILLING."
HEIGHTS = (
    "Heights in mm above finished floor level (FFL): C/L to the centre line, U/S to the "
    "underside, T/O to the top. Lengths in mm from the left-hand corner. Tolerance ±10."
)
_SUPPORT_KINDS = {
    "perforated tray": "tray",
    "wire basket": "basket",
    "cable ladder": "ladder",
}


def notes_of(
    content: WallContent,
    results: CalculationResults,
    numbers: Numbers,
    drawing: WallDrawing,
) -> tuple[str, ...]:
    """Return the notes of one elevation, general ones first."""
    notes = [SCAN, HEIGHTS]
    runs = {p.run.tag: p.run for p in content.pieces}
    notes += _support_notes(runs.values())
    notes += _segregation(runs, results)
    drawn = _as_drawn(content, widened=drawing.widened)
    if drawn:
        notes.append(drawn)
    if content.away:
        sheet = f" (sheet {numbers.of('key-plan')})" if "key-plan" in numbers.by_key else ""
        notes.append(f"Out in the room, see the key plan{sheet}: {', '.join(content.away)}.")
    if drawing.compact:
        notes.append(f"Heights of things: {_heights(content)}.")
    if drawing.unplaced:
        notes.append(f"No room beside its place: {'; '.join(drawing.unplaced)}.")
    return tuple(notes)


def _heights(content: WallContent) -> str:
    """Return what the callouts of things would say under their tags, equal ones together."""
    found: dict[str, list[str]] = {}
    for thing in content.things:
        found.setdefault(", ".join(thing.lines), []).append(thing.tag)
    return "; ".join(f"{words}: {' '.join(tags)}" for words, tags in found.items())


def _as_drawn(content: WallContent, *, widened: bool) -> str:
    """Return in one note what the drawing does not show true."""
    parts = []
    if any(t.is_outside for t in content.things) or content.declared:
        parts.append("Dashed: outside face.")
    if any(s.way in ("through-wall", "off-wall") for s in content.stretches):
        parts.append("Ring with dot: cable leaves the wall face.")
    if widened:
        parts.append("Thin containment is drawn 1.25 mm wide.")
    if any(o.kind == "door" for o in content.wall.openings):
        parts.append("Hinge sides not recorded.")
    return " ".join(parts)


def _support_notes(runs: Iterable[Containment]) -> list[str]:
    """Return the greatest spacing of supports for each kind of run on the wall."""
    found: dict[str, float] = {}
    for run in runs:
        spacing = _spacing(run)
        if spacing is not None:
            found.setdefault(run.kind, spacing)
    if not found:
        return []
    each = ", ".join(f"{kind} {round(mm)}" for kind, mm in found.items())
    return [f"Supports at most (mm): {each}. Closer where the maker says so."]


def _spacing(run: Containment) -> float | None:
    kind = _SUPPORT_KINDS.get(run.kind, run.kind)
    size = run.width_mm * run.height_mm if "trunking" in kind else run.width_mm
    try:
        return support_spacing(kind, size).value
    except OutsideTableError:
        return None


def _segregation(runs: dict[str, Containment], results: CalculationResults) -> list[str]:
    """Return how far power and data runs on this wall are to be kept apart."""
    notes, seen = [], set()
    for tag in runs:
        result = results.containment.get(tag)
        if result is None or result.separation_needed_mm is None or not result.separation_from:
            continue
        pair = frozenset((tag, result.separation_from))
        if pair in seen or result.separation_from not in runs:
            continue
        seen.add(pair)
        notes.append(
            f"Keep {tag} and {result.separation_from} at least "
            f"{result.separation_needed_mm:.0f} mm apart (power and data)."
        )
    return notes
