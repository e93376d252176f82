"""Fault currents of a radial network against IEC 60909 figures of a general analysis library."""

from __future__ import annotations

import math
from typing import Any

import pytest
from published import NETWORKS

from asfitted.calculate.fault_current import (
    cable_impedance_ohm,
    loop_fault_a,
    source_impedance_from_current_ohm,
    three_phase_fault_a,
)

# 0.5 % is the published tolerance; the source of the figures says 0.1 % with equal impedances
TOLERANCE = 0.001
CASES = [("max", 1.05), ("max", 1.10), ("min", 0.90), ("min", 0.95)]


def _line_impedances(network: dict[str, Any], which: str) -> dict[str, complex]:
    """Return the impedance of one line conductor from the intake to each bus, ohm."""
    to_bus: dict[str, complex] = {"INTAKE": 0j}
    for line in network["inputs"]["lines"]:
        # 1 + 0.004 (t - 20): IEC 60909-0, conductor temperature at the end of the fault
        hot = 1 + 0.004 * (line["endtemp_degC"] - 20) if which == "min" else 1.0
        to_bus[line["to"]] = to_bus[line["from"]] + cable_impedance_ohm(
            line["r_ohm_per_km_20C"],
            length_m=line["length_m"],
            x_mohm_m=line["x_ohm_per_km"],
            temperature_factor=hot,
        )
    return to_bus


@pytest.mark.parametrize(("which", "c"), CASES)
def test_fault_currents_of_the_radial_network(which: str, c: float) -> None:
    # Source: own network; expected figures from pandapower 3.5.6, repeated by hand summation
    network = NETWORKS[0]
    given, expected = network["inputs"], network["expected"]
    power_mva = given["source"][f"s_sc_{which}_mva"]
    at_source_a = power_mva * 1e6 / (math.sqrt(3) * 400)
    x_over_r = 1 / given["source"][f"rx_{which}"]
    phase_v = 400 / math.sqrt(3)
    source = source_impedance_from_current_ohm(
        at_source_a, voltage_v=phase_v, x_over_r=x_over_r, c=c
    )
    # r0 = 0.5 x1 and x0 = x1 of the source: earth return = (Z0 - Z1) / 3
    zero = complex(given["source"]["r0x0_max"] * source.imag, source.imag)
    source_return = (zero - source) / 3
    for bus, line in _line_impedances(network, which).items():
        three = three_phase_fault_a(source + line, c=c)
        wanted = 1000 * expected[f"Ik_three_phase_{which}_c{c:.2f}_kA"][bus]
        assert three == pytest.approx(wanted, rel=TOLERANCE), bus
        # r0 = 4 r1 of each line: the return conductor equals the line conductor
        one = loop_fault_a(source + line, return_ohm=source_return + line, u0_v=phase_v, c=c)
        wanted = 1000 * expected[f"Ik_single_phase_{which}_c{c:.2f}_kA"][bus]
        assert one == pytest.approx(wanted, rel=TOLERANCE), bus
