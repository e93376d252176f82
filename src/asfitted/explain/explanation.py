"""What is told of one circuit, board, data device or run: parts of working, margins, findings."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from asfitted.calculate.results import SizeTried
    from asfitted.calculate.working import Step
    from asfitted.check.finding import Finding

CAUTIONS = (
    "Design aid, not a certificate: for a competent person, against the current BS 7671.",
    "Calculated figures are not test results. Isolate, lock off and prove dead before work.",
)
FROM_MEMORY = "Figures marked (memory) were not read in the current book: check them there."


@dataclass(frozen=True)
class Part:
    """One part of the working.

    Attributes:
        title: What it is about, "Cable W05: 4c × 6 mm² XLPE/SWA/PVC".
        steps: Its lines of working, in order.
        lines: Plain words printed before the steps, such as the way of a cable.
        tried: Sizes of cable that were tried, least first.
    """

    title: str
    steps: tuple[Step, ...] = ()
    lines: tuple[str, ...] = ()
    tried: tuple[SizeTried, ...] = ()


@dataclass(frozen=True)
class Margin:
    """A figure beside its limit, both in ``unit``."""

    words: str
    found: float
    relation: Literal["at most", "at least"]
    limit: float
    unit: str

    @property
    def holds(self) -> bool:
        """Whether the figure keeps its limit."""
        slack = 1e-9 * max(1.0, abs(self.limit))
        if self.relation == "at most":
            return self.found <= self.limit + slack
        return self.found >= self.limit - slack

    @property
    def room_pct(self) -> float | None:
        """Room left before the limit, per cent of the limit; below 0 when it is passed."""
        if self.limit == 0:
            return None
        share = 100.0 * (self.limit - self.found) / self.limit
        return share if self.relation == "at most" else -share


@dataclass(frozen=True)
class Explanation:
    """Everything told of one thing; ``not_known`` says aloud what could not be worked out."""

    tag: str
    heading: str
    facts: tuple[tuple[str, str], ...]
    parts: tuple[Part, ...]
    margins: tuple[Margin, ...]
    findings: tuple[Finding, ...]
    not_known: tuple[str, ...]
    cautions: tuple[str, ...]


def margin(
    words: str,
    found: float | None,
    relation: Literal["at most", "at least"],
    limit: float | None,
    unit: str,
) -> tuple[Margin, ...]:
    """Return the margin of two figures; none where either is not known."""
    if found is None or limit is None:
        return ()
    return (Margin(words, found, relation, limit, unit),)


def cautions_of(parts: tuple[Part, ...]) -> tuple[str, ...]:
    """Return the cautions printed under the working; one more where figures rest on memory."""
    recalled = any("memory" in step.source for part in parts for step in part.steps)
    return (*CAUTIONS, FROM_MEMORY) if recalled else CAUTIONS
