"""Factors of soil, depth, insulation, harmonics and fuses along a route, on paper.

Table values as the reference holds them: BS 7671 Tables 4B3, 4B4, 52.2, 4D2A, 4D4A (memory).
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from hand_job import CLIPPED, HandJob, Run, device, known, point, route

from asfitted.calculate.cable_rating import cable_use, rate
from asfitted.calculate.calculate import calculate
from asfitted.calculate.containment.leg_groups import LegGroup, companions
from asfitted.calculate.light_cables import lightly_loaded, sharing
from asfitted.calculate.results import RouteLeg
from asfitted.calculate.routes.cable_routes import find_paths
from asfitted.check.finding import Passed
from asfitted.check.registry import all_rules
from asfitted.geometry import Point3
from asfitted.resolve.installation import Basis, Containment, Device, State
from asfitted.resolve.resolve_job import resolve
from asfitted.spec.load_job import load_job

SPECS = sorted((Path(__file__).parents[2] / "specs").glob("*.yaml"))
ZERO = Point3(0, 0, 0)


def _buried(soil: float | None, depth_mm: float | None, breaker: Device) -> tuple[float, float]:
    """Return Iz and the product of factors of 10 mm2 armoured cable in a buried duct."""
    duct = Containment(
        "U1", "buried duct", "duct", 100, 100, ("power",), State.NEW, 0, "C/L", (ZERO,), (), 20,
        Basis.DECLARED, depth_mm, "yard", soil,
    )  # fmt: skip
    leg = RouteLeg("declared", "U1/1", "U1", "", "U1", ZERO, ZERO, 20000, "D", "buried duct")
    job = HandJob()
    job.board("DB1")
    job.circuit("DB1/1TP", breaker, [], [Run("P", [(20, CLIPPED, 0)])])
    cable = job.cables["DB1/1TP-1"]
    use = cable_use(
        cable, route(cable.tag, (leg,)), [(0, "duct_touching")], device=breaker, loaded=3,
        containment={"U1": duct},
    )  # fmt: skip
    found = rate(use, 10)
    return found.capacity_a, found.factor


def test_soil_and_depth_of_a_buried_duct() -> None:
    # in duct: 1.5 K.m/W 1.10, 1.0 m deep 0.98; buried 0.9: 0.9702
    capacity, factor = _buried(1.5, 1000, device("C40 TP"))
    assert factor == pytest.approx(1.10 * 0.98 * 0.9)
    plain, without = _buried(None, None, device("C40 TP"))
    assert without == pytest.approx(0.9)
    assert capacity == pytest.approx(plain / 0.9 * factor)


def test_rewirable_fuse_on_a_buried_cable() -> None:
    # BS 7671 Appendix 4, 5.1: 0.653 for both
    fuse = Device("30 A BS 3036 TP", "fuse", "BS 3036", 30, "TP")
    assert _buried(None, None, fuse)[1] == pytest.approx(0.653)


def test_rewirable_fuse_is_derated_once_only() -> None:
    """Published example A-01: It at least 44.0 A, 10 mm2 with 57 A; the rule agrees with it."""
    fuse = Device("30 A BS 3036 TP", "fuse", "BS 3036", 30, "TP")
    job = HandJob()
    job.board("DB1")
    run = Run("P1", [(25, CLIPPED, 0)], family="multicore_pvc", cores=4, cpc="core")
    job.circuit("DB1/1TP", fuse, [point("P1", "heating load", load_w=16000)], [run])
    job.cables["DB1/1TP-1"] = replace(job.cables["DB1/1TP-1"], ambient_c=35)
    results = job.results()
    assert results.cables["DB1/1TP-1"].csa_mm2 == 10
    verdicts = all_rules()["OC-03"].check(job.installation(), results)
    assert [type(verdict) for verdict in verdicts] == [Passed]


@pytest.mark.parametrize(("length_mm", "ci"), [(50, 0.88), (200, 0.63), (450, 0.5), (900, 0.5)])
def test_length_in_thermal_insulation(length_mm: float, ci: float) -> None:
    # BS 7671 Table 52.2; flat 2.5 mm2 clipped direct 27 A
    job = HandJob()
    job.board("DB1")
    run = Run("P1", [(5, CLIPPED, 0)], family="twin_earth", cores=2, cpc="core", csa_mm2=2.5)
    job.circuit("DB1/1L1", device("B16 SP"), [point("P1", "heater", load_a=10)], [run])
    cable = next(iter(job.cables.values()))
    job.cables[cable.tag] = replace(cable, insulation_mm=length_mm)
    found = job.results().cables[cable.tag]
    assert found.capacity_a == pytest.approx(27 * ci)
    assert "thermal insulation" in found.governing_section


@pytest.mark.parametrize(
    ("harmonic", "size", "neutral"),
    [(None, 6, None), (20, 10, 23.4), (40, 10, 46.8), (50, 16, 58.5)],
)
def test_published_harmonic_example(
    harmonic: float | None, size: float, neutral: float | None
) -> None:
    """IEC 60364-5-52 Annex E: 39 A, PVC four-core clipped: 6, 10, 10 and 16 mm2."""
    job = HandJob()
    job.board("DB1")
    run = Run("P1", [(5, CLIPPED, 0)], family="multicore_pvc", cores=4, cpc="none")
    load = point("P1", "heater", load_a=39)
    job.circuit("DB1/1TP", device("B40 TP"), [load], [run], third_harmonic_pct=harmonic)
    results = job.results()
    assert results.cables["DB1/1TP-1"].csa_mm2 == size
    found = results.circuits["DB1/1TP"].neutral_a
    assert found == (None if neutral is None else pytest.approx(neutral))


def _group(*company: str) -> tuple[LegGroup, ...]:
    return (
        LegGroup(0, "T1/1", len(company), "bunched", "B", "trunking", 5000, frozenset(company)),
    )


def test_light_cable_counts_for_itself_but_not_for_the_others() -> None:
    groups = {"A": _group("B", "C"), "B": _group("A", "C"), "C": _group("A", "B")}
    found = sharing(groups, frozenset({"C"}))
    assert [found.counted[tag][0][0] for tag in "ABC"] == [1, 1, 2]
    assert [found.ignored[tag][0] for tag in "ABC"] == [1, 1, 0]


@pytest.mark.parametrize("path", SPECS, ids=lambda p: p.stem)
def test_cables_left_out_carry_thirty_per_cent_at_most(path: Path) -> None:
    """BS 7671 Appendix 4, note to Table 4C1; held at the sizes and factors that follow from it."""
    installation = resolve(load_job(path))
    results = calculate(installation)
    groups = companions(installation, find_paths(installation))
    light = lightly_loaded(installation, results, groups)
    for tag in light:
        assert results.cables[tag].design_current_a <= 0.3 * results.cables[tag].capacity_a
    for tag, cable in results.cables.items():
        if not installation.containment or cable.governing_section not in results.sections:
            continue
        leg = next(leg for leg in groups[tag] if leg.where == cable.governing_section)
        counted = cable.group_count - 1
        assert len(leg.company - light) <= counted <= len(leg.company)
        words = next(f.words for f in cable.factors if f.symbol == "Cg")
        assert ("not counted" in words) == (counted < len(leg.company))


def test_ordinary_circuit_has_line_current_in_its_neutral() -> None:
    job = HandJob()
    job.board("DB1")
    job.circuit("DB1/1L1", device("B16 SP"), [point("P1", "heater", load_a=12)], [])
    assert known(job.results().circuits["DB1/1L1"].neutral_a) == 12
