"""A fixing used on many lengths names some of them and counts the rest, so that its row fits."""

from __future__ import annotations

from asfitted.calculate.materials.items import Fixing
from asfitted.calculate.materials.take_off import MOST_SUBJECTS, _fixing_lines


def _fixings(count: int) -> list[Fixing]:
    return [
        Fixing(f"W{n:03d}", "wall north", "metal tie on tray", 1000, 2000, 3, "about every 1 m")
        for n in range(1, count + 1)
        for _ in range(2)  # two walls each: a cable is named once
    ]


def _basis(count: int) -> str:
    return next(iter(_fixing_lines(_fixings(count)))).basis


def test_few_lengths_are_all_named() -> None:
    words = _basis(MOST_SUBJECTS + 1)
    assert "W001, W002" in words
    assert f"W{MOST_SUBJECTS + 1:03d}" in words
    assert "more" not in words


def test_many_lengths_are_counted() -> None:
    words = _basis(300)
    assert f"W{MOST_SUBJECTS:03d} and {300 - MOST_SUBJECTS} more" in words
    assert f"W{MOST_SUBJECTS + 1:03d}" not in words
    assert len(words) < 300
