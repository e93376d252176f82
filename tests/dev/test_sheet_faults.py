"""The quick look over a sheet finds each fault that is put into it."""

from __future__ import annotations

from asfitted.dev.sheet_faults import faults_of_content
from asfitted.geometry import Point
from asfitted.layout.sheet_layout import Circle, Item, Path, Stroke, SymbolUse, Text

WORDS = Item("words", "text", (Text(Point(100.0, 60.0), "kiln 18 kW", 2.5),))
WIRE = Stroke(0.35)


def _faults(*items: Item) -> list[str]:
    return faults_of_content((WORDS, *items), "A4")


def _wire(ident: str, net: str, *points: tuple[float, float]) -> Item:
    return Item(ident, "wire", (Path(tuple(Point(*p) for p in points), WIRE),), net=net)


def test_a_clear_sheet_has_no_faults() -> None:
    assert _faults(_wire("beside", "W01", (100.0, 65.0), (120.0, 65.0))) == []


def test_a_line_through_words_is_found() -> None:
    assert _faults(_wire("through", "W01", (90.0, 59.0), (140.0, 59.0))) == [
        "ink on text: through through 'kiln 18 kW'"
    ]


def test_an_oblique_leader_and_a_ring_through_words_are_found() -> None:
    leader = Item("leader", "dim", (Path((Point(95.0, 50.0), Point(112.0, 70.0)), WIRE),))
    ring = Item("ring", "outline", (Circle(Point(100.0, 59.0), 4.0, WIRE),))
    assert len(_faults(leader)) == 1
    assert len(_faults(ring)) == 1


def test_a_symbol_on_words_is_found() -> None:
    symbol = Item("symbol", "device", (SymbolUse("circuit_breaker", Point(100.0, 54.0), 10.0),))
    assert any(fault.startswith("ink on text") for fault in _faults(symbol))


def test_ink_that_was_painted_over_before_the_words_is_no_fault() -> None:
    line = _wire("under", "W01", (90.0, 59.0), (140.0, 59.0))
    corners = (Point(95.0, 54.0), Point(135.0, 54.0), Point(135.0, 63.0), Point(95.0, 63.0))
    paint = Item("paint", "outline", (Path(corners, None, closed=True, fill="white"),))
    assert faults_of_content((line, paint, WORDS), "A4") == []
    assert faults_of_content((line, WORDS, paint), "A4") != []


def test_the_triangle_round_its_own_code_is_no_fault_and_any_other_line_is() -> None:
    points = (Point(200.0, 50.0), Point(204.0, 57.0), Point(196.0, 57.0))
    edge = Path(points, WIRE, closed=True, fill="white")
    code = Text(Point(200.0, 56.3), "02", 2.5, anchor="middle", bold=True)
    strike = Path((Point(190.0, 55.0), Point(210.0, 55.0)), WIRE)
    assert _faults(Item("revision", "outline", (edge, code))) == []
    assert len(_faults(Item("revision", "outline", (edge, code, strike)))) == 1


def test_words_on_words_a_double_name_and_a_wire_without_net_are_found() -> None:
    again = Item("words", "text", (Text(Point(102.0, 61.0), "pug mill", 2.5),))
    found = _faults(again, _wire("loose", "", (50.0, 80.0), (60.0, 80.0)))
    assert "text on text: 'kiln 18 kW' on 'pug mill'" in found
    assert "two items named words" in found
    assert "no net: loose" in found


def test_wires_of_two_nets_that_cross_are_found_and_of_one_net_are_not() -> None:
    level = _wire("level", "W01", (50.0, 90.0), (80.0, 90.0))
    upright = _wire("upright", "W02", (60.0, 80.0), (60.0, 95.0))
    same = _wire("same", "W01", (70.0, 80.0), (70.0, 95.0))
    assert _faults(level, upright) == ["wires meet: level and upright"]
    assert _faults(level, same) == []


def test_what_stands_outside_or_in_the_title_block_is_found() -> None:
    out = _wire("out", "W01", (5.0, 100.0), (60.0, 100.0))
    low = _wire("low", "W02", (250.0, 195.0), (260.0, 195.0))
    assert _faults(out) == ["outside the usable area: out"]
    assert _faults(low) == ["in the title block: low"]
