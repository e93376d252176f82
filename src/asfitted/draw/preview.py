"""Pictures of sheets, for looking at. Needs cairo, which the rest of the tool does without."""

from __future__ import annotations

import os
import tempfile
import threading
from contextlib import contextmanager
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any
from xml.sax.saxutils import escape

from asfitted.errors import OutputError
from asfitted.fonts import FOLDER

if TYPE_CHECKING:
    from collections.abc import Iterator

_FONTS_CONF = """<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig><dir>{fonts}</dir><cachedir>{cache}</cachedir></fontconfig>
"""
_LOCK = threading.Lock()


def write_png(svg: str, dpi: float = 100) -> bytes:
    """Return a picture of an SVG sheet on white, lettered with our own font only.

    Raises:
        OutputError: cairosvg or the cairo library is missing, or the SVG cannot be drawn.
    """
    surface = _true_width_surface(_cairosvg())
    with _LOCK, _only_our_fonts():
        try:
            return bytes(
                surface.convert(bytestring=svg.encode(), dpi=dpi, background_color="white")
            )
        except (ValueError, TypeError, ArithmeticError) as error:
            raise OutputError(f"the sheet cannot be turned into a picture: {error}") from error


def _cairosvg() -> Any:
    try:
        import cairosvg  # noqa: PLC0415  # only previews need it, and it may be missing
    except (ImportError, OSError) as error:  # OSError: the package is there, libcairo is not
        raise OutputError(
            'previews need cairosvg and the cairo library: pip install "asfitted[preview]", and '
            "install libcairo2 (Debian and Ubuntu: apt install libcairo2; macOS: brew install "
            "cairo; Windows: a GTK runtime). SVG and PDF need neither."
        ) from error
    return cairosvg


@cache
def _true_width_surface(cairosvg: Any) -> Any:
    """Return a surface whose letters keep their own widths.

    By itself cairo rounds each advance to whole pixels: text would come out up to a few per cent
    longer than it prints, and seem to run into its neighbours.
    """
    cairo = cairosvg.surface.cairo

    class TrueWidthContext(cairo.Context):  # type: ignore[misc,name-defined]  # untyped
        def set_font_options(self, font_options: Any) -> None:
            font_options.set_hint_metrics(cairo.HINT_METRICS_OFF)
            super().set_font_options(font_options)

    class TrueWidthSurface(cairosvg.surface.PNGSurface):  # type: ignore[misc]  # untyped
        @property
        def context(self) -> Any:
            return self._context

        @context.setter
        def context(self, _: Any) -> None:
            self._context = TrueWidthContext(self.cairo)

    return TrueWidthSurface


@cache
def _font_settings() -> tempfile.TemporaryDirectory[str]:
    """Return a folder, kept until the program ends, with settings that know only our fonts."""
    folder = tempfile.TemporaryDirectory(prefix="asfitted-fonts-")
    conf = _FONTS_CONF.format(fonts=escape(str(FOLDER)), cache=escape(folder.name))
    Path(folder.name, "fonts.conf").write_text(conf, encoding="utf-8")
    return folder


@contextmanager
def _only_our_fonts() -> Iterator[None]:
    """Let the font library see our settings; it reads them at its first text and keeps them."""
    before = os.environ.get("FONTCONFIG_FILE")
    os.environ["FONTCONFIG_FILE"] = str(Path(_font_settings().name, "fonts.conf"))
    try:
        yield
    finally:
        if before is None:
            del os.environ["FONTCONFIG_FILE"]
        else:
            os.environ["FONTCONFIG_FILE"] = before
