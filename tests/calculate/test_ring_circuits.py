"""Ring final circuits sized and judged whole, on paper."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from hand_job import CLIPPED, CONDUIT, HandJob, Run, device, known, point

from asfitted.calculate.ring_sizing import ring_places
from asfitted.resolve.installation import Device

FLAT: dict[str, Any] = {"family": "twin_earth", "cores": 2, "cpc": "core"}


def _ring(lengths: list[float], breaker: str = "B32 SP", **run: Any) -> HandJob:
    job = HandJob()
    job.board("DB1")
    sockets = [point(f"S{n}", "13 A socket", gangs=2) for n in range(1, len(lengths))]
    ends = [*(p.tag for p in sockets), "DB1"]
    way = run.pop("way", CLIPPED)
    others = run.pop("others", 0)
    facts = {**FLAT, **run}
    runs = [Run(to, [(m, way, others)], **facts) for to, m in zip(ends, lengths, strict=True)]
    job.circuit("DB1/1L1", device(breaker), sockets, runs, use="sockets", ring=True)
    return job


def test_sixty_metre_ring_on_paper() -> None:
    # 2.5/1.5: r1 = 7.41 x 60 = 0.4446, r2 = 12.1 x 60 = 0.726; quarter 0.29265, x 1.2 = 0.35118
    # Zs = 0.15 + 0.351 (published example of ring_r1_plus_r2_ohm); drop 18 x 26 x 60 / 4000 =
    # 7.02 V = 3.05 %
    results = _ring([15, 15, 15, 15]).results()
    circuit = results.circuits["DB1/1L1"]
    ring = circuit.ring
    assert ring is not None
    assert (ring.r1_ohm, ring.rn_ohm, ring.r2_ohm) == pytest.approx((0.4446, 0.4446, 0.726))
    assert ring.quarter_ohm == pytest.approx(0.29265)
    assert known(circuit.zs_ohm) == pytest.approx(0.5012, abs=0.0005)
    assert known(circuit.drop_pct) == pytest.approx(3.052, abs=0.002)
    assert circuit.worst_point == "S2"
    assert ring.ends_a == pytest.approx((16, 16))
    sizes = {cable.csa_mm2 for cable in results.cables.values()}
    assert sizes == {2.5}  # 27 A clipped direct: over 20 A, although under In 32 A
    # at S1, 15 of 60 m: 15 x 45 / 60 = 11.25 m of one cable: 19.51 x 1.2 x 11.25 / 1000
    first = results.cables["DB1/1L1-1"]
    assert known(first.zs_end_ohm) == pytest.approx(0.15 + 0.2634, abs=0.0005)
    # with 26 A at the middle half flows each way: 18 x 13 x 15 / 1000 = 3.51 V
    assert first.drop_to_end_pct == pytest.approx(100 * 3.51 / 230, abs=0.005)


def test_load_near_one_end_loads_the_short_leg() -> None:
    # one twin outlet at 5 of 50 m: 45/50 of 32 A = 28.8 A in the short leg; 27 A is not enough
    results = _ring([5, 45]).results()
    assert results.cables["DB1/1L1-1"].csa_mm2 == 4
    assert any("leg of the ring carries 28.8 A" in t.reason
               for t in results.cables["DB1/1L1-1"].tried)  # fmt: skip


def test_ring_needs_twenty_amps_where_it_lies() -> None:
    # bunch of six in conduit, method B 23 A x 0.57 = 13.1 A: 4 mm2 30 x 0.57 = 17.1, 6: 21.7
    results = _ring([15, 15, 15, 15], way=CONDUIT, others=5).results()
    cable = results.cables["DB1/1L1-1"]
    assert cable.csa_mm2 == 6
    assert any("under Iz min 20 A" in tried.reason for tried in cable.tried)


def test_other_devices_are_held_to_their_rating() -> None:
    # 433.1.204 is for 30 A and 32 A: a ring behind 40 A needs 40 A
    cable = _ring([10, 10, 10], "B40 SP").results().cables["DB1/1L1-1"]
    assert cable.capacity_a >= 40


def test_rewirable_fuse_of_thirty_amps() -> None:
    job = _ring([15, 15, 15, 15])
    fuse = Device("30 A BS 3036", "fuse", "BS 3036", 30, "SP")
    job.circuits["DB1/1L1"] = replace(job.circuits["DB1/1L1"], device=fuse)
    cable = job.results().cables["DB1/1L1-1"]
    assert cable.capacity_a == pytest.approx(cable.tabulated_a * 0.725)
    assert cable.capacity_a >= 20


def test_ring_is_found_and_spurs_are_not_part_of_it() -> None:
    ends = [("B", "1"), ("1", "2"), ("1", "spur"), ("2", "3"), ("3", "B")]
    assert ring_places(ends, "B") == (0, 1, 3, 4)
    assert ring_places(ends[:-1], "B") == ()


def test_spur_adds_its_own_length() -> None:
    job = _ring([15, 15, 15, 15])
    spur = point("X", "13 A socket", gangs=1)
    job.points["X"] = spur
    job._cable("SP", "DB1/1L1", "S2", Run("X", [(10, CLIPPED, 0)], csa_mm2=2.5, **FLAT))
    circuit = job.circuits["DB1/1L1"]
    job.circuits["DB1/1L1"] = replace(
        circuit, cables=(*circuit.cables, "SP"), points=(*circuit.points, "X")
    )
    results = job.results()
    # middle 0.5012 and 10 m of 2.5/1.5 hot: 19.51 x 1.2 x 10 / 1000 = 0.2341 ohm
    assert known(results.circuits["DB1/1L1"].zs_ohm) == pytest.approx(0.7353, abs=0.001)
