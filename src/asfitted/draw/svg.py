"""Writes a sheet as SVG: one group for each item, with its identity, in mm.

The file needs nothing beside it: the signs of the lettering font that it uses are embedded.
"""

from __future__ import annotations

import base64
import re
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import svgwrite

from asfitted.draw.ink import MITRE_LIMIT, TONES, dashes_mm, mm
from asfitted.draw.lettering import FAMILIES, characters_to_embed, font_subset, sheet_texts
from asfitted.draw.placed_symbol import sized_symbol, symbol_texts
from asfitted.errors import OutputError
from asfitted.fonts import FAMILY, font_size_mm
from asfitted.layout.sheet_layout import Circle, Path, Picture, SymbolUse, Text

if TYPE_CHECKING:
    from collections.abc import Callable

    from asfitted.layout.sheet_layout import Item, Primitive, SheetLayout, Stroke, Tone


@dataclass(frozen=True)
class SvgOptions:
    """How a sheet is written.

    Attributes:
        id_prefix: put before every XML id, so that several sheets can stand in one page.
        characters: signs to embed instead of those the sheet uses, (regular, bold); lets all
            sheets of a page share one set.
        embed_fonts: False where the page round the sheet brings the font.
        href: turns the ``link`` of an item into an address; without it links stay data only.
    """

    id_prefix: str = ""
    characters: tuple[str, str] | None = None
    embed_fonts: bool = True
    href: Callable[[str], str] | None = None


def write_svg(sheet: SheetLayout, options: SvgOptions | None = None) -> str:
    """Return the sheet as an SVG document; the same text for the same sheet.

    Raises:
        OutputError: two items share an ident, a symbol is unknown, or a length is not a number.
        MissingGlyphError: the lettering font has no sign for a character.
    """
    return _SvgSheet(sheet, options or SvgOptions()).written()


def font_face_css(regular: str, bold: str) -> str:
    """Return @font-face rules that carry these characters of the regular and bold cut."""
    rules = []
    for weight, characters in (("normal", regular), ("bold", bold)):
        if characters:
            data = base64.b64encode(font_subset(characters, bold=weight == "bold")).decode("ascii")
            rules.append(
                f"@font-face{{font-family:'{FAMILY}';font-weight:{weight};"
                f"src:url(data:font/ttf;base64,{data}) format('truetype')}}"
            )
    return "".join(rules)


def xml_id(ident: str) -> str:
    """Return an XML id for any ident: other characters than letters and digits become codes."""
    return re.sub(r"[^A-Za-z0-9.-]", lambda match: f"_{ord(match[0]):x}_", ident)


class _SvgSheet:
    """One document while it is being written."""

    def __init__(self, sheet: SheetLayout, options: SvgOptions) -> None:
        self._sheet = sheet
        self._options = options
        width, height = sheet.size_mm
        # debug=False lets data-* attributes through
        self._drawing: Any = svgwrite.Drawing(
            size=(f"{mm(width)}mm", f"{mm(height)}mm"),
            viewBox=f"0 0 {mm(width)} {mm(height)}",
            debug=False,
        )
        self._declared: set[str] = set()

    def written(self) -> str:
        drawing, sheet, options = self._drawing, self._sheet, self._options
        texts = sheet_texts(sheet)
        regular, bold = options.characters or (
            characters_to_embed(texts, bold=False),
            characters_to_embed(texts, bold=True),
        )
        drawing.set_desc(title=f"{sheet.number} {sheet.title}")
        if options.embed_fonts:
            drawing.defs.add(drawing.style(font_face_css(regular, bold)))
        width, height = sheet.size_mm
        drawing.add(drawing.rect((0, 0), (mm(width), mm(height)), fill=TONES["white"]))
        page = drawing.g(
            font_family=FAMILIES,
            stroke_miterlimit=MITRE_LIMIT,
        )
        drawing.add(page)
        seen: set[str] = set()
        for item in sheet.items:
            if item.ident in seen:
                raise OutputError(f"sheet {sheet.number} holds two items named {item.ident!r}")
            seen.add(item.ident)
            page.add(self._item(item))
        return str(drawing.tostring()) + "\n"

    def _item(self, item: Item) -> Any:
        group = self._drawing.g(id=self._options.id_prefix + xml_id(item.ident))
        named = {"data-kind": item.kind, "data-id": item.ident, "data-net": item.net}
        named["data-link"] = item.link
        group.attribs.update({name: value for name, value in named.items() if value})
        if item.title:
            group.set_desc(title=item.title)
        for part in item.parts:
            for element in self._part(part):
                group.add(element)
        if item.link and self._options.href:
            anchor = self._drawing.a(self._options.href(item.link), target="_self")
            anchor.add(group)
            return anchor
        return group

    def _part(self, part: Primitive) -> list[Any]:
        if isinstance(part, Path):
            return [self._path(part)]
        if isinstance(part, Circle):
            return [self._circle(part)]
        if isinstance(part, Text):
            return [self._text(part)]
        if isinstance(part, Picture):
            return [self._picture(part)]
        return [self._symbol(part), *(self._text(text) for text in symbol_texts(part))]

    def _path(self, path: Path) -> Any:
        points = [(mm(p.x), mm(p.y)) for p in path.points]
        make = self._drawing.polygon if path.closed else self._drawing.polyline
        return make(points, **_paint(path.stroke, path.fill))

    def _circle(self, circle: Circle) -> Any:
        centre = (mm(circle.centre.x), mm(circle.centre.y))
        return self._drawing.circle(
            centre, mm(circle.radius_mm), **_paint(circle.stroke, circle.fill)
        )

    def _picture(self, picture: Picture) -> Any:
        box = picture.box
        data = "data:image/png;base64," + base64.b64encode(picture.png).decode("ascii")
        size = (mm(box.width), mm(box.height))
        return self._drawing.image(data, insert=(mm(box.x0), mm(box.y0)), size=size)

    def _text(self, text: Text) -> Any:
        x, y = mm(text.at.x), mm(text.at.y)
        look: dict[str, Any] = {
            "font_size": mm(font_size_mm(text.cap_mm)),
            "fill": TONES[text.tone],
        }
        if text.anchor != "start":
            look["text_anchor"] = text.anchor
        if text.bold:
            look["font_weight"] = "bold"
        if text.turned:
            look["transform"] = f"rotate(-90 {x} {y})"
        element = self._drawing.text(text.text, insert=(x, y), **look)
        if " ".join(text.text.split()) != text.text:  # SVG would shrink these spaces to one
            element.attribs["xml:space"] = "preserve"
        return element

    def _symbol(self, use: SymbolUse) -> Any:
        name = f"sym-{use.name}-{mm(use.size_mm)}-{mm(use.width_mm * 100)}"
        ident = self._options.id_prefix + name
        if ident not in self._declared:
            self._declared.add(ident)
            sized = sized_symbol(use.name, use.size_mm, use.width_mm)
            shape = self._drawing.symbol(id=ident)
            shape.attribs["overflow"] = "visible"  # strokes reach past the box
            for path in sized.paths:
                shape.add(self._path(path))
            for circle in sized.circles:
                shape.add(self._circle(circle))
            self._drawing.defs.add(shape)
        return self._drawing.use(f"#{ident}", transform=_transform(use))


def _paint(stroke: Stroke | None, fill: Tone | None) -> dict[str, Any]:
    """Return the paint attributes of a shape."""
    look: dict[str, Any] = {"fill": TONES[fill] if fill else "none"}
    if stroke:
        look |= {"stroke": TONES[stroke.tone], "stroke_width": mm(stroke.width_mm)}
        if dashes := dashes_mm(stroke):
            look["stroke_dasharray"] = ",".join(str(length) for length in dashes)
    return look


def _transform(use: SymbolUse) -> str:
    half = mm(use.size_mm / 2)
    steps = [f"translate({mm(use.at.x)} {mm(use.at.y)})"]
    if use.turn:
        steps.append(f"rotate({use.turn} {half} {half})")
    if use.mirrored:
        steps.append(f"translate({mm(use.size_mm)} 0) scale(-1 1)")
    return " ".join(steps)
