"""Phrases of the building: where a room lies on plan, and how a wall or floor stands up to fire."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal

from asfitted.errors import NotUnderstoodError
from asfitted.quantities import POSITION_MM, TIME_MIN, parse_quantity

PLAN_HINT = 'write it like "4.2 m right, 3.0 m down"'
NOT_RECORDED = "not recorded"


@dataclass(frozen=True)
class PlanPlaceWords:
    """``4.2 m right, 3.0 m down``: from the first corner of the job's first room, mm.

    On the plan whose first wall lies along the top, left to right; left and up are below nought.
    """

    words: str
    right_mm: float = 0.0
    down_mm: float = 0.0


def parse_plan_place(text: str) -> PlanPlaceWords:
    """Return how far right and down of the first corner a place on plan is.

    Raises:
        NotUnderstoodError: a part without its direction, or one direction twice.
    """
    words = " ".join(text.split())
    found: dict[str, float] = {}
    for part in words.split(","):
        match = re.fullmatch(r"(.+?) (right|left|down|up)", part.strip(), re.IGNORECASE)
        way = match[2].lower() if match else ""
        axis = "across" if way in ("right", "left") else "along"
        if match is None or axis in found:
            raise NotUnderstoodError(f'place on plan "{words}" is not understood', PLAN_HINT)
        sign = 1.0 if way in ("right", "down") else -1.0
        found[axis] = sign * parse_quantity(match[1], POSITION_MM)
    return PlanPlaceWords(words, found.get("across", 0.0), found.get("along", 0.0))


def parse_fire_resistance(text: str) -> float | None:
    """Return minutes of fire resistance, 0 for ``none``, None for ``not recorded``.

    Raises:
        NotUnderstoodError: neither of these words and no time.
    """
    words = " ".join(text.lower().split())
    if words == NOT_RECORDED:
        return None
    return 0.0 if words == "none" else parse_quantity(text, TIME_MIN)


def parse_fire_stopping(text: str) -> Literal["yes", "no", "not recorded"]:
    """Return whether the hole is sealed in this job; nothing else than these words is taken.

    Raises:
        NotUnderstoodError: other words.
    """
    words = " ".join(text.lower().split())
    known: dict[str, Literal["yes", "no", "not recorded"]] = {
        "yes": "yes",
        "true": "yes",
        "no": "no",
        "false": "no",
        NOT_RECORDED: "not recorded",
    }
    if words not in known:
        hint = f'write "yes", "no" or "{NOT_RECORDED}"'
        raise NotUnderstoodError(f'fire-stopping "{text}" is not known', hint)
    return known[words]
