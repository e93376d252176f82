"""The gland of an armoured end: sealed wherever water or a missing IP code asks for it."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from asfitted.calculate.armoured_gland import armoured_gland, gland_type

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model
    from asfitted.resolve.installation import Installation

INSIDE = "X1"


def _with_ip(job: Installation, ip: str, *, outside: bool) -> Installation:
    point = job.points[INSIDE]
    moved = replace(point, ip=ip, position=replace(point.position, outside=outside))
    return replace(job, points={**job.points, INSIDE: moved})


# the second numeral is that of BS EN 60529: 4 splashing water, X not stated; BW dry indoors and
# CW sealed on the sheath: common practice
@pytest.mark.parametrize(
    ("ip", "outside", "kind"),
    [
        ("IP40", False, "BW"),
        ("IP2X", False, "BW"),
        ("IP4XD", False, "BW"),
        ("IP43", False, "BW"),
        ("IP44", False, "CW"),
        ("IPX4", False, "CW"),
        ("IP65", False, "CW"),
        ("IP 66", False, "CW"),
        ("", False, "CW"),
        ("not recorded", False, "CW"),
        ("IP40", True, "CW"),
    ],
)
def test_type_follows_the_ip_code_and_the_place(
    demo_models: dict[str, Model], ip: str, outside: bool, kind: str
) -> None:
    job = _with_ip(demo_models["pottery-studio"].installation, ip, outside=outside)
    assert gland_type(INSIDE, job) == kind


def test_a_size_without_strip_lengths_or_a_known_size_says_so(
    demo_models: dict[str, Model],
) -> None:
    model = demo_models["pottery-studio"]
    cable = model.installation.cables["W05"]
    unsized = replace(model.results, cables={})
    assert armoured_gland(replace(cable, csa_mm2=None), unsized) is None
    large = armoured_gland(replace(cable, csa_mm2=95.0), unsized)  # 50S: no row of strip lengths
    assert large is not None
    assert (large.size.text, large.lengths) == ("50S", None)
