"""Reads the firm's file that a job file names."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from pydantic import ValidationError

from asfitted.errors import Problem, SpecError
from asfitted.spec.explain import explain
from asfitted.spec.firm import FirmWords
from asfitted.spec.load_yaml import Document, load_yaml
from asfitted.spec.named_file import beside
from asfitted.spec.problem_codes import Code

if TYPE_CHECKING:
    from pathlib import Path

    from asfitted.errors import Place

VERSION_KEY = "asfitted-firm"


@dataclass(frozen=True)
class LoadedFirm:
    """A firm as written, the file it stands in, and the folder that its logo is looked for in."""

    words: FirmWords
    document: Document
    folder: Path
    logo_place: Place | None = None


def load_firm(name: str, place: Place, folder: Path) -> LoadedFirm:
    """Read the firm's file named in a job file.

    Args:
        name: path as written, relative to ``folder``.
        place: where the job file names it.
        folder: folder of the job file.

    Raises:
        SpecError: the file is missing or something in it is not understood.
    """
    path = beside(folder, name, place, "the firm's file")
    document = load_yaml(path)
    if str(document.data.get(VERSION_KEY)) != "1":
        hint = f'start the file with "{VERSION_KEY}: 1"'
        message = f"{path.name} is no firm's file"
        raise SpecError([Problem(Code.VERSION, message, document.place_at(0, 0), hint)])
    data = {key: value for key, value in document.data.items() if key != VERSION_KEY}
    try:
        words = FirmWords.model_validate(data)
    except ValidationError as error:
        raise SpecError(explain(error, document, FirmWords)) from error
    logo_place = document.place(("logo",)) if words.logo else None
    return LoadedFirm(words, document, path.parent, logo_place)
