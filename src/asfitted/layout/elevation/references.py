"""What one view says of another: the number of its sheet and the zone on it."""

from __future__ import annotations

from dataclasses import dataclass, field
from types import MappingProxyType
from typing import TYPE_CHECKING

from asfitted.layout.frame import zone_of

if TYPE_CHECKING:
    from collections.abc import Mapping

    from asfitted.layout.elevation.wall_view import WallView
    from asfitted.layout.sheet_layout import Paper
    from asfitted.layout.sheet_model import Numbers

STAND_IN_SHEET = "00"
STAND_IN_ZONE = "D8"  # as wide as any zone


@dataclass(frozen=True)
class ViewPlace:
    """Where a view stands: its sheet, the wall on that sheet, and what its idents begin with."""

    sheet_key: str
    paper: Paper
    view: WallView
    face: str
    prefix: str = ""


@dataclass(frozen=True)
class References:
    """Numbers of the sheets and places of the views on them.

    While the set is being planned neither is known: without ``places`` every reference reads as
    wide as a true one.
    """

    numbers: Numbers
    places: Mapping[str, ViewPlace] = field(default_factory=lambda: MappingProxyType({}))

    def sheet(self, key: str) -> str:
        """Return the number of the sheet that holds a view or has this key, "" for none."""
        if not self.places and key.startswith("elevation/"):
            return self.numbers.by_key.get(key, STAND_IN_SHEET)
        place = self.places.get(key)
        return self.numbers.by_key.get(place.sheet_key if place else key, "")

    def spot(self, key: str, along_mm: float, up_mm: float) -> str:
        """Return sheet and zone of a place in a view, "05/B3"; "" where it is not drawn."""
        if not self.places:
            return f"{self.sheet(key)}/{STAND_IN_ZONE}"
        place = self.places.get(key)
        sheet = self.sheet(key)
        if place is None or not sheet:
            return sheet
        return f"{sheet}/{zone_of(place.paper, place.view.at(along_mm, up_mm))}"

    def view_of(self, wall: str, along_mm: float) -> str:
        """Return the key of the view from inside that shows a place of a wall."""
        found = f"elevation/{wall}"
        for key, place in self.places.items():
            shown = place.view.shown
            if place.view.wall.name != wall or place.face != "inside" or shown.is_detail:
                continue
            if shown.from_mm <= along_mm <= shown.to_mm:
                found = key
                if along_mm < shown.to_mm:
                    break
        return found

    def link(self, key: str, ident: str) -> str:
        """Return a link to an item of a view, "05#flag:left:T1:2900"; "" where there is none."""
        sheet = self.sheet(key)
        place = self.places.get(key)
        return f"{sheet}#{place.prefix if place else ''}{ident}" if sheet else ""
