"""Figures of the tables against each other and against physics; no figure changes unseen."""

from __future__ import annotations

import itertools
import math
import re

import pytest
import yaml
from every_table import SUMS_FILE, every_table, family_tables, weighed_sum

from asfitted.calculate.earth_fault_loop import measured_limit_ohm
from asfitted.reference.cable_family import family
from asfitted.reference.conductors import resistance_20c
from asfitted.reference.loader import Row, Table, table
from asfitted.reference.schema import PROVENANCE_WORDS

ALL = dict(every_table())
CAPACITY = dict(family_tables("capacity"))
DROP = dict(family_tables("voltage_drop"))
# flexible cords follow fuse sizes, not heating
FUSE_SIZED = {
    (cord, size)
    for cord in ("flex_rubber", "flex_heat")
    for size in (0.5, 0.75, 1, 1.25, 1.5, 2.5, 4)
}
# recalled figures: the first 4 % low, the second rounded up to 0.05 by the table
Z_KNOWN_OFF = {("singles_lsf", 300, "CFG_trefoil_3ph"), ("flex_rubber", 35, "any_3ph")}
# recalled, 7.1 % above plain copper wire, which is the safe side
R_KNOWN_HIGH = {("flex_rubber", 50)}


def _columns(found: Table) -> list[str]:
    return sorted({c for row in found.rows for c in row if re.search(r"_(1ph|3ph)$", c)})


def _pairs(found: Table, column: str) -> list[tuple[Row, Row]]:
    held = [row for row in found.rows if column in row]
    return list(itertools.pairwise(held))


@pytest.mark.parametrize("name", sorted(ALL))
def test_every_row_says_where_it_came_from(name: str) -> None:
    found = ALL[name]
    assert found.standard
    assert found.edition
    assert found.source
    assert found.units
    for row in found.rows:
        assert str(row["provenance"]).startswith(PROVENANCE_WORDS)


def test_sources_are_words_a_reader_can_follow() -> None:
    for name, found in ALL.items():
        text = repr(found)
        assert not re.search(r"\bS\d\d\b", text), name
        assert ".yaml" not in text, name


@pytest.mark.parametrize("name", sorted(ALL))
def test_no_figure_has_changed_unseen(name: str) -> None:
    # regression sums of our own data: an edit of a table must be made here too, on purpose
    assert weighed_sum(ALL[name]) == yaml.safe_load(SUMS_FILE.read_text())[name]


def test_sums_are_kept_for_exactly_these_tables() -> None:
    assert set(yaml.safe_load(SUMS_FILE.read_text())) == set(ALL)


@pytest.mark.parametrize("family_id", sorted(CAPACITY))
def test_sizes_rise_and_capacity_rises_with_size(family_id: str) -> None:
    found = CAPACITY[family_id]
    sizes = [row["csa"] for row in found.rows]
    assert sizes == sorted(set(sizes))
    for column in _columns(found):
        for smaller, larger in _pairs(found, column):
            assert smaller[column] < larger[column], (column, larger["csa"])


@pytest.mark.parametrize("family_id", sorted(CAPACITY))
def test_freer_methods_carry_more(family_id: str) -> None:
    for row in CAPACITY[family_id].rows:
        for phases in ("1ph", "3ph"):
            held = [row[f"{m}_{phases}"] for m in "ABCE" if f"{m}_{phases}" in row]
            assert held == sorted(set(held)), row["csa"]


@pytest.mark.parametrize("family_id", sorted(CAPACITY))
def test_three_loaded_conductors_carry_less_than_two(family_id: str) -> None:
    checked = 0
    for row in CAPACITY[family_id].rows:
        for method in ("A", "B", "C", "D", "E", "any"):
            one, three = row.get(f"{method}_1ph"), row.get(f"{method}_3ph")
            if one and three and (family_id, row["csa"]) not in FUSE_SIZED:
                assert 0.78 <= three / one <= 0.97, (method, row["csa"])
                checked += 1
    assert checked or family_id in {"twin_earth", "flex_heat"}


@pytest.mark.parametrize("family_id", sorted(DROP))
def test_drop_agrees_with_conductor_resistance(family_id: str) -> None:
    # r = 2 or sqrt 3 times IEC 60228 resistance at working temperature, below 150 mm2
    one = family(family_id)
    klass = 5 if one.conductor_class == 5 else 2
    for row in DROP[family_id].rows:
        if row["csa"] >= 150:
            continue
        hot = resistance_20c(row["csa"], klass=klass).value * (230 + one.insulation_c) / 250
        for column in _columns(DROP[family_id]):
            if column not in row:
                continue
            cell = row[column]
            r = cell if isinstance(cell, int | float) else cell["r"]
            conductors = 2 if column.endswith("1ph") else math.sqrt(3)
            within = 0.075 if (family_id, row["csa"]) in R_KNOWN_HIGH else 0.07
            assert r == pytest.approx(conductors * hot, rel=within), (column, row["csa"])


@pytest.mark.parametrize("family_id", sorted(DROP))
def test_drop_falls_with_size_and_z_is_the_root_of_r_and_x(family_id: str) -> None:
    found = DROP[family_id]
    for column in _columns(found):
        for smaller, larger in _pairs(found, column):
            a, b = smaller[column], larger[column]
            a, b = (c if isinstance(c, int | float) else c["r"] for c in (a, b))
            assert a > b, (column, larger["csa"])
        for row in found.rows:
            cell = row.get(column)
            if cell is None or isinstance(cell, int | float):
                continue
            if (family_id, row["csa"], column) not in Z_KNOWN_OFF:
                root = math.hypot(cell["r"], cell["x"])
                assert cell["z"] == pytest.approx(root, rel=0.035), (column, row["csa"])


def test_armour_area_times_resistance_is_that_of_steel() -> None:
    rows = dict(family_tables("dimensions"))["swa"].rows
    assert len(rows) == 54
    for row in rows:
        assert 145 <= row["armour_mm2"] * row["armour_r20"] <= 172, (row["cores"], row["csa"])


def test_armoured_cable_grows_with_size_and_cores() -> None:
    rows = dict(family_tables("dimensions"))["swa"].rows
    for cores in (2, 3, 4, 5):
        same = [r for r in rows if r["cores"] == cores]
        for smaller, larger in itertools.pairwise(same):
            assert smaller["mass_kg_km"] < larger["mass_kg_km"]
            # two-core 25 mm2 carries the larger of two printed diameters
            if (cores, smaller["csa"]) != (2, 25):
                assert smaller["overall_mm"] < larger["overall_mm"]


def test_each_gland_is_the_smallest_that_takes_the_cable_over_all_and_over_its_bedding() -> None:
    # nominal diameters of BS 5467 cable; usual ranges of glands (memory), one rule for every size
    ranges = table("termination", "gland_ranges").rows
    chart = {row["csa"]: row for row in table("termination", "gland_by_cable").rows}
    for row in dict(family_tables("dimensions"))["swa"].rows:
        smallest = next(
            gland["size"]
            for gland in ranges
            if row["under_armour_mm"] < gland["under_armour_max"]
            and gland["overall_min"] <= row["overall_mm"] < gland["overall_max"]
        )
        assert row["gland"] == smallest, (row["cores"], row["csa"])
        printed = chart.get(row["csa"], {}).get(f"c{row['cores']}", smallest)
        doubted = "check the cable diameter on site" in row.get("doubt", "")
        assert doubted or printed == smallest, (row["cores"], row["csa"])
        is_printed = f"c{row['cores']}" in chart.get(row["csa"], {})
        word = "seen" if is_printed and printed == smallest else "memory"
        assert row["cells"]["gland"] == word, (row["cores"], row["csa"])


def test_a_thicker_cable_of_one_build_never_has_the_smaller_gland() -> None:
    order = [row["size"] for row in table("termination", "gland_ranges").rows]
    rows = dict(family_tables("dimensions"))["swa"].rows
    for one, other in itertools.permutations(rows, 2):
        if (
            one["overall_mm"] <= other["overall_mm"]
            and one["under_armour_mm"] <= other["under_armour_mm"]
        ):
            assert order.index(one["gland"]) <= order.index(other["gland"]), (one, other)


@pytest.mark.parametrize(("name", "curve"), [("mcb_b", "B"), ("mcb_c", "C"), ("mcb_d", "D")])
def test_breaker_zs_follows_from_the_tripping_band(name: str, curve: str) -> None:
    # BS 7671 411.4.4: Zs = 0.95 x 230 / Ia; BS EN 60898-1 Table 2 for the band
    band = table("devices", "mcb_instantaneous").row(type=curve)
    for row in table("max_zs", name).rows:
        exact = 0.95 * 230 / (band["upper_x_in"] * row["in_a"])
        assert row["zs_04"] == pytest.approx(exact, abs=0.0051)
        # the published 80 % column starts from the rounded Zs; ours is never the larger
        ours = measured_limit_ohm(exact)
        assert -1e-9 <= row["zs_04_meas80"] - ours <= 0.0101


@pytest.mark.parametrize("name", ["bs88_2", "bs88_3", "bs3036", "bs1362"])
def test_fuse_zs_goes_with_the_tabulated_current(name: str) -> None:
    currents = {row["in_a"]: row for row in table("devices", f"fuse_{name}").rows}
    rows = table("max_zs", name).rows
    assert len(rows) == len(currents)
    for row in rows:
        for zs, current in (("zs_04", "i_0_4s"), ("zs_5", "i_5s")):
            if zs in row:
                held = currents[row["in_a"]][current]
                assert 0.95 * 230 / row[zs] == pytest.approx(held, rel=0.005)


def test_loop_resistances_are_sums_of_class_two_conductors() -> None:
    for row in table("conductors", "r1r2").rows:
        exact = resistance_20c(row["line"]).value + resistance_20c(row["cpc"]).value
        assert row["r1_plus_r2"] == pytest.approx(exact, abs=1e-6)
        assert row["at_70C"] == pytest.approx(1.2 * exact, abs=1e-3)


def test_trunking_terms_are_45_percent_of_the_inside() -> None:
    # On-Site Guide Appendix E: space factor 45 %, with 1 to 1.4 mm walls
    for row in table("containment", "trunking_factors").rows:
        width, depth = map(float, row["size"].split("x"))
        assert 0.92 * 0.45 * width * depth <= row["term"] <= 0.45 * width * depth, row["size"]


def test_grouping_falls_with_the_count() -> None:
    for name in ("Cg_4C1", "Cg_4C4", "Cg_4C5"):
        for row in table("factors", name).rows:
            assert list(row["factors"]) == sorted(row["factors"], reverse=True)


def test_k_of_a_family_is_that_of_the_tables_of_k() -> None:
    # BS 7671 Tables 43.1, 54.2, 54.3 and 54.4
    from asfitted.reference.cable_family import k_values  # noqa: PLC0415 - only here

    for family_id, insulation, short in (
        ("swa", "thermosetting 90", "ts90"),
        ("swa_lsf", "thermosetting 90", "ts90"),
        ("swa_pvc", "thermoplastic 70", "tp70"),
        ("twin_earth", "thermoplastic 70", "tp70"),
    ):
        k = k_values(family_id)
        line = table("fault", "k_live").row(material="copper", insulation=insulation)
        assert k["line"] == line["k_le_300"]
        assert k["core"] == table("fault", "k_pe_in_cable").row(material="copper")[short]
        assert k["separate"] == table("fault", "k_pe_separate").row(material="copper")[short]
        if "armour" in k:
            assert k["armour"] == table("fault", "k_pe_armour").row(material="steel")[short]
