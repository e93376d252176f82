"""One line of working, as printed in the calculation sheet."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Step:
    """One line of working.

    Attributes:
        symbol: Trade symbol, such as "Iz".
        words: What it is, such as "corrected capacity".
        formula: In symbols, such as "It x Ca x Cg".
        substituted: With figures, such as "94 x 0.96 x 0.88".
        value: The result.
        unit: Its unit, "" for a ratio.
        source: Standard, clause or table.
    """

    symbol: str
    words: str
    formula: str
    substituted: str
    value: float
    unit: str
    source: str
