"""What the tool filled in and the job rests on: a default that nothing uses is not told."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.calculate.results import CalculationResults
    from asfitted.resolve.installation import Cable, Default, Installation

DROPS = ("drops", "drop")  # what a cable runs in beside its containment, of a circuit or a device
CLIPPED = "clipped"


def defaults_in_use(installation: Installation, results: CalculationResults) -> tuple[Default, ...]:
    """Return the facts that were filled in, in order.

    How a drop runs is left out where no cable of its circuit or device has such a drop: its way
    is containment from end to end, or is given as clipped.
    """
    return tuple(
        default
        for default in installation.defaults
        if default.what not in DROPS
        or any(_has_drop(c, results) for c in _cables_of(default.subject, installation))
    )


def _cables_of(subject: str, installation: Installation) -> Iterator[Cable]:
    for cable in installation.cables.values():
        if subject in (cable.circuit, cable.to_end):
            yield cable


def _has_drop(cable: Cable, results: CalculationResults) -> bool:
    """Tell whether the drawn way of a cable has a clipped piece that the spec does not give."""
    route = results.routes.get(cable.tag)
    if route is None or route.broken:
        return True
    if cable.clipped_up_mm is not None:
        return False
    return any(leg.enclosure == CLIPPED for leg in route.legs)
