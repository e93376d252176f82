"""Device phrases such as ``C32 TP 6 kA`` taken apart into marked parts."""

from __future__ import annotations

import re
from dataclasses import dataclass

from asfitted.errors import NotUnderstoodError
from asfitted.quantities import BASIS_WORDS
from asfitted.spec.words import did_you_mean

DEVICE_HINT = (
    'write it like "C32 TP 6 kA", "RCBO B20 30 mA type A 6 kA", "100 A BS 88-3", '
    '"MCCB 160 A Ir 125 A Im 1250 A 25 kA" or "63 A switch-disconnector 4P"'
)

#: Each pattern takes one part from the front of the phrase; the longer form stands first.
_PARTS = (
    ("afdd", r"AFDD"),
    ("ir_a", r"Ir ?=? ?(\d+(?:\.\d+)?) ?A"),
    ("im_a", r"Im ?=? ?(\d+(?:\.\d+)?) ?A"),
    ("kind", r"RCBO|MCCB|MCB|RCD|switch-disconnector|isolator|fuse"),
    ("icn_ka", r"(\d+(?:\.\d+)?) ?kA"),
    ("idn_ma", r"(\d+(?:\.\d+)?) ?mA"),
    ("rating_a", r"(\d+(?:\.\d+)?) ?A"),
    ("curve_rating", r"([BCDK]) ?(\d+(?:\.\d+)?)(?: ?A)?"),
    ("standard", r"BS(?: EN)?(?: IEC)? ?\d+(?:-\d+)*"),
    ("rcd_type", r"type (AC|A|F|B)"),
    ("poles", r"SP\+N|SPN|TP\+N|TPN|TP|SP|DP|[1-4]P"),
    ("delayed", r"time-delayed|delayed|S-type"),
    ("basis", "|".join(BASIS_WORDS)),
)


@dataclass(frozen=True)
class DeviceWords:
    """The parts of a device phrase; "" or None where a part is not written."""

    words: str
    kind: str = ""
    curve: str = ""
    rating_a: float | None = None
    poles: str = ""
    icn_ka: float | None = None
    idn_ma: float | None = None
    rcd_type: str = ""
    standard: str = ""
    delayed: bool = False
    basis: str = ""
    ir_a: float | None = None
    im_a: float | None = None
    afdd: bool = False


def _take_part(rest: str, phrase: str) -> tuple[str, re.Match[str]]:
    for name, pattern in _PARTS:
        match = re.match(rf"(?:{pattern})(?=$|[\s,])", rest, re.IGNORECASE)
        if match:
            return name, match
    word = rest.split(maxsplit=1)[0].strip(",")
    if comma := re.fullmatch(r"(\d+),(\d+)", word):
        hint = f"decimal comma: write {comma[1]}.{comma[2]}"
    else:
        known = ("RCBO", "MCCB", "AFDD", "switch-disconnector", "type", "TP", "4P", "measured")
        near = did_you_mean(word, known)
        hint = near if near.startswith("did") else DEVICE_HINT
    raise NotUnderstoodError(f'device "{phrase}": "{word}" is not understood', hint)


def _part_values(name: str, match: re.Match[str]) -> dict[str, str]:
    if name == "curve_rating":
        return {"curve": match[1].upper(), "rating_a": match[2]}
    return {name: match[1] if match.lastindex else match[0]}


def parse_device(text: str) -> DeviceWords:
    """Return the parts of a device phrase, in any order.

    Raises:
        NotUnderstoodError: a word that is not understood, a part written twice, or no rating.
    """
    phrase = rest = " ".join(text.split())
    parts: dict[str, str] = {}
    while rest:
        name, match = _take_part(rest, phrase)
        for key, value in _part_values(name, match).items():
            if key in parts:
                message = f'device "{phrase}": "{match[0]}" comes on top of "{parts[key]}"'
                raise NotUnderstoodError(message, DEVICE_HINT)
            parts[key] = value
        rest = rest[match.end() :].lstrip(" ,")
    if not float(parts.get("rating_a", 0)):
        raise NotUnderstoodError(f'device "{phrase}" has no rating in A', DEVICE_HINT)
    return DeviceWords(
        words=phrase,
        kind=parts.get("kind", "").lower(),
        curve=parts.get("curve", ""),
        rating_a=float(parts["rating_a"]),
        poles=parts.get("poles", "").upper(),
        icn_ka=float(parts["icn_ka"]) if "icn_ka" in parts else None,
        idn_ma=float(parts["idn_ma"]) if "idn_ma" in parts else None,
        rcd_type=parts.get("rcd_type", "").upper(),
        standard=parts.get("standard", ""),
        delayed="delayed" in parts,
        basis=parts.get("basis", "").lower(),
        ir_a=float(parts["ir_a"]) if "ir_a" in parts else None,
        im_a=float(parts["im_a"]) if "im_a" in parts else None,
        afdd="afdd" in parts,
    )
