"""``asfitted compare``, ``--since`` and ``--site`` at the command line, and what is written."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING

from small_issues import JOB, edited

from asfitted.cli import main
from asfitted.layout.revision.marks import AS_FITTED
from asfitted.pipeline import changed_sheets, check_job, lay_out_job

if TYPE_CHECKING:
    from pathlib import Path

    import pytest

    from asfitted.layout.sheet_layout import SheetLayout

MOVED = edited(
    ("wall B, 2.0 m along, 1.2 m up", "wall B, 2.4 m along, 1.2 m up"),
    ("revision: P01", "revision: P02"),
)


def files(folder: Path, newer: str = MOVED) -> tuple[Path, Path]:
    old, new = folder / "p01.yaml", folder / "p02.yaml"
    old.write_text(JOB, encoding="utf-8")
    new.write_text(newer, encoding="utf-8")
    return old, new


def clouds(sheets: tuple[SheetLayout, ...]) -> list[str]:
    idents = [(s, i.ident) for s in sheets for i in s.items]
    return [f"{s.key} {ident}" for s, ident in idents if ident.endswith(":cloud")]


def test_compare_says_what_changed_and_which_sheets(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    old, new = files(tmp_path)
    assert main(["compare", str(old), str(new)]) == 0
    said = capsys.readouterr().out
    assert "J2801 P01" in said
    assert "moved: from wall B, 2 m along, 1.2 m up to wall B, 2.4 m along" in said
    assert "Elevation B" in said
    assert "not a certificate" in said


def test_compare_as_json(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    old, new = files(tmp_path)
    assert main(["compare", str(old), str(new), "--json"]) == 0
    data = json.loads(capsys.readouterr().out)
    moved = [c for c in data["changes"]["changes"] if c["kind"] == "moved"]
    assert [c["tag"] for c in moved] == ["F1"]
    assert any("F1" in ident for sheet in data["sheets"] for ident in sheet["items"])


def test_a_spec_that_names_its_issued_file_is_clouded_without_being_told(tmp_path: Path) -> None:
    files(tmp_path)
    newer = MOVED.replace("  revision: P02", "  revision: P02\n  issued: p01.yaml")
    (tmp_path / "p02.yaml").write_text(newer, encoding="utf-8")
    found = clouds(lay_out_job(check_job(tmp_path / "p02.yaml")))
    assert any(ident.startswith("elevation/B") for ident in found)
    assert not any(ident.startswith("elevation/D") for ident in found)


def test_the_same_job_gets_no_cloud_however_it_is_ordered(tmp_path: Path) -> None:
    head, tail = JOB.split("circuits:\n")
    blocks = ["  - way" + block for block in tail.split("  - way")[1:]]
    turned = head + "circuits:\n" + "".join(reversed(blocks))
    old, new = files(tmp_path, turned)
    checked = check_job(new, since=old)
    assert clouds(lay_out_job(checked)) == []
    assert not [c.words for c in changed_sheets(checked) if c.is_concerned]


def test_an_issue_that_names_itself_is_refused(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    job = tmp_path / "job.yaml"
    job.write_text(JOB.replace("  number:", "  issued: job.yaml\n  number:"), encoding="utf-8")
    assert main(["check", str(job)]) == 2
    assert "issued before itself" in capsys.readouterr().err


def test_number_and_revision_stand_in_the_file_names_and_old_ones_go(tmp_path: Path) -> None:
    old, new = files(tmp_path)
    out = tmp_path / "out"
    assert main(["draw", str(old), "-o", str(out)]) in {0, 1}
    first = {p.name for p in (out / "sheets").iterdir()}
    assert any(name.startswith("J2801-") and "-P01-" in name for name in first)
    (out / "sheets" / "K9-01-P01-of-another-job.svg").write_text("kept")
    assert main(["draw", str(new), "-o", str(out)]) in {0, 1}
    second = {p.name for p in (out / "sheets").iterdir()}
    assert not first & second
    assert "K9-01-P01-of-another-job.svg" in second
    assert all("-P02-" in name for name in second if name.startswith("J2801-"))


def test_no_sheet_of_an_as_fitted_issue_leaves_anything_open(tmp_path: Path) -> None:
    fitted = JOB.replace(
        "status: For construction", "status: As fitted\n  checker: B. Person\n  not seen: none"
    )
    job = tmp_path / "job.yaml"
    job.write_text(fitted, encoding="utf-8")
    checked = check_job(job)
    assert checked.installation.job.status == AS_FITTED
    for sheet in lay_out_job(checked):
        words = [getattr(p, "text", "") for item in sheet.items for p in item.parts]
        open_words = [w for w in words if "to be confirmed" in w.lower() or "TBC" in w]
        assert not open_words, sheet.name


def test_an_as_fitted_issue_tells_what_rating_plates_were_not_read(tmp_path: Path) -> None:
    fitted = JOB.replace(
        "status: For construction", "status: As fitted\n  checker: B. Person\n  not seen: none"
    )
    read = (
        "main switch: 63 A",
        "make: make Q\n    model: A1\n    serial number: 0042\n    main switch: 63 A",
    )
    for text, owed in ((fitted, True), (fitted.replace(*read), False), (JOB, False)):
        job = tmp_path / "job.yaml"
        job.write_text(text, encoding="utf-8")
        checked = check_job(job)
        told = [
            getattr(p, "text", "")
            for sheet in lay_out_job(checked)
            if sheet.key.startswith("outstanding")
            for item in sheet.items
            for p in item.parts
        ]
        words = "Rating plates, make, model and serial number not recorded: CU1."
        assert (words in " ".join(told)) is owed
        assert any(f.rule == "AF-03" for f in checked.report.findings) is owed


def test_an_as_fitted_issue_without_answers_fails_and_says_so_on_its_sheets(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    job = tmp_path / "job.yaml"
    job.write_text(JOB.replace("For construction", "As fitted"), encoding="utf-8")
    assert main(["check", str(job)]) == 1
    said = capsys.readouterr().out
    assert "AF-01" in said
    assert "SU-03" in said
    for sheet in lay_out_job(check_job(job)):
        (status,) = [i for i in sheet.items if i.ident == "title-block:status"]
        assert status.parts[0].text.startswith("Not checked")  # type: ignore[union-attr]
