"""The way and the length of every cable of a job. No cable size is needed for it."""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType
from typing import TYPE_CHECKING

from asfitted.calculate.containment.run_sections import cut_runs
from asfitted.calculate.results import CableRoute, LengthPart
from asfitted.calculate.routes.cable_lengths import lengths_of, lengths_without_way
from asfitted.calculate.routes.cable_ways import Router
from asfitted.calculate.routes.direct_paths import fallback_mm
from asfitted.calculate.routes.route_graph import Span, build_graph
from asfitted.calculate.routes.route_legs import legs_of
from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from collections.abc import Mapping

    from asfitted.calculate.results import RouteLeg
    from asfitted.calculate.routes.cable_lengths import Lengths
    from asfitted.resolve.installation import Cable, Installation

MEASURED = "measured on site"
NOT_SURVEYED = f"{MEASURED}; existing route not surveyed"
NO_WAY = "no permitted way: straight along the walls, to be surveyed"


def find_paths(installation: Installation) -> Mapping[str, CableRoute]:
    """Return the way and the lengths of every cable, in the order of the spec.

    A cable that is taken away has no legs and no length. An existing cable with a measured length
    has no legs: its route was not seen; its ``cut_m`` is 0. A cable without a permitted way keeps
    ``broken`` filled, and its length is the measured one, or along the walls, so that a figure
    stands on paper. A measured length is from end to end with its tails, and wins over the path.

    Raises:
        KeyError: a cable ends at a tag that is not there.
        OutsideTableError: no tail or waste is tabulated for a cable.
    """
    router = Router(installation, build_graph(installation))
    runs = router.graph.runs
    ways = {
        tag: router.way(cable)
        for tag, cable in installation.cables.items()
        if not _is_not_drawn(cable)
    }
    spans = {
        tag: [p for p in way.parts if isinstance(p, Span) and p.run in runs]
        for tag, way in ways.items()
    }
    cut = cut_runs(runs, spans, installation.cables)
    routes = {}
    for tag, cable in installation.cables.items():
        if tag not in ways:
            routes[tag] = _route_not_drawn(cable)
        elif ways[tag].broken:
            routes[tag] = _broken_route(router, cable, ways[tag].broken)
        else:
            legs = legs_of(cable, ways[tag].parts, runs, cut, router.graph.passages)
            used = dict.fromkeys(span.run for span in spans[tag])
            forbidden = [run for run in used if cable.band not in runs[run].containment.bands]
            routes[tag] = replace(_route(installation, cable, legs), forbidden=tuple(forbidden))
    return MappingProxyType(routes)


def _is_not_drawn(cable: Cable) -> bool:
    if cable.state is State.REMOVED:
        return True
    return cable.state is State.EXISTING and cable.measured_length_m is not None


def _metres(*lengths_m: float) -> float:
    """Return a sum to the millimetre, so that it prints as it adds up."""
    return round(sum(lengths_m), 3)


def _route_not_drawn(cable: Cable) -> CableRoute:
    length = cable.measured_length_m or 0.0
    words = "existing, taken away" if cable.state is State.REMOVED else NOT_SURVEYED
    return CableRoute(
        cable=cable.tag,
        legs=(),
        path_m=length,
        tails_m=0.0,
        length_m=length,
        measured=cable.measured_length_m is not None,
        cut_m=0.0,
        parts=(LengthPart(words, length),),
    )


def _route(installation: Installation, cable: Cable, legs: tuple[RouteLeg, ...]) -> CableRoute:
    lengths = lengths_of(installation, cable, legs)
    if cable.measured_length_m is None:
        return _with_lengths(cable, legs, lengths)
    measured = lengths_without_way(installation, cable, cable.measured_length_m * 1000, MEASURED)
    return replace(_with_lengths(cable, legs, measured), path_m=lengths.path_m)


def _broken_route(router: Router, cable: Cable, broken: str) -> CableRoute:
    installation = router.installation
    if cable.measured_length_m is not None:
        straight, words = cable.measured_length_m * 1000, MEASURED
    else:
        first, last = router.end(cable.from_end), router.end(cable.to_end)
        straight, words = fallback_mm(installation, first, last), NO_WAY
    lengths = lengths_without_way(installation, cable, straight, words)
    return replace(_with_lengths(cable, (), lengths), broken=broken)


def _with_lengths(cable: Cable, legs: tuple[RouteLeg, ...], lengths: Lengths) -> CableRoute:
    measured = cable.measured_length_m
    return CableRoute(
        cable=cable.tag,
        passages=tuple(leg.passage for leg in legs if leg.passage),
        legs=legs,
        path_m=lengths.path_m,
        tails_m=lengths.tails_m,
        length_m=_metres(lengths.path_m, lengths.tails_m) if measured is None else measured,
        measured=measured is not None,
        cut_m=lengths.cut_m,
        parts=lengths.parts,
        way_surveyed=cable.way_surveyed,
    )
