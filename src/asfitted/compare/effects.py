"""The figures of each thing as printed, so that two issues can be laid side by side."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.cable_rating import capacity_words
from asfitted.compare.changes import Effect
from asfitted.compare.figure_words import figure

if TYPE_CHECKING:
    from collections.abc import Mapping

    from asfitted.calculate.results import CalculationResults

Figures = dict[str, str]


def cable_figures(tag: str, results: CalculationResults) -> Figures:
    """Return length, size and figures of one cable."""
    found: Figures = {}
    route = results.routes.get(tag)
    if route is not None:
        measured = " measured" if route.measured else ""
        found["length"] = figure(route.length_m, 1, "m") + measured
    cable = results.cables.get(tag)
    if cable is not None:
        found["capacity"] = capacity_words(
            cable.capacity_a, cable.capacity_doubt, digits=0, unit="A"
        )
        found["volt drop to its end"] = figure(cable.drop_to_end_pct, 2, "%")
        found["Zs at its end"] = figure(cable.zs_end_ohm, 2, "Ω")
    return found


def circuit_figures(tag: str, results: CalculationResults) -> Figures:
    """Return design current, volt drop and loop impedance of one circuit."""
    one = results.circuits.get(tag)
    if one is None:
        return {}
    return {
        "design current": figure(one.design_current_a, 1, "A"),
        "volt drop": figure(one.drop_pct, 2, "%"),
        "Zs": figure(one.zs_ohm, 2, "Ω"),
        "greatest Zs permitted": figure(one.zs_limit_ohm, 2, "Ω"),
    }


def board_figures(tag: str, results: CalculationResults) -> Figures:
    """Return demand, fault level and loop impedance at one board."""
    one = results.boards.get(tag)
    if one is None:
        return {}
    fault = one.fault_max_3ph_ka if one.fault_max_3ph_ka is not None else one.fault_max_1ph_ka
    return {
        "demand": figure(max(one.demand_a), 0, "A"),
        "fault current": figure(fault, 1, "kA"),
        "Zs": figure(one.zs_ohm, 2, "Ω"),
        "ways used": f"{one.ways_used} of {one.ways_total}",
    }


def run_figures(tag: str, results: CalculationResults) -> Figures:
    """Return length and fill of one run of containment."""
    one = results.containment.get(tag)
    if one is None:
        return {}
    return {"length": figure(one.length_m, 1, "m"), "fill": figure(one.fill_pct, 0, "%")}


def device_figures(tag: str, results: CalculationResults) -> Figures:
    """Return cable length, volts and picture detail of one data device; totals of equipment."""
    found: Figures = {}
    for total in results.equipment:
        if total.tag == tag:
            found[f"{total.what} used"] = figure(total.used, 1, total.unit).strip()
    one = results.data.get(tag)
    if one is not None:
        found["length of its cable"] = figure(one.length_m, 1, "m")
        if one.at_device_v is not None:
            found["voltage at it"] = figure(one.at_device_v, 1, "V")
        if one.density_px_m is not None:
            found["picture detail"] = figure(one.density_px_m, 0, "px/m")
    return found


def supply_figures(results: CalculationResults) -> Figures:
    """Return the demand at the origin."""
    return {"maximum demand": figure(results.max_demand_a, 0, "A")}


def effects(tag: str, old: Mapping[str, str], new: Mapping[str, str]) -> tuple[Effect, ...]:
    """Return the figures that read differently; one that only one side has is told as "none"."""
    names = [*new, *(name for name in old if name not in new)]
    return tuple(
        Effect(name, tag, old.get(name, "none"), new.get(name, "none"))
        for name in names
        if old.get(name, "none") != new.get(name, "none")
    )
