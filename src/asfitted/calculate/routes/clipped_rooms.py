"""Ways clipped at one height through several rooms, by the passages between them."""

from __future__ import annotations

import heapq
import itertools
from typing import TYPE_CHECKING

from asfitted.calculate.routes.cable_ends import Stretch, total_mm
from asfitted.calculate.routes.direct_paths import clipped_path
from asfitted.calculate.routes.route_graph import Span

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from asfitted.calculate.routes.cable_ends import CableEnd
    from asfitted.calculate.routes.passage_lines import PassageLine
    from asfitted.resolve.installation import Installation

_Mouth = tuple[str, float]  # tag of a passage and distance along it; ("", 0.0) is the first end
_START: _Mouth = ("", 0.0)
_END: _Mouth = ("", 1.0)
_Parts = tuple[Stretch | Span, ...]


def clipped_through(
    installation: Installation,
    passages: Mapping[str, PassageLine],
    first: CableEnd,
    last: CableEnd,
    up_mm: float,
) -> tuple[_Parts, str]:
    """Return the shortest way clipped at a height above the floor of each room, and "".

    In each room the cable goes up or down to the height, along the walls and to the passage. With
    both ends in one room it stays there.

    Returns:
        The pieces and "", or no pieces and why there is no such way.
    """
    if first.wall is None or last.wall is None or first.wall.room == last.wall.room:
        return clipped_path(installation, first, last, up_mm)
    search = _Search(installation, passages, last, up_mm)
    found = search.shortest(first)
    if found is not None:
        return found, ""
    rooms = f"{first.wall.room} and {last.wall.room}"
    why = search.blocked or "no passage leads from the one to the other"
    return (), f"its ends are in two rooms ({rooms}) and {why}"


class _Search:
    """Dijkstra's method over the mouths of passages, clipped ways in the rooms between them."""

    def __init__(
        self,
        installation: Installation,
        passages: Mapping[str, PassageLine],
        last: CableEnd,
        up_mm: float,
    ) -> None:
        self.installation = installation
        self.passages = passages
        self.last = last
        self.up_mm = up_mm
        self.blocked = ""

    def shortest(self, first: CableEnd) -> _Parts | None:
        heap: list[tuple[float, _Mouth, int, _Parts]] = [(0.0, _START, 0, ())]
        settled: set[_Mouth] = set()
        number = itertools.count(1)  # of two ways as long to one mouth the first found
        while heap:
            cost, mouth, _, parts = heapq.heappop(heap)
            if mouth == _END:
                return parts
            if mouth in settled:
                continue
            settled.add(mouth)
            here = first if mouth == _START else self.passages[mouth[0]].mouth(mouth[1])
            for length, there, more in self._onwards(here, mouth):
                if there not in settled:
                    length_mm = round(cost + length, 6)
                    heapq.heappush(heap, (length_mm, there, next(number), (*parts, *more)))
        return None

    def _onwards(self, here: CableEnd, mouth: _Mouth) -> Iterator[tuple[float, _Mouth, _Parts]]:
        room = here.wall.room if here.wall else ""
        if self.last.wall is not None and self.last.wall.room == room:
            for length, way in self._clipped(here, self.last):
                yield length, _END, way
        for tag, line in self.passages.items():
            for at_mm, near in line.mouths:
                if tag == mouth[0] or near.wall is None or near.wall.room != room:
                    continue
                far_mm = line.length_mm if at_mm == 0 else 0.0
                span = Span(tag, at_mm, far_mm)
                for length, way in self._clipped(here, near):
                    yield length + span.length_mm, (tag, far_mm), (*way, span)

    def _clipped(self, here: CableEnd, there: CableEnd) -> Iterator[tuple[float, _Parts]]:
        way, why = clipped_path(self.installation, here, there, self.up_mm)
        if why:
            self.blocked = self.blocked or why
        else:
            yield total_mm(way), way
