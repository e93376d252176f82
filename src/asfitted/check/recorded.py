"""Whether a fact in words was given at all."""

from __future__ import annotations


def is_recorded(words: str) -> bool:
    """Tell whether a fact was given: neither empty nor the words "not recorded".

    >>> is_recorded("IP44"), is_recorded("not recorded"), is_recorded(" ")
    (True, False, False)
    """
    return words.strip().lower() not in {"", "not recorded"}
