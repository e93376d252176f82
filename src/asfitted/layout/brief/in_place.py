"""What was found fitted on site: it is looked over, neither fixed nor cut again.

A box to tick stays empty whatever was found: only who does the work ticks it.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from asfitted.resolve.installation import Installation
    from asfitted.resolve.job_record import SiteMark

FOUND = "found fitted"
NOTHING_TO_DO = "found"  # where a box to tick would stand


def in_place(installation: Installation) -> Mapping[str, SiteMark]:
    """Return, by tag, the mark-up that says that a thing was found fitted; none at the design."""
    return {mark.tag: mark for mark in installation.site_marks if mark.is_in_place}


def when_found(mark: SiteMark) -> str:
    """Return that a thing was found fitted, when and by whom: "found fitted 2026-12-05, T. M."."""
    return f"{FOUND} {mark.date}, {mark.by}"


def left_to_do(tags: Iterable[str], found: Mapping[str, SiteMark]) -> list[str]:
    """Return the tags of what is still to be fitted."""
    return [tag for tag in tags if tag not in found]
