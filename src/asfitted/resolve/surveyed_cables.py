"""Which cables were found longer or shorter on site without anybody saying which way they go."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from asfitted.resolve.installation import Cable
    from asfitted.resolve.job_record import SiteMark


def as_surveyed(cables: Mapping[str, Cable], marks: Iterable[SiteMark]) -> dict[str, Cable]:
    """Return the cables, those marked of which only the length was found on site.

    A length that the job file itself adds (``extra``) was found so too.
    """
    given = {mark.tag: mark.way_given for mark in marks}
    return {
        tag: cable if given.get(tag, not cable.extra_m) else replace(cable, way_surveyed=False)
        for tag, cable in cables.items()
    }
