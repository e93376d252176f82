"""The working of one cable, line by line, as it is printed in the calculation sheet."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from asfitted.calculate.cable_facts import REACTANCE_ABOVE_MM2
from asfitted.calculate.cable_rating import method_words
from asfitted.calculate.working import Step
from asfitted.rounding import rounded

if TYPE_CHECKING:
    from asfitted.calculate.network import Voltages
    from asfitted.calculate.sized_cable import Sized


def cable_steps(one: Sized, volts: Voltages) -> tuple[Step, ...]:
    """Return the working of a cable at its size."""
    return (*_capacity(one), *_drop(one, volts), *_loop(one))


def _capacity(one: Sized) -> tuple[Step, ...]:
    rating, setting = one.rating, one.stretch.use.setting
    symbols = " × ".join(f.symbol for f in rating.factors)
    values = " × ".join(f"{f.value:g}" for f in rating.factors)
    tabulated = rating.tabulated
    note = f"; {tabulated.note}" if tabulated.note else ""
    table = Step(
        symbol="It",
        words=f"tabulated capacity, {one.facts.csa_mm2:g} mm², {method_words(rating.method)}, "
        f"{setting.loaded} loaded conductors",
        formula="",
        substituted="",
        value=tabulated.value,
        unit="A",
        source=f"{tabulated.source} ({tabulated.provenance}){note}",
    )
    reduced = [Step(f.symbol, f.words, "", "", f.value, "", f.source) for f in rating.factors]
    least = Step(
        symbol="It,min",
        words="least tabulated capacity",
        formula=f"{setting.rating_words} / ({symbols})",
        substituted=f"{setting.rating_a:g} A / ({values})",
        value=rating.required_a,
        unit="A",
        source="; ".join(p for p in ("BS 7671 Appendix 4, 5.1", setting.rating_source) if p),
    )
    runs = f"capacity where it runs: {rating.laid.words}"
    if rating.doubt:
        runs = f"not checked: {rating.doubt}; in free air"
    where = Step(
        symbol="Iz",
        words=runs,
        formula=f"It × {symbols}",
        substituted=f"{tabulated.value:g} A × {values}",
        value=rating.capacity_a,
        unit="A",
        source="BS 7671 Appendix 4, 5.1; 523.8",
    )
    return (table, *reduced, least, where)


def _drop(one: Sized, volts: Voltages) -> tuple[Step, ...]:
    stretch, row = one.stretch, one.facts.drop
    cosine = stretch.power_factor
    formula, terms = "(mV/A/m) × I × L / 1000", f"{row.r_mv_a_m:g}"
    if row.x_mv_a_m:
        sine = math.sqrt(1 - cosine**2)
        formula = "(r cos φ + x sin φ) × I × L / 1000"
        terms = f"({row.r_mv_a_m:g} × {cosine:.2f} + {row.x_mv_a_m:g} × {sine:.2f})"
    elif cosine < 1:
        formula = "(mV/A/m) × cos φ × I × L / 1000"
        terms = f"{row.r_mv_a_m:g} × {cosine:.2f}"
    three_phase = one.facts.loaded == 3
    nominal = volts.nominal_v(three_phase=three_phase)
    between = "line to line" if three_phase else "line to neutral"
    source = f"{row.figure.source} ({row.figure.provenance})"
    alone = Step(
        symbol="Vd",
        words=f"voltage drop of this cable, {between}",
        formula=formula,
        substituted=(
            f"{terms} × {stretch.current_a:.2f} A × {rounded(stretch.length_m, 2)} m / 1000"
        ),
        value=one.drop_v,
        unit="V",
        source=source,
    )
    if one.ring is not None:
        return (alone, _round_the_ring(one))
    to_end = one.far.drop_pct if one.far.drop_pct is not None else one.drop_pct
    before = one.near.drop_pct or 0.0
    total = Step(
        symbol="Vd %",
        words="from the origin to its far end",
        formula=f"drop before it + Vd / {nominal:g} V",
        substituted=f"{before:.2f} % + {one.drop_v:.2f} V / {nominal:g} V",
        value=to_end,
        unit="%",
        source="BS 7671 Appendix 4, 6.4; a three-phase per cent of 400 V equals that of 230 V",
    )
    return (alone, total)


def _round_the_ring(one: Sized) -> Step:
    known = one.far.drop_pct is not None
    return Step(
        symbol="Vd %",
        words="from the origin to its far end" if known else "not known before the board",
        formula="drop before the board + share of the drop at the middle of the ring",
        substituted=f"{one.near.drop_pct or 0.0:.2f} % + both ways round in parallel",
        value=one.far.drop_pct or 0.0,
        unit="%",
        source="two ways in parallel; BS 7671 Appendix 4, 6.4",
    )


def _loop(one: Sized) -> tuple[Step, ...]:
    facts, length = one.facts, one.stretch.length_m
    loop = facts.loop_hot
    if loop is None:
        return ()
    words = f"line and {facts.cpc_words} at working temperature"
    if facts.csa_mm2 > REACTANCE_ABOVE_MM2:
        words += ", resistance part"
    both = Step(
        symbol="R1+R2",
        words=words,
        formula="(r1 × factor + r2 × factor) × L / 1000",
        substituted=f"({facts.resistance_words}) mΩ/m × {rounded(length, 2)} m / 1000",
        value=loop.real * length,
        unit="Ω",
        source=facts.resistance_source,
    )
    before, at_end = one.near.zs_ohm, one.far.zs_ohm
    if one.ring is not None:
        length = one.ring.two_ways_m
    if before is None or at_end is None:
        return (both,)
    zs = Step(
        symbol="Zs",
        words="loop impedance at its far end",
        formula="Zs before it + (R1 + R2)" + (" of both ways round" if one.ring else ""),
        substituted=f"{before:.4f} Ω + {abs(loop) * length:.4f} Ω",
        value=at_end,
        unit="Ω",
        source="BS 7671 411.4; the plain sum is the safe side",
    )
    return (both, zs)
