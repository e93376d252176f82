"""Reads a firm's mark: a PNG as it is, an SVG that holds outlines alone."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.errors import Problem, SpecError
from asfitted.spec.logo import LOGO_HINT, LogoRefusedError
from asfitted.spec.logo_png import png_logo
from asfitted.spec.logo_svg import svg_logo
from asfitted.spec.named_file import beside
from asfitted.spec.problem_codes import Code

if TYPE_CHECKING:
    from pathlib import Path

    from asfitted.errors import Place
    from asfitted.spec.logo import Logo

MAX_BYTES = 500_000


def load_logo(name: str, place: Place, folder: Path) -> Logo:
    """Read a mark from a local file.

    Args:
        name: path as written, relative to ``folder``.
        place: where it is written, for messages.
        folder: folder of the file that names it.

    Raises:
        SpecError: not local, missing, too big, or of a kind or content that is not taken.
    """
    path = beside(folder, name, place, "the logo")
    if path.stat().st_size > MAX_BYTES:
        size_kb = path.stat().st_size / 1000
        raise SpecError(
            [Problem(Code.FILE, f'logo "{name}" is {size_kb:.0f} kB', place, LOGO_HINT)]
        )
    data = path.read_bytes()
    readers = {".png": png_logo, ".svg": svg_logo}
    reader = readers.get(path.suffix.lower())
    if reader is None:
        raise SpecError([Problem(Code.FILE, f'logo "{name}" is no .png or .svg', place, LOGO_HINT)])
    try:
        return reader(data, path.name)
    except LogoRefusedError as error:
        raise SpecError(
            [Problem(Code.FILE, f'logo "{name}": {error}', place, error.hint)]
        ) from error
