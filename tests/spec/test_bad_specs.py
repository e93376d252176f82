"""Every kind of problem, with the exact text that the electrician reads.

The cases stand in ``bad_specs.txt``: a job of ``jobs/``, the words of it that are changed,
what they are changed to, and what the program then says.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import pytest

from asfitted.errors import SpecError
from asfitted.resolve import resolve
from asfitted.spec import load_job
from asfitted.spec.problem_codes import Code

HERE = Path(__file__).parent


@dataclass(frozen=True)
class Case:
    name: str
    spec: str
    before: str
    after: str
    reads: str


def _case(block: str) -> Case:
    head, rest = block.split("\n-- write\n", 1)
    name, spec = head.split("\nspec: ")
    before, rest = rest.split("\n-- as\n", 1)
    after, reads = rest.split("\n-- reads\n", 1)
    return Case(name, spec, before, after, reads.rstrip("\n"))


def cases() -> list[Case]:
    text = (HERE / "bad_specs.txt").read_text(encoding="utf-8")
    return [_case(block) for block in text.removeprefix("## ").split("\n\n## ")]


def told(path: Path) -> SpecError:
    with pytest.raises(SpecError) as caught:
        resolve(load_job(path))
    return caught.value


@pytest.mark.parametrize("case", cases(), ids=lambda case: case.name)
def test_problem_reads_as_agreed(case: Case, tmp_path: Path) -> None:
    job = (HERE / "jobs" / f"{case.spec}.yaml").read_text(encoding="utf-8")
    assert case.before in job
    path = tmp_path / "job.yaml"
    path.write_text(job.replace(case.before, case.after, 1), encoding="utf-8")
    assert str(told(path)) == case.reads


def test_every_code_but_that_of_the_file_has_a_case() -> None:
    shown = {case.name.split()[0] for case in cases()}
    assert shown == {code.value for code in Code} - {Code.FILE.value}


def test_no_message_speaks_the_library_s_words() -> None:
    text = " ".join(case.reads for case in cases()).lower()
    for word in ("input should", "pydantic", "validation", "dict", "nonetype", "str_type"):
        assert word not in text


def test_six_errors_are_told_in_one_run_in_the_order_of_the_lines(tmp_path: Path) -> None:
    job = (HERE / "jobs" / "shed.yaml").read_text(encoding="utf-8")
    for before, after in (
        ("ways: 8", "ways: eight"),
        ("Ze: 0.35", "Ze: 0,35"),
        ("client:", "clinet:"),
        ("system: TN-S", "system: TNS"),
        ("height: 2.6 m", "height: 2.6"),
        ("BS 7671:2018+A4:2026", "BS 7671:2008"),
    ):
        job = job.replace(before, after, 1)
    path = tmp_path / "job.yaml"
    path.write_text(job, encoding="utf-8")
    problems = told(path).problems
    lines = [problem.place.line for problem in problems if problem.place]
    assert [problem.code for problem in problems] == [
        "SP-06",
        "SP-08",
        "SP-08",
        "SP-09",
        "SP-09",
        "SP-09",
    ]
    assert lines == [7, 11, 17, 20, 28, 32]


def test_six_wrong_names_and_places_are_told_in_one_run(tmp_path: Path) -> None:
    job = (HERE / "jobs" / "shed.yaml").read_text(encoding="utf-8")
    for before, after in (
        ("CU1/6", "CU1/9"),
        ("wall B, 1.0 m", "wall B, 9.0 m"),
        ("is: floodlight", "is: flodlight"),
        ("cable: T&E", "cable: TandE"),
        ("wall B, 2.8 m", "wall Z, 2.8 m"),
        ("tag: L1", "tag: LS1"),
    ):
        job = job.replace(before, after, 1)
    path = tmp_path / "job.yaml"
    path.write_text(job, encoding="utf-8")
    codes = [problem.code for problem in told(path).problems]
    assert codes == ["SP-11", "SP-14", "SP-11", "SP-12", "SP-11", "SP-15"]
