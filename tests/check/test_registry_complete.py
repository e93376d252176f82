"""Every rule has its cases, its words and its source; every case file has its rule."""

from __future__ import annotations

from pathlib import Path

import pytest
from rule_cases import KINDS, case_files, cases_of, read_file

from asfitted.check import rules as rules_folder
from asfitted.check.registry import FAMILIES, PROVENANCES, SECTIONS, Rule, all_rules

RULES = list(all_rules().values())


def test_there_are_rules_of_every_family_but_waivers() -> None:
    families = {rule.id[:2] for rule in RULES}
    assert families == set(FAMILIES) - {"WV"}


def test_rules_and_case_files_match_one_to_one() -> None:
    files = [path.stem for path in case_files()]
    assert files == [rule.id for rule in RULES]
    assert [read_file(path)["rule"] for path in case_files()] == files


def test_one_file_for_each_rule_named_after_it() -> None:
    folder = Path(next(iter(rules_folder.__path__)))
    names = sorted(p.stem.split("_")[0] for p in folder.glob("*.py") if p.stem != "__init__")
    assert names == [rule.id.replace("-", "").lower() for rule in RULES]


@pytest.mark.parametrize("path", case_files(), ids=lambda p: p.stem)
def test_cases_are_good_bad_and_at_the_limit(path: Path) -> None:
    kinds = {case.kind for case in cases_of(path)}
    assert kinds <= set(KINDS)
    assert {"good", "bad"} <= kinds
    reason = read_file(path).get("no_limit_case", "")
    assert ("limit" in kinds) != bool(reason), "a limit case, or the reason why there is none"
    assert all(case.expect for case in cases_of(path) if case.kind == "bad")
    assert not any(case.expect for case in cases_of(path) if case.kind in {"good", "limit"})


@pytest.mark.parametrize("rule", RULES, ids=lambda r: r.id)
def test_rule_states_its_clause_source_and_words(rule: Rule) -> None:
    assert rule.clause
    assert rule.provenance.startswith(PROVENANCES)
    assert tuple(rule.sections) == SECTIONS
    assert all(len(words) > 5 for words in rule.sections.values())
    assert not rule.title.endswith(".")
