"""A job and the issues before it: each is resolved with the tags of the one it follows."""

from __future__ import annotations

from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import TYPE_CHECKING

from asfitted.errors import Problem, SpecError
from asfitted.resolve.resolve_job import resolve
from asfitted.resolve.site_marks import marked_up
from asfitted.spec.load_job import load_job
from asfitted.spec.problem_codes import Code
from asfitted.spec.site_marks import load_site

if TYPE_CHECKING:
    from pathlib import Path

    from asfitted.calculate.results import CalculationResults
    from asfitted.resolve.installation import Installation
    from asfitted.spec.load_job import LoadedJob


@dataclass(frozen=True)
class Issued:
    """A resolved job, and the issue that it is compared with; None when none was given."""

    installation: Installation
    before: Installation | None = None
    design: Installation | None = None  # as designed, where mark-ups were laid over it


def as_laid(found: Installation, design: CalculationResults) -> Installation:
    """Return a marked-up job with the cable sizes of its design.

    What lies on site was chosen for the design. A mark-up that asks for more must show as a
    finding, not choose another cable in silence.
    """
    cables = {
        tag: replace(cable, csa_mm2=design.cables[tag].csa_mm2)
        if cable.csa_mm2 is None and tag in design.cables
        else cable
        for tag, cable in found.cables.items()
    }
    return replace(found, cables=MappingProxyType(cables))


def resolve_issue(path: Path, since: Path | None = None, site: Path | None = None) -> Issued:
    """Resolve a job with the tags of the issue before it.

    Args:
        path: the job file.
        since: the file of the issue before it; without it, what the job names as ``issued``.
        site: mark-ups to lay over the job; it is then compared with the job as designed, unless
            ``since`` says with what.

    Raises:
        SpecError: a file cannot be used, or issues name each other in a ring.
    """
    loaded = load_job(path)
    older = since or loaded.issued
    before = _resolved(older, (path,), loaded) if older else None
    design = resolve(loaded, before)
    if site is None:
        return Issued(design, before)
    lengthened = marked_up(loaded, design, load_site(site))
    found = resolve(lengthened, design)
    return Issued(found, before if since else design, design)


def _resolved(path: Path, later: tuple[Path, ...], named_by: LoadedJob) -> Installation:
    if path.resolve() in {one.resolve() for one in later}:
        message = f"{path.name} is issued before itself"
        place = named_by.place(("job", "issued"))
        raise SpecError([Problem(Code.FILE, message, place, "name the file of the issue before")])
    loaded = load_job(path)
    before = None
    if loaded.issued:
        before = _resolved(loaded.issued, (*later, path), loaded)
    return resolve(loaded, before)
