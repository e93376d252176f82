"""Limits of readings are those of the standards named beside them."""

from __future__ import annotations

import doctest

import pytest

from asfitted.reference import reading_limits


@pytest.mark.parametrize(
    ("volts", "least"), [(250.0, 0.5), (500.0, 1.0), (1000.0, 1.0), (None, 1.0)]
)
def test_least_insulation_is_that_of_table_64(volts: float | None, least: float) -> None:
    found = reading_limits.least_insulation_mohm(volts)  # BS 7671 Table 64 (memory)
    assert (found.value, found.unit) == (least, "MΩ")
    assert "Table 64" in found.source


def test_tripping_times_at_the_rated_residual_current() -> None:
    # BS EN 61008-1: general type 300 ms, type S from 130 to 500 ms (memory)
    assert reading_limits.longest_trip_ms(delayed=False).value == 300
    assert reading_limits.longest_trip_ms(delayed=True).value == 500
    assert reading_limits.shortest_trip_ms().value == 130


def test_the_band_is_marked_as_practice_and_holds_the_calculated_figure() -> None:
    for calculated in (0.05, 0.4, 2.0):
        band = reading_limits.reading_band(calculated)
        assert band.least_ohm < calculated < band.most_ohm
        assert band.provenance == "common practice"


def test_examples_in_the_docstrings_hold() -> None:
    assert doctest.testmod(reading_limits).failed == 0
