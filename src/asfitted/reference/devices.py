"""Protective devices: tripping, disconnection, let-through energy, overload, RCD times."""

from __future__ import annotations

from asfitted.errors import InputOutOfRangeError, OutsideTableError
from asfitted.reference.figure import Figure
from asfitted.reference.loader import Table, table

_FILE = "devices"
BREAKERS = ("BS EN 60898", "BS EN 61009", "BS EN 60947-2")
FUSES = ("BS 88-2", "BS 88-3", "BS 3036", "BS 1362")
WITHOUT_OVERCURRENT = ("BS EN 61008", "BS EN 60947-3")
STANDARDS = (*BREAKERS, *FUSES, *WITHOUT_OVERCURRENT)
_FUSE_KEY = {"BS 88-2": "bs88_2", "BS 88-3": "bs88_3", "BS 3036": "bs3036", "BS 1362": "bs1362"}
C_MIN = 0.95
_LONGEST_TIME_S = 5.0


def _standard(words: str) -> str:
    plain = " ".join(words.upper().split())
    if plain.startswith(("BS EN 60898-", "BS EN 61008-", "BS EN 61009-")):
        plain = plain.removesuffix("-1")
    if plain not in STANDARDS:
        raise OutsideTableError(f"no device to {words!r}; known: {', '.join(STANDARDS)}")
    return plain


def standard_ratings(standard: str) -> tuple[float, ...]:
    """Return the rated currents, A, that a standard's devices are tabulated for.

    Raises:
        OutsideTableError: unknown standard.
    """
    name = _standard(standard)
    if name in _FUSE_KEY:
        return tuple(float(row["in_a"]) for row in table("max_zs", _FUSE_KEY[name]).rows)
    if name == "BS EN 61008":
        return tuple(map(float, table(_FILE, "rcd_types").extra["standard_rated_a"]))
    return tuple(map(float, table(_FILE, "mcb_general").row(item="standard_ratings_a")["value"]))


def rcd_residual_currents_ma() -> tuple[float, ...]:
    """Return the standard rated residual currents of RCDs, mA."""
    return tuple(map(float, table(_FILE, "rcd_types").extra["standard_idn_ma"]))


def magnetic_multiple(curve: str) -> Figure:
    """Return the multiple of In that certainly trips at once: B 5, C 10, D 20.

    Raises:
        OutsideTableError: another type.
    """
    found = table(_FILE, "mcb_instantaneous")
    return found.figure(found.row(type=curve.upper()), "upper_x_in", "x In")


def magnetic_lower_multiple(curve: str) -> Figure:
    """Return the multiple of In up to which it certainly does not trip at once: B 3, C 5, D 10.

    Only for selectivity; never for disconnection.
    """
    found = table(_FILE, "mcb_instantaneous")
    return found.figure(found.row(type=curve.upper()), "lower_x_in", "x In")


def current_for_disconnection(standard: str, curve: str, rating_a: float, time_s: float) -> Figure:
    """Return Ia, A: the least current that disconnects within a time.

    Breakers: 5, 10 or 20 In for types B, C, D (10 In for D where 5 s is allowed). Fuses: the
    current behind the tabulated Zs for the next shorter time (0.4 or 5 s), or a safe bound at
    0.1 s.

    Args:
        standard: Device standard in words.
        curve: "B", "C" or "D" for breakers; ignored for fuses.
        rating_a: Rated current In, A. Exactly as tabulated for fuses.
        time_s: Longest time allowed, 0.1 to 5 s.

    Raises:
        OutsideTableError: device, rating or time not in the tables.
        InputOutOfRangeError: rating not above zero.
    """
    name = _standard(standard)
    if rating_a <= 0:
        raise InputOutOfRangeError(f"rated current must be above 0 A, not {rating_a}")
    if not 0.1 <= time_s <= _LONGEST_TIME_S:
        raise OutsideTableError(f"BS 7671 Appendix 3: time {time_s} s is outside 0.1 to 5 s")
    if name in BREAKERS:
        return _breaker_current(curve, rating_a, time_s)
    if name in _FUSE_KEY:
        return _fuse_current(_FUSE_KEY[name], rating_a, time_s)
    raise OutsideTableError(f"a device to {name} does not disconnect an overcurrent")


def _breaker_current(curve: str, rating_a: float, time_s: float) -> Figure:
    multiple = magnetic_multiple(curve)
    value = multiple.value
    if curve.upper() == "D" and time_s >= _LONGEST_TIME_S:
        value = magnetic_lower_multiple(curve).value
    return Figure(
        value * rating_a, "A", "BS 7671 Appendix 3 Figs 3A4 to 3A6; " + multiple.source, "derived"
    )


def _fuse_current(key: str, rating_a: float, time_s: float) -> Figure:
    limits = table("max_zs", key)
    row = limits.row(in_a=rating_a)
    zs = limits.figure(row, "zs_5" if time_s >= _LONGEST_TIME_S else "zs_04", "ohm")
    ia_a = C_MIN * 230.0 / zs.value
    if time_s < 0.4:
        # twice the 0.4 s current bounds the 0.1 s current: the I2t of a fuse does not grow as it
        # gets faster
        bound = table(_FILE, f"fuse_{key}").row(in_a=rating_a)["i_0_1s_upper"]
        ia_a = max(2.0 * ia_a, float(bound))
    return Figure(ia_a, "A", f"Cmin U0 / Zs of {zs.source}", f"derived from {zs.provenance}")


def maximum_zs(
    standard: str, curve: str, rating_a: float, time_s: float, u0_v: float = 230.0
) -> Figure:
    """Return the greatest earth-fault loop impedance, ohm, not rounded.

    Cmin U0 / Ia with Cmin 0.95 for breakers and wherever the voltage or time is not the
    tabulated one; BS 7671 Tables 41.2 and 41.4 for fuses at 230 V and 0.4 or 5 s.

    Args:
        standard: Device standard in words.
        curve: "B", "C" or "D" for breakers.
        rating_a: Rated current In, A.
        time_s: Longest disconnection time, 0.1 to 5 s.
        u0_v: Nominal voltage to earth, V.

    Raises:
        OutsideTableError: device, rating or time not in the tables.
    """
    name = _standard(standard)
    if name in _FUSE_KEY and u0_v == 230.0 and time_s >= 0.4:
        found = table("max_zs", _FUSE_KEY[name])
        column = "zs_5" if time_s >= _LONGEST_TIME_S else "zs_04"
        return found.figure(found.row(in_a=rating_a), column, "ohm")
    ia = current_for_disconnection(standard, curve, rating_a, time_s)
    source = f"Cmin U0 / Ia, Cmin {C_MIN}; {ia.source}"
    return Figure(C_MIN * u0_v / ia.value, "ohm", source, "derived")


def maximum_zs_rcd(residual_ma: float) -> Figure:
    """Return the greatest Zs, ohm, where an RCD gives fault protection: 50 V / IDn.

    Args:
        residual_ma: Rated residual current IDn, mA, above 0.
    """
    if residual_ma <= 0:
        raise InputOutOfRangeError(f"residual current must be above 0 mA, not {residual_ma}")
    found = table("max_zs", "rcd_tt")
    return Figure(50.0 / (residual_ma / 1000.0), "ohm", found.standard, found.provenance)


def measured_zs_factor() -> Figure:
    """Return the factor, 0.8, by which a cold measured Zs must lie below the tabulated one."""
    found = table("max_zs", "measured_80")
    return found.figure(found.rows[0], "factor", "")


def let_through_energy(
    curve: str, rating_a: float, icn_a: float, energy_class: int = 3
) -> Figure | None:
    """Return the greatest let-through I2t, A2s, of a breaker, or None where no class exists.

    BS EN 60898-1 Annex ZA: types B and C, up to 40 A, classes 2 and 3. It holds for any fault up
    to Icn. The next larger tabulated Icn is taken.

    Args:
        curve: Type B, C or D.
        rating_a: Rated current, A.
        icn_a: Rated short-circuit capacity, A.
        energy_class: 2 or 3.
    """
    if curve.upper() not in ("B", "C") or rating_a > 40 or energy_class not in (2, 3):
        return None
    found = table(_FILE, "mcb_energy_class")
    group = "<=16" if rating_a <= 16 else "20-32" if rating_a <= 32 else "40"
    rows = [r for r in found.rows if r["in_group_a"] == group and r["icn_a"] >= icn_a]
    if not rows:
        return None
    return found.figure(rows[0], f"class{energy_class}_{curve.upper()}", "A2s")


def overload_factor(standard: str) -> Figure:
    """Return the factor on Iz that In must not pass for overload: 0.725 for BS 3036, else 1.

    Raises:
        OutsideTableError: the device gives no overload protection.
    """
    name = _standard(standard)
    if name in WITHOUT_OVERCURRENT:
        raise OutsideTableError(f"a device to {name} gives no overload protection")
    found = table("factors", "Cc")
    return found.figure(found.rows[1 if name == "BS 3036" else 0], "factor", "")


def operating_multiple(standard: str) -> Figure:
    """Return I2 / In, the conventional operating current of the device over its rating."""
    found = table(_FILE, "fuse_overload_factor")
    rows = {
        "BS EN 60898": "BS EN 60898 / 61009",
        "BS EN 61009": "BS EN 60898 / 61009",
        "BS 88-2": "BS 88-2 gG",
    }
    name = _standard(standard)
    return found.figure(found.row(device=rows.get(name, name)), "i2_x_in", "x In")


def rcd_time(multiple: int = 1, *, delayed: bool = False) -> Figure:
    """Return the longest RCD operating time, ms, at a multiple of IDn.

    Args:
        multiple: 1, 2 or 5 times rated residual current.
        delayed: S type rather than general.

    Raises:
        OutsideTableError: another multiple.
    """
    found, row = _rcd_row(delayed=delayed)
    return found.figure(row, f"t_{multiple}x", "ms")


def rcd_minimum_time(multiple: int = 1) -> Figure:
    """Return the shortest time, ms, an S type RCD may take at a multiple of IDn."""
    found, row = _rcd_row(delayed=True)
    return found.figure(row, f"min_{multiple}x", "ms")


def _rcd_row(*, delayed: bool) -> tuple[Table, dict[str, object]]:
    found = table(_FILE, "rcd_times")
    kind = "S (time-delayed)" if delayed else "general"
    return found, dict(found.row(kind=kind, std="BS EN 61008-1 / 61009-1"))


def disconnection_time(
    system: str, final: bool, rating_a: float, has_sockets: bool, u0_v: float = 230.0
) -> Figure:
    """Return the longest disconnection time, s, a.c. (BS 7671 Table 41.1, 411.3.2.2 to .4).

    Args:
        system: "TN-S", "TN-C-S", "TN" or "TT".
        final: Whether it is a final circuit.
        rating_a: Rated current of the circuit, A.
        has_sockets: Whether it feeds one or more socket-outlets.
        u0_v: Nominal voltage to earth, V, above 50.

    Raises:
        OutsideTableError: system or voltage outside the table.
    """
    found = table("max_zs", "disconnection_times")
    earthing = system.upper()[:2]
    rows = [r for r in found.rows if r["system"] == earthing]
    if not rows:
        raise found.outside("system", system)
    if final and rating_a <= (63 if has_sockets else 32):
        for row in rows:
            if row["u0_from"] < u0_v <= row.get("u0_to", float("inf")):
                return found.figure(row, "ac_s", "s")
        raise found.outside("u0_from", u0_v)
    other = "tn_distribution_and_other_s" if earthing == "TN" else "tt_distribution_and_other_s"
    return Figure(float(found.extra["other"][other]), "s", found.standard, found.provenance)
