"""What a cable card says, in words: every figure is copied from the results.

Nothing is told twice: the head is what stands on the labels of both ends, the lengths of the way
stand in its own rows, and the sum to cut begins with what these add up to.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.calculate.routes.cable_lengths import tail_key
from asfitted.errors import OutsideTableError
from asfitted.layout.brief.in_place import FOUND, in_place, when_found
from asfitted.layout.brief.label_words import cable_line
from asfitted.layout.declared_runs import rise_words
from asfitted.layout.details.conductors import end_of
from asfitted.layout.figures import metres, rounded
from asfitted.layout.schedule.cut_list import (
    kind_words,
    reel_of_each,
    start_words,
    term_m,
)
from asfitted.layout.schedule.words import device_words, end_words, place
from asfitted.reference import termination
from asfitted.reference.connections import PROTECTIVE

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from asfitted.calculate.materials.items import Fixing, GlandEnd
    from asfitted.calculate.results import CableRoute, RouteLeg
    from asfitted.layout.sheet_model import Model
    from asfitted.resolve.installation import Cable
    from asfitted.resolve.job_record import SiteMark

LINES = {"L1": "L1", "L2": "L2", "L3": "L3", "TP": "L1 L2 L3", "": ""}
LIVE_OF_ONE_LINE = 2  # line and neutral
WAY = "way"
LONGER = "longer than drawn"  # how the part of a length begins that was found on site
SITE = "Site"  # the row that tells what was found there
LOOKED_OVER = "looked over"
#: Parts of a length by how their words begin, and the term of the card that they are told in.
TERMS = {
    "tail at": "tails",
    "making off armour": "making off",
    "waste": "waste",
    "rounded up": "waste",
}
TICKS = ("cut", "pulled", "fixed", "glanded", "terminated", "labelled", "tested")


@dataclass(frozen=True)
class CardWords:
    """One card: its head, then labelled lines, then what is ticked off."""

    tag: str
    line: str  # from and to, as on both labels
    kind: str
    cut: str
    rows: tuple[tuple[str, str], ...]
    ticks: tuple[str, ...]


@dataclass(frozen=True)
class Looked:
    """What the cards of a job look up, gathered once."""

    reels: Mapping[str, str]
    glands: Mapping[tuple[str, str], GlandEnd]
    fixings: Mapping[str, tuple[Fixing, ...]]


def looked_up(model: Model) -> Looked:
    """Gather reels, glands and fixings by cable."""
    off = model.results.take_off
    fixings: dict[str, list[Fixing]] = {}
    for fixing in off.fixings if off is not None else ():
        for tag in fixing.subject.split():
            fixings.setdefault(tag, []).append(fixing)
    glands = {(g.cable, g.at): g for g in (off.glands if off is not None else ())}
    return Looked(
        reel_of_each(model), glands, {tag: tuple(found) for tag, found in fixings.items()}
    )


def card_words(cable: Cable, model: Model, looked: Looked) -> CardWords:
    """Return what the card of a new cable says."""
    route = model.results.routes.get(cable.tag)
    found = in_place(model.installation).get(cable.tag)
    rows = [(SITE, f"{when_found(found)}: look it over, nothing to cut")] if found else []
    rows += [("From", _from(cable, model)), ("To", _to(cable, model))]
    rows += [(f"Way {i}", words) for i, words in enumerate(_way(cable, route, model, looked), 1)]
    if route is not None:
        rows += _length_rows(route, looked.reels.get(cable.tag, "not planned"), found)
    rows += _ends(cable, model, looked)
    cores = _core_words(cable, model)
    if cores:
        rows.append(("Cores", cores))
    cut = f"cut {metres(route.cut_m) if route is not None else 'not recorded'}"
    return CardWords(
        cable.tag,
        cable_line(cable, model),
        kind_words(cable, model),
        FOUND if found else cut,
        tuple(rows),
        _to_tick(found, is_armoured=(cable.tag, cable.from_end) in looked.glands),
    )


def _to_tick(found: SiteMark | None, *, is_armoured: bool) -> tuple[str, ...]:
    """Return what is ticked off; what lies there already is looked over, not pulled."""
    ticks = (LOOKED_OVER, *TICKS[TICKS.index("fixed") + 1 :]) if found else TICKS
    return tuple(tick for tick in ticks if is_armoured or tick != "glanded")


def _length_rows(route: CableRoute, reel: str, found: SiteMark | None) -> Iterator[tuple[str, str]]:
    """Yield what a length found on site says of the way, and the sum to cut."""
    legs = f"{term_m(sum(round(leg.length_mm) for leg in route.legs) / 1000)} m"
    if route.measured:
        length = f"{term_m(route.length_m)} m from end to end, tails in it"
        surveyed = "" if route.way_surveyed else "; way not surveyed"
        words = f"measured {length}{surveyed}: the legs above are as designed, {legs} without tails"
        yield SITE, f"{words}, and do not add up to it"
    elif not route.way_surveyed:
        extra = sum(part.length_m for part in route.parts if part.words.startswith(LONGER))
        words = f"found {term_m(extra)} m longer than drawn; way not surveyed: the legs above are"
        yield SITE, f"{words} as designed, {legs} without tails"
    sums = f"{_sum_to_cut(route)} = {rounded(route.cut_m, 2)} m"
    bought = reel if reel.startswith("reel") else f"ordered {reel}"
    yield ("Length", f"{sums} as designed") if found else ("Cut", f"{sums}; {bought}")


def _sum_to_cut(route: CableRoute) -> str:
    """Return how the length adds up: way, tails, armour, waste; the cut list has every term.

    A length measured on site stands in place of the way and its tails.
    """
    terms: dict[str, int] = {}
    legs = 0 if route.measured else len(_stretches(route.legs))
    for number, part in enumerate(route.parts):
        words = WAY if number < legs else _term(part.words)
        terms[words] = terms.get(words, 0) + round(part.length_m * 1000)
    return " + ".join(f"{words} {term_m(mm / 1000)}" for words, mm in terms.items())


def _term(words: str) -> str:
    """Return the term of a card that a part of the length belongs to."""
    return next((term for head, term in TERMS.items() if words.startswith(head)), words)


def _ends(cable: Cable, model: Model, looked: Looked) -> list[tuple[str, str]]:
    """Return what to do at each end; what is the same at both is told once."""
    ends = (cable.from_end, cable.to_end)
    tails = ", ".join(f"{end} {_tail_mm(end, model)}" for end in ends)
    glands = [_gland_words(looked.glands.get((cable.tag, end))) for end in ends]
    if not any(glands):
        return [("Tails", f"leave inside {tails}")]
    if glands[0] == glands[1]:
        return [("Ends", f"{glands[0]}; leave inside {tails}")]
    told = [
        ", ".join(words for words in (gland, f"leave inside {_tail_mm(end, model)}") if words)
        for gland, end in zip(glands, ends, strict=True)
    ]
    return [(f"At {end}", words) for end, words in zip(ends, told, strict=True)]


def _from(cable: Cable, model: Model) -> str:
    """Return way, lines and device at the start, or the thing it starts at, and where that is."""
    installation = model.installation
    circuit = installation.circuits.get(cable.circuit)
    where = _place(cable.from_end, model)
    if circuit is None or cable.from_end != circuit.board:
        words = end_words(installation, start_words(cable, model))
        return f"{words}, {where}" + (f" (circuit {circuit.tag})" if circuit else "")
    lines = LINES[circuit.phase] or "line as the way"
    return f"{circuit.tag}, {lines}, {device_words(circuit.device)}; {circuit.board} {where}"


def _core_words(cable: Cable, model: Model) -> str:
    """Return what each core of a power cable is for, and what is the protective conductor."""
    if cable.band != "power":
        return ""
    circuit, end = model.installation.circuits.get(cable.circuit), end_of(cable)
    phase = circuit.phase if circuit is not None else ""
    if phase != "TP" and len(end.live) > LIVE_OF_ONE_LINE:
        return f"{phase or 'L'} and N; the other cores: not recorded; {end.earth_words}"
    parts = []
    for mark, colour in end.colours.items():
        if mark != PROTECTIVE:
            parts.append(f"{phase or 'L' if mark == 'L' else mark} {colour}")
    if "N" not in end.live:
        parts.append("no neutral")
    if PROTECTIVE in end.colours:
        kind = "separate cpc" if cable.cpc == "separate" else "cpc"
        parts.append(f"{kind} {end.colours[PROTECTIVE]}")
    else:
        parts.append("cpc is the armour" if cable.cpc == "armour" else "cpc not recorded")
    return ", ".join(parts)


def _to(cable: Cable, model: Model) -> str:
    installation, end = model.installation, cable.to_end
    what = end
    if end in installation.points:
        point = installation.points[end]
        what = f"{end} {named_words(point.name, point.words)}"
    elif end in installation.data_devices:
        device = installation.data_devices[end]
        port = f", port {device.port}" if device.port else ""
        channel = f", channel {device.channel}" if device.channel else ""
        what = f"{end} {device.kind}{port}{channel}"
    elif end in installation.boards:
        what = f"{end} board"
    return f"{what}; {_place(end, model)}"


def named_words(name: str, words: str) -> str:
    """Return a thing by its own name first, then what it is where the name does not say so.

    Example:
        >>> named_words("kiln", "heating load"), named_words("extract fan", "fan")
        ('kiln, heating load', 'extract fan')
    """
    if not name:
        return words
    return name if name.endswith(words) else f"{name}, {words}"


def _place(tag: str, model: Model) -> str:
    return place(model.installation.position_of(tag))


def _way(cable: Cable, route: CableRoute | None, model: Model, looked: Looked) -> Iterator[str]:
    """Yield the way, containment by containment, with levels, lengths and clips."""
    if route is None or not route.legs:
        yield route.broken if route is not None and route.broken else "no route drawn"
        return
    for legs in _stretches(route.legs):
        first, length = legs[0], sum(leg.length_mm for leg in legs)
        told = f"{term_m(round(length) / 1000)} m"
        if not first.containment:
            held = _held(looked.fixings.get(cable.tag, ()), first.wall, round(length))
            yield f"{first.words.replace(' from +', ' +')}, {told}{held}"
            continue
        run = model.installation.containment[first.containment]
        walls = _walls_words(legs)
        levels = " to ".join(dict.fromkeys(_level(p) for p in (legs[0].start.z, legs[-1].end.z)))
        face = f"{run.level_of} " if levels.count("+") == 1 else ""
        where = "" if run.declared_length_m is not None else f", {walls}, {face}{levels}"
        tied = _tied(looked.fixings.get(cable.tag, ()), run.tag)
        yield f"{run.tag} {run.words}{where}, {told}{tied}{rise_words(run)}"


def _walls_words(legs: Sequence[RouteLeg]) -> str:
    """Return the walls of some legs in order: ``wall Hall D``, ``walls D, A``, ``overhead``."""
    walls = list(dict.fromkeys(leg.wall for leg in legs))
    if all(walls) and len(walls) > 1:
        first, *rest = walls
        room = f"{first.rpartition(' ')[0]} "
        if all(wall.startswith(room) for wall in rest):
            rest = [wall.removeprefix(room) for wall in rest]  # the room is told once
        return f"walls {', '.join((first, *rest))}"
    return ", ".join(f"wall {wall}" if wall else "overhead" for wall in walls)


def _level(z_mm: float) -> str:
    return f"{round(z_mm):+d}"


def _stretches(legs: Sequence[RouteLeg]) -> list[list[RouteLeg]]:
    """Return the legs, those that follow each other in one run together."""
    found: list[list[RouteLeg]] = []
    for leg in legs:
        if found and leg.containment and found[-1][-1].containment == leg.containment:
            found[-1].append(leg)
        else:
            found.append([leg])
    return found


def _held(fixings: Sequence[Fixing], wall: str, length_mm: int) -> str:
    """Return what holds a leg outside the runs, from its own line of the fixings."""
    for fixing in fixings:
        same = fixing.where.endswith(f"wall {wall}") if wall else True
        if same and fixing.length_mm == length_mm and not fixing.where.startswith("on "):
            kind = fixing.what.partition(" for ")[0].partition(",")[0]
            return f": {fixing.count} {kind}s at {fixing.spacing_mm}"
    return ""


def _tied(fixings: Sequence[Fixing], run: str) -> str:
    """Return the ties and cleats that hold a cable on a run."""
    counts: dict[tuple[str, int], int] = {}
    for fixing in fixings:
        if fixing.where.startswith(f"on {run},"):
            kind = fixing.what.partition(" for ")[0].partition(" on ")[0]
            key = (kind, fixing.spacing_mm)
            counts[key] = counts.get(key, 0) + fixing.count
    words = ", ".join(f"{n} {kind}s at {spacing}" for (kind, spacing), n in counts.items())
    return f": {words}" if words else ""


def _gland_words(gland: GlandEnd | None) -> str:
    """Return the gland and the stripping lengths of an end, nothing where it has none."""
    if gland is None:
        return ""
    thread = gland.thread or "thread not recorded"
    held = gland.armour_mm is not None and gland.core_mm is not None
    lengths = f"strip A armour {gland.armour_mm:g}, C cores ≥ {gland.core_mm:g}" if held else ""
    whole = lengths or "strip lengths not recorded"
    return f"gland {gland.size} {gland.kind} {thread}, tag, shroud, {whole}"


def _tail_mm(end: str, model: Model) -> str:
    """Return the tail, the working length to leave inside at an end, mm."""
    try:
        return f"{termination.tail_mm(tail_key(model.installation, end)).value:.0f}"
    except (OutsideTableError, KeyError):
        return "not recorded"
