"""Site limits are whole, cite a source, and agree with the standards named beside them."""

from __future__ import annotations

import doctest

import pytest

from asfitted.errors import OutsideTableError
from asfitted.reference import site_limits
from asfitted.reference.loader import table
from asfitted.reference.points import point_kinds


@pytest.mark.parametrize(
    ("item", "value", "unit"),
    [
        ("additional protection residual current", 30, "mA"),  # BS 7671 415.1.1
        ("socket-outlet needing additional protection", 32, "A"),  # BS 7671 411.3.3
        ("least line conductor lighting", 1.0, "mm²"),  # BS 7671 Table 52.3
        ("least line conductor power", 1.5, "mm²"),  # BS 7671 Table 52.3
        ("least separate cpc", 2.5, "mm²"),  # BS 7671 543.1.1
        ("stable electrode resistance", 200, "Ω"),  # BS 7671 Table 41.5, note
        ("motor without overload device", 370, "W"),  # BS 7671 552.1.2
        ("length of tails", 3, "m"),  # common practice
    ],
)
def test_limits_are_those_of_the_source_named(item: str, value: float, unit: str) -> None:
    limit = site_limits.site_limit(item)
    assert (limit.value, limit.unit) == (value, unit)
    assert limit.source


def test_an_unknown_limit_is_refused() -> None:
    with pytest.raises(OutsideTableError, match="Site limits"):
        site_limits.site_limit("length of a piece of string")


def test_every_kind_of_point_with_a_range_finds_it() -> None:
    kinds = [row["kind"] for row in table("site_limits", "height_by_kind").rows]
    for kind in kinds:
        span = site_limits.height_range(kind)
        assert span is not None
        assert span.least_mm <= span.default_mm <= span.greatest_mm
    assert site_limits.height_range("junction box") is None


def test_kinds_of_point_are_the_ones_the_tool_knows() -> None:
    kinds = {row["kind"] for row in table("site_limits", "height_by_kind").rows}
    assert kinds - set(point_kinds()) == {"camera outside", "camera inside"}


def test_usual_ze_by_system() -> None:
    assert site_limits.usual_ze_ohm("TN-C-S").value == 0.35  # On-Site Guide
    assert site_limits.usual_ze_ohm("TN-S").value == 0.8  # On-Site Guide
    with pytest.raises(OutsideTableError):
        site_limits.usual_ze_ohm("TT")


def test_examples_in_the_docstrings_hold() -> None:
    assert doctest.testmod(site_limits).failed == 0
