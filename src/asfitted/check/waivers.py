"""Accepted departures: one rule, one subject, a reason and a person."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from asfitted.check.finding import Finding, Severity, Status

if TYPE_CHECKING:
    from collections.abc import Iterable

    from asfitted.resolve.installation import Installation, Waiver

UNUSED_WAIVER = "WV-01"
_CLAUSE = "BS 7671 120.3 (departures are recorded on the certificate; not compared with A4:2026)"


def apply_waivers(findings: Iterable[Finding], installation: Installation) -> list[Finding]:
    """Return the findings with accepted ones marked, and one more for each waiver of no use.

    A waiver covers a finding of the same rule and subject, whether it fails or is not checked.
    The reason and the person are added to its message, so that both reach paper.
    """
    waivers = {(w.rule, w.subject): w for w in installation.waivers}
    used: set[tuple[str, str]] = set()
    marked = []
    for finding in findings:
        key = (finding.rule, finding.subject)
        waiver = waivers.get(key)
        if waiver is None:
            marked.append(finding)
            continue
        used.add(key)
        words = f"{finding.message} Accepted by {waiver.by}: {waiver.reason.rstrip('.')}."
        marked.append(replace(finding, status=Status.WAIVED, message=words))
    unused = (w for key, w in waivers.items() if key not in used)
    return [*marked, *(_of_no_use(w, installation) for w in unused)]


def _of_no_use(waiver: Waiver, installation: Installation) -> Finding:
    return Finding(
        rule=UNUSED_WAIVER,
        clause=_CLAUSE,
        severity=Severity.WARNING,
        status=Status.FAILS,
        subject=waiver.subject,
        place=installation.places.get(waiver.subject),
        found=waiver.rule,
        limit=None,
        unit="",
        margin=None,
        message=f"The waiver of {waiver.rule} by {waiver.by} matches no finding any more.",
        to_do="Take the waiver out of the spec, or correct its rule and subject.",
        provenance="common practice",
    )
