"""Cases of the rules: read from YAML, run against the hand-built job or a job of ``specs/``."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Any

import yaml
from edit_frozen import edited
from hand_built_job import installation, results

from asfitted.check.finding import Finding
from asfitted.check.registry import all_rules

CASES = Path(__file__).parent / "cases"
KINDS = ("good", "bad", "limit")


@dataclass(frozen=True)
class Case:
    """One situation and every finding of the rule that it must give."""

    rule: str
    name: str
    edits: dict[str, Any]
    figures: dict[str, Any]
    expect: tuple[dict[str, str], ...]

    @property
    def kind(self) -> str:
        """Good, bad or limit: the first word of the name."""
        return self.name.split("_")[0]

    @property
    def facts(self) -> dict[str, Any]:
        """Every edit under one roof."""
        return {**self.edits, **{f"figures.{k}": v for k, v in self.figures.items()}}


def case_files() -> list[Path]:
    """Return the case files in order."""
    return sorted(CASES.glob("*.yaml"))


def read_file(path: Path) -> dict[str, Any]:
    """Return a case file as written."""
    content: dict[str, Any] = yaml.safe_load(path.read_text(encoding="utf-8"))
    return content


def cases_of(path: Path) -> list[Case]:
    """Return the cases of one file."""
    content = read_file(path)
    return [
        Case(
            content["rule"],
            name,
            case.get("set", {}),
            case.get("figures", {}),
            tuple({"subject": e} if isinstance(e, str) else e for e in case["expect"]),
        )
        for name, case in content["cases"].items()
    ]


def findings_of(case: Case) -> list[Finding]:
    """Return what the rule of a case finds in the edited hand-built job."""
    job, figures = installation(), results()
    for path, value in case.edits.items():
        job = edited(job, path, value)
    for path, value in case.figures.items():
        figures = edited(figures, path, value)
    verdicts = all_rules()[case.rule].check(job, figures)
    return [verdict for verdict in verdicts if isinstance(verdict, Finding)]
