"""Figures as written on site."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from asfitted import quantities as q
from asfitted.errors import NotUnderstoodError


@pytest.mark.parametrize(
    ("text", "kind", "value"),
    [
        ("6 mm2", q.AREA_MM2, 6),
        ("6mm²", q.AREA_MM2, 6),
        ("2.5 sq mm", q.AREA_MM2, 2.5),
        ("32 A", q.CURRENT_A, 32),
        ("32", q.CURRENT_A, 32),
        ("30 mA", q.RESIDUAL_MA, 30),
        ("2.4 m", q.POSITION_MM, 2400),
        ("2400", q.POSITION_MM, 2400),
        ("0", q.POSITION_MM, 0),
        ("2.55 m", q.POSITION_MM, 2550),
        ("240 cm", q.POSITION_MM, 2400),
        ("23", q.LENGTH_M, 23),
        ("2400 mm", q.LENGTH_M, 2.4),
        ("18 kW", q.POWER_W, 18000),
        ("45 W", q.POWER_W, 45),
        ("45", q.POWER_W, 45),
        ("4.2 kA", q.FAULT_KA, 4.2),
        ("900 A", q.FAULT_KA, 0.9),
        ("0.15 ohm", q.RESISTANCE_OHM, 0.15),
        ("0.15 Ω", q.RESISTANCE_OHM, 0.15),
        ("150 mohm", q.RESISTANCE_OHM, 0.15),
        ("4 TB", q.DISK_TB, 4),
        ("2 weeks", q.TIME_DAYS, 14),
        ("-5 C", q.TEMPERATURE_C, -5),
        ("010", q.CURRENT_A, 10),
    ],
)
def test_figures(text: str, kind: q.QuantityKind, value: float) -> None:
    assert q.parse_quantity(text, kind) == value


@pytest.mark.parametrize(
    ("text", "kind", "hint"),
    [
        ("2,5", q.AREA_MM2, "decimal comma: write 2.5"),
        ("2,5 mm2", q.AREA_MM2, "decimal comma: write 2.5"),
        (
            "2,400",
            q.POSITION_MM,
            "decimal comma: write 2.400, or 2400 if the comma parts thousands",
        ),
        ("2.4", q.POSITION_MM, "write 2.4 m or 2400"),
        ("5", q.POSITION_MM, "write 5 m or 5000"),
        ("5000", q.LENGTH_M, "write 5000 mm or the length in m"),
        ("0.03", q.RESIDUAL_MA, "write 0.03 A or the figure in mA"),
        ("4200", q.FAULT_KA, "write 4200 A or the figure in kA"),
        ("32 a", q.AREA_MM2, "write it like 6 mm2"),
        ("18 KW", q.POWER_W, "write 18 kW"),
        ("1:30", q.TIME_DAYS, "write it like 14 days"),
        ("no", q.CURRENT_A, "write it like 32 A"),
        ("", q.CURRENT_A, "write it like 32 A"),
        ("0.8 m", q.NUMBER, "a plain number such as 0.8"),
        ("-3 A", q.CURRENT_A, ""),
        ("0 A", q.CURRENT_A, "leave it out if it is not known"),
        ("0 ohm", q.RESISTANCE_OHM, "leave it out if it is not known"),
        ("nan", q.CURRENT_A, "write it like 32 A"),
    ],
)
def test_figures_that_are_refused(text: str, kind: q.QuantityKind, hint: str) -> None:
    with pytest.raises(NotUnderstoodError) as caught:
        q.parse_quantity(text, kind)
    assert caught.value.hint == hint
    assert caught.value.is_quantity


@pytest.mark.parametrize(
    ("text", "kind", "value", "basis"),
    [
        ("0.15 ohm measured", q.RESISTANCE_OHM, 0.15, "measured"),
        ("4.2 kA declared", q.FAULT_KA, 4.2, "declared"),
        ("58 m Measured", q.LENGTH_M, 58, "measured"),
        ("0.35 ohm", q.RESISTANCE_OHM, 0.35, ""),
    ],
)
def test_how_a_figure_is_known(text: str, kind: q.QuantityKind, value: float, basis: str) -> None:
    assert q.parse_figure(text, kind) == q.Figure(value, kind.unit, basis)


def test_counts() -> None:
    assert (q.parse_count("8"), q.parse_count("010")) == (8, 10)
    for text in ("0", "-1", "2.5", "two", "", "²"):
        with pytest.raises(NotUnderstoodError):
            q.parse_count(text)


def test_sizes() -> None:
    assert q.parse_size_mm("150 x 25") == (150, 25)
    assert q.parse_size_mm("450×700") == (450, 700)
    assert q.parse_size_mm("20 mm") == (20, 20)
    for text in ("1 x 2 x 3", "a x b", "2,5 x 3"):
        with pytest.raises(NotUnderstoodError):
            q.parse_size_mm(text)


@given(st.text(max_size=20))
def test_any_text_is_a_figure_or_is_refused(text: str) -> None:
    try:
        value = q.parse_quantity(text, q.CURRENT_A)
    except NotUnderstoodError:
        return
    assert value > 0


@given(st.decimals(min_value=1, max_value=10_000, places=3))
def test_metres_and_millimetres_agree(length: object) -> None:
    in_m = q.parse_quantity(f"{length} m", q.POSITION_MM)
    in_mm = q.parse_quantity(f"{length} m", q.LENGTH_M) * 1000
    assert in_m == pytest.approx(in_mm)
