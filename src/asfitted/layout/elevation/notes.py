"""Notes of an elevation: what the levels mean, tolerances, fixing, segregation, drilling."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.containment.support_spacing import support_spacing_mm
from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from asfitted.calculate.results import CalculationResults
    from asfitted.layout.elevation.dimension_chain import Mark
    from asfitted.layout.elevation.references import References
    from asfitted.layout.elevation.wall_content import WallContent
    from asfitted.layout.elevation.wall_words import LeftOver
    from asfitted.resolve.installation import Containment

SCAN = "SCAN BEFORE DRILLING."
HEIGHTS = (
    "Heights in mm above finished floor level (FFL): C/L to the centre line, U/S to the "
    "underside, T/O to the top. Lengths in mm from the left-hand corner. Tolerance ±10."
)
OUTSIDE = (
    "Lengths count to the inner face of the end wall; wall thickness is not recorded. "
    "Measure from a door or window outside."
)
CROSSINGS = "Where data crosses power: cross at right angles, keep 50 mm clear or divide."


def general_notes(contents: Sequence[WallContent], *, widened: bool) -> tuple[str, ...]:
    """Return the notes that hold for some walls alike: levels, tolerance, supports, signs."""
    notes = [SCAN, HEIGHTS, *_support_notes(p.run for c in contents for p in c.pieces)]
    if any(content.crossed for content in contents):
        notes.append(CROSSINGS)
    drawn = _as_drawn(contents, widened=widened)
    return (*notes, drawn) if drawn else tuple(notes)


def wall_notes(
    content: WallContent,
    results: CalculationResults,
    refs: References,
    left_over: LeftOver,
    not_dimensioned: Sequence[Mark] = (),
) -> tuple[str, ...]:
    """Return the notes of one wall alone."""
    notes = _segregation({p.run.tag: p.run for p in content.pieces}, results)
    if content.crossed:
        notes.append(f"{'; '.join(content.crossed)}.")
    if content.away:
        key_plan = refs.numbers.by_key.get("key-plan", "")
        sheet = f" (sheet {key_plan})" if key_plan else ""
        notes.append(f"Out in the room, see the key plan{sheet}: {', '.join(content.away)}.")
    if content.face == "outside":
        notes.append(OUTSIDE)
    if left_over.bare:
        notes.append(f"Heights of things: {_heights(content, left_over.bare)}.")
    if not_dimensioned:
        places = ", ".join(f"{m.along_mm} {' '.join(m.names)}".strip() for m in not_dimensioned)
        notes.append(f"Lengths without room under the view: {places}.")
    if left_over.unplaced:
        notes.append(f"Keynotes without a ring at their place: {', '.join(left_over.unplaced)}.")
    return tuple(notes)


def _heights(content: WallContent, tags: Sequence[str]) -> str:
    """Return what the callouts of things would say under their tags, equal ones together."""
    found: dict[str, list[str]] = {}
    for thing in content.things:
        if thing.tag in tags:
            found.setdefault(", ".join(thing.lines), []).append(thing.tag)
    return "; ".join(f"{words}: {' '.join(tags)}" for words, tags in found.items())


def _as_drawn(contents: Sequence[WallContent], *, widened: bool) -> str:
    """Return in one note what the drawing does not show true."""
    parts = []
    inside = [c for c in contents if c.face == "inside"]
    if any(t.is_outside for c in inside for t in c.things) or any(c.declared for c in inside):
        parts.append("Dashed: outside face.")
    states = {t.state for c in contents for t in c.things}
    states |= {p.run.state for c in contents for p in c.pieces}
    states |= {s.state for c in contents for s in c.stretches}
    if states & {State.EXISTING, State.REMOVED}:
        parts.append("Wide lines: new; narrow: existing.")
    if State.REMOVED in states:
        parts.append("Hatched and struck through: removed.")
    if any(c.passages for c in contents):
        parts.append("Box with a stroke or arrow: opening to another room.")
    if any(s.way in ("through-wall", "off-wall") for c in contents for s in c.stretches):
        parts.append("Ring with dot: cable leaves the wall face.")
    if widened:
        parts.append("Thin containment is drawn 1.25 mm wide.")
    if any(o.kind == "door" for c in contents for o in c.wall.openings):
        parts.append("Hinge sides not recorded.")
    return " ".join(parts)


def _support_notes(runs: Iterable[Containment]) -> list[str]:
    """Return the greatest spacing of supports for each kind of run on the wall."""
    found: dict[str, float] = {}
    for run in runs:
        spacing = support_spacing_mm(run)
        if spacing is not None:
            found.setdefault(run.kind, spacing)
    if not found:
        return []
    each = ", ".join(f"{kind} {round(mm)}" for kind, mm in found.items())
    return [f"Supports at most (mm): {each}. Closer where the maker says so."]


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
