"""AF-02: nothing is left to be confirmed."""

from __future__ import annotations

import re
from dataclasses import fields, is_dataclass
from typing import TYPE_CHECKING

from asfitted.check.as_fitted import is_as_fitted
from asfitted.check.clause import practice
from asfitted.check.finding import Severity
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection

_OPEN = re.compile(
    r"\b(?:t\.?b\.?[cda]\b\.?|to be (?:confirmed|advised|agreed|decided|determined)|to suit)",
    re.IGNORECASE,
)


@rule(
    id="AF-02",
    title="Nothing is left to be confirmed",
    clause=practice("Records of as-fitted drawings"),
    severity=Severity.ERROR,
    provenance="common practice",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Nothing is left to be confirmed.

    What it checks. No words of an as-fitted job leave a matter open: "to be confirmed", "TBC",
    "to suit" and the like.

    Why it matters on site. Who opens the board in ten years finds nobody to confirm it.

    Bad. A socket-outlet named "TBC" on an issue that is as fitted.

    Good. The same with the name of what it feeds, or "not recorded".

    To put it right. Find it out; else write "not recorded" and list it as not seen.

    Source. Drawing practice.
    """
    installation = job.installation
    if not is_as_fitted(installation.job):
        return
    things: dict[str, object] = {"job": installation.job, "supply": installation.supply}
    groups = (
        installation.rooms,
        installation.boards,
        installation.circuits,
        installation.points,
        installation.containment,
        installation.data_devices,
    )
    for group in groups:
        things |= {tag: group[tag] for tag in group}
    for tag, thing in things.items():
        found = next((w for w in _words(thing) if _OPEN.search(w)), "")
        yield job.holds(
            tag,
            not found,
            f'The issue is as fitted, but the words "{found}" leave something open.',
            to_do='Find it out; else write "not recorded" and list it as not seen.',
            found=found,
        )


def _words(value: object) -> Iterator[str]:
    """Yield every text inside a thing of the job."""
    if isinstance(value, str):
        yield value
    elif is_dataclass(value) and not isinstance(value, type):
        for one in fields(value):
            yield from _words(getattr(value, one.name))
    elif isinstance(value, list | tuple):
        for one in value:
            yield from _words(one)
