"""What was filled in is told where something rests on it, and nowhere else."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.document.assumptions import defaults_in_use

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model


def _dropped(model: Model) -> set[str]:
    used = defaults_in_use(model.installation, model.results)
    return {d.subject for d in used if d.what in ("drops", "drop")}


def test_a_way_in_containment_from_end_to_end_has_no_assumed_drop(
    demo_models: dict[str, Model],
) -> None:
    model = demo_models["pottery-studio"]
    legs = model.results.routes["W11"].legs
    assert next(leg.containment for leg in legs if leg.containment) == "T4"
    assert {leg.containment for leg in legs} == {"T4", "T1", "T5"}
    assert "DB1/9TP" not in _dropped(model)  # W11 alone
    assert "DB1/10L1" not in _dropped(model)  # given: clipped direct, 1.35 m up
    assert "DB1/3TP" in _dropped(model)  # W05 comes down wall B, how is not given


def test_all_else_that_was_filled_in_is_kept(demo_models: dict[str, Model]) -> None:
    for model in demo_models.values():
        used = defaults_in_use(model.installation, model.results)
        left_out = set(model.installation.defaults) - set(used)
        assert all(d.what in ("drops", "drop") for d in left_out)
