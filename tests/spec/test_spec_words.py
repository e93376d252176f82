"""Phrases taken apart."""

from __future__ import annotations

from dataclasses import replace

import pytest

from asfitted.errors import NotUnderstoodError
from asfitted.spec.device_words import DeviceWords, parse_device
from asfitted.spec.words import (
    CableWords,
    LevelWords,
    PositionWords,
    WaypointWords,
    did_you_mean,
    parse_aim,
    parse_cable,
    parse_level,
    parse_load,
    parse_position,
    parse_route,
    parse_tails,
    parse_voltage,
    parse_waypoint,
)


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("wall B, 1.0 m along, 1.3 m up", PositionWords("", "B", along_mm=1000, up_mm=1300)),
        (
            "wall A outside, 300 along, 3.0 m up",
            PositionWords("", "A", outside=True, along_mm=300, up_mm=3000),
        ),
        (
            "wall A, 2.0 m along, 3.5 m up, 1.6 m out",
            PositionWords("", "A", along_mm=2000, up_mm=3500, out_mm=1600),
        ),
        ("wall A, 2.0 m along", PositionWords("", "A", along_mm=2000)),
        ("end of U1", PositionWords("", end_of="U1")),
    ],
)
def test_positions(text: str, parts: PositionWords) -> None:
    read = parse_position(text)
    assert read.words == text
    assert (read.wall, read.outside, read.along_mm, read.up_mm, read.out_mm, read.end_of) == (
        parts.wall,
        parts.outside,
        parts.along_mm,
        parts.up_mm,
        parts.out_mm,
        parts.end_of,
    )


@pytest.mark.parametrize(
    "text",
    [
        "B, 1.0 m along",
        "wall B",
        "wall B, 1.0 m",
        "wall B, 1 m along, 2 m along",
        "wall B, 1.0 along",
    ],
)
def test_positions_that_are_not_understood(text: str) -> None:
    with pytest.raises(NotUnderstoodError) as caught:
        parse_position(text)
    assert caught.value.hint


@pytest.mark.parametrize(
    ("text", "wall", "along_mm", "up_mm", "over"),
    [
        ("D 1.0 m", "D", 1000, None, False),
        ("A", "A", None, None, False),
        ("over to C 2.0 m", "C", 2000, None, True),
        ("A 2.0 m at 1.2 m up", "A", 2000, 1200, False),
        ("B 5600", "B", 5600, None, False),
    ],
)
def test_waypoints(
    text: str, wall: str, along_mm: float | None, up_mm: float | None, over: bool
) -> None:
    assert parse_waypoint(text) == WaypointWords(text, wall, along_mm, up_mm, over)


@pytest.mark.parametrize("text", ["over to C", "A at 1.2 m up", "A 2.0 m then up", ""])
def test_waypoints_that_are_not_understood(text: str) -> None:
    with pytest.raises(NotUnderstoodError):
        parse_waypoint(text)


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("SWA 4c", CableWords("", "SWA", 4, None, existing=False, baluns=False)),
        ("SWA 4c 6 mm2", CableWords("", "SWA", 4, 6, existing=False, baluns=False)),
        ("SWA LSF 4c", CableWords("", "SWA LSF", 4, None, existing=False, baluns=False)),
        ("T&E", CableWords("", "T&E", None, None, existing=False, baluns=False)),
        ("T&E 2.5 mm²", CableWords("", "T&E", None, 2.5, existing=False, baluns=False)),
        ("rubber flex 5c", CableWords("", "rubber flex", 5, None, existing=False, baluns=False)),
        ("singles 4 mm2", CableWords("", "singles", None, 4, existing=False, baluns=False)),
        ("Cat6", CableWords("", "Cat6", None, None, existing=False, baluns=False)),
        ("Cat6 with baluns", CableWords("", "Cat6", None, None, existing=False, baluns=True)),
        (
            "existing RG59+2 0.75 mm2",
            CableWords("", "RG59+2", None, 0.75, existing=True, baluns=False),
        ),
    ],
)
def test_cables(text: str, parts: CableWords) -> None:
    assert replace(parse_cable(text), words="") == parts


@pytest.mark.parametrize("text", ["4c", "6 mm2", "4c 6 mm2"])
def test_cables_without_a_family(text: str) -> None:
    with pytest.raises(NotUnderstoodError):
        parse_cable(text)


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("C32 TP 6 kA", DeviceWords("", curve="C", rating_a=32, poles="TP", icn_ka=6)),
        (
            "RCBO B20 30 mA type A 6 kA",
            DeviceWords("", "rcbo", "B", 20, icn_ka=6, idn_ma=30, rcd_type="A"),
        ),
        (
            "100 A BS 88-3 declared",
            DeviceWords("", rating_a=100, standard="BS 88-3", basis="declared"),
        ),
        ("63 A BS 88-2 TP", DeviceWords("", rating_a=63, poles="TP", standard="BS 88-2")),
        ("100 A switch-disconnector 4P", DeviceWords("", "switch-disconnector", "", 100, "4P")),
        ("40 A 30 mA type A", DeviceWords("", rating_a=40, idn_ma=30, rcd_type="A")),
        (
            "63 A 100 mA type B delayed",
            DeviceWords("", rating_a=63, idn_ma=100, rcd_type="B", delayed=True),
        ),
    ],
)
def test_devices(text: str, parts: DeviceWords) -> None:
    read = parse_device(text)
    assert read.words == text
    for name in ("kind", "curve", "rating_a", "poles", "icn_ka", "idn_ma", "rcd_type"):
        assert getattr(read, name) == getattr(parts, name), name
    assert (read.standard, read.delayed, read.basis) == (parts.standard, parts.delayed, parts.basis)


@pytest.mark.parametrize("text", ["TP 6 kA", "C32 C40", "C32 TP 6,5 kA", "C32 banana", ""])
def test_devices_that_are_not_understood(text: str) -> None:
    with pytest.raises(NotUnderstoodError) as caught:
        parse_device(text)
    assert caught.value.hint


def test_small_phrases() -> None:
    assert parse_level("2.9 m T/O") == LevelWords(2900, "T/O")
    assert parse_level("2.55 m u/s") == LevelWords(2550, "U/S")
    assert parse_level("2400") == LevelWords(2400)
    assert parse_route("clipped direct, 2.25 m up").clipped_up_mm == 2250
    assert (parse_load("18 kW").power_w, parse_load("4 A").current_a) == (18000, 4)
    assert (parse_voltage("400/230 V").line_v, parse_voltage("400/230 V").u0_v) == (400, 230)
    assert parse_voltage("230 V").line_v == 230
    assert (parse_tails("25 mm2, 2 m").csa_mm2, parse_tails("25 mm2, 2 m").length_m) == (25, 2)
    assert (parse_aim("square"), parse_aim("45 left"), parse_aim("30 right")) == (0, 45, -30)


@pytest.mark.parametrize(
    ("parse", "text"),
    [
        (parse_level, "2.9 m X/Y"),
        (parse_route, "in the ceiling"),
        (parse_load, "5 kVA"),
        (parse_voltage, "230/400 V"),
        (parse_tails, "25 mm2, 2 kg"),
        (parse_aim, "up"),
        (parse_aim, "120 left"),
    ],
)
def test_small_phrases_that_are_not_understood(parse: object, text: str) -> None:
    assert callable(parse)
    with pytest.raises(NotUnderstoodError):
        parse(text)


def test_nearest_word_or_the_known_words() -> None:
    assert did_you_mean("clinet", ["title", "client"]) == 'did you mean "client"?'
    assert did_you_mean("zzz", ["A", "B"]) == "known here: A, B"
    assert did_you_mean("zzz", []) == ""
