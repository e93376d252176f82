"""Notes of an elevation: what the levels mean, tolerances, fixing, segregation, drilling."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

from asfitted.calculate.containment.support_spacing import SupportSpacing, support_spacing
from asfitted.layout.elevation.runs_on_wall import cables_of_run, cables_on
from asfitted.layout.surveyed_ways import way_notes
from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from asfitted.calculate.results import CalculationResults
    from asfitted.layout.elevation.dimension_chain import Mark
    from asfitted.layout.elevation.references import References
    from asfitted.layout.elevation.wall_content import WallContent
    from asfitted.layout.elevation.wall_words import LeftOver
    from asfitted.resolve.installation import Containment

SCAN = "SCAN BEFORE DRILLING."
HEIGHTS = (
    "Heights in mm above finished floor level (FFL): C/L to the centre line, U/S to the "
    "underside, T/O to the top. Lengths in mm from 0 at the left-hand end. Tolerance ±10."
)
OUTSIDE = (
    "Lengths count from 0, the inner face of the wall at the left end, to that of the wall at the "
    "right end; wall thickness is not recorded. Measure from a door or window outside."
)
DIRECTIONS: tuple[Literal["horizontal", "vertical"], ...] = ("horizontal", "vertical")
CROSSINGS = "Where data crosses power: cross at right angles, keep 50 mm clear or divide."


def general_notes(
    contents: Sequence[WallContent], results: CalculationResults, *, widened: bool
) -> tuple[str, ...]:
    """Return the notes that hold for some walls alike: levels, tolerance, supports, signs."""
    runs = [p.run for c in contents for p in c.pieces]
    runs += [p.run for c in contents for p in c.crossings]
    notes = [SCAN, HEIGHTS, *_support_notes(runs, results)]
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
    notes += way_notes(_cables(content, results), results)
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


def _cables(content: WallContent, results: CalculationResults) -> Iterator[str]:
    """Yield the cables that a wall tells of, some of them more than once."""
    for stretch in content.stretches:
        yield from stretch.cables
    for piece in content.pieces:
        yield from cables_on(results, piece)
    for crossing in content.crossings:
        yield from crossing.cables
    for end in content.declared:
        yield from cables_of_run(results, end.run.tag)


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


def _support_notes(runs: Iterable[Containment], results: CalculationResults) -> list[str]:
    """Return the greatest spacing of supports of each run, runs of a kind that agree as one."""
    kinds: dict[str, dict[str, list[str]]] = {}
    for tag, run in {run.tag: run for run in runs}.items():
        level, upright = (support_spacing(run, results, way) for way in DIRECTIONS)
        if level is not None and upright is not None:
            words = _spacing_words(level, upright)
            kinds.setdefault(run.kind, {}).setdefault(words, []).append(tag)
    if not kinds:
        return []
    each = [
        f"{kind} {words}"
        if len(spacings) == 1
        else f"{kind} {' '.join(sorted(tags, key=lambda t: (len(t), t)))} {words}"
        for kind, spacings in kinds.items()
        for words, tags in spacings.items()
    ]
    return [f"Supports at most (mm): {'; '.join(each)}. Closer where the maker says so."]


def _spacing_words(level: SupportSpacing, upright: SupportSpacing) -> str:
    words = f"{level.spacing_mm}"
    if level.spacing_mm != upright.spacing_mm:
        words += f", upright {upright.spacing_mm}"
    if level.is_closer:
        words += f", closer than {level.tabulated_mm} for the load of {level.load_kg_m:.1f} kg/m"
    return words


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
