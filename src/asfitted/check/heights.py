"""Judge a mounting height against the planning range of its kind."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.reference.site_limits import height_range

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.check.finding import Verdict
    from asfitted.check.inspection import Inspection
    from asfitted.resolve.installation import PointServed


def judge_height(job: Inspection, tag: str, kind: str, up_mm: float) -> Iterator[Verdict]:
    """Yield one verdict on a height above finished floor level, mm, or none without a range."""
    span = height_range(kind)
    if span is None:
        return
    to_do = f"Mount it {span.least_mm:g} to {span.greatest_mm:g} mm up, or say why in a waiver."
    if up_mm < span.least_mm:
        yield job.at_least(
            tag,
            what="height",
            found=up_mm,
            limit_is=f"the lowest for a {kind}",
            limit=span.least_mm,
            unit="mm",
            to_do=to_do,
            known_by=span.provenance,
        )
    else:
        yield job.at_most(
            tag,
            what="height",
            found=up_mm,
            limit_is=f"the highest for a {kind}",
            limit=span.greatest_mm,
            unit="mm",
            to_do=to_do,
            known_by=span.provenance,
        )


def judge_point_height(job: Inspection, point: PointServed) -> Iterator[Verdict]:
    """Yield one verdict on the height of a point, or none where its kind has no range.

    The height of a thing at the end of a declared run is not known.
    """
    if point.position.end_of and height_range(point.kind) is not None:
        yield job.not_checked(
            point.tag,
            f"its height at the end of {point.position.end_of} is not recorded",
            to_do="Measure it on site.",
        )
        return
    yield from judge_height(job, point.tag, point.kind, point.position.up_mm)
