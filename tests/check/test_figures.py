"""Figures in findings can always be told apart."""

from __future__ import annotations

import doctest

import pytest

from asfitted.check import clause, figures, finding, ip_code, recorded
from asfitted.check.figures import pair


@pytest.mark.parametrize(
    ("found", "limit", "words"),
    [
        (27.42, 16, ("27.4 A", "16 A")),
        (5.0001, 5.0, ("5.0001 A", "5 A")),
        (82600, 80000, ("82600 A", "80000 A")),
        (16.01, 16, ("16.01 A", "16 A")),
        (1.375, 1.0, ("1.38 A", "1 A")),
    ],
)
def test_pair_keeps_found_and_limit_apart(
    found: float, limit: float, words: tuple[str, str]
) -> None:
    assert pair(found, limit, "A") == words


@pytest.mark.parametrize("module", [clause, figures, finding, ip_code, recorded])
def test_examples_in_the_docstrings_hold(module: object) -> None:
    failed, _ = doctest.testmod(module)  # type: ignore[arg-type]
    assert failed == 0


def test_tags_sort_as_people_count() -> None:
    tags = ["DB1/10TP", "DB1/2TP", "DB2/1L1", "CAM1"]
    assert sorted(tags, key=finding.tag_order) == ["CAM1", "DB1/2TP", "DB1/10TP", "DB2/1L1"]
