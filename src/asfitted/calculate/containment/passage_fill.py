"""What goes through each passage, and how much of its opening that takes."""

from __future__ import annotations

from types import MappingProxyType
from typing import TYPE_CHECKING

from asfitted.calculate.containment.section_fill import cable_size
from asfitted.calculate.results import PassageResult

if TYPE_CHECKING:
    from collections.abc import Mapping

    from asfitted.calculate.results import CableRoute
    from asfitted.resolve.installation import Installation, Passage


def passage_fills(
    installation: Installation,
    paths: Mapping[str, CableRoute],
    sizes: Mapping[str, float],
) -> Mapping[str, PassageResult]:
    """Return what goes through each passage, in the order of the spec.

    Args:
        installation: the job.
        paths: routes by cable tag.
        sizes: chosen cross-sections by cable tag, mm2.

    Raises:
        InputOutOfRangeError: a cable in a passage has no size yet.
        OutsideTableError: a cable is not in the dimension tables.
    """
    through: dict[str, list[str]] = {tag: [] for tag in installation.passages}
    for cable, route in paths.items():
        for tag in dict.fromkeys(route.passages):
            through[tag].append(cable)
    return MappingProxyType(
        {
            tag: _result(installation, passage, through[tag], sizes)
            for tag, passage in installation.passages.items()
        }
    )


def _result(
    installation: Installation, passage: Passage, through: list[str], sizes: Mapping[str, float]
) -> PassageResult:
    cables = sorted(through, key=lambda tag: installation.cables[tag].band != "power")
    used = sum(cable_size(installation.cables[tag], sizes).area_mm2 for tag in cables)
    opening = None
    if passage.width_mm is not None and passage.height_mm is not None:
        opening = passage.width_mm * passage.height_mm
    fill = None if opening is None else 100 * used / opening
    return PassageResult(passage.tag, tuple(cables), used, opening, fill)
