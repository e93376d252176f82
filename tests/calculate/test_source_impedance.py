"""Fault currents and Ze from a transformer or generator, on paper (IEC 60909-0:2016)."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hand_job import HandJob, known, supply

from asfitted.calculate.network import origin, origin_result
from asfitted.calculate.source_impedance import source_impedance
from asfitted.resolve.installation import Basis, Generator, Known, Supply, Transformer

FULL = Transformer(500, 4.75, 5500, 250)


def _supply(**changes: object) -> Supply:
    return replace(supply(ze_ohm=None, ipf_ka=None), **{"source": FULL, **changes})  # type: ignore[arg-type]


def test_transformer_on_paper() -> None:
    # U = 398.37 V: U^2 / S = 0.31740 ohm. |ZT| = 4.75 % = 0.015077; R = 5500 x 158700 / 500000^2
    # = 0.003491; X = 0.014667. KT = 0.95 x 1.1 / (1 + 0.6 x 0.04621) = 1.01681
    # ZQ = 1.1 x 158700 / 250e6 = 0.000698, R = 0.1 X: 0.0000695 + j0.0006948
    # KT ZT + ZQ = 0.003620 + j0.015608, 0.016022 ohm: 253 / 0.016022 = 15.79 kA
    found = origin_result(origin(_supply()), _supply())
    assert known(found.fault_3ph_ka.value if found.fault_3ph_ka else None) == pytest.approx(
        15.79, abs=0.01
    )
    # line to neutral: KT ZT + 2/3 ZQ = 0.003597 + j0.015376, 0.015791 ohm: 16.02 kA
    assert found.fault_1ph_ka is not None
    assert found.fault_1ph_ka.value == pytest.approx(16.02, abs=0.01)
    # Ze = |ZT + ZQ| = |0.003561 + j0.015361| = 0.01577 ohm
    assert found.ze_ohm is not None
    assert found.ze_ohm.value == pytest.approx(0.01577, abs=0.00001)
    assert found.ze_ohm.basis == found.fault_3ph_ka.basis == Basis.CALCULATED  # type: ignore[union-attr]
    assert "Ze are calculated from the transformer, not measured" in found.not_known[0]


def test_given_figures_stand_and_a_mixture_is_said() -> None:
    measured = Known(0.05, "ohm", Basis.MEASURED)
    node = origin(_supply(ze_ohm=measured))
    assert node.external_ohm == 0.05
    assert node.external_words == "Ze"
    assert "beside a given Ze" in node.unknown[0]
    both = origin(_supply(ze_ohm=measured, ipf_ka=Known(6, "kA", Basis.DECLARED)))
    assert known(both.fault_max_3ph_a) == pytest.approx(6000)
    assert both.unknown == ()


def test_no_ze_where_it_cannot_be_told() -> None:
    # without the network before it Ze would come out too low; a TT electrode is not in the machine
    assert origin(_supply(source=Transformer(500, 4.75, 5500, None))).external_ohm is None
    assert origin(_supply(system="TT")).external_ohm is None
    generator = origin(_supply(source=Generator(60, 12)))
    assert generator.external_ohm is None
    assert any("falls with time" in why for why in generator.unknown)


def test_generator_on_paper() -> None:
    # X'' = 0.12 x 158700 / 60000 = 0.31740 ohm, R = 0.15 X; KG = 1.1 / (1 + 0.12 x 0.6) = 1.02612
    # |Z| = 1.02612 x 0.31740 x sqrt(1 + 0.15^2) = 0.32933 ohm: 253 / 0.32933 = 768 A
    node = origin(_supply(source=Generator(60, 12)))
    assert known(node.fault_max_3ph_a) == pytest.approx(768, abs=1)


def test_losses_only_turn_the_impedance() -> None:
    with_r = source_impedance(_supply())
    without = source_impedance(_supply(source=Transformer(500, 4.75, None, 250)))
    assert with_r is not None
    assert without is not None
    assert abs(without.line_ohm) == pytest.approx(abs(with_r.line_ohm), rel=0.01)
    assert without.line_ohm.real < with_r.line_ohm.real


def test_board_at_the_transformer_prints_the_working() -> None:
    job = HandJob(supply=_supply())
    job.board("DB1")
    board = job.results().boards["DB1"]
    assert {"ZT", "KT", "ZQ", "Ik3 max", "Zs"} <= {step.symbol for step in board.steps}
    zs = next(step for step in board.steps if step.symbol == "Zs")
    assert zs.formula.startswith("Ze calculated from the transformer")
    assert board.fault_max_3ph_ka == pytest.approx(15.79, abs=0.01)
