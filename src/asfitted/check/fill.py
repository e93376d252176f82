"""Judge how full the pieces of one sort of containment are."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


def judge_fill(job: Inspection, kinds: tuple[str, ...], *, to_do: str) -> Iterator[Verdict]:
    """Yield a verdict on every piece that holds cables and whose kind has one of the words."""
    for section in job.results.sections.values():
        run = job.installation.containment[section.containment]
        if section.cables and any(word in run.kind for word in kinds):
            yield job.at_most(
                section.ident,
                what=f"fill of {run.words} with {len(section.cables)} cables",
                found=section.fill_pct,
                limit_is="the limit",
                limit=section.limit_pct,
                unit="%",
                to_do=to_do,
            )
