"""Numerals of an IP code (BS EN 60529)."""

from __future__ import annotations

import re
from typing import Literal


def numeral(ip: str, which: Literal["first", "second"]) -> int | None:
    """Return one numeral of an IP code, or None when it is X or there is no code.

    >>> numeral("IP44", "second"), numeral("IPX4", "first")
    (4, None)
    """
    match = re.fullmatch(r"IP([0-6X])([0-9X])[A-Z]*", ip.replace(" ", "").upper())
    if match is None:
        return None
    digit = match.group(1 if which == "first" else 2)
    return None if digit == "X" else int(digit)
