"""Mark-ups from site: laid over the job, judged like it, told and clouded; the job stays."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from small_issues import JOB

from asfitted.errors import SpecError
from asfitted.pipeline import check_job

if TYPE_CHECKING:
    from pathlib import Path

    from asfitted.pipeline import Checked

HEAD = "asfitted-site: 1\nfor: J2801 P01\nby: C. Person\ndate: 2026-10-20\nmarks:\n"


def marked(folder: Path, *marks: str, head: str = HEAD) -> Checked:
    job, site = folder / "job.yaml", folder / "site.yaml"
    job.write_text(JOB, encoding="utf-8")
    site.write_text(head + "".join(f"  - {mark}\n" for mark in marks), encoding="utf-8")
    return check_job(job, site=site)


def refused(folder: Path, *marks: str, head: str = HEAD) -> str:
    with pytest.raises(SpecError) as caught:
        marked(folder, *marks, head=head)
    return str(caught.value)


def kinds(checked: Checked) -> set[tuple[str, str]]:
    assert checked.changes is not None
    return {(c.kind, c.tag) for c in checked.changes.changes}


def test_a_thing_moved_on_site_is_moved_and_told(tmp_path: Path) -> None:
    made = marked(tmp_path, '{tag: S1, moved to: "wall A, 3.0 m along, 1.2 m up", photo: p1.jpg}')
    assert made.installation.points["S1"].position.along_mm == 3000
    (mark,) = made.installation.site_marks
    assert (mark.tag, mark.by, mark.date, mark.photo) == ("S1", "C. Person", "2026-10-20", "p1.jpg")
    assert ("moved", "S1") in kinds(made)


def test_lengths_are_measured_or_lengthened(tmp_path: Path) -> None:
    made = marked(tmp_path, "{tag: W03, measured: 12.5 m}", "{tag: W01, lengthened by: 1.5 m}")
    assert made.results.routes["W03"].length_m == 12.5
    assert made.results.routes["W03"].measured
    assert made.issued is not None
    before = made.issued.results.routes["W01"].length_m
    assert made.results.routes["W01"].length_m == pytest.approx(before + 1.5)
    assert not made.results.routes["W01"].measured
    assert {("measured", "W03"), ("lengthened", "W01")} <= kinds(made)


def test_the_design_stays_as_it_was_issued(tmp_path: Path) -> None:
    made = marked(tmp_path, "{tag: W03, measured: 12.5 m}")
    assert (tmp_path / "job.yaml").read_text(encoding="utf-8") == JOB
    assert made.issued is not None
    assert made.issued.installation.job.revision == "P01"


def test_a_marked_up_print_is_never_taken_for_the_issue(tmp_path: Path) -> None:
    job = marked(tmp_path, "{tag: W03, measured: 12.5 m}").installation.job
    assert (job.revision, job.status, job.date) == ("P01-S", "For information", "2026-10-20")
    assert [r.revision for r in job.revisions] == ["P01", "P01-S"]
    assert "W03" in job.revisions[-1].what


def test_what_was_found_is_judged_and_no_other_cable_is_chosen(tmp_path: Path) -> None:
    # BS 7671 433.1.1: the rating of the device may not be more than the capacity of the cable
    breaker = "B6 30 mA type A 6 kA\n    cable: T&E"
    open_size = JOB.replace(breaker + " 1.5 mm2", breaker)
    job, site = tmp_path / "job.yaml", tmp_path / "site.yaml"
    job.write_text(open_size, encoding="utf-8")
    mark = "  - {tag: CU1/2, as found: {device: RCBO B40 30 mA type A 6 kA}}\n"
    site.write_text(HEAD + mark, encoding="utf-8")
    made = check_job(job, site=site)
    assert made.issued is not None
    sizes = [side.results.cables["W02"].csa_mm2 for side in (made, made.issued)]
    assert sizes[0] == sizes[1]
    assert any(f.rule == "OC-02" and f.subject == "W02" for f in made.report.errors)
    assert not made.issued.report.errors or ("OC-02", "W02") not in {
        (f.rule, f.subject) for f in made.issued.report.errors
    }


def test_a_note_is_kept_and_changes_nothing(tmp_path: Path) -> None:
    made = marked(tmp_path, "{tag: CU1, note: lid cracked, photo: p2.jpg}")
    assert made.installation.site_marks[0].words == "lid cracked"
    assert {kind for kind, tag in kinds(made) if tag != "job"} == set()


@pytest.mark.parametrize(
    ("mark", "words", "place"),
    [
        ("{tag: S9, note: x}", '"S9" is no tag of this job', "site.yaml:6:11"),
        ("{tag: S1, measured: 3 m}", "no cable", "site.yaml:6:"),
        ('{tag: T1, moved to: "wall A, 1 m along, 1 m up"}', "no single place", "site.yaml:6:"),
        ('{tag: S1, moved to: "wall Q, 1 m along, 1 m up"}', 'wall "Q"', "site.yaml:6:"),
        ("{tag: S1, as found: {gangs: two}}", "gangs", "site.yaml:6:"),
        ("{tag: S1, as found: {tag: S7}}", "cannot be marked up", "site.yaml:6:"),
        ("{tag: S1}", "says nothing", "site.yaml:6:"),
        ("{tag: S1, moved: x}", "moved to", "site.yaml:6:"),
    ],
)
def test_a_mark_up_that_cannot_be_is_refused_with_its_place(
    tmp_path: Path, mark: str, words: str, place: str
) -> None:
    said = refused(tmp_path, mark)
    assert words in said
    assert place in said


def test_mark_ups_of_another_revision_are_refused(tmp_path: Path) -> None:
    head = HEAD.replace("J2801 P01", "J2801 P02")
    assert 'are for "J2801 P02", the job is J2801 P01' in refused(
        tmp_path, "{tag: S1, note: x}", head=head
    )


def test_a_measured_cable_is_not_lengthened_by_a_guess(tmp_path: Path) -> None:
    assert "whole length" in refused(tmp_path, "{tag: W03, measured: 9 m, lengthened by: 1 m}")


def test_a_new_way_found_on_site_is_routed_and_told(tmp_path: Path) -> None:
    made = marked(tmp_path, '{tag: W03, as found: {route: "clipped direct, 2.4 m up"}}')
    cable, route = made.installation.cables["W03"], made.results.routes["W03"]
    assert cable.way_surveyed
    assert cable.clipped_up_mm == 2400
    assert {leg.start.z for leg in route.legs if "level" in leg.words} == {2400.0}
    assert not any(leg.containment for leg in route.legs)
    assert ("re-routed", "W03") in kinds(made)
    assert made.installation.site_marks[0].words == "found clipped direct, 2.4 m up"


def test_a_cable_found_at_another_height_is_rerouted_too(tmp_path: Path) -> None:
    clipped = JOB.replace(
        "    drops: 20 mm steel conduit\n    points:\n      - {tag: F1",
        "    route: clipped direct, 2.3 m up\n    points:\n      - {tag: F1",
    )
    job, site = tmp_path / "job.yaml", tmp_path / "site.yaml"
    job.write_text(clipped, encoding="utf-8")
    mark = '  - {tag: W03, as found: {route: "clipped direct, 2.4 m up"}}\n'
    site.write_text(HEAD + mark, encoding="utf-8")
    assert ("re-routed", "W03") in kinds(check_job(job, site=site))


@pytest.mark.parametrize(
    ("mark", "surveyed"),
    [
        ("{tag: W03, measured: 12.5 m}", False),
        ("{tag: W03, lengthened by: 1.5 m}", False),
        ('{tag: W03, measured: 9 m, as found: {route: "clipped direct, 2.4 m up"}}', True),
        ("{tag: W03, lengthened by: 1.5 m, as found: {via: [T1]}}", True),
        ("{tag: W03, note: neat}", True),
    ],
)
def test_a_length_alone_leaves_the_way_not_surveyed(
    tmp_path: Path, mark: str, surveyed: object
) -> None:
    made = marked(tmp_path, mark)
    assert made.installation.cables["W03"].way_surveyed is surveyed
    assert made.results.routes["W03"].way_surveyed is surveyed
    assert made.results.routes["W01"].way_surveyed


def test_a_way_given_for_the_circuit_is_the_way_of_its_cables(tmp_path: Path) -> None:
    made = marked(
        tmp_path,
        "{tag: W03, measured: 9 m}",
        '{tag: CU1/3, as found: {route: "clipped direct, 2.4 m up"}}',
    )
    assert made.installation.cables["W03"].way_surveyed
