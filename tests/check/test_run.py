"""A whole run: order, counts, waivers and what stops the work."""

from __future__ import annotations

from typing import Any

from edit_frozen import edited
from hand_built_job import installation, results

from asfitted.check.finding import Severity, Status
from asfitted.check.run import CheckReport, run_checks
from asfitted.resolve.installation import Waiver


def report_of(*waivers: Waiver, **edits: Any) -> CheckReport:
    job = edited(installation(), "waivers", list(waivers))
    for path, value in edits.items():
        job = edited(job, path.replace("__", "."), value)
    return run_checks(job, results())


def test_a_right_job_has_no_error_and_no_warning() -> None:
    report = report_of()
    assert report.errors == ()
    assert report.count("error") == report.count("warning") == 0


def test_rules_that_judged_nothing_are_still_counted() -> None:
    report = report_of()
    assert report.checked["EF-05"] == 0, "no TT supply: nothing to judge, and that can be seen"
    assert report.checked["OC-01"] == 6
    assert list(report.checked) == sorted(report.checked)


def test_findings_are_sorted_by_weight_then_subject_then_rule() -> None:
    job = edited(installation(), "points.X1.rcd", None)
    figures = edited(results(), "circuits.DB1/1L1.design_current_a", 50)
    figures = edited(figures, "circuits.DB1/2TP.zs_ohm", None)
    report = run_checks(job, figures)
    words = [f.word for f in report.findings]
    order = ["error", "warning", "not checked", "note", "waived"]
    assert words == sorted(words, key=order.index)
    assert [(f.subject, f.rule) for f in report.errors] == [("DB1/1L1", "OC-01"), ("X1", "EF-03")]
    assert report.not_checked == words.count("not checked") >= 2


def test_a_missing_figure_does_not_stop_the_work_but_is_said() -> None:
    report = run_checks(installation(), edited(results(), "circuits.DB1/2TP.zs_ohm", None))
    said = [f for f in report.findings if f.rule == "EF-01"]
    assert [(f.subject, f.status) for f in said] == [("DB1/2TP", Status.NOT_CHECKED)]
    assert said[0].message == "Not checked: earth fault loop impedance Zs is not known."
    assert not said[0].stops_work


def test_reasons_of_the_calculation_reach_the_finding() -> None:
    figures = edited(results(), "circuits.DB1/2TP.zs_ohm", None)
    figures = edited(figures, "circuits.DB1/2TP.not_known", ["Ze is not recorded"])
    said = [f for f in run_checks(installation(), figures).findings if f.rule == "EF-01"]
    assert "(Ze is not recorded)" in said[0].message


def test_a_waiver_marks_its_finding_and_names_the_person() -> None:
    waiver = Waiver("EF-03", "X1", "skilled staff only, assessed 3 May", "R. Ashdown")
    report = report_of(waiver, points__X1__rcd=None)
    marked = [f for f in report.findings if f.rule == "EF-03"]
    assert [f.status for f in marked] == [Status.WAIVED]
    assert marked[0].message.endswith("Accepted by R. Ashdown: skilled staff only, assessed 3 May.")
    assert report.errors == ()


def test_a_waiver_of_another_subject_leaves_the_finding() -> None:
    report = report_of(Waiver("EF-03", "S1", "reason", "R. Ashdown"), points__X1__rcd=None)
    assert [f.rule for f in report.errors] == ["EF-03"]


def test_a_waiver_that_matches_nothing_is_a_finding() -> None:
    report = report_of(Waiver("EF-03", "X1", "reason", "R. Ashdown"))
    unused = [f for f in report.findings if f.rule == "WV-01"]
    assert [(f.subject, f.severity) for f in unused] == [("X1", Severity.WARNING)]
    assert "EF-03" in unused[0].message


def test_a_finding_carries_figures_margin_and_place() -> None:
    report = run_checks(
        installation(), edited(results(), "circuits.DB1/2TP.design_current_a", 20.5)
    )
    (finding,) = report.errors
    assert (finding.found, finding.limit, finding.unit, finding.margin) == (20.5, 16, "A", -4.5)
    assert str(finding.place) == "job.yaml:11:1"
    text = finding.render()
    assert "OC-01  error  DB1/2TP: Design current Ib is 20.5 A, more than" in text
    assert "BS 7671 433.1.1" in text
    assert "memory" in text
