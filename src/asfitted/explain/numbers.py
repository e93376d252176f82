"""Results as printed: the value rounded for reading, never for comparing."""

from __future__ import annotations

from asfitted.check.figures import printed

#: Decimals by unit where the trade has a habit; others get four significant figures.
_DECIMALS = {
    "Ω": 4,
    "mm²": 2,
    "A²s": 0,
    "%": 2,
    "s": 2,
    "V": 2,
    "m": 2,
    "mm": 1,
    "kA": 2,
    "px/m": 0,
}

_MANY_OHMS = 10.0


def value_words(value: float, unit: str) -> str:
    """Return a value and its unit, ``32.85 A``.

    >>> value_words(0.2918079, "Ω"), value_words(22000.4, "A²s"), value_words(1666.6667, "Ω")
    ('0.2918 Ω', '22000 A²s', '1666.7 Ω')
    """
    decimals = _DECIMALS.get(unit)
    if decimals is None:
        decimals = 0 if abs(value) >= 1000 else 1 if abs(value) >= 100 else 2
        if 0 < abs(value) < 1:
            decimals = 4
    elif unit == "Ω" and abs(value) >= _MANY_OHMS:
        decimals = 1  # an earth electrode is not known to a tenth of a milliohm
    text = printed(value, decimals)
    if value and not float(text):
        text = f"{value:.2g}"
    return f"{text} {unit}" if unit else text
