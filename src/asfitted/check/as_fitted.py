"""When an issue claims to show what is there."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from asfitted.resolve.installation import Job


def is_as_fitted(job: Job) -> bool:
    """Tell whether an issue says "As fitted", or would if it were checked."""
    return "as fitted" in job.status.lower().replace("-", " ")
