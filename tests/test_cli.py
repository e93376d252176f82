"""Exit codes and what is printed: 0 clean, 1 findings, 2 unusable spec, 3 our fault."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from asfitted.cli import main

SPECS = Path(__file__).parent.parent / "specs"


@pytest.mark.parametrize("name", ["pottery-studio", "community-shed", "shop-cctv"])
def test_demo_jobs_check_without_errors(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", str(SPECS / f"{name}.yaml")]) == 0
    said = capsys.readouterr().out
    assert "0 errors" in said
    assert "not a certificate" in said


def test_findings_as_json_carry_rule_clause_figures_and_place(
    capsys: pytest.CaptureFixture[str],
) -> None:
    main(["check", "--json", str(SPECS / "pottery-studio.yaml")])
    findings = json.loads(capsys.readouterr().out)
    assert findings
    for finding in findings:
        assert {"rule", "clause", "severity", "found", "limit", "unit", "to_do"} <= finding.keys()
        assert finding["result"] in {"error", "warning", "note", "not checked", "waived"}


def test_a_failing_design_gives_exit_code_one(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = (SPECS / "pottery-studio.yaml").read_text()
    job = tmp_path / "job.yaml"
    job.write_text(text.replace("fault current: 3.6 kA measured", "fault current: 12 kA measured"))
    assert main(["check", str(job)]) == 1
    assert "error" in capsys.readouterr().out


def test_an_unusable_spec_gives_exit_code_two_and_writes_nothing(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    job, out = tmp_path / "job.yaml", tmp_path / "out"
    job.write_text("asfitted: 1\njob: {number: J1}\nbords: {}\n")
    assert main(["pack", str(job), "-o", str(out)]) == 2
    said = capsys.readouterr().err
    assert "job.yaml:3:1" in said
    assert "boards" in said
    assert not out.exists()


def test_a_folder_that_cannot_be_written_is_said_plainly(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    blocked = tmp_path / "file"
    blocked.write_text("in the way")
    code = main(["draw", str(SPECS / "shop-cctv.yaml"), "-o", str(blocked)])
    assert code == 3
    assert "cannot write" in capsys.readouterr().err


def test_sheets_of_an_earlier_run_do_not_stay(tmp_path: Path) -> None:
    out = tmp_path / "out"
    (out / "sheets").mkdir(parents=True)
    (out / "sheets" / "99-old-sheet.svg").write_text("<svg/>")
    (out / "sheets" / "my notes.txt").write_text("kept")
    assert main(["draw", str(SPECS / "shop-cctv.yaml"), "-o", str(out)]) == 0
    assert not (out / "sheets" / "99-old-sheet.svg").exists()
    assert (out / "sheets" / "my notes.txt").read_text() == "kept"


def test_schema_is_printed(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["schema"]) == 0
    assert "fault current" in capsys.readouterr().out


@pytest.mark.parametrize("stage", ["spec", "resolve", "calculate", "check", "layout"])
def test_each_stage_can_be_dumped(stage: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["dump", stage, str(SPECS / "community-shed.yaml")]) == 0
    assert json.loads(capsys.readouterr().out)
