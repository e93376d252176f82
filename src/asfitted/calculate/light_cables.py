"""Cables so lightly loaded that they do not count in the group of the others.

BS 7671 Appendix 4, note to Table 4C1 (memory): a cable that is expected to carry no more than 30 %
of its grouped rating may be left out when counting the group for the others. It still counts for
itself. The rule is applied once to the first choice of sizes; a cable that no longer carries so
little at the sizes that follow counts again.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from asfitted.calculate.containment.leg_groups import LegGroup
    from asfitted.calculate.results import CalculationResults
    from asfitted.resolve.installation import Installation

LIGHT_SHARE = 0.30
FIXED_USES = frozenset({"lighting", "heating", "motor"})


@dataclass(frozen=True)
class Sharing:
    """For each leg of each cable: others that count and their lay, and how many do not count."""

    counted: Mapping[str, Sequence[tuple[int, str]]]
    ignored: Mapping[str, Sequence[int]]


def sharing(groups: Mapping[str, Sequence[LegGroup]], light: frozenset[str]) -> Sharing:
    """Return the company of each leg, the cables of ``light`` not counted for the others."""
    return Sharing(
        {
            tag: tuple((len(group.company - light), group.arrangement) for group in legs)
            for tag, legs in groups.items()
        },
        {tag: tuple(len(group.company & light) for group in legs) for tag, legs in groups.items()},
    )


def lightly_loaded(
    installation: Installation,
    results: CalculationResults,
    groups: Mapping[str, Sequence[LegGroup]],
) -> frozenset[str]:
    """Return the cables with company that carry no more than 30 % of their grouped rating.

    Only fixed loads are known to stay so: a socket-outlet or a board may be loaded up to its
    device, whatever is meant for it today. One whose circuit has no known load is not among them.
    """
    found = set()
    for tag, legs in groups.items():
        cable = results.cables.get(tag)
        if cable is None or not any(group.company for group in legs):
            continue
        if installation.circuits[cable.circuit].use not in FIXED_USES:
            continue
        known = results.circuits[cable.circuit].design_current_a is not None
        capacity_a = cable.checked_capacity_a
        if capacity_a is None:
            continue
        if known and cable.design_current_a <= LIGHT_SHARE * capacity_a:
            found.add(tag)
    return frozenset(found)
