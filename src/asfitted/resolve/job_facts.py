"""The firm, the issues and the standing of a job, from its file and the firm's file."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from asfitted.resolve.job_record import Firm, Revision
from asfitted.spec.problem_codes import Code

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.resolve.installation import Job
    from asfitted.resolve.job_record import SiteMark
    from asfitted.resolve.ledger import Ledger
    from asfitted.spec.firm import FirmWords
    from asfitted.spec.job import JobWords

NOT_RECORDED = "not recorded"
AS_FITTED, NOT_YET = "As fitted", "Not checked as fitted"


def firm_of(words: JobWords, ledger: Ledger) -> Firm | None:
    """Return who does the work: the block ``installer`` or the firm's file; None if neither."""
    loaded = ledger.loaded
    if words.installer is not None and loaded.firm is not None:
        message = 'both "installer" and "firm" say who does the work'
        ledger.problem(Code.KEY_TWICE, message, ("job", "firm"), "keep one of them")
    firm: FirmWords | None = loaded.firm.words if loaded.firm else words.installer
    if firm is None:
        return None
    return Firm(
        name=firm.name,
        address=tuple(firm.address or ()),
        phone=words.phone or firm.phone or NOT_RECORDED,
        email=firm.email or NOT_RECORDED,
        registration=firm.registration or NOT_RECORDED,
        logo=loaded.logo,
    )


def revisions_of(words: JobWords, ledger: Ledger) -> tuple[Revision, ...]:
    """Return the issues of the job, the oldest first.

    The last must be the revision of the title block, dates may not run back, and no code may be
    used twice.
    """
    found: list[Revision] = []
    for number, entry in enumerate(words.revisions):
        path = ("job", "revisions", number)
        if entry.revision in {r.revision for r in found}:
            message = f'revision "{entry.revision}" stands twice in the list'
            ledger.problem(Code.NAME_TWICE, message, (*path, "revision"))
        if found and entry.date < found[-1].date:
            message = f"revision {entry.revision} is dated before {found[-1].revision}"
            hint = "write the oldest first"
            ledger.problem(Code.WORDS, message, (*path, "date"), hint)
        by, checked = entry.by or NOT_RECORDED, entry.checked or NOT_RECORDED
        found.append(Revision(entry.revision, entry.date, entry.what, by, checked))
    if found and words.revision not in {None, found[-1].revision}:
        message = f"the job is at revision {words.revision}, its list ends with "
        hint = "add the newest revision at the end of the list"
        ledger.problem(Code.WORDS, message + found[-1].revision, ("job", "revision"), hint)
    return tuple(found)


def status_of(words: JobWords) -> str:
    """Return the status to print: "As fitted" only when a person answers for it.

    Without a checker, a date and a list of what was not seen the words say that it is not checked.
    """
    if words.status != AS_FITTED:
        return words.status or NOT_RECORDED
    answered = words.checker and words.date and words.not_seen is not None
    is_named = (words.checker or "").strip().lower() not in {"", NOT_RECORDED}
    return AS_FITTED if answered and is_named else NOT_YET


def marked_job(job: Job, marks: Sequence[SiteMark]) -> Job:
    """Return the job facts of a print with mark-ups from site: never taken for the issue itself.

    Its revision ends in "-S", it is for information, and the mark-ups are its newest revision.
    """
    if not marks:
        return job
    revision = f"{job.revision}-S"
    tags = ", ".join(dict.fromkeys(mark.tag for mark in marks))
    row = Revision(
        revision,
        max(m.date for m in marks),
        f"As marked up on site: {tags}",
        marks[-1].by,
        NOT_RECORDED,
    )
    rows = (*(job.revisions or (_first_row(job),)), row)
    return replace(job, revision=revision, date=row.date, status="For information", revisions=rows)


def _first_row(job: Job) -> Revision:
    return Revision(job.revision, job.date, "as issued", job.designer, job.checker)
