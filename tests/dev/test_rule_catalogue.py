"""The catalogue of rules leaves none out."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

from asfitted.check import rules
from asfitted.check.registry import all_rules


def rows() -> list[list[str]]:
    """Return the cells of each row that the command prints, head and rule line included."""
    command = [sys.executable, "-m", "asfitted.dev.rule_catalogue"]
    told = subprocess.run(command, check=True, capture_output=True, text=True, encoding="utf-8")
    assert told.stderr == ""
    lines = told.stdout.splitlines()
    return [[cell.strip() for cell in re.split(r"(?<!\\)\|", line)[1:-1]] for line in lines]


def test_every_registered_rule_stands_in_one_row_with_all_it_says() -> None:
    head, rule, *body = rows()
    assert head == ["Rule", "Title", "Clause", "Severity", "Limit known by"]
    assert set(rule) == {"---"}
    assert body == [
        [one.id, one.title, one.clause, one.severity.value, one.provenance]
        for one in all_rules().values()
    ]


def test_there_is_a_row_for_every_file_of_rules() -> None:
    files = [path.stem for path in Path(rules.__path__[0]).glob("[a-z]*.py")]
    named = {re.sub("([a-z]+)([0-9]+)_.*", r"\1-\2", stem).upper() for stem in files}
    assert {row[0] for row in rows()[2:]} == named
