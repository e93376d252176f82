"""A results file to checked words, with the places of its own lines."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from pydantic import ValidationError

from asfitted.errors import Problem, SpecError
from asfitted.spec.explain import explain
from asfitted.spec.load_yaml import load_yaml
from asfitted.spec.measured_results import ResultsFile
from asfitted.spec.problem_codes import Code

if TYPE_CHECKING:
    from pathlib import Path

    from asfitted.errors import Place
    from asfitted.spec.load_yaml import Document, SpecPath
    from asfitted.spec.measured_results import MeasuredWords


@dataclass(frozen=True)
class LoadedResults:
    """Measured results as written, and where each stands: in the job file or in their own."""

    words: MeasuredWords
    document: Document
    head: SpecPath = ()  # path of the block within the document

    def place(self, path: SpecPath) -> Place:
        """Return where the value at a path within the results stands."""
        return self.document.place((*self.head, *path))


def load_results(path: Path) -> LoadedResults:
    """Read and check one results file.

    Raises:
        SpecError: with every problem of the file.
    """
    document = load_yaml(path)
    try:
        words = ResultsFile.model_validate(document.data)
    except ValidationError as error:
        raise SpecError(explain(error, document, ResultsFile)) from error
    if words.asfitted != "1":
        message = f'version "{words.asfitted}" of the spec language is not known'
        where = document.place(("asfitted",))
        raise SpecError([Problem(Code.VERSION, message, where, 'write "asfitted: 1"')])
    return LoadedResults(words, document)
