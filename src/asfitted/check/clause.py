"""How a clause is written, with the edition on which its number and wording rest."""

from __future__ import annotations


def bs7671(number: str) -> str:
    """Return a clause of BS 7671 as printed.

    The numbers are those of BS 7671:2018; a reader holding A4:2026 confirms them.

    >>> bs7671("433.1.1")
    'BS 7671 433.1.1 (2018 numbering, not compared with A4:2026)'
    """
    return f"BS 7671 {number} (2018 numbering, not compared with A4:2026)"


def practice(basis: str) -> str:
    """Return the basis of a rule that no clause gives a figure for."""
    return f"{basis} (good practice, no figure in a standard)"
