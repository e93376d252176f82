"""The protective conductor that a circuit hangs on: the one that conducts least along its way."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.results import LeastCpc

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.calculate.sized_cable import Sized

SAME = 1e-9  # shares by which resistances may differ and still be one


def least_cpc(sized: Sequence[Sized]) -> LeastCpc | None:
    """Return the least protective conductor of a circuit, tails and flexible cables counted.

    Least is the greatest resistance per metre at 20 °C, so that steel armour and copper compare;
    a cable without any counts as the least of all. None for a circuit without cables.
    """
    if not sized:
        return None
    ohm_m = [float("inf") if s.facts.cpc_cold is None else abs(s.facts.cpc_cold) for s in sized]
    worst = max(ohm_m)
    least = [one for one, ohm in zip(sized, ohm_m, strict=True) if ohm >= worst * (1 - SAME)]
    return LeastCpc(
        words=least[0].facts.cpc_words,
        cables=tuple(dict.fromkeys(one.stretch.cable.tag for one in least)),
        throughout=len(least) == len(sized),
    )
