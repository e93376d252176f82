"""BD-02: top of the board closed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.ip_code import numeral
from asfitted.check.recorded import is_recorded
from asfitted.check.registry import rule
from asfitted.reference.site_limits import site_limit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="BD-02",
    title="Top of the board closed",
    clause=bs7671("416.2.2"),
    severity=Severity.ERROR,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Top of the board closed.

    What it checks. The enclosure of a board is IP4X or better, so that its top surface is too.

    Why it matters on site. Swarf and screws dropped on top fall onto the busbars.

    Bad. An IP20 board in a workshop.

    Good. An IP40 board.

    To put it right. Blank the openings on top, or fit a better enclosure.

    Source. BS 7671 416.2.2: readily accessible top surfaces, IPXXD or IP4X.
    """
    limit = site_limit("top surface first numeral")
    for board in job.installation.boards.values():
        first = numeral(board.ip, "first")
        yield job.at_least(
            board.tag,
            what=f"first numeral of {board.ip if is_recorded(board.ip) else 'its IP code'}",
            found=float(first) if first is not None else None,
            limit_is="the least for a top surface within reach",
            limit=limit.value,
            unit="",
            to_do="Blank the openings on top, or fit a better enclosure.",
            known_by=limit.provenance,
        )
