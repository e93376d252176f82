"""Rating factors. Between columns the next one on the safe side is taken."""

from __future__ import annotations

import math

from asfitted.errors import InputOutOfRangeError
from asfitted.reference.figure import Figure
from asfitted.reference.loader import Table, provenance_of, table

_FILE = "factors"
_IN_AIR = {
    "bunched": "bunched",
    "single_layer_wall": "single_layer_wall_or_floor",
    "perforated_tray": "single_layer_perforated_tray",
    "ladder": "single_layer_ladder",
}
_BURIED = {
    "buried_touching": ("Cg_4C2", "circuits", "touching"),
    "buried_one_diameter": ("Cg_4C2", "circuits", "one_diameter"),
    "buried_125mm": ("Cg_4C2", "circuits", "m0_125"),
    "buried_250mm": ("Cg_4C2", "circuits", "m0_25"),
    "buried_500mm": ("Cg_4C2", "circuits", "m0_5"),
    "duct_touching": ("Cg_4C3_multicore", "cables", "touching"),
    "duct_250mm": ("Cg_4C3_multicore", "cables", "m0_25"),
    "duct_500mm": ("Cg_4C3_multicore", "cables", "m0_5"),
    "duct_1000mm": ("Cg_4C3_multicore", "cables", "m1_0"),
}
ARRANGEMENTS = (*_IN_AIR, *_BURIED)


def _temperature_column(found: Table, insulation_c: int) -> str:
    column = {60: "rubber_60", 70: "pvc_70", 90: "xlpe_90"}.get(insulation_c)
    if column is None or not any(column in row for row in found.rows):
        raise found.outside("insulation temperature, C", insulation_c)
    return column


def _by_temperature(name: str, axis: str, insulation_c: int, temperature_c: float) -> Figure:
    found = table(_FILE, name)
    column = _temperature_column(found, insulation_c)
    row = found.row_at_or_above(axis, temperature_c)
    return found.figure(row, column, "")


def ambient_air(insulation_c: int, ambient_c: float) -> Figure:
    """Return Ca for air, reference 30 C, BS 7671 Table 4B1; the next hotter row is taken.

    Args:
        insulation_c: 60, 70 or 90, the temperature the capacity was read for.
        ambient_c: Ambient temperature, C, up to the last row of the table.

    Raises:
        OutsideTableError: hotter than the table goes for that insulation.
    """
    return _by_temperature("Ca_air", "ambient_C", insulation_c, ambient_c)


def ground(insulation_c: int, ground_c: float) -> Figure:
    """Return Ca for ground, reference 20 C, BS 7671 Table 4B2; the next hotter row is taken.

    Raises:
        OutsideTableError: hotter than the table goes, or not 70 or 90 C insulation.
    """
    return _by_temperature("Ca_ground", "ground_C", insulation_c, ground_c)


def grouping(arrangement: str, count: int) -> Figure:
    """Return Cg for ``count`` circuits or multicore cables; the next larger count is taken.

    Args:
        arrangement: One of ``ARRANGEMENTS``: in air touching (BS 7671 Table 4C1), or direct in
            ground or in single ducts at a clearance (Tables 4C2, 4C3).
        count: Number of circuits or multicore cables, this one included; 1 gives 1.0.

    Raises:
        OutsideTableError: arrangement or count outside the tables.
    """
    if count < 1:
        raise InputOutOfRangeError(f"a group counts at least one circuit, not {count}")
    if arrangement in _BURIED:
        name, axis, column = _BURIED[arrangement]
        found = table(_FILE, name)
        if count == 1:
            return Figure(1.0, "", found.standard, found.provenance)
        return found.figure(found.row_at_or_above(axis, count), column, "")
    found = table(_FILE, "Cg_4C1")
    if arrangement not in _IN_AIR:
        raise found.outside("arrangement", arrangement)
    row = found.row(arrangement=_IN_AIR[arrangement])
    counts = [c for c in found.counts if c >= count]
    if not counts and arrangement == "bunched":
        raise found.outside(f"count (at most {found.counts[-1]})", count)
    # a single layer gets no further reduction beyond nine circuits
    value = row["factors"][found.counts.index(counts[0])] if counts else row["factors"][-1]
    return Figure(float(value), "", found.standard, provenance_of(row, "factors"))


def grouping_on_trays(support: str, spacing: str, trays: int, count: int) -> Figure:
    """Return Cg for multicore cables on one or more trays, BS 7671 Table 4C4.

    Args:
        support: "perforated_horizontal", "perforated_vertical" or "ladder".
        spacing: "touching" or "spaced" (one diameter of the larger neighbour).
        trays: Number of trays one above the other, 1 to 3.
        count: Cables on a tray, 1 to 9.

    Raises:
        OutsideTableError: not in the table.
    """
    found = table(_FILE, "Cg_4C4")
    row = found.row(support=support, spacing=spacing, trays=trays)
    held = dict(zip(found.counts, row["factors"], strict=False))
    counts = [c for c in held if c >= count]
    if not counts or count < 1:
        raise found.outside(f"count (1 to {max(held)})", count)
    return Figure(float(held[counts[0]]), "", found.standard, str(row["provenance"]))


def soil(resistivity_km_w: float, *, in_duct: bool = False) -> Figure:
    """Return Cs for soil, reference 2.5 K.m/W, BS 7671 Table 4B3; the next drier row is taken.

    Args:
        resistivity_km_w: Thermal resistivity of the soil, K.m/W, up to 3.
        in_duct: In a buried duct rather than direct.

    Raises:
        OutsideTableError: above 3 K.m/W.
    """
    found = table(_FILE, "Cs_soil")
    row = found.row_at_or_above("resistivity_KmW", resistivity_km_w)
    return found.figure(row, "in_duct" if in_duct else "direct_buried", "")


def depth(depth_m: float, *, in_duct: bool = False) -> Figure:
    """Return Cd for depth of laying, reference 0.7 m, BS 7671 Table 4B4; next deeper row taken.

    Raises:
        OutsideTableError: deeper than 3 m.
    """
    found = table(_FILE, "Cd_depth")
    row = found.row_at_or_above("depth_m", depth_m)
    return found.figure(row, "in_duct" if in_duct else "direct_buried", "")


def insulation_length(length_mm: float) -> Figure:
    """Return Ci for a cable totally surrounded by thermal insulation, BS 7671 Table 52.2.

    The next longer row is taken; 0.5 from 500 mm on (of Method C); 1.0 for no length.
    """
    found = table(_FILE, "Ci_table_52_2")
    if length_mm < 0:
        raise InputOutOfRangeError(f"a length in insulation cannot be {length_mm} mm")
    if length_mm == 0:
        return Figure(1.0, "", found.standard, found.provenance)
    longest = max(float(row["length_in_insulation_mm"]) for row in found.rows)
    row = found.row_at_or_above("length_in_insulation_mm", min(length_mm, longest))
    return found.figure(row, "factor", "")


def device_factor(standard: str, buried: bool) -> Figure:
    """Return Cc for the protective device and for a buried cable, BS 7671 Appendix 4, 5.1.

    0.725 for a semi-enclosed fuse to BS 3036, 0.9 for a buried cable, 0.653 for both, else 1.
    """
    found = table(_FILE, "Cc")
    case = {
        (False, False): 0,
        (True, False): 1,
        (False, True): 2,
        (True, True): 3,
    }[(standard.strip().upper() == "BS 3036", buried)]
    return found.figure(found.rows[case], "factor", "")


def third_harmonic(percent: float) -> tuple[Figure, bool]:
    """Return Ch and whether the cable is chosen on the neutral current (BS 7671 App 4, 5.5).

    Bands have an exclusive lower and an inclusive upper bound: 0-15, 15-33, 33-45, above 45 %.

    Args:
        percent: Third harmonic (and other triplens) in the line current, %, 0 to 100.
    """
    if not 0 <= percent <= 100:
        raise InputOutOfRangeError(f"third harmonic must be 0 to 100 %, not {percent}")
    found = table(_FILE, "harmonics_3rd")
    row = next(r for r in found.rows if percent <= r.get("to", math.inf))
    return found.figure(row, "factor", ""), row["select_on"].startswith("neutral")


def voltage_drop_limit_percent(use: str, *, private_supply: bool = False) -> Figure:
    """Return the greatest voltage drop, % of nominal, origin to load (BS 7671 Table 4Ab).

    Args:
        use: "lighting" or "other".
        private_supply: Own transformer or generator rather than a public network.

    Raises:
        OutsideTableError: another use.
    """
    found = table(_FILE, "vd_limits")
    return found.figure(found.row(use=use), "private" if private_supply else "public", "%")


def voltage_drop_extra_percent(length_m: float) -> float:
    """Return the allowance for a run beyond 100 m: 0.005 % per metre, at most 0.5 %."""
    return min(max(length_m - 100.0, 0.0) * 0.005, 0.5)
