"""Previews use our font only, leave the environment alone, and say what is missing."""

from __future__ import annotations

import io
import os
import subprocess
import sys
from typing import TYPE_CHECKING

import pytest
from PIL import Image

from asfitted.draw.preview import write_png
from asfitted.draw.svg import write_svg
from asfitted.errors import OutputError

if TYPE_CHECKING:
    from pathlib import Path

    from asfitted.layout.sheet_layout import SheetLayout


@pytest.mark.usefixtures("cairo")
def test_a_picture_has_the_size_asked_for(example: SheetLayout) -> None:
    picture = Image.open(io.BytesIO(write_png(write_svg(example), 50)))
    assert picture.size == (827, 585)  # 420 x 297 mm at 50 dots an inch, rounded
    assert picture.convert("L").getpixel((2, 2)) == 255


@pytest.mark.usefixtures("cairo")
def test_the_environment_is_left_as_it_was(
    example: SheetLayout, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("FONTCONFIG_FILE", "as-before.conf")
    write_png(write_svg(example), 20)
    assert os.environ["FONTCONFIG_FILE"] == "as-before.conf"
    monkeypatch.delenv("FONTCONFIG_FILE")
    write_png(write_svg(example), 20)
    assert "FONTCONFIG_FILE" not in os.environ


@pytest.mark.usefixtures("cairo")
def test_what_is_not_an_svg_is_refused() -> None:
    with pytest.raises(OutputError, match="cannot be turned into a picture"):
        write_png("<svg xmlns='http://www.w3.org/2000/svg'/>", 50)


HIDDEN = {
    "no cairosvg": "sys.modules['cairosvg'] = None\n",
    "no libcairo": (
        "import ctypes.util; ctypes.util.find_library = lambda name: None\n"
        "import cffi\n"
        "def gone(*_): raise OSError('no library called cairo was found')\n"
        "cffi.FFI.dlopen = gone\n"
    ),
}


@pytest.mark.parametrize("missing", HIDDEN)
def test_a_missing_library_is_named_and_the_rest_still_works(missing: str, tmp_path: Path) -> None:
    code = (
        f"import sys\n{HIDDEN[missing]}"
        "import asfitted.draw.svg, asfitted.draw.pdf\n"
        "from asfitted.draw.preview import write_png\n"
        "from asfitted.errors import OutputError\n"
        "try:\n    write_png('<svg/>', 50)\n"
        "except OutputError as error:\n"
        "    assert 'asfitted[preview]' in str(error) and 'libcairo2' in str(error), error\n"
        "else:\n    raise SystemExit('no error')\n"
    )
    subprocess.run([sys.executable, "-c", code], check=True, cwd=tmp_path)
