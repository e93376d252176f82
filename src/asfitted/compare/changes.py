"""What changed from one issue of a job to the next: frozen facts and the words for them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Kind = Literal[
    "added",
    "removed",
    "moved",
    "lengthened",
    "shortened",
    "re-sized",  # another conductor, cable, tray or box
    "re-protected",  # another device, rating, RCD
    "re-fed",  # another way, phase or supply
    "re-routed",  # another containment, level or path, with the ends where they were
    "re-loaded",
    "measured",  # a length that was worked out has been measured, or measured anew
    "altered",  # anything else that the spec says of a thing
    "figures",  # nothing was written differently, but its figures follow from what was
]
Subject = Literal[
    "job", "supply", "building", "board", "circuit", "point", "cable", "run", "device", "cabinet"
]


@dataclass(frozen=True)
class Effect:
    """One figure that changed: what it is, of which thing, before and after, as printed."""

    what: str  # "length", "volt drop", "Zs", "fill", "maximum demand"
    tag: str
    old: str
    new: str

    @property
    def words(self) -> str:
        """The effect in words: "volt drop 2.10 % → 2.35 %"."""
        return f"{self.what} {self.old} → {self.new}"


@dataclass(frozen=True)
class Change:
    """One change of one thing.

    Attributes:
        kind: What happened to it.
        tag: Tag of the thing; that of the newer job where both have one.
        what: Kind of thing.
        old: What stood before, in words; empty when added.
        new: What stands now, in words; empty when removed.
        effects: Figures of this thing that changed with it.
        words: The whole in a sentence, without the effects.
        name: What the thing is called besides its tag.
    """

    kind: Kind
    tag: str
    what: Subject
    old: str
    new: str
    effects: tuple[Effect, ...]
    words: str
    name: str = ""


@dataclass(frozen=True)
class Issue:
    """One issue of a job, as its title block says."""

    number: str
    title: str
    revision: str
    status: str
    date: str


@dataclass(frozen=True)
class Changes:
    """Everything that changed from one issue to the next, in the order of the newer job."""

    old: Issue
    new: Issue
    changes: tuple[Change, ...] = ()

    def of(self, tag: str) -> tuple[Change, ...]:
        """Return the changes of one thing."""
        return tuple(change for change in self.changes if change.tag == tag)

    @property
    def tags(self) -> frozenset[str]:
        """Tags of all things that changed."""
        return frozenset(change.tag for change in self.changes)
