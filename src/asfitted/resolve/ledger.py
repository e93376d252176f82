"""What the resolve stage collects on its way: problems, filled defaults, places of tags."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.errors import Place, Problem, SpecError
from asfitted.resolve.installation import Basis, Default, Known
from asfitted.resolve.kept_tags import TagKeeper
from asfitted.spec.load_job import LoadedJob, in_file_order
from asfitted.spec.problem_codes import Code
from asfitted.spec.words import did_you_mean

if TYPE_CHECKING:
    from collections.abc import Iterable

    from asfitted.quantities import Figure
    from asfitted.resolve.installation import Installation
    from asfitted.spec.load_yaml import SpecPath


class Ledger:
    """One run's problems, defaults and places; every part of the stage writes into it."""

    def __init__(self, loaded: LoadedJob, issued: Installation | None = None) -> None:
        """Start an empty ledger for one job; what was issued of it keeps its tags."""
        self.loaded = loaded
        self.tags = TagKeeper(issued)
        self.problems: list[Problem] = []
        self._filled: dict[Default, None] = {}  # in order, each once
        self.places: dict[str, Place] = {}

    def problem(self, code: Code, message: str, path: SpecPath, hint: str = "") -> None:
        """Note a problem at a path of the spec."""
        found = Problem(code, message, self.loaded.place(path), hint)
        if found not in self.problems:
            self.problems.append(found)

    def unknown(
        self, code: Code, what: str, name: str, known: Iterable[str], path: SpecPath
    ) -> None:
        """Note a name that nothing bears, with the nearest that something does."""
        self.problem(code, f'{what} "{name}" is not in this job', path, did_you_mean(name, known))

    def default(self, subject: str, what: str, value: str, reason: str) -> None:
        """Note, once, a fact that the spec left out and the tool filled in."""
        self._filled.setdefault(Default(subject, what, value, reason))

    @property
    def defaults(self) -> list[Default]:
        """Every default filled so far, in order."""
        return list(self._filled)

    def claim(self, tag: str, path: SpecPath) -> None:
        """Note where a tag stands; a tag that something else bears is a problem."""
        if tag in self.places:
            message = f'tag "{tag}" is used twice; first on line {self.places[tag].line}'
            self.problem(Code.NAME_TWICE, message, path, "give every thing its own tag")
        self.mark(tag, path)

    def mark(self, tag: str, path: SpecPath) -> None:
        """Note where the thing with this tag stands in the spec."""
        self.places.setdefault(tag, self.loaded.place(path, of_key=True))

    def known(self, figure: Figure | None, subject: str, what: str) -> Known | None:
        """Return a figure with its basis; one that does not say is taken as assumed."""
        if figure is None:
            return None
        if not figure.basis:
            reason = "not said whether measured or declared"
            self.default(subject, f"basis of {what}", Basis.ASSUMED.value, reason)
        return Known(figure.value, figure.unit, Basis(figure.basis or Basis.ASSUMED.value))

    def stop_if_wrong(self) -> None:
        """Raise every problem noted so far.

        Raises:
            SpecError: at least one problem was noted.
        """
        if self.problems:
            raise SpecError(in_file_order(self.problems))
