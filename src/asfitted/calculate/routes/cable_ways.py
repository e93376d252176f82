"""The way of each cable: by containment, straight along a wall, or clipped at a height."""

from __future__ import annotations

import itertools
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from asfitted.calculate.routes.board_outlines import Outline, outlines_on_walls
from asfitted.calculate.routes.cable_ends import CableEnd, Stretch, cable_end, total_mm
from asfitted.calculate.routes.clipped_rooms import clipped_through
from asfitted.calculate.routes.direct_paths import (
    DIRECT_LIMIT_MM,
    direct_path,
    is_on_one_soffit,
)
from asfitted.calculate.routes.route_graph import OFF_CONTAINMENT_WEIGHT, Span, build_graph
from asfitted.calculate.routes.route_search import Spread, Way, best_way, permitted_runs
from asfitted.calculate.routes.run_gaps import (
    Gap,
    gap_between,
    joints_over_gaps,
    may_be_clipped,
    nearest_gap,
    parts_joined,
)
from asfitted.calculate.routes.take_offs import (
    REACH_MM,
    TakeOff,
    take_offs,
    take_offs_round_corners,
)

if TYPE_CHECKING:
    from asfitted.calculate.routes.route_graph import RouteGraph
    from asfitted.resolve.installation import Cable, Installation


@dataclass(frozen=True)
class Found:
    """A way, or why there is none."""

    parts: tuple[Stretch | Span, ...] = ()
    broken: str = ""


@dataclass
class Router:
    """Keeps what is the same for many cables: take-offs of an end, the spread from an end."""

    installation: Installation
    graph: RouteGraph
    _ends: dict[str, CableEnd] = field(default_factory=dict)
    _take_offs: dict[str, tuple[TakeOff, ...]] = field(default_factory=dict)
    _spreads: dict[tuple[str, str], Spread] = field(default_factory=dict)
    _permitted: dict[str, frozenset[str]] = field(default_factory=dict)
    _told: dict[tuple[str, ...], Router] = field(default_factory=dict)
    _outlines: dict[str, tuple[Outline, ...]] = field(default_factory=dict)

    def end(self, tag: str) -> CableEnd:
        """Return where cables of a board, point or device end."""
        if tag not in self._ends:
            self._ends[tag] = cable_end(self.installation, tag)
        return self._ends[tag]

    def permitted(self, cable: Cable) -> frozenset[str]:
        """Return the runs that a cable may use."""
        if cable.via:
            return permitted_runs(self.graph, cable.band, cable.via)
        if cable.band not in self._permitted:
            self._permitted[cable.band] = permitted_runs(self.graph, cable.band, ())
        return self._permitted[cable.band]

    def own_take_offs(self, tag: str, permitted: frozenset[str]) -> list[TakeOff]:
        """Return where cables of an end can leave the permitted runs at its own wall.

        Without those whose level leg would lie over a board, unless there are no others.
        """
        if tag not in self._take_offs:
            end = self.end(tag)
            on_its_wall = self.outlines().get(end.wall.name, ()) if end.wall else ()
            every = take_offs(end, self.graph.places, on_its_wall)
            clear = tuple(t for t in every if not self._lies_over_a_board(tag, t))
            self._take_offs[tag] = clear or every
        return [take_off for take_off in self._take_offs[tag] if take_off.run in permitted]

    def outlines(self) -> dict[str, tuple[Outline, ...]]:
        """Return the outlines of boards and the cabinet by wall, found once."""
        if not self._outlines:
            self._outlines = outlines_on_walls(self.installation)
        return self._outlines

    def _lies_over_a_board(self, tag: str, take_off: TakeOff) -> bool:
        """Tell whether a level leg lies over the front or along the edge of another board."""
        level = [s for s in take_off.stretches if s.kind == "clipped"]
        return any(
            outline.tag != tag and outline.is_met_by(stretch)
            for stretch in level
            for outline in self.outlines().get(stretch.wall, ())
        )

    def take_offs(
        self, tag: str, permitted: frozenset[str], told: tuple[str, ...] = ()
    ) -> list[TakeOff]:
        """Return where cables of an end can leave the permitted runs.

        At its own wall; else round the corner within reach; runs it is ``told`` to use from
        anywhere in the room.
        """
        own = self.own_take_offs(tag, permitted)
        runs = set(told) - {take_off.run for take_off in own} if told else permitted
        if not told and any(take_off.run not in self.graph.passages for take_off in own):
            return own
        within_mm = float("inf") if told else REACH_MM
        round_corners = take_offs_round_corners(
            self.end(tag), self.graph.places, self.installation, runs, within_mm
        )
        return [*own, *round_corners]

    def far_node(self, tag: str, permitted: frozenset[str]) -> int | None:
        """Return the node of a thing at the far end of a permitted declared run."""
        run = self.end(tag).end_of
        return self.graph.far_end(run) if run in permitted else None

    def spread(self, cable: Cable, told: tuple[str, ...] = ()) -> Spread:
        """Return the distances from the first end of a cable, shared by cables of one band."""
        tag, permitted = cable.from_end, self.permitted(cable)
        key = (tag, cable.band)
        if not cable.via and key in self._spreads:
            return self._spreads[key]
        starts, node = self.take_offs(tag, permitted, told), self.far_node(tag, permitted)
        found = Spread(self.graph, starts, permitted, cable.via, node)
        if not cable.via:
            self._spreads[key] = found
        return found

    def by_containment(self, cable: Cable, told: tuple[str, ...] = ()) -> Way | None:
        """Return the cheapest permitted way through the containment.

        Runs it is ``told`` to use are reached along the walls from anywhere in the room.
        """
        permitted = self.permitted(cable)
        ends = self.take_offs(cable.to_end, permitted, told)
        return best_way(self.spread(cable, told), ends, self.far_node(cable.to_end, permitted))

    def way(self, cable: Cable) -> Found:
        """Return the way of a cable: clipped, by the runs it is told to use, or the cheaper."""
        first, last = self.end(cable.from_end), self.end(cable.to_end)
        if cable.clipped_up_mm is not None:
            passages = {
                tag: line
                for tag, line in self.graph.passages.items()
                if cable.band in line.passage.bands
            }
            up_mm = cable.clipped_up_mm
            return Found(*clipped_through(self.installation, passages, first, last, up_mm))
        known = {*self.graph.runs, *self.graph.passages}
        missing = [tag for tag in cable.via if tag not in known]
        if missing:
            return Found(broken=f"it is to go via {', '.join(missing)}, which is not there")
        straight = None if cable.via else direct_path(first, last)
        if straight is not None and (
            (first.outside and last.outside) or is_on_one_soffit(first, last)
        ):
            return Found(straight)
        way = self.by_containment(cable)
        if way is None and cable.via:
            way = self.by_containment(cable, cable.via) or self._over_gaps(cable)
        if way is None:
            return Found(straight) if straight else Found(broken=self._why_not(cable))
        if straight is not None and (
            _is_near(first, last, straight) or self._goes_round_a_corner(cable)
        ):
            cost = OFF_CONTAINMENT_WEIGHT * total_mm(straight)
            if round(cost, 6) < round(way.cost_mm, 6):
                return Found(straight)
        return Found(way.parts)

    def _over_gaps(self, cable: Cable) -> Way | None:
        """Return the way by runs that do not meet, clipped along the walls between them."""
        if len(cable.via) < 2 or not may_be_clipped(cable):
            return None
        if cable.via not in self._told:
            extra = joints_over_gaps(self.installation, self.graph, cable.via)
            graph = build_graph(self.installation, extra)
            self._told[cable.via] = Router(self.installation, graph)
        return self._told[cable.via].by_containment(cable, cable.via)

    def _goes_round_a_corner(self, cable: Cable) -> bool:
        """Tell whether no permitted run serves the own wall of an end."""
        permitted = self.permitted(cable) - self.graph.passages.keys()
        return not all(
            self.own_take_offs(tag, permitted) or self.end(tag).end_of for tag in _ends(cable)
        )

    def _why_not(self, cable: Cable) -> str:
        """Say in words why no permitted way leads from one end to the other, and what to add."""
        cure = "add a run or say `route: clipped direct, 2.4 m up`"
        rooms = {end.wall.room for end in map(self.end, _ends(cable)) if end.wall}
        if len(rooms) > 1:
            cure = "add a run, or a passage between the rooms, " + cure.removeprefix("add a run ")
        permitted = self.permitted(cable)
        for tag in _ends(cable):
            end = self.end(tag)
            if self.take_offs(tag, permitted) or self.far_node(tag, permitted) is not None:
                continue
            if end.end_of:
                return f"run {end.end_of} to {tag} is not for {cable.band}; add a run that is"
            if end.wall is None:
                return f"{tag} is on no wall and at the end of no run; say where it is"
            return f"no run for {cable.band} passes wall {end.wall.name}, where {tag} is; {cure}"
        told = f" by {', '.join(cable.via)}" if cable.via else ""
        places = " and ".join(self._where(tag) for tag in _ends(cable))
        gap = self._gap(cable, permitted)
        apart = f" ({gap.words}{self._why_not_clipped(cable, gap)})" if gap else ""
        return f"no run for {cable.band} joins {places}{told}{apart}; {cure}"

    def _gap(self, cable: Cable, permitted: frozenset[str]) -> Gap | None:
        """Return which two runs do not meet: of those told, else on the way from end to end."""
        whole = parts_joined(self.graph, permitted)
        told = [tag for tag in cable.via if tag in self.graph.runs]
        for one, other in itertools.pairwise(told):
            if whole[one] != whole[other]:
                return gap_between(self.installation, self.graph, one, other)
        sides = []
        for tag in _ends(cable):
            numbers = {whole[take_off.run] for take_off in self.take_offs(tag, permitted)}
            sides.append([run for run, number in whole.items() if number in numbers])
        if set(sides[0]) & set(sides[1]):
            return None
        return nearest_gap(self.installation, self.graph, sorted(sides[0]), sorted(sides[1]))

    def _why_not_clipped(self, cable: Cable, gap: Gap) -> str:
        """Say why a cable that is told to use both runs is not clipped from one to the other."""
        if len(cable.via) < 2:
            return ""
        if not may_be_clipped(cable):
            return ", and single cores are not clipped"
        return "" if gap.joint else ", and no way along the walls joins them"

    def _where(self, tag: str) -> str:
        end = self.end(tag)
        return f"{tag} (wall {end.wall.name})" if end.wall else f"{tag} (end of {end.end_of})"


def _ends(cable: Cable) -> tuple[str, str]:
    return cable.from_end, cable.to_end


def _is_near(first: CableEnd, last: CableEnd, straight: tuple[Stretch, ...]) -> bool:
    """Tell whether two things may be joined directly although containment serves both.

    Never a board or a cabinet: their cables go up to the containment.
    """
    if first.half_height_mm > 0 or last.half_height_mm > 0:
        return False
    return total_mm(straight) <= DIRECT_LIMIT_MM
