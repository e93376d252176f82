"""Lettering: heights, wrapping and room, against the font file itself."""

from __future__ import annotations

import pytest
from fontTools.pens.boundsPen import BoundsPen
from fontTools.ttLib import TTFont

from asfitted.errors import MissingGlyphError
from asfitted.fonts import FILES, RESERVE, font_size_mm, text_width_mm
from asfitted.layout.lettering import VIEW, fits, shortened, view_heading, wrap


def test_capitals_come_out_at_the_height_asked_for() -> None:
    # measured from the outline of H in the shipped file, read by a general font library
    with TTFont(FILES[False]) as font:
        pen = BoundsPen(font.getGlyphSet())
        font.getGlyphSet()["H"].draw(pen)
        em = font["head"].unitsPerEm
    assert font_size_mm(2.5) * pen.bounds[3] / em == pytest.approx(2.5)


def test_digits_have_equal_width() -> None:
    assert len({round(text_width_mm(d, 2.5), 6) for d in "0123456789"}) == 1


@pytest.mark.parametrize("sign", list("Ω²°≤≥×∅½φΔ→←†☐✓⚠·–—"))
def test_every_sign_of_the_trade_is_in_the_font(sign: str) -> None:
    assert text_width_mm(sign, 2.5) > 0


def test_a_missing_sign_is_an_error_that_names_it() -> None:
    with pytest.raises(MissingGlyphError, match=r"U\+1F50C"):
        text_width_mm("plug \U0001f50c", 2.5)


def test_room_is_kept_for_a_wider_substitute() -> None:
    with TTFont(FILES[False]) as font:
        advance = font["hmtx"]["W"][0] / font["head"].unitsPerEm
    assert text_width_mm("W", 2.5) == pytest.approx(advance * font_size_mm(2.5) * RESERVE)


def test_wrapped_lines_fit_and_lose_no_word() -> None:
    words = "drops to five-pin socket-outlets with the residual current device inside the outlet"
    lines = wrap(words, 40.0, 2.5)
    assert " ".join(lines) == words
    assert all(fits(line, 40.0, 2.5) for line in lines)
    assert len(lines) > 2


def test_shortened_text_fits_and_says_that_it_was_cut() -> None:
    cut = shortened("a title that is much too long for its field", 30.0, 2.5)
    assert cut.endswith("…")
    assert fits(cut, 30.0, 2.5)


@pytest.mark.parametrize("number", [3, 4])
def test_a_shortened_title_keeps_the_number_of_its_part(number: int) -> None:
    title = f"Kitchen and servery with dry goods store, part {number} of 4"
    cut = shortened(title, 60.0, 2.5)
    assert cut.endswith(f"…, part {number} of 4")
    assert cut.startswith("Kitchen")
    assert fits(cut, 60.0, 2.5)


def test_a_heading_loses_its_lead_before_it_is_cut() -> None:
    title = "Detail: camera and data connections, part 1 of 2"
    assert view_heading(title, 400.0) == title
    assert view_heading(title, 170.0) == "Camera and data connections, part 1 of 2"
    cut = view_heading(title, 100.0)
    assert cut.endswith("…, part 1 of 2")
    assert fits(cut, 100.0, VIEW, bold=True)
