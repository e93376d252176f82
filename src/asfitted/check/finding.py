"""What a rule says of one subject: a finding, or that it passed."""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from asfitted.errors import Place


class Severity(StrEnum):
    """How much a finding weighs: an error must be put right before work goes on."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"


class Status(StrEnum):
    """Whether the subject fails, could not be judged, or was accepted by a named person."""

    FAILS = "fails"
    NOT_CHECKED = "not checked"
    WAIVED = "waived"


@dataclass(frozen=True)
class Passed:
    """A subject that a rule judged and found right. Counted, so that silence is visible."""

    subject: str


@dataclass(frozen=True)
class Finding:
    """One thing that does not comply, could not be checked, or has been accepted.

    Attributes:
        rule: Id of the rule, "OC-01".
        clause: Standard, number and edition on which the rule rests.
        severity: Weight of the rule.
        status: Fails, not checked or waived.
        subject: Tag of the board, circuit, cable, point or run.
        place: Where the subject stands in the spec, if known.
        found: The figure of the job, in ``unit``; None when there is none.
        limit: The figure that it is held against, in ``unit``.
        unit: Unit of ``found``, ``limit`` and ``margin``; "" for none.
        margin: Room left before the limit; negative when past it.
        message: What is wrong, in the electrician's words.
        to_do: How to put it right.
        provenance: How the limit is known: "seen", "memory", "common practice" or "derived".
    """

    rule: str
    clause: str
    severity: Severity
    status: Status
    subject: str
    place: Place | None
    found: float | str | None
    limit: float | str | None
    unit: str
    margin: float | None
    message: str
    to_do: str
    provenance: str

    @property
    def word(self) -> str:
        """The one word printed for it: "error", "warning", "note", "not checked" or "waived"."""
        return str(self.severity) if self.status is Status.FAILS else str(self.status)

    @property
    def stops_work(self) -> bool:
        """Whether it is an error that fails: the only kind that gives exit code 1."""
        return self.status is Status.FAILS and self.severity is Severity.ERROR

    def render(self) -> str:
        """Return the finding as printed: head line, what to do, and where it stands."""
        lines = [f"{self.rule}  {self.word}  {self.subject}: {self.message}"]
        if self.to_do:
            lines.append(f"       {self.to_do}")
        lines.append(f"       {self.clause}; limit known by: {self.provenance}")
        if self.place:
            lines.append(f"       {self.place}")
        return "\n".join(lines)


Verdict = Finding | Passed

_ORDER = ("error", "warning", "not checked", "note", "waived")


def tag_order(tag: str) -> tuple[tuple[int, int, str], ...]:
    """Return a key that sorts tags as people do: DB1/2TP before DB1/10TP."""
    parts = re.findall(r"\d+|\D+", tag)
    return tuple((0, int(p), "") if p.isdigit() else (1, 0, p) for p in parts)


def finding_order(finding: Finding) -> tuple[int, tuple[tuple[int, int, str], ...], str, str]:
    """Return the key that findings are sorted by: weight, subject, rule, words."""
    return (
        _ORDER.index(finding.word),
        tag_order(finding.subject),
        finding.rule,
        finding.message,
    )
