"""Writes a sheet as DXF in mm, so that whoever takes the job over can go on drawing.

y runs up in DXF and the bottom left corner of the paper is the origin. Layers are named by
discipline and presentation ("containment-lines"). Needs ezdxf, which the rest does without.
"""

from __future__ import annotations

import io
from typing import TYPE_CHECKING, Any

from asfitted.draw.disciplines import layer_of
from asfitted.draw.ink import PATTERNS, TONES, mm
from asfitted.draw.placed_symbol import sized_symbol, symbol_texts
from asfitted.errors import OutputError
from asfitted.geometry import Point
from asfitted.layout.sheet_layout import Circle, Path, Picture, SymbolUse, Text

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.sheet_layout import Item, Primitive, SheetLayout, Stroke, Tone

#: Name under which items carry their ident, net and title as extended data.
APPLICATION = "ASFITTED"
_STYLES = {
    False: ("lettering", "DejaVuSansCondensed.ttf"),
    True: ("lettering-bold", "DejaVuSansCondensed-Bold.ttf"),
}
#: Line widths that the format knows, in hundredths of a mm.
_WIDTHS = (
    0,
    5,
    9,
    13,
    15,
    18,
    20,
    25,
    30,
    35,
    40,
    50,
    53,
    60,
    70,
    80,
    90,
    100,
    106,
    120,
    140,
    158,
    200,
    211,
)
_LONGEST_XDATA = 250
_MM = 4  # code of the unit millimetre in the header
_FIRST_DAY = 2451544.5  # a fixed day in place of the clock


def write_dxf(sheet: SheetLayout) -> str:
    """Return the sheet as a DXF document (R2010); the same text for the same sheet.

    Raises:
        OutputError: ezdxf is missing, a symbol is unknown, or a length is not a number.
    """
    return _DxfSheet(sheet, _ezdxf()).written()


def _edge_of(picture: Picture) -> Path:
    box = picture.box
    corners = ((box.x0, box.y0), (box.x1, box.y0), (box.x1, box.y1), (box.x0, box.y1))
    return Path(tuple(Point(x, y) for x, y in corners), None, closed=True)


def _ezdxf() -> Any:
    try:
        import ezdxf  # noqa: PLC0415  # only this way of drawing needs it, and it may be missing
    except ImportError as error:
        raise OutputError(
            'DXF needs ezdxf: pip install "asfitted[dxf]". SVG and PDF need nothing.'
        ) from error
    return ezdxf


class _DxfSheet:
    """One document while it is being written."""

    def __init__(self, sheet: SheetLayout, ezdxf: Any) -> None:
        self._sheet = sheet
        self._height = sheet.size_mm[1]
        ezdxf.options.write_fixed_meta_data_for_testing = True  # no clock, no random names
        self._document: Any = ezdxf.new("R2010", units=_MM)
        self._align = ezdxf.enums.TextEntityAlignment
        self._space: Any = self._document.modelspace()
        self._document.appids.add(APPLICATION)
        self._set_up()

    def _set_up(self) -> None:
        document = self._document
        width, height = self._sheet.size_mm
        document.header["$EXTMIN"], document.header["$EXTMAX"] = (0, 0, 0), (width, height, 0)
        document.header["$LIMMIN"], document.header["$LIMMAX"] = (0, 0), (width, height)
        document.header["$TDCREATE"] = document.header["$TDUPDATE"] = _FIRST_DAY
        document.header["$LTSCALE"] = 1.0
        document.header["$LWDISPLAY"] = 1
        for name, font in _STYLES.values():
            document.styles.add(name, font=font)

    def written(self) -> str:
        for item in self._sheet.items:
            for part in item.parts:
                for entity in self._part(part, layer_of(self._sheet, item, part)):
                    _sign(entity, item)
        text = io.StringIO()
        self._document.write(text)
        return text.getvalue()

    def _part(self, part: Primitive, layer: str) -> list[Any]:
        self._need(layer)
        if isinstance(part, Path):
            return self._path(self._space, part, layer)
        if isinstance(part, Circle):
            return self._circle(self._space, part, layer)
        if isinstance(part, Text):
            return [self._text(part, layer)]
        if isinstance(part, Picture):  # its place only: the format has no picture of its own
            return self._path(self._space, _edge_of(part), layer)
        return [self._symbol(part, layer), *(self._text(t, layer) for t in symbol_texts(part))]

    def _need(self, layer: str) -> None:
        if layer not in self._document.layers:
            self._document.layers.add(layer)

    def _path(self, space: Any, path: Path, layer: str, *, flip: bool = True) -> list[Any]:
        points = [self._at(p.x, p.y, flip=flip) for p in path.points]
        made = []
        if path.fill:
            made.append(self._filled(space, path.fill, layer))
            made[-1].paths.add_polyline_path(points, is_closed=True)
        if path.stroke or not path.fill:
            look = self._look(path.stroke, layer)
            made.append(space.add_lwpolyline(points, close=path.closed, dxfattribs=look))
        return made

    def _circle(self, space: Any, circle: Circle, layer: str, *, flip: bool = True) -> list[Any]:
        centre, radius = self._at(circle.centre.x, circle.centre.y, flip=flip), mm(circle.radius_mm)
        made = []
        if circle.fill:
            made.append(self._filled(space, circle.fill, layer))
            made[-1].paths.add_edge_path().add_arc(centre, radius)
        if circle.stroke or not circle.fill:
            made.append(space.add_circle(centre, radius, self._look(circle.stroke, layer)))
        return made

    def _filled(self, space: Any, tone: Tone, layer: str) -> Any:
        hatch = space.add_hatch(dxfattribs={"layer": layer})
        hatch.rgb = _rgb(tone)
        return hatch

    def _text(self, text: Text, layer: str) -> Any:
        name, _ = _STYLES[text.bold]
        look: dict[str, Any] = {"layer": layer, "style": name, "height": mm(text.cap_mm)}
        look["rotation"] = 90 if text.turned else 0
        # a percent sign twice would begin a control code
        entity = self._space.add_text(text.text.replace("%%", "% %"), dxfattribs=look)
        entity.rgb = _rgb(text.tone)
        anchors = {
            "start": self._align.LEFT,
            "middle": self._align.CENTER,
            "end": self._align.RIGHT,
        }
        return entity.set_placement(self._at(text.at.x, text.at.y), align=anchors[text.anchor])

    def _symbol(self, use: SymbolUse, layer: str) -> Any:
        name = f"{use.name}-{mm(use.width_mm * 100)}-{mm(use.size_mm)}"
        if name not in self._document.blocks:
            self._block(name, use)
        half = mm(use.size_mm / 2)
        entity = self._space.add_blockref(
            name, self._at(use.at.x + half, use.at.y + half), dxfattribs={"layer": layer}
        )
        # a turn clockwise on paper is a negative angle where y runs up
        entity.dxf.rotation = -use.turn % 360
        entity.dxf.xscale = -1 if use.mirrored else 1
        return entity

    def _block(self, name: str, use: SymbolUse) -> None:
        """Declare a symbol about its middle, on layer 0, which takes the layer of each use."""
        block, half = self._document.blocks.new(name), use.size_mm / 2
        sized = sized_symbol(use.name, use.size_mm, use.width_mm)
        for path in sized.paths:
            points = tuple(p.moved(-half, -half) for p in path.points)
            self._path(block, Path(points, path.stroke, path.closed, path.fill), "0", flip=False)
        for ring in sized.circles:
            centre = ring.centre.moved(-half, -half)
            moved = Circle(centre, ring.radius_mm, ring.stroke, ring.fill)
            self._circle(block, moved, "0", flip=False)

    def _at(self, x: float, y: float, *, flip: bool = True) -> tuple[float, float]:
        return mm(x), mm(self._height - y if flip else -y)

    def _look(self, stroke: Stroke | None, layer: str) -> dict[str, Any]:
        look: dict[str, Any] = {"layer": layer}
        if stroke is None:
            return look
        hundredths = stroke.width_mm * 100
        look["lineweight"] = min(_WIDTHS, key=lambda known: abs(known - hundredths))
        look["linetype"] = self._line_type(stroke)
        look["true_color"] = int(TONES[stroke.tone][1:], 16)
        return look

    def _line_type(self, stroke: Stroke) -> str:
        """Declare the dashes of a pattern at a width, since they come in line widths."""
        dashes = PATTERNS[stroke.pattern]
        if not dashes:
            return "Continuous"
        name = f"{stroke.pattern}-{mm(stroke.width_mm * 100)}"
        if name not in self._document.linetypes:
            lengths = [mm(share * stroke.width_mm) for share in dashes]
            signed = [-length if index % 2 else length for index, length in enumerate(lengths)]
            self._document.linetypes.add(name, pattern=[sum(lengths), *signed])
        return name


def _rgb(tone: Tone) -> tuple[int, int, int]:
    digits = TONES[tone][1:]
    red, green, blue = (int(digits[i : i + 2], 16) for i in (0, 2, 4))
    return red, green, blue


def _sign(entity: Any, item: Item) -> None:
    """Let an entity carry the identity of its item."""
    words: Sequence[tuple[str, str]] = (
        ("id", item.ident),
        ("net", item.net),
        ("title", item.title),
    )
    data = [(1000, f"{name}={value}"[:_LONGEST_XDATA]) for name, value in words if value]
    entity.set_xdata(APPLICATION, data)
