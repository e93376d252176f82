"""Paths of files that a job file names: on this machine, beside it; nothing is fetched."""

from __future__ import annotations

import re
from pathlib import Path, PurePosixPath, PureWindowsPath
from typing import TYPE_CHECKING

from asfitted.errors import Problem, SpecError
from asfitted.spec.problem_codes import Code

if TYPE_CHECKING:
    from asfitted.errors import Place

_ADDRESS = re.compile(r"^[A-Za-z][A-Za-z0-9+.-]+:|^//|^\\\\")


def beside(folder: Path, name: str, place: Place | None, what: str) -> Path:
    """Return the path of a file named relative to a folder.

    Args:
        folder: folder of the file that names it.
        name: the path as written.
        place: where it is written, for the message.
        what: what it is called in the message, "the logo".

    Raises:
        SpecError: an address on a network, an absolute path, or no such file.
    """
    hint = "write the path of a file from the folder of this one, such as shared/firm.yaml"
    if _ADDRESS.search(name):
        message = f'{what} "{name}" is not a local file: nothing is fetched'
        raise SpecError([Problem(Code.FILE, message, place, hint)])
    if PurePosixPath(name).is_absolute() or PureWindowsPath(name).is_absolute():
        message = f'{what} "{name}" is named from the root of one machine'
        raise SpecError([Problem(Code.FILE, message, place, hint)])
    path = folder / Path(name)
    if not path.is_file():
        message = f'{what} "{name}" is not there'
        raise SpecError([Problem(Code.FILE, message, place, hint)])
    return path
