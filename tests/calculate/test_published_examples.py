"""Every published example that a calculation covers, within its published tolerance."""

from __future__ import annotations

from typing import Any

import pytest
from published import EXAMPLES, NETWORKS, NOT_YET, WORKED

SMALLEST_CROP = 1e-9


def _inputs(example: dict[str, Any]) -> dict[str, Any]:
    return {name: given["value"] for name, given in example["inputs"].items()}


def _agrees(got: Any, wanted: Any, tolerance: float) -> bool:
    if isinstance(wanted, list):
        return len(got) == len(wanted) and all(
            _agrees(a, b, tolerance) for a, b in zip(got, wanted, strict=True)
        )
    if isinstance(wanted, bool | str):
        return bool(got == wanted)
    return bool(abs(got - wanted) <= tolerance + SMALLEST_CROP)


@pytest.mark.parametrize("example_id", sorted(WORKED))
def test_published_example(example_id: str) -> None:
    example = EXAMPLES[example_id]
    got = WORKED[example_id](_inputs(example))
    assert set(got) == set(example["expected"]), example["source"]
    for name, wanted in example["expected"].items():
        assert _agrees(got[name], wanted["value"], wanted.get("tol_abs", 0.0)), (
            f"{example_id} {name}: got {got[name]}, published {wanted} ({example['source']})"
        )


def test_every_example_is_worked_or_listed() -> None:
    assert set(EXAMPLES) == set(WORKED) | set(NOT_YET)
    assert not set(WORKED) & set(NOT_YET), "worked now: take it off the list"


def test_every_published_example_is_worked() -> None:
    assert not NOT_YET


def test_every_example_names_its_source() -> None:
    for example in [*EXAMPLES.values(), *NETWORKS]:
        assert example["source"]
        assert example["provenance"]


def test_a_wrong_figure_would_be_noticed() -> None:
    wanted = EXAMPLES["A-02"]["expected"]["It_min"]
    assert not _agrees(34.0, wanted["value"], wanted["tol_abs"])
    assert not _agrees([1.0], [1.0, 2.0], 1.0)
    assert not _agrees("neutral current", "line current", 0.0)
