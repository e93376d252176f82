"""Every rule finds what its cases say, and nothing else."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from rule_cases import Case, case_files, cases_of, findings_of

from asfitted.check.finding import tag_order

if TYPE_CHECKING:
    from pathlib import Path

ALL_CASES = [case for path in case_files() for case in cases_of(path)]


@pytest.mark.parametrize("case", ALL_CASES, ids=lambda c: f"{c.rule}-{c.name}")
def test_the_rule_gives_exactly_the_findings_of_the_case(case: Case) -> None:
    found = sorted(findings_of(case), key=lambda f: tag_order(f.subject))
    got = [(f.subject, str(f.status)) for f in found]
    want = [(e["subject"], e.get("status", "fails")) for e in case.expect]
    assert got == sorted(want, key=lambda pair: tag_order(pair[0]))
    for expected in case.expect:
        words = expected.get("says", "")
        assert any(words in f.message for f in found), [f.message for f in found]


@pytest.mark.parametrize("case", ALL_CASES, ids=lambda c: f"{c.rule}-{c.name}")
def test_findings_are_worded_for_the_reader(case: Case) -> None:
    for finding in findings_of(case):
        assert finding.message.endswith("."), finding.message
        assert finding.message[0].isupper() or finding.message[0].isdigit(), finding.message
        assert finding.to_do.endswith("."), finding.to_do
        assert "None" not in finding.message, finding.message


@pytest.mark.parametrize("path", case_files(), ids=lambda p: p.stem)
def test_good_and_bad_differ_in_one_fact(path: Path) -> None:
    cases = cases_of(path)
    goods = [case.facts for case in cases if case.kind == "good"]
    for bad in (case.facts for case in cases if case.kind == "bad"):
        nearest = min(
            sum(good.get(k, "(base)") != bad.get(k, "(base)") for k in good.keys() | bad.keys())
            for good in goods
        )
        assert nearest == 1, bad
