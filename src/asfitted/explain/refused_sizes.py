"""Why each smaller size of a cable does not do, in few words with the figure that fails."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.calculate.results import SizeTried

_FIGURE = re.compile(r"(\D*)([\d.]+)(.*)", re.DOTALL)


def refused_words(tried: Sequence[SizeTried]) -> str:
    """Return the sizes that do not do, each with the first of its reasons; "" where none is.

    Sizes that fail in the same way are told together, their figures in the same order.

    >>> from asfitted.calculate.results import SizeTried
    >>> one = SizeTried(1.5, "Iz 13.9 A is under In 32 A; Zs 0.568 Ω is over 0.546 Ω")
    >>> refused_words((one, SizeTried(2.5, "Iz 19.0 A is under In 32 A"), SizeTried(4.0, "")))
    '1.5, 2.5 mm² fail: Iz 13.9, 19.0 A is under In 32 A'
    """
    groups: dict[tuple[str, str], list[tuple[str, str]]] = {}
    for one in tried:
        if one.reason:
            head, figure, tail = _parted(one.reason.split("; ")[0])
            groups.setdefault((head, tail), []).append((f"{one.csa_mm2:g}", figure))
    return "; ".join(
        f"{', '.join(size for size, _ in found)} mm² {'fails' if len(found) == 1 else 'fail'}: "
        f"{head}{', '.join(figure for _, figure in found)}{tail}"
        for (head, tail), found in groups.items()
    )


def _parted(reason: str) -> tuple[str, str, str]:
    """Return a reason before its first figure, the figure, and the rest."""
    found = _FIGURE.fullmatch(reason)
    return (found[1], found[2], found[3]) if found else (reason, "", "")
