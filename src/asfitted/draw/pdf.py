"""Writes sheets as the pages of a PDF, straight from the primitives: the same picture as the SVG.

Text is real and searchable. Every font in the file is an embedded subset of our own two.
"""

from __future__ import annotations

import io
from typing import TYPE_CHECKING, Any

from reportlab.lib.utils import ImageReader
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas

from asfitted.draw.ink import MITRE_LIMIT, TONES, dashes_mm, mm
from asfitted.draw.item_boxes import item_boxes
from asfitted.draw.lettering import sheet_texts
from asfitted.draw.placed_symbol import placed_strokes, symbol_texts
from asfitted.errors import OutputError
from asfitted.fonts import FILES, font_size_mm
from asfitted.layout.sheet_layout import Circle, Path, Picture, Text

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.sheet_layout import Primitive, SheetLayout, Stroke, Tone

__all__ = ["POINTS_PER_MM", "item_boxes", "write_pdf_pages"]

POINTS_PER_MM = 72 / 25.4
_FONTS = {False: "asfitted-regular", True: "asfitted-bold"}


def write_pdf_pages(sheets: Sequence[SheetLayout], *, title: str = "") -> bytes:
    """Return a PDF with one page for each sheet, at its own size; the same bytes each time.

    Raises:
        OutputError: no sheets, an unknown symbol, or a length that is not a number.
        MissingGlyphError: the lettering font has no sign for a character.
    """
    if not sheets:
        raise OutputError("there are no sheets to write")
    _register_fonts()
    out = io.BytesIO()
    canvas = Canvas(
        out,
        pageCompression=1,
        invariant=1,
        # without our own font here a Helvetica that is not embedded stays in the file
        initialFontName=_FONTS[False],  # type: ignore[arg-type]  # the stub says float
        initialFontSize=10,
    )
    canvas.setTitle(title or sheets[0].title)
    canvas.setCreator("asfitted")
    for sheet in sheets:
        _PdfPage(canvas, sheet).write()
    canvas.save()
    return out.getvalue()


def _register_fonts() -> None:
    for bold, name in _FONTS.items():
        if name not in pdfmetrics.getRegisteredFontNames():
            pdfmetrics.registerFont(TTFont(name, str(FILES[bold])))


class _PdfPage:
    """One page while it is being written. PDF counts y upwards from the bottom, in points."""

    def __init__(self, canvas: Canvas, sheet: SheetLayout) -> None:
        self._canvas: Any = canvas
        self._sheet = sheet
        self._height_mm = sheet.size_mm[1]

    def write(self) -> None:
        canvas, sheet = self._canvas, self._sheet
        sheet_texts(sheet)  # a missing sign must stop us: the library would print a blank box
        width_mm, height_mm = sheet.size_mm
        canvas.setPageSize((width_mm * POINTS_PER_MM, height_mm * POINTS_PER_MM))
        canvas.setMiterLimit(MITRE_LIMIT)
        for item in sheet.items:
            for part in item.parts:
                self._part(part)
        canvas.showPage()

    def _part(self, part: Primitive) -> None:
        if isinstance(part, Path):
            self._path(part)
        elif isinstance(part, Circle):
            self._circle(part)
        elif isinstance(part, Text):
            self._text(part)
        elif isinstance(part, Picture):
            self._picture(part)
        else:
            for stroke in placed_strokes(part):
                self._part(stroke)
            for text in symbol_texts(part):
                self._text(text)

    def _point(self, x_mm: float, y_mm: float) -> tuple[float, float]:
        return mm(x_mm) * POINTS_PER_MM, mm(self._height_mm - y_mm) * POINTS_PER_MM

    def _path(self, path: Path) -> None:
        outline = self._canvas.beginPath()
        outline.moveTo(*self._point(*path.points[0]))
        for point in path.points[1:]:
            outline.lineTo(*self._point(*point))
        if path.closed:
            outline.close()
        paint = self._paint(path.stroke, path.fill)
        if any(paint.values()):
            self._canvas.drawPath(outline, **paint)

    def _circle(self, circle: Circle) -> None:
        paint = self._paint(circle.stroke, circle.fill)
        radius = mm(circle.radius_mm) * POINTS_PER_MM
        if any(paint.values()):
            self._canvas.circle(*self._point(*circle.centre), radius, **paint)

    def _picture(self, picture: Picture) -> None:
        box = picture.box
        x, y = self._point(box.x0, box.y1)
        width, height = mm(box.width) * POINTS_PER_MM, mm(box.height) * POINTS_PER_MM
        image = ImageReader(io.BytesIO(picture.png))
        self._canvas.drawImage(image, x, y, width, height, mask="auto")

    def _paint(self, stroke: Stroke | None, fill: Tone | None) -> dict[str, int]:
        if stroke:
            self._canvas.setStrokeColor(TONES[stroke.tone])
            self._canvas.setLineWidth(mm(stroke.width_mm) * POINTS_PER_MM)
            self._canvas.setDash([length * POINTS_PER_MM for length in dashes_mm(stroke)])
        if fill:
            self._canvas.setFillColor(TONES[fill])
        return {"stroke": int(stroke is not None), "fill": int(fill is not None)}

    def _text(self, text: Text) -> None:
        canvas = self._canvas
        canvas.setFillColor(TONES[text.tone])
        canvas.setFont(_FONTS[text.bold], mm(font_size_mm(text.cap_mm)) * POINTS_PER_MM)
        draw = {
            "start": canvas.drawString,
            "middle": canvas.drawCentredString,
            "end": canvas.drawRightString,
        }[text.anchor]
        x, y = self._point(*text.at)
        if not text.turned:
            draw(x, y, text.text)
            return
        canvas.saveState()
        canvas.translate(x, y)
        canvas.rotate(90)
        draw(0, 0, text.text)
        canvas.restoreState()
