"""Spacing of supports follows the load."""

from __future__ import annotations

import pytest

from asfitted.calculate.containment.support_spacing import tray_span_mm
from asfitted.calculate.materials.run_supports import supports_along


@pytest.mark.parametrize(
    ("load_kg_m", "span_mm"),
    [
        (25.0, 1500),  # at the planning limit (common practice)
        (25.1, 1450),  # 1500 × √(25 / 25.1) = 1497, down to the next 50
        (50.0, 1050),  # 1500 × √(1/2) = 1061
        (1000.0, 500),  # never closer than 500
    ],
)
def test_span_shortens_so_that_the_bending_moment_stays(load_kg_m: float, span_mm: int) -> None:
    assert tray_span_mm(load_kg_m, 25.0, 1500) == span_mm


def test_supports_stand_within_300_of_each_end() -> None:
    # 6400 - 600 = 5800 between: 4 spans of at most 1500
    assert supports_along(6400, 1500, 300) == 5
    assert supports_along(600, 1500, 300) == 1
    assert supports_along(601, 1500, 300) == 2
