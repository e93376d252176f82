"""Figures on paper: halves go up, whatever the binary fraction behind them."""

from __future__ import annotations

from decimal import Decimal

import pytest

from asfitted.layout.figures import metres, rounded


@pytest.mark.parametrize("tenths", range(0, 400, 7))
def test_a_half_tenth_goes_up(tenths: int) -> None:
    value = float(Decimal(tenths) / 10 + Decimal("0.05"))
    assert metres(value) == f"{Decimal(tenths + 1) / 10:.1f} m"


def test_other_figures_go_to_the_nearer() -> None:
    assert rounded(18.149, 1) == "18.1"
    assert rounded(0.6828, 2) == "0.68"
    assert rounded(95.5, 0) == "96"
