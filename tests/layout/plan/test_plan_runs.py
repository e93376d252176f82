"""Containment on a plan says what becomes of it, and what goes is hatched."""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType
from typing import TYPE_CHECKING

import pytest

from asfitted.layout.sheet_layout import Path, Text
from asfitted.layout.sheet_model import Numbers
from asfitted.resolve.installation import State
from asfitted.sheets import key_plan

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import Item
    from asfitted.layout.sheet_model import Model


def _plan_with(model: Model, tag: str, state: State) -> dict[str, Item]:
    runs = dict(model.installation.containment)
    runs[tag] = replace(runs[tag], state=state)
    changed = replace(model.installation, containment=MappingProxyType(runs))
    model = replace(model, installation=changed)
    plans = key_plan.plan(model)
    numbers = Numbers({plan.key: f"{i:02d}" for i, plan in enumerate(plans, start=1)})
    content = key_plan.build(plans[0], model, numbers)
    return {item.ident: item for item in content.items}


@pytest.mark.parametrize(
    ("state", "before"),
    [(State.NEW, ""), (State.EXISTING, "existing "), (State.REMOVED, "removed ")],
)
def test_the_words_at_a_run_say_its_state(
    demo_models: dict[str, Model], state: State, before: str
) -> None:
    model = demo_models["community-shed"]
    tag, run = next(iter(model.installation.containment.items()))
    items = _plan_with(model, tag, state)
    words = [p.text for p in items[f"plan-run-tag:{tag}"].parts if isinstance(p, Text)]
    assert " ".join(words).startswith(f"{tag} {before}{run.words}")
    assert items[f"plan-run:{tag}:0"].title == f"{tag} {before}{run.words}"


def test_what_is_taken_away_is_hatched(demo_models: dict[str, Model]) -> None:
    model = demo_models["community-shed"]
    tag = next(iter(model.installation.containment))
    name = f"plan-run:{tag}:0"
    kept = len(_plan_with(model, tag, State.EXISTING)[name].parts)
    gone = len(_plan_with(model, tag, State.REMOVED)[name].parts)
    assert gone > kept + 3


def test_both_ends_of_a_run_are_closed(demo_models: dict[str, Model]) -> None:
    model = demo_models["community-shed"]
    tag = next(iter(model.installation.containment))
    items = _plan_with(model, tag, State.NEW)
    pieces = [item for name, item in items.items() if name.startswith(f"plan-run:{tag}:")]
    lines = [p.points for item in pieces for p in item.parts if isinstance(p, Path) and p.stroke]
    edges = [points for points in lines if len(points) == 2]
    first, last = edges[:2], [points for points in edges if points[0] not in edges[0]][-3:]
    assert any({*cap} == {first[0][0], first[1][0]} for cap in edges)
    assert any({*cap} == {a[1], b[1]} for cap in edges for a in last for b in last if a != b)
