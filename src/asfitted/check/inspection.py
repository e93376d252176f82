"""The job in front of a rule, and the means of saying what was found.

A rule names a figure and its limit; this class compares them, words the message and keeps the
margin, so that every finding reads alike and a missing figure is always said aloud.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property
from typing import TYPE_CHECKING

from asfitted.check.figures import pair
from asfitted.check.finding import Finding, Passed, Severity, Status, Verdict

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.calculate.results import (
        CableResult,
        CalculationResults,
        CircuitResult,
        Section,
    )
    from asfitted.errors import Place
    from asfitted.resolve.installation import (
        Board,
        Cable,
        Circuit,
        Installation,
        PointServed,
    )

SLACK = 1e-9  # share of the limit allowed for binary rounding: a figure on the limit passes


@dataclass(frozen=True)
class _Figures:
    """A figure past its limit, in one unit, with the names of both."""

    what: str
    found: float
    limit_is: str
    limit: float
    unit: str
    known_by: str


@dataclass(frozen=True)
class Inspection:
    """One rule at work on one job."""

    installation: Installation
    results: CalculationResults
    rule: str
    clause: str
    severity: Severity
    provenance: str

    # ---- what there is to look at ---------------------------------------------------------------

    def circuits(self) -> Iterator[tuple[Circuit, CircuitResult | None]]:
        """Yield every circuit that stays, with its figures."""
        for circuit in self.installation.circuits.values():
            if circuit.state != "removed":
                yield circuit, self.results.circuits.get(circuit.tag)

    @cached_property
    def _by_board(self) -> dict[str, list[Circuit]]:
        boards: dict[str, list[Circuit]] = {}
        for circuit, _ in self.circuits():
            boards.setdefault(circuit.board, []).append(circuit)
        return boards

    def circuits_of(self, board: Board) -> list[Circuit]:
        """Return the circuits of a board that stay, in order of the spec."""
        return self._by_board.get(board.tag, [])

    @cached_property
    def _by_run(self) -> dict[str, list[Section]]:
        runs: dict[str, list[Section]] = {}
        for section in self.results.sections.values():
            runs.setdefault(section.containment, []).append(section)
        return runs

    def pieces_of(self, run: str) -> list[Section]:
        """Return the pieces of a run on which the same cables lie, in order along it."""
        return self._by_run.get(run, [])

    def surveyed_circuits(self) -> Iterator[tuple[Circuit, CircuitResult | None]]:
        """Yield circuits whose cables are known, with their figures.

        A circuit without cables is not surveyed; BD-07 says so once for all rules.
        """
        for circuit, result in self.circuits():
            if circuit.cables:
                yield circuit, result

    def points(self) -> Iterator[tuple[Circuit, PointServed]]:
        """Yield every point that stays, with its circuit."""
        for circuit, _ in self.circuits():
            for tag in circuit.points:
                point = self.installation.points[tag]
                if point.state != "removed":
                    yield circuit, point

    def power_cables(self) -> Iterator[tuple[Circuit, Cable, CableResult | None]]:
        """Yield every power cable of the surveyed circuits, with its figures."""
        for circuit, _ in self.surveyed_circuits():
            for tag in circuit.cables:
                yield circuit, self.installation.cables[tag], self.results.cables.get(tag)

    def place_of(self, subject: str) -> Place | None:
        """Return where a subject stands in the spec: its own place, else that of its owner."""
        places = self.installation.places
        cable = self.installation.cables.get(subject)
        owners = (subject, cable.circuit if cable else "", subject.rpartition("/")[0])
        return next((places[tag] for tag in owners if tag in places), None)

    # ---- what to say ----------------------------------------------------------------------------

    def at_most(
        self,
        subject: str,
        *,
        what: str,
        found: float | None,
        limit_is: str,
        limit: float | None,
        unit: str,
        to_do: str,
        known_by: str = "",
    ) -> Verdict:
        """Judge a figure that must not be more than its limit.

        Args:
            subject: Tag of the thing judged.
            what: Name of the figure, "design current".
            found: The figure in ``unit``; None gives "not checked".
            limit_is: Name of the limit, "the rating of its C16 SP".
            limit: The limit in ``unit``; None gives "not checked".
            unit: Unit of both.
            to_do: How to put it right.
            known_by: Provenance of this limit, where it differs from that of the rule.
        """
        if found is None or limit is None:
            return self._figure_missing(subject, what, found, limit_is)
        if found <= limit + SLACK * max(1.0, abs(limit)):
            return Passed(subject)
        figures = _Figures(what, found, limit_is, limit, unit, known_by)
        return self._past("more than", subject, figures, to_do)

    def at_least(
        self,
        subject: str,
        *,
        what: str,
        found: float | None,
        limit_is: str,
        limit: float | None,
        unit: str,
        to_do: str,
        known_by: str = "",
    ) -> Verdict:
        """Judge a figure that must not be less than its limit; arguments as ``at_most``."""
        if found is None or limit is None:
            return self._figure_missing(subject, what, found, limit_is)
        if found >= limit - SLACK * max(1.0, abs(limit)):
            return Passed(subject)
        figures = _Figures(what, found, limit_is, limit, unit, known_by)
        return self._past("less than", subject, figures, to_do)

    def fails(self, subject: str, message: str, *, to_do: str, found: str | None = None) -> Finding:
        """Return a finding that is not a comparison of two figures; ``found`` is what there is."""
        finding = self._finding(subject, Status.FAILS, message, to_do)
        return replace(finding, found=found)

    def holds(
        self, subject: str, right: bool, message: str, *, to_do: str, found: str | None = None
    ) -> Verdict:
        """Judge a plain yes or no: pass when ``right``, else a finding with the message."""
        return Passed(subject) if right else self.fails(subject, message, to_do=to_do, found=found)

    def not_checked(self, subject: str, missing: str, *, to_do: str) -> Finding:
        """Return a finding that says what is missing; silence would read as a pass."""
        return self._finding(subject, Status.NOT_CHECKED, f"Not checked: {missing}.", to_do)

    def passes(self, subject: str) -> Passed:
        """Count a subject as judged and right."""
        return Passed(subject)

    # ---- wording --------------------------------------------------------------------------------

    def _figure_missing(
        self, subject: str, what: str, found: float | None, limit_is: str
    ) -> Finding:
        missing = what if found is None else limit_is
        reasons = self._reasons(subject)
        because = f" ({'; '.join(reasons)})" if reasons else ""
        return self.not_checked(
            subject,
            f"{missing} is not known{because}",
            to_do="Give, measure or look up what is missing, then run again.",
        )

    def _reasons(self, subject: str) -> tuple[str, ...]:
        r = self.results
        for group in (r.circuits, r.cables, r.boards, r.data):
            if subject in group:
                return group[subject].not_known
        return ()

    def _past(self, relation: str, subject: str, figures: _Figures, to_do: str) -> Finding:
        found_words, limit_words = pair(figures.found, figures.limit, figures.unit)
        what = f"{figures.what[0].upper()}{figures.what[1:]}"
        message = f"{what} is {found_words}, {relation} {figures.limit_is}: {limit_words}."
        return self._finding(subject, Status.FAILS, message, to_do, figures)

    def _finding(
        self,
        subject: str,
        status: Status,
        message: str,
        to_do: str,
        figures: _Figures | None = None,
    ) -> Finding:
        margin = -abs(figures.found - figures.limit) if figures else None
        return Finding(
            rule=self.rule,
            clause=self.clause,
            severity=self.severity,
            status=status,
            subject=subject,
            place=self.place_of(subject),
            found=figures.found if figures else None,
            limit=figures.limit if figures else None,
            unit=figures.unit if figures else "",
            margin=margin,
            message=message,
            to_do=to_do,
            provenance=(figures.known_by if figures else "") or self.provenance,
        )
