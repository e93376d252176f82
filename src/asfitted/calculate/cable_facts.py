"""What the tables say of one cable, per metre: resistances cold and hot, drop, k, sizes made.

The tables are read once for each kind of cable; everything here is cached.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING, Literal

from asfitted.calculate.earth_fault_loop import (
    ARMOUR_MAGNETIC_FACTOR,
    armour_impedance_ohm,
    conductor_resistance_ohm,
)
from asfitted.errors import OutsideTableError
from asfitted.reference import cables, conductors

if TYPE_CHECKING:
    from asfitted.reference.figure import VoltDropRow

CpcKind = Literal["core", "armour", "none", "separate"]
LEAST_POWER_MM2 = 1.5  # BS 7671 Table 52.3, power circuits; lighting is kept to the same
REACTANCE_ABOVE_MM2 = 16.0  # up to this size x is neglected beside r, as the tables do
ARMOUR_HOT_C = {60: 60.0, 70: 60.0, 90: 80.0}  # BS 7671 Table 54.4, initial temperatures


@dataclass(frozen=True)
class CableFacts:
    """One cable for one number of loaded conductors. Impedances are ohm per metre.

    ``cpc_mm2`` is the size of the protective conductor in its own material; None when the cable
    has none.
    """

    family: str
    cores: int
    csa_mm2: float
    loaded: Literal[2, 3]
    line_cold: complex
    line_hot: complex
    hot_c: float
    cpc_kind: CpcKind
    cpc_mm2: float | None
    cpc_cold: complex | None
    cpc_hot: complex | None
    k_line: float
    k_cpc: float | None
    drop: VoltDropRow
    resistance_words: str
    resistance_source: str

    @property
    def cpc_words(self) -> str:
        """Name the protective conductor as printed."""
        if self.cpc_mm2 is None:
            return "none"
        if self.cpc_kind == "armour":
            return f"steel armour {self.cpc_mm2:g} mm²"
        place = "separate conductor" if self.cpc_kind == "separate" else "core"
        return f"{self.cpc_mm2:g} mm² {place}"

    @property
    def loop_hot(self) -> complex | None:
        """Line and protective conductor together at working temperature, ohm per metre."""
        return None if self.cpc_hot is None else self.line_hot + self.cpc_hot

    @property
    def loop_cold(self) -> complex | None:
        """Line and protective conductor together at 20 C, ohm per metre."""
        return None if self.cpc_cold is None else self.line_cold + self.cpc_cold


@dataclass(frozen=True)
class _Protective:
    kind: CpcKind
    mm2: float | None = None
    cold: complex | None = None
    hot: complex | None = None
    k: float | None = None
    words: str = ""
    source: str = ""


@cache
def sizes_made(family: str, cores: int) -> tuple[float, ...]:
    """Return the sizes to choose from, mm2, least first: those with every table filled."""
    found = cables.standard_sizes(family, cores)
    return tuple(size for size in found if size >= LEAST_POWER_MM2)


@cache
def cable_facts(
    family: str, cores: int, csa_mm2: float, cpc: CpcKind, loaded: Literal[2, 3]
) -> CableFacts:
    """Return the facts of one cable.

    Raises:
        OutsideTableError: a table does not hold the cable.
    """
    one = cables.family(family)
    hot_c = float(one.insulation_c)
    r20 = conductors.resistance_20c(csa_mm2, one.material, one.conductor_class)
    line_cold, line_hot, rise = _conductor(csa_mm2, r20.value, hot_c, one.construction)
    cpc_part = _protective(family, cores, csa_mm2, cpc)
    return CableFacts(
        family=one.id,
        cores=cores,
        csa_mm2=csa_mm2,
        loaded=loaded,
        line_cold=line_cold,
        line_hot=line_hot,
        hot_c=hot_c,
        cpc_kind=cpc_part.kind,
        cpc_mm2=cpc_part.mm2,
        cpc_cold=cpc_part.cold,
        cpc_hot=cpc_part.hot,
        k_line=conductors.k_line(one.id).value,
        k_cpc=cpc_part.k,
        drop=cables.voltage_drop_r_x_z(one.id, csa_mm2, loaded, "C"),
        resistance_words=f"{r20.value:g} × {rise:.2f}" + cpc_part.words,
        resistance_source="; ".join(
            p for p in (f"{r20.source} ({r20.provenance})", cpc_part.source) if p
        ),
    )


def _conductor(
    csa_mm2: float, r20: float, hot_c: float, construction: str
) -> tuple[complex, complex, float]:
    """Return one conductor cold and hot, ohm per metre, and the factor between them."""
    x = 0.0
    if csa_mm2 > REACTANCE_ABOVE_MM2:
        kind = "enclosed singles" if construction == "single" else "multicore"
        x = conductors.reactance(kind).value / 1000
    rise = conductors.temperature_factor(hot_c).value
    cold = conductor_resistance_ohm(r20, length_m=1)
    hot = conductor_resistance_ohm(r20, length_m=1, temperature_factor=rise)
    return complex(cold, x), complex(hot, x), rise


def _protective(family: str, cores: int, csa_mm2: float, cpc: CpcKind) -> _Protective:
    if cpc == "none":
        return _Protective("none")
    if cpc == "armour":
        return _armour(family, cores, csa_mm2)
    one = cables.family(family)
    size = csa_mm2
    if cpc == "separate":
        size = conductors.minimum_cpc_by_table(csa_mm2).value
    elif one.construction == "flat":
        size = cables.cpc_csa_mm2(family, cores, csa_mm2).value
    r20 = conductors.resistance_20c(size, one.material, one.conductor_class)
    cold, hot, rise = _conductor(size, r20.value, float(one.insulation_c), one.construction)
    return _Protective(
        cpc, size, cold, hot, conductors.k_cpc(family, cpc).value, f" + {r20.value:g} × {rise:.2f}"
    )


def _armour(family: str, cores: int, csa_mm2: float) -> _Protective:
    row = cables.armour(family, cores, csa_mm2)
    hot_c = ARMOUR_HOT_C[cables.family(family).insulation_c]
    rise = conductors.temperature_factor(hot_c, material="steel").value

    def per_metre(factor: float) -> complex:
        z = armour_impedance_ohm(row.r20_mohm_m, length_m=1, temperature_factor=factor)
        return z if csa_mm2 > REACTANCE_ABOVE_MM2 else complex(z.real, 0)

    return _Protective(
        "armour",
        row.area_mm2,
        per_metre(1.0),
        per_metre(rise),
        conductors.k_cpc(family, "armour").value,
        f" + {row.r20_mohm_m:g} × {rise:.2f} × {ARMOUR_MAGNETIC_FACTOR:g}",
        f"armour {row.source} ({row.provenance}), {hot_c:g} °C, a.c. allowance "
        f"{ARMOUR_MAGNETIC_FACTOR:g} (memory)",
    )


def try_cable_facts(
    family: str, cores: int, csa_mm2: float, cpc: CpcKind, loaded: Literal[2, 3]
) -> CableFacts | str:
    """Return the facts of one cable, or in words why the tables do not give them."""
    try:
        return cable_facts(family, cores, csa_mm2, cpc, loaded)
    except OutsideTableError as outside:
        return str(outside)
