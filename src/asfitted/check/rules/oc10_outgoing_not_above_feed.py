"""OC-10: outgoing device not above the feed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.clause import bs7671
from asfitted.check.finding import Severity
from asfitted.check.protection import upstream_circuit
from asfitted.check.registry import rule

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


@rule(
    id="OC-10",
    title="Outgoing device not above the feed",
    clause=bs7671("536.4.1"),
    severity=Severity.WARNING,
    provenance="memory",
)
def check(job: Inspection) -> Iterator[Verdict]:
    """Outgoing device not above the feed.

    What it checks. No outgoing device of a sub-board is rated above the device that feeds the sub-
    board.

    Why it matters on site. On overload the feed goes first and takes every other circuit with it.

    Bad. A C50 outgoing way on a sub-board fed by a C40.

    Good. A C20 outgoing way there.

    To put it right. Feed that load from the main board, or raise the feed and its cable.

    Source. BS 7671 536.4.1, selectivity where it is wanted.
    """
    for circuit, _ in job.circuits():
        feed = upstream_circuit(job.installation, job.installation.boards[circuit.board])
        if feed is not None:
            yield job.at_most(
                circuit.tag,
                what=f"rating of its {circuit.device.words}",
                found=circuit.device.rating_a,
                limit_is=f"the {feed.device.words} at {feed.tag} that feeds {circuit.board}",
                limit=feed.device.rating_a,
                unit="A",
                to_do="Feed it from the main board, or raise the feed and its cable.",
            )
