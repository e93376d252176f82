"""The record of issues, and when a job may call itself as fitted."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from asfitted.errors import SpecError
from asfitted.resolve import resolve
from asfitted.spec import load_job

if TYPE_CHECKING:
    from pathlib import Path

    from asfitted.resolve.installation import Job

HEAD = "asfitted: 1\njob:\n  number: J1\n  title: A job\n"
TWO = """\
  revisions:
    - {revision: P01, date: 2026-10-01, what: First issue, by: A. Person}
    - {revision: P02, date: 2026-11-01, what: X1 moved, by: A. Person, checked: B. Person}
"""


def job(folder: Path, lines: str) -> Job:
    path = folder / "job.yaml"
    path.write_text(HEAD + lines, encoding="utf-8")
    return resolve(load_job(path)).job


def test_the_revision_is_the_newest_of_the_list(tmp_path: Path) -> None:
    made = job(tmp_path, TWO)
    assert made.revision == "P02"
    assert [r.checked for r in made.revisions] == ["not recorded", "B. Person"]


@pytest.mark.parametrize(
    ("lines", "words"),
    [
        ("  revision: P03\n" + TWO, "its list ends with P02"),
        (TWO.replace("2026-11-01", "2026-09-01"), "dated before P01"),
        (TWO.replace("P02", "P01"), "stands twice"),
    ],
)
def test_a_record_that_contradicts_itself_is_refused(
    tmp_path: Path, lines: str, words: str
) -> None:
    with pytest.raises(SpecError) as caught:
        job(tmp_path, lines)
    assert words in str(caught.value)
    assert "job.yaml:" in str(caught.value)


ANSWERED = "  status: As fitted\n  checker: B. Person\n  date: 2026-12-01\n  not seen: none\n"


def test_as_fitted_needs_checker_date_and_what_was_not_seen(tmp_path: Path) -> None:
    assert job(tmp_path, ANSWERED).status == "As fitted"
    for line in ANSWERED.splitlines()[1:]:
        without = ANSWERED.replace(line + "\n", "")
        assert job(tmp_path, without).status == "Not checked as fitted", line
    named = ANSWERED.replace("B. Person", "not recorded")
    assert job(tmp_path, named).status == "Not checked as fitted"


def test_what_was_not_seen_is_a_list_or_the_word_none(tmp_path: Path) -> None:
    assert job(tmp_path, ANSWERED).not_seen == ()
    listed = ANSWERED.replace("none", "[duct U1, above the ceiling]")
    assert job(tmp_path, listed).not_seen == ("duct U1", "above the ceiling")
    assert job(tmp_path, "  status: For construction\n").not_seen is None
