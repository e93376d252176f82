"""The file of mark-ups from site: what was found otherwise than drawn, thing by thing."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

from pydantic import Field, ValidationError

from asfitted.errors import Problem, SpecError
from asfitted.spec.explain import explain
from asfitted.spec.fields import Date, LengthM, SpecModel, Text
from asfitted.spec.load_yaml import Document, SpecPath, load_yaml
from asfitted.spec.problem_codes import Code

if TYPE_CHECKING:
    from pathlib import Path

    from asfitted.errors import Place

VERSION_KEY = "asfitted-site"


class SiteMarkWords(SpecModel):
    """One mark-up: the tag of a thing, and what was found of it."""

    tag: Text
    moved_to: Text | None = None
    lengthened_by: LengthM | None = None
    measured: LengthM | None = None
    as_found: dict[str, Any] | None = None
    note: Text | None = None
    photo: Text | None = None


class SiteWords(SpecModel):
    """All mark-ups of one visit."""

    job: Text = Field(alias="for")
    by: Text
    date: Date
    marks: list[SiteMarkWords]


@dataclass(frozen=True)
class LoadedSite:
    """Mark-ups as written, and where each stands in the file."""

    words: SiteWords
    document: Document

    def problem(self, code: Code, message: str, path: SpecPath, hint: str = "") -> Problem:
        """Return a problem at a path of the file."""
        return Problem(code, message, self.document.place(path), hint)


def load_site(path: Path) -> LoadedSite:
    """Read a file of mark-ups.

    Raises:
        SpecError: with every problem of the file.
    """
    document = load_yaml(path)
    if document.data.get(VERSION_KEY) != "1":
        hint = f'start the file with "{VERSION_KEY}: 1"'
        message = f"{path.name} is no file of mark-ups"
        raise SpecError([Problem(Code.VERSION, message, document.place_at(0, 0), hint)])
    data = {key: value for key, value in document.data.items() if key != VERSION_KEY}
    try:
        words = SiteWords.model_validate(data)
    except ValidationError as error:
        raise SpecError(explain(error, document, SiteWords)) from error
    loaded = LoadedSite(words, document)
    empty = [
        loaded.problem(
            Code.MISSING,
            f"the mark-up of {mark.tag} says nothing",
            ("marks", number),
            "add moved to, lengthened by, measured, as found, note or photo",
        )
        for number, mark in enumerate(words.marks)
        if len(mark.model_dump(exclude_none=True)) == 1
    ]
    if empty:
        raise SpecError(empty)
    return loaded


@dataclass(frozen=True)
class MarkedDocument(Document):
    """A job file with mark-ups laid over it: what a mark-up changed stands in the other file."""

    site: Document | None = None
    marked: dict[SpecPath, SpecPath] = field(default_factory=dict)

    def place(self, path: SpecPath, *, of_key: bool = False) -> Place:
        """Return where a value stands: in the mark-ups if they set it, else in the job file."""
        for end in range(len(path), 0, -1):
            if self.site is not None and path[:end] in self.marked:
                return self.site.place((*self.marked[path[:end]], *path[end:]), of_key=of_key)
        return super().place(path, of_key=of_key)
