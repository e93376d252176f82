"""Containment: stock, fill terms, supports, bend radii."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from asfitted.errors import InputOutOfRangeError
from asfitted.reference.figure import Figure
from asfitted.reference.loader import Row, Table, table

_FILE = "containment"
Direction = Literal["horizontal", "vertical"]


@dataclass(frozen=True)
class Stock:
    """What a wholesaler keeps of one kind of containment.

    Attributes:
        kind: "medium tray", "heavy tray", "basket", "ladder", "steel trunking",
            "plastic trunking", "steel conduit" or "plastic conduit".
        sizes: Widths or diameters in mm ("225"), or width x depth ("100x50"), least first.
        stock_length_m: Length of one piece, m.
        source: Where the list comes from.
        provenance: Its provenance word.
    """

    kind: str
    sizes: tuple[str, ...]
    stock_length_m: float
    source: str
    provenance: str

    @property
    def widths_mm(self) -> tuple[float, ...]:
        """Widths or diameters, mm, in the order of ``sizes``."""
        return tuple(float(size.split("x")[0]) for size in self.sizes)


_STOCK = {
    "medium tray": ("tray_perforated_stock", {"duty": "medium"}, "widths"),
    "heavy tray": ("tray_perforated_stock", {"duty": "heavy"}, "widths"),
    "basket": ("basket_ladder_stock", {"kind": "basket"}, "widths"),
    "ladder": ("basket_ladder_stock", {"kind": "ladder"}, "widths"),
    "steel trunking": ("trunking_stock", {"material": "steel"}, "sizes"),
    "plastic trunking": ("trunking_stock", {"material": "plastic"}, "sizes"),
    "steel conduit": ("conduit_stock", {"material": "steel"}, "diameters"),
    "plastic conduit": ("conduit_stock", {"material": "plastic heavy gauge"}, "diameters"),
}
STOCK_KINDS = tuple(_STOCK)


def stock(kind: str) -> Stock:
    """Return the stock sizes of one kind of containment.

    Raises:
        OutsideTableError: no such kind.
    """
    if kind not in _STOCK:
        raise table(_FILE, "trunking_stock").outside("kind of containment", kind)
    name, wanted, column = _STOCK[kind]
    found = table(_FILE, name)
    row = next(
        r for r in found.rows if column in r and all(r.get(k) == v for k, v in wanted.items())
    )
    length = row["stock_length"] if "stock_length" in row else row["stock_lengths"][0]
    sizes = tuple(str(size) for size in row[column])
    return Stock(kind, sizes, float(length), found.standard, str(row["provenance"]))


def trunking_term(size: str) -> Figure:
    """Return the term (capacity) of a trunking size such as "50x50".

    Raises:
        OutsideTableError: no term is published for that size.
    """
    found = table(_FILE, "trunking_factors")
    return found.figure(found.row(size=size.replace(" ", "").replace("×", "x")), "term", "")


def cable_term(
    csa_mm2: float,
    *,
    containment: Literal["trunking", "conduit_short", "conduit_long"] = "trunking",
    insulation: Literal["pvc", "thermosetting"] = "pvc",
) -> Figure:
    """Return the term of one single-core insulated conductor, the larger where several apply.

    Args:
        csa_mm2: Size, mm2.
        containment: Trunking; conduit in a straight run to 3 m; or a longer or bent conduit run.
        insulation: Only trunking tells them apart. PVC from 35 mm2 takes the larger term.

    Raises:
        OutsideTableError: size not in the table.
    """
    if containment != "trunking":
        found = table(_FILE, f"conduit_cable_factors_{containment.removeprefix('conduit_')}")
        return _largest(found, csa_mm2, ("term",))
    # the printed 1.0 mm2 term looks like a slip: the 1.5 mm2 term is safe for it
    size = 1.5 if csa_mm2 == 1.0 else csa_mm2
    found = table(_FILE, "trunking_cable_factors")
    has_own = any(r["csa"] == size and insulation in r for r in found.rows)
    return _largest(found, size, (insulation if has_own else "thermosetting",))


def _largest(found: Table, csa_mm2: float, columns: tuple[str, ...]) -> Figure:
    rows = [r for r in found.rows if r["csa"] == csa_mm2 and any(c in r for c in columns)]
    if not rows:
        raise found.outside("csa", csa_mm2)
    row = max(rows, key=lambda r: float(r[columns[0]]))
    return found.figure(row, columns[0], "")


def conduit_term(diameter_mm: float, length_m: float, bends: int) -> Figure:
    """Return the term (capacity) of a conduit run between draw-in points; next longer row taken.

    Args:
        diameter_mm: 16, 20, 25 or 32.
        length_m: Length between draw-in points, m, up to 10.
        bends: Right angles or double sets in it, 0 to 4.

    Raises:
        OutsideTableError: such a run needs a draw-in box, or the diameter is not tabulated.
    """
    if bends == 0 and length_m <= 3.0:
        short = table(_FILE, "conduit_factors_short")
        return short.figure(short.row(diameter=diameter_mm), "term", "")
    found = table(_FILE, "conduit_factors_long")
    column = "straight" if bends == 0 else f"bends{bends}"
    rows = [r for r in found.rows if r["length"] >= length_m and column in r]
    diameters = (16.0, 20.0, 25.0, 32.0)
    if not rows or float(diameter_mm) not in diameters:
        raise found.outside(f"length (m) for {bends} bends of {diameter_mm:g} mm", length_m)
    value = rows[0][column][diameters.index(float(diameter_mm))]
    return Figure(float(value), "", found.standard, str(rows[0]["provenance"]))


def space_factor_limit(kind: Literal["trunking", "conduit", "conduit_data"]) -> Figure:
    """Return the greatest share of the inside that cables may fill.

    Raises:
        OutsideTableError: another kind.
    """
    found = table(_FILE, "fill_limits")
    column = "space_factor_planning" if kind == "conduit_data" else "space_factor_max"
    name = "conduit" if kind.startswith("conduit") else kind
    for row in found.rows:
        if row["containment"] == name and column in row:
            return found.figure(row, column, "")
    raise found.outside("containment", kind)


def edge_allowance_mm() -> Figure:
    """Return the width left clear at each side of a tray, mm."""
    found = table(_FILE, "tray_usable_width")
    return found.figure(found.row(key="edge_allowance_each_side"), "value", "mm")


def spare_fraction() -> Figure:
    """Return the share of tray width to leave free at handover."""
    found = table(_FILE, "tray_usable_width")
    return found.figure(found.row(key="spare_fraction"), "value", "")


def usable_width(tray_width_mm: float) -> Figure:
    """Return the width of tray that cables may take, mm: spare kept and edges left clear.

    tray width x (1 - spare fraction) - 2 x edge allowance.
    """
    if tray_width_mm <= 0:
        raise InputOutOfRangeError(f"tray width must be above 0 mm, not {tray_width_mm}")
    edge, spare = edge_allowance_mm(), spare_fraction()
    value = tray_width_mm * (1.0 - spare.value) - 2.0 * edge.value
    return Figure(max(value, 0.0), "mm", edge.source, edge.provenance)


def support_spacing(kind: str, size: float, direction: Direction = "horizontal") -> Figure:
    """Return the greatest spacing of supports, mm.

    Args:
        kind: "cable", "armoured cable" (size = overall diameter, mm); "steel conduit",
            "plastic conduit", "flexible conduit" (diameter, mm); "steel trunking",
            "plastic trunking" (cross-section, mm2); "tray", "basket", "ladder" (size unused).
        size: See kind.
        direction: "horizontal" or "vertical".

    Raises:
        OutsideTableError: kind or size not in the tables.
    """
    tail = "h" if direction == "horizontal" else "v"
    if kind in ("tray", "basket", "ladder"):
        found = table(_FILE, "tray_supports")
        return found.figure(found.row(key="normal_span"), "value", "mm", factor=1000.0)
    if kind in ("cable", "armoured cable"):
        column = f"{'armoured' if kind == 'armoured cable' else 'non_armoured'}_{tail}"
        found = table(_FILE, "supports_cables")
        row = _band(found, "od", size)
        if kind == "armoured cable" and column not in row:
            # the armoured column starts at 9 mm: the non-armoured spacing is closer
            column = f"non_armoured_{tail}"
        return found.figure(row, column, "mm")
    enclosures = {"steel": "metal", "plastic": "insulating", "flexible": "pliable"}
    material, _, what = kind.partition(" ")
    if material not in enclosures or what not in ("conduit", "trunking"):
        raise table(_FILE, "supports_conduit").outside("kind of support", kind)
    found = table(_FILE, f"supports_{what}")
    row = _band(found, "d" if what == "conduit" else "area", size)
    return found.figure(row, f"{enclosures[material]}_{tail}", "mm", factor=1000.0)


def _band(found: Table, axis: str, value: float) -> Row:
    for row in found.rows:
        if row[f"{axis}_over"] < value <= row.get(f"{axis}_to", math.inf):
            return row
    raise found.outside(f"{axis}_to", value)


def bend_radius(construction: str, overall_mm: float, *, shaped: bool = False) -> Figure:
    """Return the least inside bend radius as a multiple of the overall diameter.

    Args:
        construction: Construction of the cable family, such as "armoured", "flat" or "data".
        overall_mm: Overall diameter, mm, or longer axis of a flat cable.
        shaped: Armoured cable with shaped conductors, 25 mm2 and above.

    Raises:
        OutsideTableError: construction not in the table.
    """
    found = table(_FILE, "bend_radii")
    named = {
        "armoured": "armoured, shaped conductors (25 mm2 and above)"
        if shaped
        else "armoured, circular stranded conductors (1.5-16 mm2)",
        "data": "four-pair data cable",
        "coax": "coax RG59 size",
        "coax_power": "coax RG59 size",
    }
    if construction in named:
        return found.figure(found.row(cable=named[construction]), "factor", "x diameter")
    if construction not in ("flat", "single", "multicore", "flexible"):
        raise found.outside("construction", construction)
    circular = "circular PVC or thermosetting, non-armoured"
    for row in found.rows:
        if row["cable"] == circular and row.get("od_over", 0) < overall_mm <= row.get(
            "od_to", math.inf
        ):
            return found.figure(row, "factor", "x diameter")
    raise found.outside("od_to", overall_mm)
