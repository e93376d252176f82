"""Resistance of conductors, its rise with temperature, and k of the adiabatic equation."""

from __future__ import annotations

from typing import Literal

from asfitted.errors import InputOutOfRangeError, OutsideTableError
from asfitted.reference.cable_family import family, k_values
from asfitted.reference.figure import Figure
from asfitted.reference.loader import table

_FILE = "conductors"
COLDEST_C, HOTTEST_C = -20.0, 400.0


def resistance_20c(csa_mm2: float, material: str = "copper", klass: int = 2) -> Figure:
    """Return the greatest d.c. resistance at 20 C, mohm/m.

    Args:
        csa_mm2: Size, mm2, exactly as tabulated.
        material: "copper" or "aluminium".
        klass: IEC 60228 class: 1 solid, 2 stranded, 5 flexible.

    Raises:
        OutsideTableError: size, material or class not in IEC 60228 as held here.
    """
    column = "al_class1_2" if material == "aluminium" else f"cu_class{klass}"
    order = ["r20", "r20_small"]
    if klass == 1 and material == "copper":
        large = table(_FILE, "r20_class1_large")
        if any(row["csa"] == csa_mm2 for row in large.rows):
            return large.figure(large.row(csa=csa_mm2), "cu_class1", "mohm/m")
        column = "cu_class2"
    for name in order:
        found = table(_FILE, name)
        if any(row["csa"] == csa_mm2 and column in row for row in found.rows):
            return found.figure(found.row(csa=csa_mm2), column, "mohm/m")
    main = table(_FILE, "r20")
    raise main.outside("csa", f"{csa_mm2:g} mm2 {material} class {klass}")


def _coefficient(item: str) -> Figure:
    found = table(_FILE, "temperature")
    return found.figure(found.row(item=item), "value", "per K")


def temperature_factor(
    to_c: float, from_c: float = 20.0, material: Literal["copper", "aluminium", "steel"] = "copper"
) -> Figure:
    """Return the ratio of resistance at ``to_c`` to that at ``from_c``.

    (1 + a (to - 20)) / (1 + a (from - 20)) with a = 0.004 per K for copper and aluminium, which
    gives 1.20 at 70 C and 1.28 at 90 C, and 0.0045 per K for steel armour.

    Raises:
        InputOutOfRangeError: a temperature lies outside -20 to 400 C.
    """
    for value in (to_c, from_c):
        if not COLDEST_C <= value <= HOTTEST_C:
            raise InputOutOfRangeError(f"{value} C lies outside {COLDEST_C} to {HOTTEST_C} C")
    a = _coefficient("alpha_steel_20" if material == "steel" else "alpha_simple")
    ratio = (1 + a.value * (to_c - 20)) / (1 + a.value * (from_c - 20))
    return Figure(ratio, "", a.source, a.provenance)


def reactance(construction: str) -> Figure:
    """Return the highest usual reactance per conductor at 50 Hz, mohm/m.

    Args:
        construction: "multicore", "multicore small" (up to 16 mm2), "enclosed singles" or
            "trefoil singles".

    Raises:
        OutsideTableError: construction not held.
    """
    rows = {
        "multicore": "multicore, 25 to 300 mm2",
        "multicore small": "multicore, up to 16 mm2",
        "enclosed singles": "single-core in conduit or trunking",
        "trefoil singles": "single-core trefoil touching",
    }
    found = table(_FILE, "reactance")
    row = found.row(construction=rows.get(construction, construction))
    return found.figure(row, "high", "mohm/m")


def k_line(family_id: str) -> Figure:
    """Return k of the line conductors, A s^0.5 / mm2, up to 300 mm2."""
    return _k(family_id, "line")


def k_cpc(family_id: str, kind: Literal["core", "armour", "separate"] = "core") -> Figure:
    """Return k of a protective conductor, A s^0.5 / mm2.

    Args:
        family_id: Cable the conductor belongs to or, for "separate", is insulated like.
        kind: "core" of the cable or bunched with it, the steel wire "armour", or "separate".

    Raises:
        OutsideTableError: the cable has no such conductor.
    """
    return _k(family_id, kind)


def _k(family_id: str, kind: str) -> Figure:
    one = family(family_id)
    held = k_values(one.id)
    if kind not in held:
        raise OutsideTableError(f"{one.title}: no k for a protective conductor of kind {kind!r}")
    return Figure(float(held[kind]), "A s^0.5/mm2", held["source"], held["provenance"])


def k_steel_enclosure(insulation: str) -> Figure:
    """Return k of steel conduit or trunking as protective conductor, A s^0.5 / mm2.

    Args:
        insulation: "thermoplastic 70", "thermoplastic 90" or "thermosetting 90" inside it.

    Raises:
        OutsideTableError: insulation not in BS 7671 Table 54.5.
    """
    column = {"thermoplastic 70": "tp70", "thermoplastic 90": "tp90", "thermosetting 90": "ts90"}
    found = table("fault", "k_pe_conduit")
    if insulation not in column:
        raise found.outside("insulation", insulation)
    return found.figure(found.row(material="steel"), column[insulation], "A s^0.5/mm2")


def minimum_cpc_by_table(line_csa_mm2: float) -> Figure:
    """Return the least protective conductor of the line's material by BS 7671 Table 54.7, mm2.

    S up to 16 mm2; 16 mm2 up to 35 mm2; S/2 above. A non-standard size is to be rounded up.
    """
    found = table("fault", "min_cpc_54_7")
    row = next(r for r in found.rows if r["s_from"] < line_csa_mm2 <= r.get("s_to", float("inf")))
    least = {"S": line_csa_mm2, "S/2": line_csa_mm2 / 2}
    size = least[row["pe"]] if row["pe"] in least else row["pe"]
    return Figure(float(size), "mm2", found.standard, str(row["provenance"]))


def main_bonding_mm2(neutral_csa_mm2: float) -> Figure:
    """Return the least main bonding conductor for PME, mm2 copper, by BS 7671 Table 54.8.

    Args:
        neutral_csa_mm2: Copper-equivalent size of the supply neutral, mm2.
    """
    found = table("fault", "bonding_54_8")
    row = next(
        r for r in found.rows if r["pen_from"] < neutral_csa_mm2 <= r.get("pen_to", float("inf"))
    )
    return found.figure(row, "bond", "mm2")
