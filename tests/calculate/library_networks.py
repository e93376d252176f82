"""Radial networks made twice: for the sweep of this project and for a general analysis library.

The library is pandapower (load flow and IEC 60909 module). Its line with a zero-sequence impedance
of four times that of the line is a line with a return conductor of the same size: Z0 = Z1 + 3 Zn.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

import pandapower as pp
from hypothesis import strategies as st

from asfitted.calculate.cable_facts import CableFacts, cable_facts
from asfitted.calculate.unbalanced_flow import Branch, LineLoad

U0_V = 230.0
LINE_KV = U0_V * math.sqrt(3) / 1000
STIFF_MVA = 1e5
SIZES = (4.0, 6.0, 10.0, 16.0, 25.0, 35.0, 50.0, 70.0, 95.0)


@dataclass(frozen=True)
class Leg:
    """A cable from one node to a new one."""

    near: int
    facts: CableFacts
    length_m: float


@dataclass(frozen=True)
class Load:
    """Apparent power, VA, and power factor of a load; line None is a balanced load of all three."""

    node: int
    line: int | None
    power_va: float
    power_factor: float

    @property
    def watts(self) -> float:
        """Real power, W."""
        return self.power_va * self.power_factor

    @property
    def vars(self) -> float:
        """Reactive power, lagging, VA."""
        return self.power_va * math.sqrt(1 - self.power_factor**2)


@dataclass(frozen=True)
class Case:
    """A radial network: leg n goes to node n + 1; node 0 is the source."""

    legs: tuple[Leg, ...]
    loads: tuple[Load, ...]

    def branches(self) -> list[Branch]:
        """Return the legs with conductors at working temperature."""
        return [
            Branch(str(leg.near), str(n), ohm, ohm)
            for n, leg in enumerate(self.legs, 1)
            for ohm in [leg.facts.line_hot * leg.length_m]
        ]

    def line_loads(self, kind: Any) -> list[LineLoad]:
        """Return the loads line by line: constant power, or constant current at nominal voltage."""
        found = []
        for load in self.loads:
            share = 1 if load.line is not None else 3
            amount = complex(load.watts, load.vars) / share
            if kind == "current":
                amount = amount.conjugate() / U0_V
            lines = (0, 1, 2) if load.line is None else (load.line,)
            found += [LineLoad(str(load.node), line, amount, kind) for line in lines]
        return found


@st.composite
def cases(draw: st.DrawFn, *, balanced: bool) -> Case:
    """Draw a network of up to six cables and loads that a cable of its size would carry."""
    count = draw(st.integers(1, 6))
    legs = []
    for node in range(1, count + 1):
        near = draw(st.integers(0, node - 1))
        facts = cable_facts("swa", 4, draw(st.sampled_from(SIZES)), "armour", 3)
        legs.append(Leg(near, facts, draw(st.floats(2, 60))))
    loads = []
    for node in range(1, count + 1):
        power_va = draw(st.floats(200, 12000 / count))
        line = None if balanced else draw(st.sampled_from([0, 1, 2, None]))
        loads.append(Load(node, line, power_va, draw(st.floats(0.6, 1.0))))
    return Case(tuple(legs), tuple(loads))


def library_network(case: Case, *, hot: bool, source: complex | None = None) -> Any:
    """Return the case as a network of the library.

    Args:
        case: The network.
        hot: Conductors at working temperature; else at 20 C, with the end temperature given for
            the least fault current.
        source: Impedance of one phase at the source, ohm, with a neutral like the line; None for
            a source without impedance.
    """
    net = pp.create_empty_network()
    pp.create_buses(net, len(case.legs) + 1, LINE_KV)
    _add_source(net, source)
    z = [1000 * (leg.facts.line_hot if hot else leg.facts.line_cold) for leg in case.legs]
    pp.create_lines_from_parameters(
        net,
        [leg.near for leg in case.legs],
        [node for node, _ in enumerate(case.legs, 1)],
        [leg.length_m / 1000 for leg in case.legs],
        r_ohm_per_km=[each.real for each in z],
        x_ohm_per_km=[each.imag for each in z],
        c_nf_per_km=0,
        max_i_ka=1,
        r0_ohm_per_km=[4 * each.real for each in z],
        x0_ohm_per_km=[4 * each.imag for each in z],
        c0_nf_per_km=0,
        endtemp_degree=[leg.facts.hot_c for leg in case.legs],
    )
    return net


def _add_source(net: Any, source: complex | None) -> None:
    power_mva, r_over_x, x0_over_x = STIFF_MVA, 0.1, 1.0
    if source is not None:
        power_mva = 1.1 * LINE_KV**2 / abs(source)
        r_over_x, x0_over_x = source.real / source.imag, 4.0
    pp.create_ext_grid(
        net, 0, s_sc_max_mva=power_mva, rx_max=r_over_x, x0x_max=x0_over_x, r0x0_max=r_over_x,
        s_sc_min_mva=power_mva * 0.9 / 1.1, rx_min=r_over_x, x0x_min=x0_over_x,
        r0x0_min=r_over_x,
    )  # fmt: skip


def add_balanced_loads(net: Any, case: Case) -> None:
    """Add balanced loads of constant power."""
    nodes = [load.node for load in case.loads]
    watts = [load.watts / 1e6 for load in case.loads]
    pp.create_loads(net, nodes, watts, [load.vars / 1e6 for load in case.loads])


def make_loads_constant_current(net: Any) -> None:
    """Turn the loads into constant currents that have their power at nominal voltage."""
    net.load["const_i_p_percent"] = 100.0
    net.load["const_i_q_percent"] = 100.0


def add_line_loads(net: Any, case: Case) -> None:
    """Add star loads of constant power on single lines or all three."""
    for load in case.loads:
        of_line = [
            load.power_va / 3 if load.line is None else load.power_va * (load.line == line)
            for line in range(3)
        ]
        sine = math.sqrt(1 - load.power_factor**2)
        named = {}
        for name, va in zip("abc", of_line, strict=True):
            named[f"p_{name}_mw"] = va * load.power_factor / 1e6
            named[f"q_{name}_mvar"] = va * sine / 1e6
        pp.create_asymmetric_load(net, load.node, type="wye", **named)
