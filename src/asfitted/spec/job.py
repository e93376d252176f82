"""The job: the facts of the title block, and accepted departures."""

from __future__ import annotations

from pydantic import Field

from asfitted.spec.fields import (
    BuildingUse,
    Date,
    DrawingPaper,
    Edition,
    SpecModel,
    Status,
    Text,
)
from asfitted.spec.firm import FirmWords  # noqa: TC001 - pydantic needs it at run time
from asfitted.spec.job_record import NotSeen, RevisionWords  # noqa: TC001


class JobWords(SpecModel):
    """``job:``; a fact that is left out is printed as "not recorded"."""

    number: Text
    title: Text
    client: Text | None = None
    site: Text | None = None
    installer: FirmWords | None = None
    firm: Text | None = None
    phone: Text | None = None
    designer: Text | None = None
    checker: Text | None = None
    edition: Edition | None = None
    date: Date | None = None
    revision: Text | None = None
    status: Status | None = None
    description: Text | None = None
    building_use: BuildingUse | None = None
    paper: DrawingPaper | None = None
    issued: Text | None = None
    revisions: list[RevisionWords] = Field(default_factory=list)
    not_seen: NotSeen | None = None


class WaiverWords(SpecModel):
    """One entry of ``accept:``; a departure is accepted by a person, for a reason."""

    rule: Text
    subject: Text
    reason: Text
    by: Text
