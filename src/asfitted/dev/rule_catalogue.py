"""Prints every rule of the check stage as a Markdown table.

Run from anywhere::

    python -m asfitted.dev.rule_catalogue
"""

from __future__ import annotations

import sys

from asfitted.check.registry import Rule, all_rules

COLUMNS = ("Rule", "Title", "Clause", "Severity", "Limit known by")


def _row(cells: tuple[str, ...]) -> str:
    return "| " + " | ".join(cell.replace("|", "\\|") for cell in cells) + " |"


def _cells(rule: Rule) -> tuple[str, ...]:
    return (rule.id, rule.title, rule.clause, str(rule.severity), rule.provenance)


def catalogue_lines() -> list[str]:
    """Return the lines of the table, rules in order of id."""
    head = [_row(COLUMNS), _row(("---",) * len(COLUMNS))]
    return head + [_row(_cells(rule)) for rule in all_rules().values()]


def main() -> int:
    """Run the command."""
    sys.stdout.write("\n".join(catalogue_lines()) + "\n")
    return 0


if __name__ == "__main__":
    sys.exit(main())
