"""A job file to a checked ``JobSpec``; every problem of the file is told in one run."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from pydantic import ValidationError

from asfitted.errors import Place, Problem, SpecError
from asfitted.spec.explain import explain
from asfitted.spec.job_spec import VERSIONS, JobSpec
from asfitted.spec.load_yaml import Document, SpecPath, load_yaml
from asfitted.spec.problem_codes import Code

if TYPE_CHECKING:
    from pathlib import Path


@dataclass(frozen=True)
class LoadedJob:
    """A job as written, and where each of its values stands in the file."""

    spec: JobSpec
    document: Document

    def place(self, path: SpecPath, *, of_key: bool = False) -> Place:
        """Return where the value at a path such as ``("boards", "DB1", "at")`` stands.

        ``of_key`` asks for the place of the key instead of the value.
        """
        return self.document.place(path, of_key=of_key)


def in_file_order(problems: list[Problem]) -> list[Problem]:
    """Return the problems sorted by line and column; those without a place come first."""

    def where(problem: Problem) -> tuple[int, int]:
        return (problem.place.line, problem.place.column) if problem.place else (0, 0)

    return sorted(problems, key=where)


def _check_version(document: Document) -> None:
    version = document.data.get("asfitted")
    known = " or ".join(VERSIONS)
    if version is None:
        problem = Problem(
            Code.VERSION,
            'the key "asfitted" is missing',
            document.place_at(0, 0),
            f'start the file with "asfitted: {known}", the version of its language',
        )
        raise SpecError([problem])
    if version not in VERSIONS:
        problem = Problem(
            Code.VERSION,
            f'version "{version}" of the spec language is not known',
            document.place(("asfitted",)),
            f"this program reads version {known}",
        )
        raise SpecError([problem])


def load_job(path: Path) -> LoadedJob:
    """Read and check one job file.

    Raises:
        SpecError: with every problem of the file, in the order of its lines.
    """
    document = load_yaml(path)
    _check_version(document)
    try:
        spec = JobSpec.model_validate(document.data)
    except ValidationError as error:
        raise SpecError(in_file_order(explain(error, document))) from error
    return LoadedJob(spec, document)
