"""``design.json``: every computed figure of the job, the unit in each key."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING

from asfitted.pack.plain_data import plain

if TYPE_CHECKING:
    from asfitted.calculate.results import CalculationResults
    from asfitted.check.run import CheckReport
    from asfitted.resolve.installation import Installation

CAUTION = (
    "Design aid, not a certificate. For use by a competent person; check every figure against the "
    "current edition of BS 7671. Calculated values are not measured values."
)


def design_json(
    installation: Installation, results: CalculationResults, report: CheckReport
) -> str:
    """Return the figures, findings and defaults of a job as JSON text."""
    data = {
        "caution": CAUTION,
        "job": plain(installation.job),
        "supply": plain(installation.supply),
        "defaults": plain(installation.defaults),
        "figures": plain(results),
        "findings": findings_data(report),
        "subjects_passed_by_rule": plain(report.checked),
    }
    return json.dumps(data, indent=1, ensure_ascii=False) + "\n"


def findings_data(report: CheckReport) -> list[object]:
    """Return the findings as plain data, each with the file, line and column it points at."""
    rows: list[object] = []
    for finding in report.findings:
        row = plain(finding)
        if isinstance(row, dict):
            row["result"] = finding.word
        rows.append(row)
    return rows
