"""The firm, the issues of a job and what was found on site: facts that sheets print as given."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from asfitted.errors import Place
    from asfitted.spec.logo import Logo


@dataclass(frozen=True)
class Firm:
    """Who does the work. Empty facts are the words "not recorded"; no address is an empty tuple."""

    name: str
    address: tuple[str, ...] = ()
    phone: str = "not recorded"
    email: str = "not recorded"
    registration: str = "not recorded"
    logo: Logo | None = None


@dataclass(frozen=True)
class Revision:
    """One issue of the drawings, as the job file records it."""

    revision: str
    date: str  # ISO
    what: str
    by: str
    checked: str


@dataclass(frozen=True)
class SiteMark:
    """One mark-up from site: what was found of a thing, by whom and when.

    ``tag`` is the tag of the thing as drawn, ``words`` what was found, in a sentence; ``drawn``
    tells whether the drawings show it, as against a note that only words hold. ``note`` is what was
    noted besides, and ``is_in_place`` tells that the thing was found fitted ("as found").
    """

    tag: str
    words: str
    by: str
    date: str  # ISO
    photo: str = ""
    place: Place | None = None
    drawn: bool = False
    way_given: bool = True  # False: the length of a cable was found and not its way
    note: str = ""
    is_in_place: bool = False
