"""Phrases of the spec taken apart into small frozen objects. No electrical sense is made here."""

from __future__ import annotations

import re
from dataclasses import dataclass
from difflib import get_close_matches
from typing import TYPE_CHECKING

from asfitted.errors import NotUnderstoodError
from asfitted.quantities import (
    ANGLE_DEG,
    AREA_MM2,
    CURRENT_A,
    LENGTH_M,
    POSITION_MM,
    POWER_W,
    VOLTAGE_V,
    parse_quantity,
)

if TYPE_CHECKING:
    from collections.abc import Iterable

POSITION_HINT = 'write it like "wall B, 1.0 m along, 1.3 m up" (then, if need be, ", 1.6 m out")'


@dataclass(frozen=True)
class PositionWords:
    """``wall B outside, 1.0 m along, 1.3 m up, 1.6 m out`` or ``end of U1``; mm.

    ``along`` counts from the left end of the wall as seen from inside the room, also for a thing on
    the outer face. ``up_mm`` is None when the height is not written. ``room`` is what stands before
    the wall (``Hall wall B, 1.0 m along``), "" when nothing does.
    """

    words: str
    wall: str = ""
    outside: bool = False
    along_mm: float = 0.0
    up_mm: float | None = None
    out_mm: float = 0.0
    end_of: str = ""
    room: str = ""


@dataclass(frozen=True)
class WaypointWords:
    """One waypoint of a run: ``D 1.0 m``, ``A`` (all of it), ``over to C 2.0 m``.

    ``up_mm`` is the waypoint's own height (``A 2.0 m at 1.2 m up``), None for the run's level.
    ``room`` is what stands before the wall (``Hall wall D 1.0 m``), "" for the room the run is in.
    """

    words: str
    wall: str
    along_mm: float | None = None
    up_mm: float | None = None
    over: bool = False
    room: str = ""


@dataclass(frozen=True)
class LevelWords:
    """``2.9 m T/O``: height in mm, and of what ("" when not written)."""

    height_mm: float
    of: str = ""


@dataclass(frozen=True)
class CableWords:
    """``existing SWA LSF 4c 6 mm2``: family words, cores, cross-section, state, baluns."""

    words: str
    family: str
    cores: int | None = None
    csa_mm2: float | None = None
    existing: bool = False
    baluns: bool = False


@dataclass(frozen=True)
class RouteWords:
    """``clipped direct, 2.25 m up``: clipped at this height in mm."""

    clipped_up_mm: float


@dataclass(frozen=True)
class LoadWords:
    """A load given in W or in A; the other is None."""

    power_w: float | None = None
    current_a: float | None = None


@dataclass(frozen=True)
class VoltageWords:
    """``400/230 V``: line to line, then line to neutral; equal when one figure is written."""

    line_v: float
    u0_v: float


@dataclass(frozen=True)
class TailsWords:
    """``25 mm2, 2 m``: cross-section of the meter tails and their length (None if not written)."""

    csa_mm2: float
    length_m: float | None = None


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """Return ``did you mean "x"?``, or the known words when none is near, or ""."""
    names = [str(name) for name in known]
    by_lower = {name.lower(): name for name in reversed(names)}
    near = get_close_matches(word.lower(), list(by_lower), n=1, cutoff=0.6)
    if near:
        return f'did you mean "{by_lower[near[0]]}"?'
    if not names:
        return ""
    shown = ", ".join(names[:16]) + (", ..." if len(names) > 16 else "")
    return f"known here: {shown}"


def one_of(word: str, known: Iterable[str], what: str) -> str:
    """Return the known word that is written, whatever its capitals.

    Raises:
        NotUnderstoodError: not one of the words.
    """
    names = list(known)
    for name in names:
        if name.lower() == " ".join(word.lower().split()):
            return name
    raise NotUnderstoodError(f'{what} "{word}" is not known', did_you_mean(word, names))


def parse_position(text: str) -> PositionWords:
    """Return the parts of a position.

    Raises:
        NotUnderstoodError: a part that is missing, twice there or not understood.
    """
    words = " ".join(text.split())
    if match := re.fullmatch(r"end of (\S+)", words, re.IGNORECASE):
        return PositionWords(words, end_of=match[1])
    head, *rest = [part.strip() for part in words.split(",")]
    wall = re.fullmatch(r"(?:(.+?) )?wall (\S+)( outside)?", head, re.IGNORECASE)
    if not wall:
        raise NotUnderstoodError(f'position "{words}" does not start with a wall', POSITION_HINT)
    found: dict[str, float] = {}
    for part in rest:
        match = re.fullmatch(r"(.+?) (along|up|out)", part, re.IGNORECASE)
        if not match or match[2].lower() in found:
            raise NotUnderstoodError(
                f'"{part}" of position "{words}" is not understood', POSITION_HINT
            )
        found[match[2].lower()] = parse_quantity(match[1], POSITION_MM)
    if "along" not in found:
        raise NotUnderstoodError(f'position "{words}" does not say how far along', POSITION_HINT)
    return PositionWords(
        words,
        wall[2],
        bool(wall[3]),
        found["along"],
        found.get("up"),
        found.get("out", 0.0),
        room=wall[1] or "",
    )


def parse_waypoint(text: str) -> WaypointWords:
    """Return the parts of one waypoint of a run.

    Raises:
        NotUnderstoodError: not one of the three forms.
    """
    words = " ".join(text.split())
    match = re.fullmatch(
        r"(?P<over>over to )?(?:(?:(?P<room>.+?) )?wall )?(?P<wall>\S+)"
        r"(?: (?P<along>[\d.,]+(?: ?[a-z]+)?)(?: along)?)?(?: at (?P<up>[\d.,]+(?: ?[a-z]+)?) up)?",
        words,
        re.IGNORECASE,
    )
    if not match or (match["along"] is None and (match["over"] or match["up"])):
        hint = 'write "D 1.0 m", "A" for all of wall A, "over to C 2.0 m" or "A 2.0 m at 1.2 m up"'
        raise NotUnderstoodError(f'waypoint "{words}" is not understood', hint)
    along, up = match["along"], match["up"]
    return WaypointWords(
        words,
        match["wall"],
        None if along is None else parse_quantity(along, POSITION_MM),
        None if up is None else parse_quantity(up, POSITION_MM),
        bool(match["over"]),
        room=match["room"] or "",
    )


def parse_level(text: str) -> LevelWords:
    """Return a level and the face that it is the level of.

    Raises:
        NotUnderstoodError: no height, or a face other than T/O, U/S and C/L.
    """
    match = re.fullmatch(r"(.*?)(?:\s+([A-Za-z]/[A-Za-z]))?", " ".join(text.split()))
    height, face = (match[1], match[2] or "") if match else (text, "")
    if face and face.upper() not in {"T/O", "U/S", "C/L"}:
        hint = "T/O top of, U/S underside, C/L centre line"
        raise NotUnderstoodError(f'level "{text}": "{face}" is not known', hint)
    return LevelWords(parse_quantity(height, POSITION_MM), face.upper())


def parse_cable(text: str) -> CableWords:
    """Return the parts of a cable phrase; the family stays in words.

    Raises:
        NotUnderstoodError: no family is named, or a figure is not understood.
    """
    words = rest = " ".join(text.split())
    existing = rest.lower().startswith("existing ")
    rest = rest[len("existing ") :] if existing else rest
    baluns = rest.lower().endswith(" with baluns")
    rest = rest[: -len(" with baluns")] if baluns else rest
    csa = cores = None
    if match := re.search(r"\s+([\d.,]+ ?(?:mm2|mm²|sq ?mm))\b\s*|\s+([\d.,]+ ?mm²)$", rest):
        csa = parse_quantity(match[1] or match[2], AREA_MM2)
        rest = f"{rest[: match.start()]} {rest[match.end() :]}".strip()
    if match := re.search(r"(?:^|\s)(\d+)\s?(?:c|core)\b", rest, re.IGNORECASE):
        cores = int(match[1])
        rest = " ".join(f"{rest[: match.start()]} {rest[match.end() :]}".split())
    if not rest or rest[0].isdigit():
        hint = 'name the cable first, such as "SWA 4c", "T&E 2.5 mm2" or "Cat6"'
        raise NotUnderstoodError(f'cable "{words}" is not understood', hint)
    return CableWords(words, rest, cores, csa, existing, baluns)


def parse_route(text: str) -> RouteWords:
    """Return the height at which a cable is clipped, mm.

    Raises:
        NotUnderstoodError: other words.
    """
    match = re.fullmatch(r"clipped(?: direct)?,\s*(.+?) up", text.strip(), re.IGNORECASE)
    if not match:
        hint = 'write "clipped direct, 2.25 m up", or "via: [T1]" for a run of containment'
        raise NotUnderstoodError(f'route "{text}" is not understood', hint)
    return RouteWords(parse_quantity(match[1], POSITION_MM))


def parse_load(text: str) -> LoadWords:
    """Return a load in W or A; a bare number is W.

    Raises:
        NotUnderstoodError: neither.
    """
    if re.search(r"kVA|VA$", text):
        hint = 'write the real power in kW with "power factor:" beside it, or the current in A'
        raise NotUnderstoodError(f'load "{text}" is in VA', hint, is_quantity=True)
    if text.rstrip().endswith("A"):
        return LoadWords(current_a=parse_quantity(text, CURRENT_A))
    return LoadWords(power_w=parse_quantity(text, POWER_W))


def parse_voltage(text: str) -> VoltageWords:
    """Return the two voltages of ``400/230 V``, or one voltage twice.

    Raises:
        NotUnderstoodError: not one or two voltages, or the greater one second.
    """
    first, _, second = text.partition("/")
    line_v = parse_quantity(first, VOLTAGE_V)
    u0_v = parse_quantity(second, VOLTAGE_V) if second else line_v
    if u0_v > line_v:
        raise NotUnderstoodError(f'voltage "{text}" has the greater figure second', "400/230 V")
    return VoltageWords(line_v, u0_v)


def parse_tails(text: str) -> TailsWords:
    """Return cross-section and length of ``25 mm2, 2 m``.

    Raises:
        NotUnderstoodError: a figure that is not understood.
    """
    size, _, length = text.partition(", ")
    return TailsWords(
        parse_quantity(size, AREA_MM2), parse_quantity(length, LENGTH_M) if length else None
    )


def parse_aim(text: str) -> float:
    """Return degrees clockwise on plan from straight out of the wall.

    Left and right are those of a person who stands in front of the camera and faces it, which are
    the left and right of the wall elevation; ``45 left`` therefore turns clockwise on plan.

    Raises:
        NotUnderstoodError: not ``square``, ``45 left`` or ``30 right``.
    """
    words = " ".join(text.split()).lower()
    if words == "square":
        return 0.0
    match = re.fullmatch(r"(.+) (left|right)", words)
    if not match:
        raise NotUnderstoodError(f'aim "{text}" is not understood', 'write "square" or "45 left"')
    angle_deg = parse_quantity(match[1], ANGLE_DEG)
    if angle_deg > 90:
        raise NotUnderstoodError(f'aim "{text}" looks into the wall', "at most 90")
    return angle_deg if match[2] == "left" else -angle_deg


SURGE_HINT = 'write it like "type 2 at DB1" or "not fitted: owner declined in writing"'


def parse_surge_protection(text: str) -> str:
    """Return what is written of surge protection: its type, "fitted" or "not fitted" comes first.

    Raises:
        NotUnderstoodError: the words do not tell whether one is fitted.
    """
    phrase = " ".join(text.split())
    start = r"(existing )?(type [123](\+[23])?|fitted)\b|not fitted\b"
    if not re.match(start, phrase, re.IGNORECASE):
        raise NotUnderstoodError(
            f'"{phrase}" does not tell whether surge protection is fitted', SURGE_HINT
        )
    return phrase
