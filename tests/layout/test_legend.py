"""The legend holds what it was given, each once, with words that stay in their column."""

from __future__ import annotations

from asfitted.draw.symbols import catalogue
from asfitted.geometry import Point
from asfitted.layout.legend import LineSample, lay_out_legend, used_symbols
from asfitted.layout.lettering import box_of
from asfitted.layout.sheet_layout import Text

NAMES = ["rcbo", "circuit_breaker", "fuse", "meter_kwh", "socket_three_phase_rcd", "met"]


def test_symbols_in_the_legend_are_those_asked_for() -> None:
    legend = lay_out_legend(
        at=Point(0, 0), width_mm=120, columns=2, symbols=NAMES, catalogue=catalogue()
    )
    assert used_symbols(legend.items) == tuple(sorted(NAMES))


def test_no_words_touch_other_words() -> None:
    legend = lay_out_legend(
        at=Point(10, 10),
        width_mm=150,
        columns=3,
        symbols=NAMES,
        catalogue=catalogue(),
        lines=[LineSample("Existing work", 0.25), LineSample("New work", 0.5)],
        abbreviations=[("Ib", "design current"), ("Zs", "earth fault loop impedance")],
    )
    boxes = [box_of(p) for i in legend.items for p in i.parts if isinstance(p, Text)]
    for i, one in enumerate(boxes):
        assert not any(one.meets(other) for other in boxes[i + 1 :])
        assert one.x1 <= 160
        assert one.y1 <= 10 + legend.height_mm


def test_signs_of_our_own_carry_a_dagger_and_its_footnote() -> None:
    known = catalogue()
    legend = lay_out_legend(
        at=Point(0, 0), width_mm=120, columns=1, symbols=["rcbo", "fuse"], catalogue=known
    )
    words = " ".join(p.text for i in legend.items for p in i.parts if isinstance(p, Text))
    assert not known["rcbo"].standard
    assert known["fuse"].standard
    assert words.count("†") == 2, "one beside the sign, one for the footnote"
