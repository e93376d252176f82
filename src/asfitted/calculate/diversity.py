"""Maximum demand from connected load."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.ranges import require_above_zero, require_fraction, require_not_negative
from asfitted.errors import InputOutOfRangeError
from asfitted.reference.diversity import allowance

if TYPE_CHECKING:
    from collections.abc import Sequence


def diversified_current_a(
    load: str, *, premises: str, currents_a: Sequence[float], sockets: int = 0
) -> float:
    """Return the demand of all circuits of one kind, A.

    Shares of the largest, the second and the rest; or the first 10 A (all circuits together) and
    a share of what is above, with 5 A for each socket in a cooker unit.

    Args:
        load: Kind of load, such as "lighting" or "cooking".
        premises: "dwelling", "small_business" or "hotel".
        currents_a: Connected current of each circuit, A, 0 or more; for standard socket circuits
            the rated current of the device.
        sockets: Sockets in cooker units, 0 or more.

    Returns:
        Current, A.

    Raises:
        InputOutOfRangeError: a current is below 0 A.
        OutsideTableError: the guide gives no allowance for that load there.

    Source:
        On-Site Guide Appendix A, Table A2.

    Example:
        >>> round(diversified_current_a("cooking", premises="dwelling", currents_a=[16000 / 240]))
        27
    """
    require_not_negative(sockets=sockets)
    for current_a in currents_a:
        require_not_negative(current_a=current_a)
    rule = allowance(load, premises)
    extra_a = rule.socket_a * sockets
    if rule.full_to_a > 0:
        total_a = sum(currents_a)
        whole_a = min(total_a, rule.full_to_a)
        return whole_a + rule.rest_percent / 100.0 * (total_a - whole_a) + extra_a
    shares = [rule.first_percent, rule.second_percent]
    ranked = sorted(currents_a, reverse=True)
    shares += [rule.others_percent] * max(0, len(ranked) - 2)
    return sum(a * share / 100.0 for a, share in zip(ranked, shares, strict=False)) + extra_a


def simultaneous_demand(loads: Sequence[float], *, factor: float) -> float:
    """Return the demand of like consumers, in the unit of the loads (kVA, kW or A).

    S = ks x sum of the loads

    Args:
        loads: Load of each consumer, kVA, kW or A, 0 or more.
        factor: Factor of simultaneity for so many consumers, ratio, above 0 to 1.

    Returns:
        Demand, in the unit of the loads.

    Raises:
        InputOutOfRangeError: an input lies outside its range.

    Source:
        Electrical Installation Guide, chapter A.

    Example:
        >>> simultaneous_demand([36, 24, 30, 36, 24], factor=0.46)
        69.0
    """
    require_fraction(factor=factor)
    for load in loads:
        require_not_negative(load=load)
    return factor * sum(loads)


def main_demand(
    loads: Sequence[float], *, demand_factors: Sequence[float], diversity: float = 1.0
) -> float:
    """Return the demand of feeders with their own demand factors, in the unit of the loads.

    D = sum(load x demand factor) / diversity

    Args:
        loads: Connected load of each feeder, kVA, kW or A, 0 or more.
        demand_factors: Demand factor of each, ratio, above 0 to 1, in the same order.
        diversity: Diversity factor between feeders, ratio, 1 or more.

    Returns:
        Demand, in the unit of the loads.

    Raises:
        InputOutOfRangeError: an input lies outside its range, or the two lists differ in length.

    Source:
        Definition of demand and diversity factor.

    Example:
        >>> main_demand([250, 200], demand_factors=[0.9, 0.8])
        385.0
    """
    require_above_zero(above_one_or_one=diversity - 1.0 + 1e-12)
    if len(loads) != len(demand_factors):
        raise InputOutOfRangeError(f"{len(loads)} loads but {len(demand_factors)} demand factors")
    total = 0.0
    for load, factor in zip(loads, demand_factors, strict=True):
        require_not_negative(load=load)
        require_fraction(demand_factor=factor)
        total += load * factor
    return total / diversity
