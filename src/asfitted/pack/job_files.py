"""The files a set was drawn from, to travel inside its PDF: whoever has it can draw it again."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from asfitted.errors import OutputError
from asfitted.pack.pdf_archive import Attachment
from asfitted.spec.load_yaml import load_yaml

if TYPE_CHECKING:
    from pathlib import Path

#: Where a job file names other files: the path of keys, and what the file is.
NAMED = (
    (("results",), "measured test results"),
    (("stock file",), "stock in hand"),
    (("prices",), "prices"),
    (("job", "firm"), "the firm"),
    (("job", "issued"), "the job file as issued before"),
)


def job_attachments(path: Path) -> tuple[Attachment, ...]:
    """Return the job file and the files it names that lie beside it, byte for byte.

    Raises:
        SpecError: the job file cannot be read.
        OutputError: a file that it names cannot be read.
    """
    document = load_yaml(path)
    found = [Attachment(path.name, _bytes(path), "the job file this set was drawn from")]
    names = {path.name}
    for keys, what in NAMED:
        named: Any = document.value(keys)
        if not isinstance(named, str) or not named:
            continue
        file = path.parent / named
        if file.is_file() and file.name not in names:
            names.add(file.name)
            found.append(Attachment(file.name, _bytes(file), f"{what}: {named}"))
    return tuple(found)


def _bytes(path: Path) -> bytes:
    try:
        return path.read_bytes()
    except OSError as error:
        raise OutputError(f"cannot read {path.name}: {error.strerror or error}") from error
