"""What a sheet is made from, and how sheets are planned before they are numbered.

A sheet kind first *plans* (how many sheets, which paper, what title), then all sheets of the job
are numbered, then each is *built* knowing every number, so that references between sheets are true.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Mapping

    from asfitted.calculate.results import CalculationResults
    from asfitted.check.run import CheckReport
    from asfitted.compare.changes import Changes
    from asfitted.layout.sheet_layout import Item, Paper, SymbolInfo
    from asfitted.resolve.installation import Installation


@dataclass(frozen=True)
class ConcernedSheet:
    """A sheet that a revision changed: its plan key, and how the change is marked on it."""

    key: str
    title: str
    is_new: bool
    has_cloud: bool


@dataclass(frozen=True)
class Model:
    """Everything a sheet may read. Layout copies from it; it never changes it."""

    installation: Installation
    results: CalculationResults
    report: CheckReport
    symbols: Mapping[str, SymbolInfo]
    changes: Changes | None = None  # since the revision that was issued; None = none was given
    issued: Model | None = None  # the job as it was issued, for clouds round what differs
    planned: tuple[SheetPlan, ...] = ()  # sheets planned before, for kinds that tell of others
    concerned: tuple[ConcernedSheet, ...] | None = None  # None = no set was compared


@dataclass(frozen=True)
class SheetPlan:
    """One sheet to be: ``key`` names it for references ("elevation/A"), ``payload`` is its own."""

    key: str
    title: str  # "Elevation A: seen from inside"
    paper: Paper
    section: str  # bookmark group
    payload: Any = None
    readers: tuple[str, ...] | None = None  # who gets it; a kind may leave it to its READERS
    also: tuple[str, ...] = ()  # keys of other things that stand on this sheet, for references


@dataclass(frozen=True)
class Numbers:
    """Sheet numbers by plan key, and how many sheets there are."""

    by_key: Mapping[str, str]

    @property
    def total(self) -> int:
        """How many sheets the set has."""
        return len(set(self.by_key.values()))

    def of(self, key: str) -> str:
        """Return the number of a sheet, or "?" never: an unknown key is a KeyError."""
        return self.by_key[key]


@dataclass(frozen=True)
class Content:
    """What a sheet kind gives back: everything inside the frame but the title block."""

    items: tuple[Item, ...]
    scale: str = "Not to scale"  # "1:25 @ A3"
    notes: tuple[str, ...] = field(default=())
    is_framed: bool = True  # False: plain paper with one line at its foot, such as label stock
