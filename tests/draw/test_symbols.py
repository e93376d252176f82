"""Every symbol file keeps the promises that layout and legend rely on."""

from __future__ import annotations

import math
import subprocess
import sys
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
import schemdraw.elements

from asfitted.draw.ink import TONES
from asfitted.draw.placed_symbol import placed_strokes, sized_symbol, symbol_texts, to_sheet
from asfitted.draw.recorder import record
from asfitted.draw.symbols import catalogue, declarations, geometry, signs
from asfitted.draw.symbols._geometry import read_geometry
from asfitted.draw.symbols._schemdraw import SegmentText
from asfitted.draw.symbols._sign import WIRE_ENDS
from asfitted.errors import OutputError
from asfitted.fonts import font_size_mm, text_width_mm
from asfitted.geometry import Point
from asfitted.layout.sheet_layout import Path as Line
from asfitted.layout.sheet_layout import SheetLayout, SymbolUse

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

NAMES = sorted(catalogue())
#: Signs for which no symbol of IEC 60617 is remembered, and so no claim of a standard may be made.
NOT_STANDARD = {
    "access_point", "afdd", "camera_dome", "camera_fixed", "earth_electrode", "emergency_stop",
    "bushed_entry", "fused_spur", "gland", "gland_clamp_nut", "gland_clamp_ring", "gland_cone",
    "gland_earth_tag", "gland_locknut", "gland_seal_nut", "gland_seal_washer",
    "gland_serrated_washer", "gland_shroud", "gland_wall",
    "isolator_enclosed", "met", "monitor", "off_page", "padlock", "plug_bnc", "plug_dc",
    "plug_rj45",
    "poe_switch", "rcbo", "rcd",
    "recorder", "router", "socket_face_five_pin", "socket_three_phase_rcd",
}  # fmt: skip


def test_the_folder_and_the_catalogue_agree() -> None:
    folder = Path(sys.modules["asfitted.draw.symbols"].__file__ or "").parent
    files = sorted(path.stem for path in folder.glob("*.py") if not path.stem.startswith("_"))
    assert list(catalogue()) == files
    assert len(files) >= 64


def test_signs_of_our_own_are_the_ones_marked() -> None:
    assert {name for name, info in catalogue().items() if not info.standard} == NOT_STANDARD


def test_legends_differ_and_say_something() -> None:
    legends = [info.legend for info in catalogue().values()]
    assert all(len(legend) >= 3 for legend in legends)
    assert len(set(legends)) == len(legends)


@pytest.mark.parametrize("name", NAMES)
def test_is_declared_with_schemdraw(name: str) -> None:
    sign = signs()[name]()
    assert isinstance(sign, schemdraw.elements.Element)
    assert sign.segments
    told = declarations()[name]
    assert told.name == name
    assert told.provenance


@pytest.mark.parametrize("name", NAMES)
def test_stays_inside_its_box(name: str) -> None:
    shape = geometry(name)
    points = [point for line in shape.lines for point in line.points]
    for ring in shape.circles:
        for dx, dy in ((-1, 0), (1, 0), (0, -1), (0, 1)):
            points.append(ring.centre.moved(dx * ring.radius, dy * ring.radius))
    assert all(0 <= p.x <= 10 and 0 <= p.y <= 10 for p in points)
    for text in shape.texts:
        half = text_width_mm(text.text, text.cap_mm) / 2
        assert text.x - half >= 0
        assert text.x + half <= 10
        assert text.cap_mm <= text.baseline <= 10


@pytest.mark.parametrize("name", NAMES)
def test_a_wire_that_ends_at_an_anchor_meets_ink(name: str) -> None:
    shape = geometry(name)
    ends = {point for line in shape.lines for point in (line.points[0], line.points[-1])}
    for anchor, point in shape.anchors:
        assert point == WIRE_ENDS[anchor]
        assert point in ends


def test_every_symbol_that_takes_power_takes_it_at_the_top() -> None:
    without = {n for n in NAMES if "supply" not in dict(geometry(n).anchors)}
    parts = {name for name in NAMES if name.startswith("gland_")}
    faces = {"padlock", "socket_face_five_pin"}
    assert without == {"balun", "down", "generator", "off_page", "up"} | parts | faces


def test_no_two_symbols_look_alike() -> None:
    looks = {name: (g.lines, g.circles, g.texts) for name in NAMES if (g := geometry(name))}
    assert len(set(looks.values())) == len(looks)


@pytest.mark.parametrize("name", ["isolator", "switch_disconnector", "circuit_breaker"])
def test_marks_at_the_fixed_contact_tell_switches_apart(name: str) -> None:
    """Bar = isolates, bar and circle = isolates under load, saltire = breaks fault current.

    Source: qualifying symbols of IEC 60617-7 (memory). Mixing them up is dangerous.
    """
    shape = geometry(name)
    near = [line for line in shape.lines if all(1.8 < p.y < 4 for p in line.points)]
    bars = [line for line in near if len({p.y for p in line.points}) == 1]
    crosses = [line for line in near if line not in bars]
    expected = {
        "isolator": (1, 0, 0),
        "switch_disconnector": (1, 0, 1),
        "circuit_breaker": (0, 2, 0),
    }
    assert (len(bars), len(crosses), len(shape.circles)) == expected[name]


def test_arcs_keep_to_their_circle() -> None:
    cup = next(line for line in geometry("socket").lines if len(line.points) > 2)
    assert all(math.dist(p, (5, 7.5)) == pytest.approx(3.5, abs=1e-5) for p in cup.points)
    assert min(p.y for p in cup.points) == pytest.approx(4, abs=0.01)
    assert {cup.points[0], cup.points[-1]} == {Point(1.5, 7.5), Point(8.5, 7.5)}


def test_letters_are_declared_at_their_height_on_paper() -> None:
    sign = signs()["meter_kwh"]()
    letters = [s for s in sign.segments if isinstance(s, SegmentText)]
    assert letters[0].fontsize * 25.4 / 72 == pytest.approx(font_size_mm(2.5))
    assert read_geometry(sign).texts[0].text == "kWh"


@pytest.mark.parametrize(("size", "width"), [(10.0, 0.35), (7.0, 0.25), (10.0, 0.25)])
def test_strokes_keep_their_width_at_any_size(size: float, width: float) -> None:
    widths = {p.stroke.width_mm for p in sized_symbol("rcbo", size, width).paths if p.stroke}
    assert widths == {width, max(0.18, round(width / 1.4, 2))}


def test_the_trip_link_has_a_dash_at_both_ends_and_every_corner() -> None:
    link = [p.points for p in sized_symbol("rcbo", 10, 0.35).paths if p.stroke.width_mm == 0.25]  # type: ignore[union-attr]
    assert link[0][0] == Point(3.9, 8.5)
    assert link[-1][-1] == pytest.approx(Point(3.75, 5.0))
    assert [len(points) for points in link].count(3) == 2


@pytest.mark.parametrize(
    ("turn", "mirrored", "expected"),
    [
        (0, False, (108, 51)),
        (90, False, (109, 58)),
        (180, False, (102, 59)),
        (270, False, (101, 52)),
        (0, True, (102, 51)),
        (90, True, (109, 52)),
    ],
)
def test_turning_is_clockwise_on_paper_and_after_mirroring(
    turn: int, mirrored: bool, expected: tuple[float, float]
) -> None:
    use = SymbolUse("rcbo", Point(100, 50), turn=turn, mirrored=mirrored)  # type: ignore[arg-type]
    assert to_sheet(use, Point(8, 1)) == expected


@pytest.mark.parametrize("turn", [0, 90, 180, 270])
def test_letters_stay_upright_and_inside_when_the_symbol_turns(turn: int) -> None:
    use = SymbolUse("motor_3ph", Point(0, 0), turn=turn, mirrored=True)  # type: ignore[arg-type]
    above, below = symbol_texts(use)
    assert not above.turned
    assert below.at.y - above.at.y == pytest.approx(3.1)
    assert 0 < above.at.y - 2.5 < below.at.y < 10


def test_a_solid_has_no_outline_that_would_swell_it() -> None:
    placed = placed_strokes(SymbolUse("junction_dot", Point(0, 0)))
    solid = [part for part in placed if part.fill]
    assert [(part.stroke, part.fill) for part in solid] == [(None, "black")]
    assert TONES["black"] == "#000000"
    assert sum(isinstance(part, Line) for part in placed) == 2


def test_an_unknown_symbol_is_named() -> None:
    with pytest.raises(OutputError, match="no symbol named 'doorbell'"):
        geometry("doorbell")


def test_matplotlib_is_never_imported(tmp_path: Path) -> None:
    """A stand-in that fails on import shows that nothing tries, though it is there to be found."""
    package = tmp_path / "matplotlib"
    package.mkdir()
    (package / "__init__.py").write_text("raise RuntimeError('matplotlib was imported')")
    code = (
        "import sys; sys.path.insert(0, sys.argv[1])\n"
        "import importlib.util; assert importlib.util.find_spec('matplotlib')\n"
        "import asfitted.draw.svg, asfitted.draw.pdf, asfitted.draw.symbols as s\n"
        "s.geometry('rcbo')\n"
        "assert 'matplotlib' not in sys.modules\n"
        "assert 'schemdraw.backends.mpl' not in sys.modules\n"
        "from schemdraw import default_canvas; assert default_canvas.default_canvas == 'svg'\n"
    )
    subprocess.run([sys.executable, "-c", code, str(tmp_path)], check=True)


def test_symbol_sheet_is_as_agreed(
    golden: Callable[[str, Sequence[str]], None], symbols_on_a_sheet: SheetLayout
) -> None:
    """The whole catalogue with its strokes: a changed symbol shows here line by line."""
    lines = record(symbols_on_a_sheet)
    for name in NAMES:
        shape = geometry(name)
        lines.append(f"{name} | {catalogue()[name].legend}")
        for line in shape.lines:
            flags = [f for f in ("closed", "filled", "dashed", "narrow") if getattr(line, f)]
            shown = line.points if len(line.points) < 9 else line.points[:: len(line.points) // 4]
            points = " ".join(f"{p.x:.1f},{p.y:.1f}" for p in shown)
            lines.append(" ".join(["  line", points, *flags]))
        lines += [f"  circle {c.centre.x:g},{c.centre.y:g} r{c.radius:g}" for c in shape.circles]
        lines += [f"  text {t.x:g},{t.baseline:g} {t.text!r}" for t in shape.texts]
        lines.append("  anchors " + " ".join(anchor for anchor, _ in shape.anchors))
    golden("draw/symbol_sheet", lines)
