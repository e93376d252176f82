"""Energy that fuses let through, and that they stand without melting."""

from __future__ import annotations

from asfitted.errors import OutsideTableError
from asfitted.reference.figure import Figure
from asfitted.reference.loader import table

_GATES = "fuse_gg_gates"
GATED = ("BS 88-2", "BS 88-3")
_BOUND = {"BS 3036": "fuse_bs3036", "BS 1362": "fuse_bs1362"}
_BOUND_TIME_S = 0.1
FUSE_RATIO = 1.6


def total_energy(standard: str, rating_a: float) -> Figure:
    """Return the greatest total operating energy of a fuse, A2s.

    gG fuses: the greatest of the gates, the next larger tabulated rating. BS 3036 and BS 1362: the
    square of the current that surely operates it in 0.1 s, times 0.1 s, since the energy of a fuse
    does not grow as it gets faster.

    Args:
        standard: "BS 88-2", "BS 88-3", "BS 3036" or "BS 1362".
        rating_a: Rated current, A.

    Raises:
        OutsideTableError: standard or rating not held.
    """
    if standard in GATED:
        gates = table("devices", _GATES)
        row = gates.row_at_or_above("in_a", rating_a)
        return gates.figure(row, "total_i2t_max", "A2s")
    if standard not in _BOUND:
        raise OutsideTableError(f"energy let through by a fuse to {standard} is not held")
    bounds = table("devices", _BOUND[standard])
    row = bounds.row(in_a=rating_a)
    if "i_0_1s_upper" not in row:
        raise bounds.outside("in_a", rating_a)
    value = float(row["i_0_1s_upper"]) ** 2 * _BOUND_TIME_S
    return Figure(value, "A2s", f"{bounds.standard}, bound at 0.1 s", str(row["provenance"]))


def prearcing_energy(standard: str, rating_a: float) -> Figure:
    """Return the least energy that melts a gG fuse, A2s; the next smaller tabulated rating.

    Args:
        standard: "BS 88-2" or "BS 88-3".
        rating_a: Rated current, A.

    Raises:
        OutsideTableError: another fuse, or a rating below the table.
    """
    if standard not in GATED:
        raise OutsideTableError(f"energy that melts a fuse to {standard} is not held")
    gates = table("devices", _GATES)
    rows = [row for row in gates.rows if row["in_a"] <= rating_a]
    if not rows:
        raise gates.outside("in_a", rating_a)
    return gates.figure(rows[-1], "prearc_i2t_min_0_01s", "A2s")
