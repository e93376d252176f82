"""Run every rule over a job, apply the waivers, and report what was and was not looked at."""

from __future__ import annotations

from dataclasses import dataclass, field
from types import MappingProxyType
from typing import TYPE_CHECKING

from asfitted.check.finding import Finding, Passed, Status, finding_order
from asfitted.check.registry import all_rules
from asfitted.check.waivers import apply_waivers

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from asfitted.calculate.results import CalculationResults
    from asfitted.check.registry import Rule
    from asfitted.resolve.installation import Installation


@dataclass(frozen=True)
class CheckReport:
    """What the rules say of a job.

    Attributes:
        findings: Sorted by weight, subject and rule.
        checked: Rule id to the count of subjects that it judged and found right. A rule that found
            nothing to judge stands at 0, so that its silence can be seen.
        not_checked: Count of findings that say something could not be judged.
    """

    findings: tuple[Finding, ...] = ()
    checked: Mapping[str, int] = field(default_factory=lambda: MappingProxyType({}))
    not_checked: int = 0

    @property
    def errors(self) -> tuple[Finding, ...]:
        """Findings that stop the work: severity error, status fails."""
        return tuple(f for f in self.findings if f.stops_work)

    def count(self, word: str) -> int:
        """Return how many findings print as ``word``: "error", "warning", "note", ..."""
        return sum(f.word == word for f in self.findings)


def run_checks(
    installation: Installation,
    results: CalculationResults,
    rules: Iterable[Rule] | None = None,
) -> CheckReport:
    """Return what every rule says of the job.

    Args:
        installation: The job as resolved.
        results: Its figures.
        rules: The rules to run; every registered rule when left out.
    """
    passed: dict[str, set[str]] = {}
    raised: list[Finding] = []
    chosen = tuple(all_rules().values() if rules is None else rules)
    for each in chosen:
        verdicts = tuple(each.check(installation, results))
        found = [verdict for verdict in verdicts if isinstance(verdict, Finding)]
        right = {verdict.subject for verdict in verdicts if isinstance(verdict, Passed)}
        passed[each.id] = right - {finding.subject for finding in found}
        raised += found
    findings = sorted(apply_waivers(raised, installation), key=finding_order)
    return CheckReport(
        findings=tuple(findings),
        checked=MappingProxyType({rule: len(subjects) for rule, subjects in passed.items()}),
        not_checked=sum(f.status is Status.NOT_CHECKED for f in findings),
    )
