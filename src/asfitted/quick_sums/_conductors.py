"""Conductors drawn into trunking or conduit: sizes and how many of each."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.errors import InputOutOfRangeError
from asfitted.quantities import AREA_MM2, NUMBER
from asfitted.quick_sums._sum import Input

if TYPE_CHECKING:
    from asfitted.quick_sums._sum import Values

SIZES = Input("sizes", "sizes of the conductors", AREA_MM2, many=True)
COUNTS = Input("counts", "how many of each, in the same order", NUMBER, many=True)


def counted(given: Values) -> list[tuple[int, float]]:
    """Return pairs of number and size, mm2.

    Raises:
        InputOutOfRangeError: the two lists differ in length, or a number is not whole.
    """
    sizes, counts = given.numbers("sizes"), given.numbers("counts")
    if len(sizes) != len(counts):
        raise InputOutOfRangeError(f"{len(sizes)} sizes, but {len(counts)} counts")
    if any(count != int(count) for count in counts):
        raise InputOutOfRangeError("counts are whole numbers")
    return [(int(count), size) for count, size in zip(counts, sizes, strict=True)]
