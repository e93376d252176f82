"""Published worked examples, each worked with the functions of asfitted.calculate.

One function per example: it takes the example's inputs and returns its expected names.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import yaml

from asfitted.calculate import (
    adiabatic,
    current_capacity,
    cutting_bound,
    cutting_stock,
    design_current,
    diversity,
    earth_fault_loop,
    fault_current,
    neutral_current,
    ring_final,
    voltage_drop,
)
from asfitted.calculate.containment import containment_fill
from asfitted.calculate.data import dc_supply, lens, poe, storage
from asfitted.calculate.routes import branched_trench
from asfitted.calculate.routes.containment_runs import RunsByPlace
from asfitted.calculate.routes.route_graph import Edge, Node, RouteGraph, Span
from asfitted.calculate.routes.route_search import Reached, Spread
from asfitted.geometry import Point, Point3
from asfitted.reference.diversity import floor_area_m2
from asfitted.reference.factors import third_harmonic

FILE = Path(__file__).parent / "examples" / "worked_examples.yaml"
EXAMPLES: dict[str, dict[str, Any]] = {
    example["id"]: example for example in yaml.safe_load(FILE.read_text())["examples"]
}
NETWORKS: list[dict[str, Any]] = yaml.safe_load(FILE.read_text())["networks"]

# Nothing here may be added to this list without a reason that says where it is worked.
NOT_YET: dict[str, str] = {}


def _first_at_least(required: float, sizes: list[float]) -> float:
    return min(size for size in sizes if size >= required)


def a_01(i: dict[str, Any]) -> dict[str, Any]:
    ib = design_current.three_phase_current_a(i["load"], line_voltage_v=i["line_voltage"])
    factor = current_capacity.combined_factor(ca=i["Ca"], cc=i["Cf_BS3036"])
    it = current_capacity.required_capacity_a(i["In"], factor=factor)
    rows = list(i["tabulated_capacity_method_C_3ph_A"].items())
    vd = voltage_drop.voltage_drop_v(i["mV_per_A_m_10mm2"], current_a=ib, length_m=i["length"])
    size = current_capacity.smallest_size(it, capacities_a=rows)
    return {"Ib": ib, "It_min": it, "size": size, "Vd": vd}


def a_02(i: dict[str, Any]) -> dict[str, Any]:
    ib = design_current.single_phase_current_a(i["load"], voltage_v=i["voltage"])
    factor = current_capacity.combined_factor(ca=i["Ca"], cg=i["Cg"])
    it = current_capacity.required_capacity_a(i["In"], factor=factor)
    rows = list(i["tabulated_capacity_method_A_1ph_A"].items())
    vd = voltage_drop.voltage_drop_v(i["mV_per_A_m_10mm2"], current_a=ib, length_m=i["length"])
    size = current_capacity.smallest_size(it, capacities_a=rows)
    return {"Ib": ib, "It_min": it, "size": size, "Vd": vd}


def a_03(i: dict[str, Any]) -> dict[str, Any]:
    k = current_capacity.combined_factor(ca=i["K1_40degC_XLPE"], cg=i["K2_grouping"])
    return {"K": k, "I_fictitious": current_capacity.required_capacity_a(i["In"], factor=k)}


def b_01(i: dict[str, Any]) -> dict[str, Any]:
    ib = design_current.single_phase_current_a(i["load"], voltage_v=i["voltage"])
    vd = voltage_drop.voltage_drop_v(i["mV_per_A_m"], current_a=ib, length_m=i["length"])
    return {"Ib": ib, "Vd": vd, "Vd_pct": voltage_drop.drop_percent(vd, nominal_v=i["voltage"])}


def b_02(i: dict[str, Any]) -> dict[str, Any]:
    run = {"current_a": i["current"], "length_m": i["length"]}
    return {
        "Vd": voltage_drop.voltage_drop_v(i["mV_per_A_m_35mm2"], **run),
        "mV_max_for_limit": voltage_drop.greatest_mv_per_a_m(i["limit_inverse"], **run),
    }


def b_05(i: dict[str, Any]) -> dict[str, Any]:
    # V/A/km is mV/A/m
    line = voltage_drop.voltage_drop_v(
        i["line_drop_coefficient"],
        current_a=i["line_current"],
        length_m=1000 * i["line_length"],
    )
    lighting = voltage_drop.voltage_drop_v(
        i["lighting_coefficient"],
        current_a=i["lighting_current"],
        length_m=1000 * i["lighting_length"],
    )
    to_neutral = voltage_drop.line_to_neutral_v(line)
    return {
        "line_drop_ll": line,
        "line_drop_ln": to_neutral,
        "lighting_drop": lighting,
        "total": to_neutral + lighting,
        "total_pct_of_230": voltage_drop.drop_percent(to_neutral + lighting, nominal_v=230),
    }


def b_06(i: dict[str, Any]) -> dict[str, Any]:
    vd = voltage_drop.voltage_drop_v(i["mV_per_A_m"], current_a=i["current"], length_m=i["length"])
    limit = i["limit_pct"] / 100 * i["line_voltage"]
    passes = voltage_drop.drop_percent(vd, nominal_v=i["line_voltage"]) <= i["limit_pct"]
    return {"Vd": vd, "limit": limit, "passes": passes}


def c_01(i: dict[str, Any]) -> dict[str, Any]:
    r1r2 = earth_fault_loop.r1_plus_r2_ohm(
        r1_mohm_m=i["r1"],
        r2_mohm_m=i["r2"],
        length_m=i["length"],
        temperature_factor=i["temp_factor"],
    )
    zs = earth_fault_loop.loop_impedance_ohm(i["Ze"], r1_plus_r2_ohm=r1r2)
    per_m = 1000 * r1r2 / i["length"] / i["temp_factor"]
    return {"R1R2_per_m": per_m, "R1R2": r1r2, "Zs": zs, "passes": zs <= i["Zs_max"]}


def c_02(i: dict[str, Any]) -> dict[str, Any]:
    return {"Zs": earth_fault_loop.loop_impedance_from_parts_ohm(complex(i["R"], i["X"]))}


def c_05(i: dict[str, Any]) -> dict[str, Any]:
    return {
        "lengths": [
            earth_fault_loop.greatest_length_m(i["Z_target"], ohm_per_m=per_m)
            for per_m in i["ohm_per_m"].values()
        ]
    }


def c_07(i: dict[str, Any]) -> dict[str, Any]:
    def limits(ratings: list[float], multiple: float) -> list[float]:
        return [
            earth_fault_loop.maximum_zs_ohm(multiple * a, u0_v=i["U0"], c_min=i["Cmin"])
            for a in ratings
        ]

    return {"Zs_B": limits(i["type_B"], 5), "Zs_C": limits(i["type_C"], 10)}


def d_01(i: dict[str, Any]) -> dict[str, Any]:
    current = earth_fault_loop.earth_fault_current_a(i["Zs"], u0_v=i["U0"], c=1.0)
    least = adiabatic.minimum_csa_mm2(current, time_s=i["t"], k=i["k"])
    return {"I": current, "S_min": least, "size": _first_at_least(least, i["standard_sizes"])}


def d_03(i: dict[str, Any]) -> dict[str, Any]:
    return {"S_min": adiabatic.minimum_csa_mm2(i["I"], time_s=i["t"], k=i["k"])}


def d_05(i: dict[str, Any]) -> dict[str, Any]:
    return {"k2S2": [adiabatic.withstand_energy_a2s(s, k=i["k"]) / 1e6 for s in i["sizes"]]}


def e_01(i: dict[str, Any]) -> dict[str, Any]:
    expected = ring_final.cross_connected_ohm(i["r1"], second_end_to_end_ohm=i["r2"])
    return {
        "expected_r1r2_quarter": expected,
        "expected_r1rn_quarter": ring_final.cross_connected_ohm(
            i["r1"], second_end_to_end_ohm=i["rn"]
        ),
        "measured_over_expected": i["measured_R1R2"] / expected,
    }


def e_02(i: dict[str, Any]) -> dict[str, Any]:
    both = ring_final.length_from_reading_m(i["r1"] + i["r2"], mohm_m=i["mohm_2_5_plus_1_5"])
    line = ring_final.length_from_reading_m(i["r1"], mohm_m=i["mohm_2_5"])
    return {"L_from_r1r2": both, "L_from_r1": line}


def e_03(i: dict[str, Any]) -> dict[str, Any]:
    return {
        "Vd_radial": voltage_drop.voltage_drop_v(
            i["mV"], current_a=i["current"], length_m=i["length"]
        ),
        "Vd_ring": voltage_drop.ring_voltage_drop_v(
            i["mV"], current_a=i["current"], ring_length_m=i["length"]
        ),
    }


def f_01(i: dict[str, Any]) -> dict[str, Any]:
    z = fault_current.transformer_impedance_ohm(
        i["S"], line_voltage_v=i["U20"], uk_percent=i["usc"]
    )
    isc = fault_current.three_phase_fault_a(z, line_voltage_v=i["U20"], c=1.0)
    rated = fault_current.transformer_current_a(i["S"], line_voltage_v=i["U20"])
    return {"In": rated, "Isc": isc / 1000}


def f_02(i: dict[str, Any]) -> dict[str, Any]:
    u = i["U"]
    source = fault_current.source_impedance_from_power_ohm(i["source"], line_voltage_v=u)
    transformer = fault_current.transformer_impedance_ohm(
        i["transformer"], line_voltage_v=u, uk_percent=i["usc"]
    )
    result = {"Z_source": 1000 * abs(source), "Z_transformer": 1000 * abs(transformer)}
    total = source + transformer
    steps = [("I_LV_terminals", None), ("I_MSB", "cable_MSB"), ("I_SMDB", "cable_SMDB")]
    for name, cable in [*steps, ("I_DB", "cable_DB")]:
        if cable:
            r, x = i[cable]
            total += fault_current.cable_impedance_ohm(r, length_m=1, x_mohm_m=x)
        result[name] = fault_current.three_phase_fault_a(total, line_voltage_v=u, c=1.0) / 1000
    return result


def f_05(i: dict[str, Any]) -> dict[str, Any]:
    line, neutral = complex(i["Z_line"]), complex(i["Z_neutral"])
    u0 = 230.0
    three = fault_current.three_phase_fault_a(line, line_voltage_v=u0 * 3**0.5, c=1.0)
    one = fault_current.loop_fault_a(line, return_ohm=neutral, u0_v=u0, c=1.0)
    return {"ratio": three / one}


def f_08(i: dict[str, Any]) -> dict[str, Any]:
    z = fault_current.source_impedance_from_power_ohm(
        i["S"], line_voltage_v=1000 * i["U"], x_over_r=i["X_over_R"]
    )
    return {"Z": abs(z), "R": z.real}


def g_01(i: dict[str, Any]) -> dict[str, Any]:
    full = design_current.single_phase_current_a(i["P"], voltage_v=i["U"])
    less = diversity.diversified_current_a("cooking", premises="dwelling", currents_a=[full])
    return {"I_full": full, "I_diversified": less}


def g_02(i: dict[str, Any]) -> dict[str, Any]:
    floors = i["floors_kVA"]
    demand = diversity.simultaneous_demand(floors, factor=i["ks_25"])
    upper = diversity.simultaneous_demand(floors[3:], factor=i["ks_10"])
    amps = design_current.apparent_power_current_a
    return {
        "installed": diversity.simultaneous_demand(floors, factor=1.0),
        "demand": demand,
        "I_ground": amps(demand, line_voltage_v=i["U"]),
        "I_third_floor": amps(upper, line_voltage_v=i["U"]),
    }


def g_03(i: dict[str, Any]) -> dict[str, Any]:
    def demand(factor: float) -> float:
        return diversity.main_demand(
            i["feeders"], demand_factors=i["demand_factor"], diversity=factor
        )

    return {"sum_of_demands": demand(1.0), "main_demand": demand(i["diversity"])}


def h_01(i: dict[str, Any]) -> dict[str, Any]:
    total = containment_fill.total_term([(i["count"], i["cable_factor_4mm2_short"])])
    return {
        "total": total,
        "conduit": containment_fill.smallest_by_term(total, terms=i["conduit_factors"]),
    }


def h_03(i: dict[str, Any]) -> dict[str, Any]:
    cables = list(zip(i["counts"], i["factors_as_used"], strict=True))
    spare = containment_fill.total_term(cables, spare_percent=i["spare"])
    return {
        "total": containment_fill.total_term(cables),
        "with_spare": spare,
        "trunking": containment_fill.smallest_by_term(spare, terms=i["trunking_factors"]),
    }


def h_05(i: dict[str, Any]) -> dict[str, Any]:
    return {
        "count": containment_fill.count_by_term(i["conduit_factor"], cable_term=i["cable_factor"])
    }


def h_06(i: dict[str, Any]) -> dict[str, Any]:
    total = containment_fill.total_term(list(zip(i["counts"], i["factors"], strict=True)))
    terms = i["conduit_factors_6m_one_bend"]
    return {"total": total, "conduit": containment_fill.smallest_by_term(total, terms=terms)}


def i_01(i: dict[str, Any]) -> dict[str, Any]:
    return {"storage": storage.storage_gb(i["bitrate"], days=i["days"], cameras=i["cameras"])}


def i_03(i: dict[str, Any]) -> dict[str, Any]:
    day_mb = 1000 * storage.storage_gb(i["bitrate"], days=1)
    all_mb = 1000 * storage.storage_gb(i["bitrate"], days=i["days"], cameras=i["cameras"])
    return {
        "per_day_MB": day_mb,
        "per_day_GiB": storage.binary_from_decimal(day_mb),
        "total": storage.binary_from_decimal(all_mb),
    }


def i_04(i: dict[str, Any]) -> dict[str, Any]:
    return {
        "f": lens.focal_length_mm(
            sensor_width_mm=i["sensor"], distance_m=i["distance"], width_m=i["width"]
        )
    }


def i_06(i: dict[str, Any]) -> dict[str, Any]:
    return {
        "f": lens.focal_length_mm(
            sensor_width_mm=i["sensor"],
            distance_m=i["distance"] / 1000,
            width_m=i["width"] / 1000,
        )
    }


def i_08(i: dict[str, Any]) -> dict[str, Any]:
    return {"mm_per_px": [lens.mm_per_pixel(d) for d in i["classes"].values()]}


def i_10(i: dict[str, Any]) -> dict[str, Any]:
    def left(values: list[float]) -> float:
        power, current, resistance = values
        return poe.device_power_w(power, current_a=current, channel_ohm=resistance)

    return {"pd_type1": left(i["type1"]), "pd_type2": left(i["type2"])}


def i_12(i: dict[str, Any]) -> dict[str, Any]:
    loops = [
        dc_supply.loop_resistance_ohm(100 * i["rho"] / size, length_m=i["length"])
        for size in i["sizes"]
    ]
    return {
        "R_10": loops[0],
        "V_load": [
            dc_supply.voltage_at_load_v(12.0, current_a=i["I"], loop_ohm=loop) for loop in loops
        ],
    }


def i_14(i: dict[str, Any]) -> dict[str, Any]:
    drops = []
    for length in i["lengths"]:
        loop = dc_supply.loop_resistance_ohm(100 * i["ohm_per_m"], length_m=length)
        drops.append(24.0 - dc_supply.voltage_at_load_v(24.0, current_a=i["I"], loop_ohm=loop))
    return {"Vd": drops}


def j_01(i: dict[str, Any]) -> dict[str, Any]:
    u0 = i["UL"] / 3**0.5
    currents = [
        design_current.single_phase_current_a(p, power_factor=i["pf"], voltage_v=u0) for p in i["P"]
    ]
    return {"I": currents, "IN": neutral_current.neutral_current_a(*currents)}


def j_04(i: dict[str, Any]) -> dict[str, Any]:
    required = neutral_current.harmonic_sizing_current_a(i["I"], third_harmonic_percent=i["third"])
    _, on_neutral = third_harmonic(i["third"])
    return {"basis": "neutral current" if on_neutral else "line current", "I_required": required}


def j_05(i: dict[str, Any]) -> dict[str, Any]:
    required = neutral_current.harmonic_sizing_current_a(i["I"], third_harmonic_percent=i["third"])
    rows = [(6, i["capacity_6mm2"]), (10, i["capacity_10mm2"])]
    return {
        "I_required": required,
        "size": current_capacity.smallest_size(required, capacities_a=rows),
    }


def j_07(i: dict[str, Any]) -> dict[str, Any]:
    return {"IN": neutral_current.neutral_current_a(*i["I"])}


def k_01(i: dict[str, Any]) -> dict[str, Any]:
    return {"L": voltage_drop.greatest_length_m(i["mV"], current_a=i["I"], limit_v=i["limit"])}


def k_04(i: dict[str, Any]) -> dict[str, Any]:
    length = 1000 * i["L"]
    run = voltage_drop.voltage_drop_v(i["coef_run"], current_a=i["I_run"], length_m=length)
    start = voltage_drop.voltage_drop_v(i["coef_start"], current_a=i["I_start"], length_m=length)
    board = i["board_drop"] * i["board_current_start"] / 1000
    percent = voltage_drop.drop_percent
    return {
        "Vd_run": run + i["board_drop"],
        "pct_run": percent(run + i["board_drop"], nominal_v=i["UL"]),
        "board_start": board,
        "Vd_start": start + board,
        "pct_start": percent(start + board, nominal_v=i["UL"]),
    }


def k_05(i: dict[str, Any]) -> dict[str, Any]:
    return {
        "area": [
            floor_area_m2("ring", *i["ring"]).value,
            floor_area_m2("radial", *i["radial_32"]).value,
            floor_area_m2("radial", *i["radial_20"]).value,
        ]
    }


def k_06(i: dict[str, Any]) -> dict[str, Any]:
    vd = voltage_drop.voltage_drop_v(i["mV_3ph"], current_a=i["I"], length_m=i["L"])
    return {"Vd": vd, "pct": voltage_drop.drop_percent(vd, nominal_v=i["UL"])}


def _stock_plan(stock: float, lengths: list[int], demand: list[int]) -> cutting_stock.CutPlan:
    return cutting_stock.cutting_plan(dict(zip(lengths, demand, strict=True)), {round(stock): None})


def l_01(i: dict[str, Any]) -> dict[str, Any]:
    bound, _ = cutting_bound.lower_bound(i["stock"], i["widths"], i["demand"])
    plan = _stock_plan(i["stock"], i["widths"], i["demand"])
    assert plan.is_least
    return {
        "patterns": len(cutting_bound.cutting_patterns(i["stock"], i["widths"])),
        "lp_bound": float(bound),
        "optimum": len(plan.cuts),
    }


def l_03(i: dict[str, Any]) -> dict[str, Any]:
    demand = dict(zip(i["lengths"], i["demand"], strict=True))
    plan = cutting_stock.cutting_plan(demand, i["stock"])
    used = sum(cut.stock == 15 for cut in plan.cuts)
    return {
        "stock_length_used": plan.stock_used,
        "uncut_15m": i["stock"][15] - used,
        "waste": plan.waste,
    }


def l_05(i: dict[str, Any]) -> dict[str, Any]:
    bound, _ = cutting_bound.lower_bound(i["stock"], i["widths"], i["demand"])
    plan = _stock_plan(i["stock"], i["widths"], i["demand"])
    assert plan.is_least
    return {"lp_bound": float(bound), "optimum": len(plan.cuts)}


def l_06(i: dict[str, Any]) -> dict[str, Any]:
    plan = _stock_plan(i["stock"], i["lengths"], i["demand"])
    assert plan.is_least
    return {"optimum": len(plan.cuts)}


def m_04(i: dict[str, Any]) -> dict[str, Any]:
    """Search the graph as if each edge were a run of containment of its length."""
    count = max(max(u, v) for u, v, _ in i["edges"])
    graph = RouteGraph({}, RunsByPlace({}, {}))
    graph.nodes = [Node(str(n), 0.0, Point3(0, 0, 0)) for n in range(1, count + 1)]
    graph.rank = list(range(count))
    graph.edges = [[] for _ in range(count)]
    for u, v, length in i["edges"]:
        for start, end in ((u, v), (v, u)):
            span = Span(f"{start}-{end}", 0.0, length)
            graph.edges[start - 1].append(Edge(span.run, end - 1, span, (), length))
    permitted = frozenset(edge.run for edges in graph.edges for edge in edges)
    spread = Spread(graph, [], permitted, start_node=0)
    far = float("inf")
    distances = [spread.cost_of(Reached(n, 0), far) for n in range(1, count)]
    spans = [part for part in spread.parts_to(Reached(4, 0)) if isinstance(part, Span)]
    return {
        "distances_1_to_2_6": distances,
        "path": "-".join(["1", *(span.run.split("-")[1] for span in spans)]),
    }


def m_01(i: dict[str, Any]) -> dict[str, Any]:
    side = i["side"]
    corners = [Point(0, 0), Point(side, 0), Point(side / 2, side * 3**0.5 / 2)]
    plain = branched_trench.unbranched_trench(corners).length
    least = branched_trench.branched_trench(corners).length
    return {"spanning_tree": plain, "with_junction": least, "ratio": plain / least}


def m_03(i: dict[str, Any]) -> dict[str, Any]:
    corners = [Point(*corner) for corner in i["points"]]
    return {
        "spanning_tree": branched_trench.unbranched_trench(corners).length,
        "with_junctions": branched_trench.branched_trench(corners).length,
    }


WORKED = {
    name.replace("_", "-").upper(): function
    for name, function in list(globals().items())
    if callable(function) and len(name) == 4 and name[1] == "_"
}
WORKED["F-06"] = f_01
