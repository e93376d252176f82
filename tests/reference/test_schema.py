"""The schema refuses what would read as a figure and is none."""

from __future__ import annotations

from typing import Any

import pytest
from pydantic import ValidationError

from asfitted.reference.schema import FileSchema, TableSchema

GOOD: dict[str, Any] = {
    "id": "t",
    "title": "T",
    "standard": "BS 0",
    "edition": "2026",
    "provenance": "seen",
    "source": "a page",
    "units": "A",
    "rows": [{"csa": 1.5, "a": 10, "provenance": "seen"}],
}


def test_a_good_table_passes() -> None:
    assert TableSchema.model_validate(GOOD).rows[0]["a"] == 10


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"rows": [{"csa": 1.5, "a": None, "provenance": "seen"}]}, "empty cell"),
        ({"rows": [{"csa": 1.5, "a": [1, None], "provenance": "seen"}]}, "empty cell"),
        ({"rows": [{"csa": 1.5, "a": 10}]}, "no provenance"),
        ({"rows": [{"csa": 1.5, "provenance": "a friend"}]}, "does not start"),
        ({"rows": []}, "at least 1"),
        ({"provenance": "hearsay"}, "does not start"),
        ({"source": ""}, "at least 1"),
        ({"units": ""}, "at least 1"),
        ({"unit": "A"}, "not permitted"),
    ],
)
def test_a_bad_table_is_refused(change: dict[str, Any], words: str) -> None:
    with pytest.raises(ValidationError, match=words):
        TableSchema.model_validate(GOOD | change)


def test_two_tables_may_not_share_an_id() -> None:
    with pytest.raises(ValidationError, match="share an id"):
        FileSchema.model_validate({"tables": [GOOD, GOOD]})
