"""Capacity, voltage drop, size, armour and gland of one cable."""

from __future__ import annotations

from dataclasses import replace

from asfitted.errors import InputOutOfRangeError, OutsideTableError
from asfitted.reference.cable_family import (
    CableFamily,
    SharedTable,
    column_map,
    families,
    family,
    shared_table,
)
from asfitted.reference.figure import ArmourRow, Figure, TextFigure, VoltDropRow
from asfitted.reference.loader import Row, Table, provenance_of

__all__ = [
    "CableFamily",
    "armour",
    "bedding_diameter_mm",
    "bend_radius_factor",
    "cpc_csa_mm2",
    "families",
    "family",
    "gland_size",
    "mass_kg_m",
    "overall_area_mm2",
    "overall_diameter_mm",
    "rating_insulation_c",
    "standard_sizes",
    "tabulated_capacity",
    "voltage_drop_r_x_z",
]

_PI_OVER_4 = 0.7853981633974483
_SHAPED_FROM_MM2 = 25.0
_LARGER_CABLE = "swa"  # than an unarmoured cable of the same cores and size


def _phases(loaded_conductors: int) -> str:
    if loaded_conductors not in (2, 3):
        raise InputOutOfRangeError(f"loaded conductors must be 2 or 3, not {loaded_conductors}")
    return "1ph" if loaded_conductors == 2 else "3ph"


def _method(word: str) -> str:
    plain = word.strip().upper().removeprefix("METHOD").strip()
    return "D" if plain in ("D1", "D2") else plain


def _column(family_id: str, kind: str, table: Table, method: str, phases: str) -> str:
    """Name the column for a method: the family's own map, then the method, then any method."""
    mapped = column_map(family_id, kind).get(method, {}).get(phases)
    if mapped:
        return mapped
    own = f"{method}_{phases}"
    held = {column for row in table.rows for column in row}
    return own if own in held or f"any_{phases}" not in held else f"any_{phases}"


def _with_reason(figure: Figure, shared: SharedTable) -> Figure:
    if not shared.shared_because:
        return figure
    note = "; ".join(part for part in (figure.note, shared.shared_because) if part)
    return replace(figure, note=note)


def standard_sizes(family_id: str, cores: int) -> tuple[float, ...]:
    """Return the sizes made with so many cores, mm2, least first.

    Sizes are those of the capacity table (or of the dimension table where there is none) that
    appear in the dimension table for that number of cores, where that table lists it at all;
    for multicore cable, up to the largest whose armoured cousin has a diameter.

    Raises:
        OutsideTableError: the family is not made with so many cores.
    """
    one = family(family_id)
    if cores not in one.cores:
        raise OutsideTableError(f"{one.title}: made with {one.cores} cores, not {cores}")
    dims = shared_table(one.id, "dimensions").table.rows
    sized = {float(r["csa"]) for r in dims if "csa" in r and r.get("cores", cores) == cores}
    try:
        rated = {float(r["csa"]) for r in shared_table(one.id, "capacity").table.rows}
    except OutsideTableError:
        return tuple(sorted(sized))
    if one.construction == "multicore" and cores in family(_LARGER_CABLE).cores:
        largest = max(standard_sizes(_LARGER_CABLE, cores))
        return tuple(sorted(size for size in rated if size in sized or size <= largest))
    if one.construction not in ("armoured", "flexible"):
        return tuple(sorted(rated))
    return tuple(sorted(rated & sized or rated))


def rating_insulation_c(family_id: str, *, terminals_90c: bool = False) -> int:
    """Return the temperature column, C, that goes with ``tabulated_capacity``.

    A 90 C cable at 70 C terminals is rated, and corrected for ambient, as a 70 C cable.
    """
    one = family(family_id)
    at_70 = one.terminals_70c_family and not terminals_90c
    return family(one.terminals_70c_family).insulation_c if at_70 else one.insulation_c


def tabulated_capacity(
    family_id: str,
    csa_mm2: float,
    method: str,
    loaded_conductors: int,
    terminals_90c: bool = False,
) -> Figure:
    """Return the tabulated current-carrying capacity It, A.

    Args:
        family_id: Id or spec word of the family.
        csa_mm2: Size, mm2; must be in the table.
        method: Reference method A, B, C, D, E, F or G, or 100 to 103 for flat cable.
        loaded_conductors: 2 or 3.
        terminals_90c: Whether every terminal it meets is rated for 90 C. If not, a 90 C cable is
            read from the 70 C table of the same construction.

    Raises:
        OutsideTableError: size or method not in the table.
    """
    one = family(family_id)
    phases, method = _phases(loaded_conductors), _method(method)
    if one.terminals_70c_family and not terminals_90c:
        found = tabulated_capacity(one.terminals_70c_family, csa_mm2, method, loaded_conductors)
        note = f"70 C terminals: read from Table {one.terminals_70c_table}"
        return replace(found, note="; ".join(p for p in (note, found.note) if p))
    shared = shared_table(one.id, "capacity")
    column = _column(one.id, "capacity", shared.table, method, phases)
    if not any(column in row for row in shared.table.rows):
        try:
            shared = shared_table(one.id, "capacity_other_methods")
        except OutsideTableError:
            raise shared.table.outside(f"method {method}, {phases}", csa_mm2) from None
        column = _column(shared.owner_id, "capacity", shared.table, method, phases)
    row = shared.table.row(csa=csa_mm2)
    return _with_reason(shared.table.figure(row, column, "A"), shared)


def voltage_drop_r_x_z(
    family_id: str, csa_mm2: float, loaded_conductors: int, method: str
) -> VoltDropRow:
    """Return r, x and z, mV/A/m, at full conductor temperature; three-phase is line to line.

    Raises:
        OutsideTableError: size or method not in the table.
    """
    one = family(family_id)
    phases = _phases(loaded_conductors)
    shared = shared_table(one.id, "voltage_drop")
    column = _column(one.id, "voltage_drop", shared.table, _method(method), phases)
    row = shared.table.row(csa=csa_mm2)
    cell = row.get(column)
    if cell is None:
        raise shared.table.outside(f"{column} at {csa_mm2:g} mm2", method)
    r, x, z = (
        (cell["r"], cell["x"], cell["z"])
        if not isinstance(cell, int | float)
        else (cell, 0.0, cell)
    )
    figure = Figure(float(z), "mV/A/m", shared.table.standard, provenance_of(row, column))
    return VoltDropRow(float(r), float(x), float(z), _with_reason(figure, shared))


def _dimension_row(family_id: str, cores: int, csa_mm2: float) -> tuple[Row, SharedTable]:
    one = family(family_id)
    shared = shared_table(one.id, "dimensions")
    for row in shared.table.rows:
        fits = row.get("cores", cores) == cores
        if one.construction not in ("data", "coax"):
            fits = fits and row.get("csa", csa_mm2) == csa_mm2
        if fits:
            return row, shared
    raise shared.table.outside("csa", f"{cores} x {csa_mm2:g} mm2")


def _dimension(family_id: str, cores: int, csa_mm2: float, column: str, unit: str) -> Figure:
    row, shared = _dimension_row(family_id, cores, csa_mm2)
    figure = shared.table.figure(row, column, unit)
    group = {"overall_mm": "dims", "mass_kg_km": "mass"}.get(column, column)
    word = row.get("cells", {}).get(group)
    return _with_reason(replace(figure, provenance=word) if word else figure, shared)


def overall_diameter_mm(family_id: str, cores: int, csa_mm2: float) -> Figure:
    """Return the overall diameter, mm; the longer axis of a flat cable.

    Where no diameter of an unarmoured multicore cable is tabulated, that of the armoured cable of
    the same cores and size stands for it, "derived": it is larger, so that room is never short.

    Raises:
        OutsideTableError: the size is not in the dimension table.
    """
    try:
        return _dimension(family_id, cores, csa_mm2, "overall_mm", "mm")
    except OutsideTableError:
        if family(family_id).construction != "multicore":
            raise
        sizes = standard_sizes(_LARGER_CABLE, cores)
        size = min((made for made in sizes if made >= csa_mm2), default=csa_mm2)
        larger = _dimension(_LARGER_CABLE, cores, size, "overall_mm", "mm")
        return replace(larger, provenance="derived", note="that of armoured cable, which is larger")


def overall_area_mm2(family_id: str, cores: int, csa_mm2: float) -> Figure:
    """Return the overall cross-section, mm2: a circle, or a rectangle for a flat cable.

    Raises:
        OutsideTableError: the size is not in the dimension table.
    """
    width = overall_diameter_mm(family_id, cores, csa_mm2)
    thickness = None
    if family(family_id).construction in ("flat", "coax_power"):
        thickness = _dimension_row(family_id, cores, csa_mm2)[0].get("thickness_mm")
    area = width.value * thickness if thickness else _PI_OVER_4 * width.value**2
    return replace(width, value=area, unit="mm2")


def mass_kg_m(family_id: str, cores: int, csa_mm2: float) -> Figure:
    """Return the mass, kg/m.

    Raises:
        OutsideTableError: no mass is given for it.
    """
    found = _dimension(family_id, cores, csa_mm2, "mass_kg_km", "kg/m")
    return replace(found, value=found.value / 1000)


def armour(family_id: str, cores: int, csa_mm2: float) -> ArmourRow:
    """Return the armour's area, mm2, and resistance at 20 C, mohm/m.

    Raises:
        OutsideTableError: the cable has no armour, or is not in the table.
    """
    if not family(family_id).is_armoured:
        raise OutsideTableError(f"{family(family_id).title}: no armour")
    area = _dimension(family_id, cores, csa_mm2, "armour_mm2", "mm2")
    r20 = _dimension(family_id, cores, csa_mm2, "armour_r20", "mohm/m")
    return ArmourRow(area.value, r20.value, r20.source, r20.provenance, r20.note)


def bedding_diameter_mm(family_id: str, cores: int, csa_mm2: float) -> Figure:
    """Return the diameter of an armoured cable over its bedding, under the armour, mm.

    Raises:
        OutsideTableError: the cable has no armour, or is not in the table.
    """
    return _dimension(family_id, cores, csa_mm2, "under_armour_mm", "mm")


def gland_size(family_id: str, cores: int, csa_mm2: float) -> TextFigure:
    """Return the trade size of gland, such as "20S".

    Raises:
        OutsideTableError: the cable has no armour, or is not in the table.
    """
    row, shared = _dimension_row(family_id, cores, csa_mm2)
    if "gland" not in row:
        raise shared.table.outside("gland", f"{cores} x {csa_mm2:g} mm2")
    notes = [row.get("doubt", ""), shared.shared_because]
    note = "; ".join(part for part in notes if part)
    return TextFigure(row["gland"], shared.table.standard, row["cells"]["gland"], note)


def cpc_csa_mm2(family_id: str, cores: int, csa_mm2: float) -> Figure:
    """Return the size of the protective conductor built into flat twin and earth, mm2.

    Raises:
        OutsideTableError: the family has no built-in protective conductor of its own size.
    """
    one = family(family_id)
    if one.construction != "flat" or cores not in one.cores:
        raise OutsideTableError(f"{one.title}, {cores} cores: no built-in protective conductor")
    table = shared_table(one.id, "capacity").table
    return table.figure(table.row(csa=csa_mm2), "cpc_mm2", "mm2")


def bend_radius_factor(family_id: str, cores: int, csa_mm2: float) -> Figure:
    """Return the least inside bend radius as a multiple of the overall diameter.

    Raises:
        OutsideTableError: size not in the tables.
    """
    from asfitted.reference.containment import bend_radius  # noqa: PLC0415 - it reads no cable

    one = family(family_id)
    diameter = overall_diameter_mm(family_id, cores, csa_mm2)
    return bend_radius(one.construction, diameter.value, shaped=csa_mm2 >= _SHAPED_FROM_MM2)
