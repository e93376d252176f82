"""What this set leaves to be chosen on site, told once: it is ordered by nobody until then."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.materials.top_fixings import TO_CHOOSE
from asfitted.layout.document.plain_words import some_of

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model
    from asfitted.resolve.installation import Installation, PointServed

MOST = 24
_SPUR = "fused spur"
#: What is said of the cable from a fused connection unit to what it feeds: no spec gives it.
TAIL_WORDS = "tail to the appliance: by its maker, not included"


def to_choose(model: Model) -> tuple[str, ...]:
    """Return what is to be chosen before it can be ordered, one sentence each."""
    entries = []
    off = model.results.take_off
    if off is not None and off.top_fixings:
        tags = list(dict.fromkeys(one.tag for one in off.top_fixings))
        count = sum(one.count for one in off.top_fixings)
        entries.append(f"Top fixings, {count}: {TO_CHOOSE}: {some_of(tags, MOST)}.")
    tails = tail_words(model.installation)
    if tails:
        entries.append(f"{tails[0].upper()}{tails[1:]}.")
    return tuple(entries)


def spurs_with_tails(installation: Installation) -> tuple[PointServed, ...]:
    """Return the new fused connection units from which no cable of the job goes on."""
    gone_on = {cable.from_end for cable in installation.cables.values()}
    return tuple(
        point
        for point in installation.points.values()
        if point.kind == _SPUR and point.state == "new" and point.tag not in gone_on
    )


def fed_by(point: PointServed, installation: Installation) -> str:
    """Return what a unit feeds: the cabinet it is named for, else its name."""
    cabinet = installation.cabinet
    if cabinet is not None and cabinet.fed_from == point.tag:
        return cabinet.tag
    return point.name


def tail_words(installation: Installation) -> str:
    """Return what is said of tails that no cable of the job makes, "" without any."""
    tails = [_tail(point, installation) for point in spurs_with_tails(installation)]
    return f"{TAIL_WORDS}: {some_of(tails, MOST)}" if tails else ""


def _tail(point: PointServed, installation: Installation) -> str:
    fed = fed_by(point, installation)
    return f"{point.tag} to {fed}" if fed else point.tag
