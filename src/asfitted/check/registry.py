"""The register of rules: the decorator that admits one, and the scan that finds them all."""

from __future__ import annotations

import importlib
import pkgutil
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType
from typing import TYPE_CHECKING

from asfitted.check import rules as rules_folder
from asfitted.check.inspection import Inspection

if TYPE_CHECKING:
    from collections.abc import Mapping

    from asfitted.calculate.results import CalculationResults
    from asfitted.check.finding import Severity, Verdict
    from asfitted.resolve.installation import Installation

FAMILIES: Mapping[str, str] = MappingProxyType(
    {
        "AF": "as-fitted issues",
        "BD": "boards",
        "CC": "cctv",
        "CF": "containment and fill",
        "DL": "data links",
        "EF": "earth fault and shock",
        "FS": "fire: support and sealing",
        "HT": "heights, zones and places",
        "IS": "isolation and switching",
        "LB": "labels and notices",
        "OC": "overcurrent",
        "PE": "power over Ethernet",
        "SG": "segregation",
        "SU": "supply and job",
        "TH": "thermal",
        "TR": "test results",
        "VD": "voltage drop",
        "WV": "waivers",
    }
)

SECTIONS = (
    "What it checks.",
    "Why it matters on site.",
    "Bad.",
    "Good.",
    "To put it right.",
    "Source.",
)

PROVENANCES = ("seen", "memory", "common practice", "derived")

RuleFunction = Callable[[Inspection], "Iterator[Verdict]"]


class RuleRefusedError(TypeError):
    """A rule is malformed: our fault, raised at import."""


@dataclass(frozen=True)
class Rule:
    """One rule as registered; ``sections`` holds the parts of its docstring by heading."""

    id: str
    title: str
    clause: str
    severity: Severity
    provenance: str
    sections: Mapping[str, str]
    function: RuleFunction

    def check(self, installation: Installation, results: CalculationResults) -> Iterator[Verdict]:
        """Yield what the rule says of each subject of the job."""
        yield from self.function(
            Inspection(
                installation=installation,
                results=results,
                rule=self.id,
                clause=self.clause,
                severity=self.severity,
                provenance=self.provenance,
            )
        )


_REGISTER: dict[str, Rule] = {}


def docstring_sections(docstring: str, rule_id: str) -> Mapping[str, str]:
    """Return the parts of a rule's docstring by heading.

    Raises:
        RuleRefusedError: a section is missing, empty or out of order.
    """
    marks = [docstring.find(heading) for heading in SECTIONS]
    if -1 in marks or marks != sorted(marks):
        raise RuleRefusedError(f"{rule_id}: the docstring needs, in order: {', '.join(SECTIONS)}")
    ends = [*marks[1:], len(docstring)]
    parts = {
        heading: " ".join(docstring[start + len(heading) : end].split())
        for heading, start, end in zip(SECTIONS, marks, ends, strict=True)
    }
    empty = [heading for heading, words in parts.items() if not words]
    if empty:
        raise RuleRefusedError(f"{rule_id}: nothing stands under {', '.join(empty)}")
    return MappingProxyType(parts)


def rule(
    *,
    id: str,  # noqa: A002 - the trade's word for it
    title: str,
    clause: str,
    severity: Severity,
    provenance: str,
) -> Callable[[RuleFunction], RuleFunction]:
    """Admit a rule to the register.

    Raises:
        RuleRefusedError: bad or duplicate id, no clause, unknown provenance, or a docstring
            without its sections.
    """

    def admit(function: RuleFunction) -> RuleFunction:
        family, _, _ = id.partition("-")
        if not re.fullmatch(r"[A-Z]{2}-\d{2}", id) or family not in FAMILIES:
            raise RuleRefusedError(f"{id!r} is not a rule id: family letters, a dash, two digits")
        if id in _REGISTER:
            raise RuleRefusedError(f"{id} is taken by {_REGISTER[id].title!r}")
        if not clause.strip() or not title.strip():
            raise RuleRefusedError(f"{id} needs a title and a clause")
        if not provenance.startswith(PROVENANCES):
            raise RuleRefusedError(f"{id}: provenance {provenance!r} is not one of {PROVENANCES}")
        _REGISTER[id] = Rule(
            id=id,
            title=title,
            clause=clause,
            severity=severity,
            provenance=provenance,
            sections=docstring_sections(function.__doc__ or "", id),
            function=function,
        )
        return function

    return admit


@cache
def all_rules() -> Mapping[str, Rule]:
    """Return every rule by id, in order of id; importing the folder fills the register."""
    for module in sorted(pkgutil.iter_modules(rules_folder.__path__), key=lambda m: m.name):
        importlib.import_module(f"{rules_folder.__name__}.{module.name}")
    return MappingProxyType(dict(sorted(_REGISTER.items())))
