"""Facts of the spec read the same on every sheet."""

from __future__ import annotations

import dataclasses
from types import MappingProxyType
from typing import TYPE_CHECKING

from asfitted.layout.given_words import (
    known,
    state_before,
    state_behind,
    state_word,
    surge_protection_is_at,
)
from asfitted.resolve.installation import Basis, Known, State

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model


def test_a_figure_says_how_it_is_known() -> None:
    assert known(Known(0.15, "ohm", Basis.MEASURED), "Ω") == "0.15 Ω (m)"
    assert known(None, "Ω") == "not recorded"


def test_new_work_carries_no_word_and_the_rest_does() -> None:
    assert (state_word(State.NEW), state_before(State.NEW), state_behind(State.NEW)) == ("",) * 3
    assert state_before(State.EXISTING) == "existing "
    assert state_behind(State.REMOVED) == " (removed)"


def test_surge_protection_named_for_db10_is_not_taken_for_db1(
    demo_models: dict[str, Model],
) -> None:
    job = demo_models["pottery-studio"].installation
    assert job.supply is not None
    ten = dataclasses.replace(job.boards["DB2"], tag="DB10")
    renamed = dataclasses.replace(
        job,
        supply=dataclasses.replace(job.supply, surge_protection="type 2 at DB10"),
        boards=MappingProxyType({"DB1": job.boards["DB1"], "DB10": ten}),
    )
    assert surge_protection_is_at(ten, renamed)
    assert not surge_protection_is_at(job.boards["DB1"], renamed)
    assert surge_protection_is_at(job.boards["DB1"], job)
