"""The files a set was drawn from, to travel inside its PDF: whoever has it can draw it again.

All that the job reads: the job file, the files it names, the issues before it with theirs, and the
mark-ups from site. They are attached byte for byte, in an order that depends on the job alone.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any

from asfitted.errors import OutputError
from asfitted.pack.pdf_archive import Attachment
from asfitted.spec.load_yaml import load_yaml

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

#: Where a file names other files: the path of keys, and what the file is.
NAMED = (
    (("results",), "measured test results"),
    (("stock file",), "stock in hand"),
    (("prices",), "prices"),
    (("job", "firm"), "the firm"),
    (("job", "installer", "logo"), "the mark of the firm"),
    (("logo",), "the mark of the firm"),
    (("job", "issued"), "the job file as issued before"),
)
#: Of these the files that they name are attached too.
READ_ON = (("job", "firm"), ("job", "issued"))
PRICES = ("prices",)  # like the sheet of materials they are not for the client
MIMES = {".svg": "image/svg+xml", ".png": "image/png"}


def job_attachments(
    path: Path, *, since: Path | None = None, site: Path | None = None
) -> tuple[Attachment, ...]:
    """Return every file that a job is read from, byte for byte; each once.

    Args:
        path: the job file.
        since: the job file of the issue it is compared with, where that was given.
        site: the mark-ups from site laid over it, where there are any.

    Raises:
        SpecError: a job file cannot be read.
        OutputError: a file that it names cannot be read.
    """
    seen: set[Path] = set()
    found = list(_with_named(path, "the job file this set was drawn from", seen))
    if site is not None:
        found += _once(site, "mark-ups from site", seen)
    if since is not None:
        found += _with_named(since, "the job file of the issue it is compared with", seen)
    return _told_apart(found)


def _with_named(path: Path, what: str, seen: set[Path]) -> Iterator[tuple[Path, Attachment]]:
    """Yield a file, then what it names, in the order of ``NAMED``."""
    yield from (first := _once(path, what, seen))
    if not first:
        return
    document = load_yaml(path)
    for keys, named_as in NAMED:
        named: Any = document.value(keys)
        if not isinstance(named, str) or not named:
            continue
        file = path.parent / named
        if not file.is_file():
            continue
        if keys in READ_ON:
            yield from _with_named(file, f"{named_as}: {named}", seen)
        else:
            for at, attachment in _once(file, f"{named_as}: {named}", seen):
                yield at, replace(attachment, holds_prices=keys == PRICES)


def _once(path: Path, what: str, seen: set[Path]) -> list[tuple[Path, Attachment]]:
    """Return a file as an attachment, nothing where it is attached already."""
    if path.resolve() in seen:
        return []
    seen.add(path.resolve())
    mime = MIMES.get(path.suffix.lower(), "application/yaml")
    return [(path, Attachment(path.name, _bytes(path), what, mime))]


def _told_apart(found: list[tuple[Path, Attachment]]) -> tuple[Attachment, ...]:
    """Return the attachments; of two files of one name the later is named after its folder."""
    names: set[str] = set()
    told = []
    for path, attachment in found:
        name, number = attachment.name, 2
        if name in names and path.parent.name:
            name = f"{path.parent.name}-{name}"
        while name in names:
            name, number = f"{path.stem}-{number}{path.suffix}", number + 1
        names.add(name)
        told.append(replace(attachment, name=name))
    return tuple(told)


def _bytes(path: Path) -> bytes:
    try:
        return path.read_bytes()
    except OSError as error:
        raise OutputError(f"cannot read {path.name}: {error.strerror or error}") from error
