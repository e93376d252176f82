"""Impedance of the transformer or generator at the origin, after IEC 60909-0.

Two figures are kept apart: that for the greatest current (with the correction factor KT or KG,
c 1.10, windings as the losses say) and the loop at the terminals for the least (no factor). The
origin is the secondary terminals; the cable from there on is the tails of the spec.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.calculate.fault_current import (
    C_MAX_LV,
    loop_fault_a,
    source_impedance_from_power_ohm,
    three_phase_fault_a,
    transformer_impedance_ohm,
)
from asfitted.calculate.working import Step
from asfitted.resolve.installation import Generator, Transformer

if TYPE_CHECKING:
    from asfitted.resolve.installation import Supply

UPSTREAM_X_OVER_R = 0.995 / 0.0995  # RQ = 0.1 XQ, IEC 60909-0, 6.2
UPSTREAM_C = 1.1
GENERATOR_R_OVER_X = 0.15  # up to 1 kV, IEC 60909-0, 6.6.1
GENERATOR_SINE = 0.6  # rated cos phi 0.8 (common practice)
SOURCE = "IEC 60909-0"


@dataclass(frozen=True)
class SourceImpedance:
    """What stands behind the origin, complex ohm per phase.

    Attributes:
        line_ohm: One phase, for the greatest three-phase current.
        neutral_loop_ohm: Line and neutral, for the greatest line-neutral current.
        earth_loop_ohm: Line and earth at the terminals for the least current (Ze of a TN system);
            None where it cannot be told.
        steps: Working.
        unknown: What was taken for want of a figure.
    """

    line_ohm: complex
    neutral_loop_ohm: complex
    earth_loop_ohm: complex | None
    steps: tuple[Step, ...]
    unknown: tuple[str, ...]


def source_impedance(supply: Supply) -> SourceImpedance | None:
    """Return the impedance of the machine that the spec names, None when it names none."""
    line_v = math.sqrt(3.0) * supply.u0_v
    if isinstance(supply.source, Transformer):
        return _transformer(supply.source, line_v)
    if isinstance(supply.source, Generator):
        return _generator(supply.source, line_v)
    return None


def transformer_factor(x_per_unit: float, *, c_max: float = C_MAX_LV) -> float:
    """Return KT, the correction of a transformer's impedance for the greatest current, ratio.

    KT = 0.95 cmax / (1 + 0.6 xT); IEC 60909-0:2016, 6.3.3, for the greatest current only.

    Args:
        x_per_unit: Relative reactance xT, ratio.
        c_max: Voltage factor of the network on the low-voltage side, ratio.
    """
    return 0.95 * c_max / (1.0 + 0.6 * x_per_unit)


def generator_factor(x_per_unit: float, *, c_max: float = C_MAX_LV) -> float:
    """Return KG, ratio: cmax / (1 + x'' sin phi); IEC 60909-0:2016, 6.6.1, equal voltages."""
    return c_max / (1.0 + x_per_unit * GENERATOR_SINE)


def _transformer(given: Transformer, line_v: float) -> SourceImpedance:
    plain = transformer_impedance_ohm(
        given.rating_kva,
        line_voltage_v=line_v,
        uk_percent=given.uk_percent,
        copper_loss_w=given.losses_w or 0.0,
    )
    base = line_v**2 / (1000.0 * given.rating_kva)
    kt = transformer_factor(plain.imag / base)
    upstream = 0j
    if given.upstream_mva is not None:
        upstream = source_impedance_from_power_ohm(
            given.upstream_mva, line_voltage_v=line_v, x_over_r=UPSTREAM_X_OVER_R, c=UPSTREAM_C
        )
    # delta-star with the star point earthed: Z0 of the transformer equals Z1, and the network
    # before it has no part in zero sequence: (2 (ZT + ZQ) + ZT) / 3
    loop = kt * plain + upstream * 2 / 3
    # for the least current the impedances count in full, without the factor
    least = plain + upstream if given.upstream_mva is not None else None
    unknown = []
    if given.losses_w is None:
        unknown.append("losses of the transformer are not recorded: taken as pure reactance")
    if given.upstream_mva is None:
        unknown.append(
            "short-circuit power before the transformer is not recorded: taken as endless for the "
            "greatest fault current, and Ze is not calculated"
        )
    line = kt * plain + upstream
    steps = (
        _ohm_step("ZT", f"transformer {given.rating_kva:g} kVA, {given.uk_percent:g} %",
                  "uk × U² / S", f"{given.uk_percent:g} % × ({line_v:.1f} V)² / "
                  f"{given.rating_kva:g} kVA", ohm=plain, source="IEC 60909-0, 6.3.1"),
        Step("KT", "correction for the greatest current", "0.95 cmax / (1 + 0.6 xT)",
             f"0.95 × {C_MAX_LV:g} / (1 + 0.6 × {plain.imag / base:.4f})", kt, "",
             "IEC 60909-0:2016, 6.3.3"),
        *_upstream_step(given, line_v, upstream),
        *_currents(line, loop, line_v),
    )  # fmt: skip
    return SourceImpedance(line, loop, least, steps, tuple(unknown))


def _upstream_step(given: Transformer, line_v: float, upstream: complex) -> tuple[Step, ...]:
    if given.upstream_mva is None:
        return ()
    terms = f"{UPSTREAM_C:g} × ({line_v:.1f} V)² / {given.upstream_mva:g} MVA"
    words = "network before the transformer, seen from its secondary side"
    return (
        _ohm_step(
            "ZQ", words, "c × U² / S, R = 0.1 X", terms, ohm=upstream, source="IEC 60909-0, 6.2"
        ),
    )


def _generator(given: Generator, line_v: float) -> SourceImpedance:
    x = given.x_percent / 100.0
    reactance = x * line_v**2 / (1000.0 * given.rating_kva)
    factor = generator_factor(x)
    line = factor * complex(GENERATOR_R_OVER_X * reactance, reactance)
    # zero sequence is not recorded: taken as nil, so that the greatest current is not missed
    loop = line * 2 / 3
    steps = (
        _ohm_step("ZG", f"generator {given.rating_kva:g} kVA, x'' {given.x_percent:g} %",
                  "KG × x'' × U² / S, R = 0.15 X", f"{factor:.3f} × {given.x_percent:g} % × "
                  f"({line_v:.1f} V)² / {given.rating_kva:g} kVA", ohm=line,
                  source="IEC 60909-0, 6.6.1"),
        *_currents(line, loop, line_v),
    )  # fmt: skip
    unknown = (
        "zero-sequence reactance is not recorded: taken as nil for the greatest current",
        "the fault current of a generator falls with time: its least is its maker's figure",
    )
    return SourceImpedance(line, loop, None, steps, unknown)


def _currents(line: complex, loop: complex, line_v: float) -> tuple[Step, ...]:
    three = three_phase_fault_a(line, line_voltage_v=line_v) / 1000
    one = loop_fault_a(loop, return_ohm=0j, u0_v=line_v / math.sqrt(3.0)) / 1000
    driving = f"{C_MAX_LV:g} × {line_v / math.sqrt(3.0):.1f} V"
    return tuple(
        Step(symbol, f"greatest fault current at the terminals, {words}", "Cmax × U0 / |Z|",
             f"{driving} / {abs(z):.5f} Ω", value, "kA", f"{SOURCE}, calculated, not measured")
        for symbol, words, z, value in (
            ("Ik3 max", "three-phase", line, three), ("Ik1 max", "line to neutral", loop, one)
        )
    )  # fmt: skip


def _ohm_step(
    symbol: str, words: str, formula: str, terms: str, *, ohm: complex, source: str
) -> Step:
    parts = f"{words}: R {ohm.real:.5f} Ω, X {ohm.imag:.5f} Ω"
    return Step(symbol, parts, formula, terms, abs(ohm), "Ω", source)
