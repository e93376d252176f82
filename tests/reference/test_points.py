"""Kinds of point: words, outlines, and names that other parts of the program know."""

from __future__ import annotations

import pytest

from asfitted.errors import OutsideTableError
from asfitted.reference.data_devices import data_device_outline
from asfitted.reference.points import PointKind, point_kind, point_kinds, point_words
from asfitted.reference.termination import TAIL_PLACES, tail_mm

REQUIRED = {
    "13 A socket",
    "5-pin socket",
    "3-pin socket",
    "isolator",
    "motor starter",
    "light switch",
    "linear luminaire",
    "luminaire",
    "emergency luminaire",
    "floodlight",
    "junction box",
    "fused spur",
    "motor",
    "fan",
    "heating load",
    "equipment",
}


def test_every_kind_is_there_and_no_word_names_two() -> None:
    assert set(point_kinds()) == REQUIRED
    words = [word.lower() for word in point_words()]
    assert len(words) == len(set(words))


@pytest.mark.parametrize("kind", point_kinds().values(), ids=lambda kind: kind.key)
def test_figures_are_possible(kind: PointKind) -> None:
    assert 50 <= kind.width_mm <= 2000
    assert 50 <= kind.height_mm <= 2000
    assert 300 <= kind.default_height_mm <= 5000
    assert 0 < kind.power_factor <= 1
    assert kind.provenance == "common practice"
    for rating_a in (None, 16, 63):
        tail = kind.tail_for(rating_a)
        assert tail in TAIL_PLACES
        assert tail_mm(tail).value > 0


def test_words_for_drawings() -> None:
    assert point_kind("5-pin socket").describe(rating_a=32) == "32 A 5-pin socket-outlet"
    assert point_kind("13 A socket").describe(gangs=2) == "13 A twin socket-outlet"
    assert point_kind("Isolator").describe(rating_a=63, poles=4) == "63 A four-pole isolator"
    assert point_kind("fused spur").describe(fuse_a=13) == "13 A fused connection unit"
    assert point_kind("fused spur").describe() == "fused connection unit"


def test_symbols() -> None:
    assert point_kind("5-pin socket").symbol_for(has_rcd=True) == "socket_three_phase_rcd"
    assert point_kind("13 A socket").symbol_for(gangs=2) == "socket_twin"
    assert point_kind("motor").symbol_for(is_three_phase=True) == "motor_3ph"
    assert point_kind("motor").symbol_for() == "motor_1ph"


def test_unknown_kind() -> None:
    with pytest.raises(OutsideTableError, match="chandelier"):
        point_kind("chandelier")


def test_tail_of_a_large_isolator() -> None:
    # common practice: 200 mm up to 32 A, 400 mm from 63 A
    assert tail_mm(point_kind("isolator").tail_for(20)).value == 200
    assert tail_mm(point_kind("isolator").tail_for(63)).value == 400


def test_every_kind_of_data_device_has_an_outline() -> None:
    for kind in ("camera", "data outlet", "access point", "recorder", "12 V supply", "PoE switch"):
        width_mm, height_mm = data_device_outline(kind)
        assert width_mm > 0
        assert height_mm > 0
    assert data_device_outline("data outlet") == (86.0, 86.0)  # BS 4662 single plate
    with pytest.raises(OutsideTableError, match="known: camera"):
        data_device_outline("periscope")
