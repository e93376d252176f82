"""Judge how full the pieces of one sort of containment are."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection


def judge_fill(
    job: Inspection, kinds: tuple[str, ...], *, to_do: str, limit_pct: float | None = None
) -> Iterator[Verdict]:
    """Yield a verdict on the fullest piece of every run that holds cables.

    Args:
        job: The job and the rule at work.
        kinds: Words of which the kind of a run must hold one: "tray", "conduit".
        to_do: How to put it right; the width to order is added where it is known.
        limit_pct: Limit in % of width or area; that of the piece when left out.
    """
    for run in job.installation.containment.values():
        own = [s for s in job.pieces_of(run.tag) if s.cables]
        if not own or not any(word in run.kind for word in kinds):
            continue
        fullest = max(own, key=lambda section: section.fill_pct)
        result = job.results.containment.get(run.tag)
        width_mm = result.width_to_order_mm if result else None
        order = f" Width to order: {width_mm:g} mm." if width_mm else ""
        yield job.at_most(
            run.tag,
            what=f"fill of the {run.words} at {fullest.ident}, with {', '.join(fullest.cables)},",
            found=fullest.fill_pct,
            limit_is="the limit",
            limit=fullest.limit_pct if limit_pct is None else limit_pct,
            unit="%",
            to_do=to_do + order,
        )
