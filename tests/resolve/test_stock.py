"""Stock and prices: read from the job or a file beside it, and refused with a hint when wrong."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from asfitted.calculate.calculate import calculate
from asfitted.errors import SpecError
from asfitted.resolve.resolve_job import resolve
from asfitted.spec.load_job import load_job

if TYPE_CHECKING:
    from pathlib import Path

    from asfitted.calculate.materials.items import ItemCuts
    from asfitted.resolve.installation import Installation

JOB = """asfitted: 1
job: {number: J1, title: Shed}
supply: {system: TN-C-S, phases: 1, voltage: 230 V}
rooms:
  Shed:
    height: 2.4 m
    walls: {A: {length: 8 m}, B: {length: 3 m}, C: {length: 8 m}, D: {length: 3 m}}
boards:
  CU1: {at: "wall A, 1.0 m along, 1.5 m up", size: 300 x 300, ways: 4, phases: 1, fed from: supply}
containment:
  T1: {is: perforated tray, size: 100 x 25, for: power, level: 2.1 m T/O, run: [A 0.5 m, A 7.9 m]}
circuits:
  - way: CU1/1
    name: Bench sockets
    device: RCBO B20 30 mA type A 6 kA
    cable: T&E 2.5 mm2
    points:
      - {tag: S1, is: 13 A socket, at: "wall A, 5.0 m along, 1.0 m up"}
"""


def job(folder: Path, more: str = "") -> Installation:
    path = folder / "job.yaml"
    path.write_text(JOB + more)
    return resolve(load_job(path))


def cuts(installation: Installation, item: str) -> ItemCuts:
    off = calculate(installation).take_off
    assert off is not None
    return next(one for one in off.cuts if one.item == item)


def test_a_bar_in_hand_saves_one(tmp_path: Path) -> None:
    # by hand: 7.4 m is two bars and 1.4 m; the 1.5 m in hand gives the rest
    tray = "100 × 25 perforated tray"
    assert cuts(job(tmp_path), tray).ordered_mm == 9000
    more = "stock: {in hand: [{is: perforated tray, size: 100 x 25, length: 1.5 m}]}\n"
    found = cuts(job(tmp_path, more), tray)
    assert found.ordered_mm == 6000
    assert [(c.stock_mm, c.rest_mm) for c in found.from_hand] == [(1500, 100)]


def test_a_saw_cut_takes_its_width(tmp_path: Path) -> None:
    piece = "{is: perforated tray, size: 100 x 25, length: 1401 mm}"
    more = f"stock: {{saw cut: 3 mm, in hand: [{piece}]}}\n"
    found = cuts(job(tmp_path, more), "100 × 25 perforated tray")
    # 1400 out of 1401 leaves no room for a cut of 3 beside it, but the rest is only 1: it is sawn
    assert found.ordered_mm == 6000
    assert found.from_hand[0].rest_mm == 0


def test_lengths_to_order_and_reels_in_hand_are_those_given(tmp_path: Path) -> None:
    more = """stock:
  in hand: [{cable: T&E 2.5 mm2, length: 30 m}]
  to order: [{is: perforated tray, size: 100 x 25, length: 2.5 m}]
"""
    installation = job(tmp_path, more)
    cable = cuts(installation, "2.5/1.5 mm² PVC twin and earth")
    assert (cable.ordered_mm, len(cable.from_hand)) == (0, 1)
    # 7.4 m of 2.5 m bars: two whole and 2.4
    assert cuts(installation, "100 × 25 perforated tray").ordered_mm == 7500


def test_a_stock_of_labels_may_stand_in_the_file_that_jobs_share(tmp_path: Path) -> None:
    (tmp_path / "stock.yaml").write_text(
        "labels: {width: 62 mm, height: 31 mm, top margin: 9 mm}\n"
    )
    shared = job(tmp_path, "stock file: stock.yaml\n").stock.labels
    assert (shared.width_mm, shared.height_mm, shared.top_margin_mm) == (62.0, 31.0, 9.0)
    assert shared.is_cut_already
    own = job(tmp_path, "stock file: stock.yaml\nlabels: {columns: 2}\n").stock.labels
    assert (own.columns, own.width_mm, own.is_cut_already) == (2, None, False), "its own come first"


def test_stock_and_prices_may_stand_in_files_beside_the_job(tmp_path: Path) -> None:
    (tmp_path / "stock.yaml").write_text("in hand: [{cable: Cat6, length: 40 m, count: 2}]\n")
    (tmp_path / "prices.yaml").write_text("currency: GBP\nitems: {Cat6: 0.30 per m}\n")
    stock = job(tmp_path, "stock file: stock.yaml\nprices: prices.yaml\n").stock
    assert [(p.family, p.length_mm, p.count) for p in stock.in_hand] == [("cat6", 40000, 2)]
    assert (stock.currency, str(stock.prices["cat6"].amount)) == ("GBP", "0.30")


@pytest.mark.parametrize(
    ("more", "message", "hint"),
    [
        ("stock: {in hand: [{length: 3 m}]}", "either a cable or a kind", 'write "cable: SWA'),
        ("stock: {in hand: [{cable: SWB 4c, length: 3 m}]}", "is not known", "did you mean"),
        ("stock: {in hand: [{is: tray, size: 5, length: 3 m}]}", "is not known", "perforated tray"),
        ("stock: {in hand: [{is: wire basket, length: 3 m}]}", "size of the", "225 x 25"),
        ("stock: {in hnd: []}", '"in hnd"', "in hand"),
        ("stock file: none.yaml", "is not there", ""),
        ("prices: none.yaml", "is not there", ""),
        ("labels: {columns: many}", "many", ""),
        ("labels: {left magin: 9 mm}", "left magin", "left margin"),
    ],
)
def test_what_is_wrong_is_told_with_a_hint(
    tmp_path: Path, more: str, message: str, hint: str
) -> None:
    with pytest.raises(SpecError) as told:
        job(tmp_path, more + "\n")
    problem = told.value.problems[0]
    assert message in problem.message
    assert hint in problem.hint
    assert problem.place is not None
    assert problem.place.line == len(JOB.splitlines()) + 1


def test_a_price_without_its_unit_is_refused_in_its_own_file(tmp_path: Path) -> None:
    (tmp_path / "prices.yaml").write_text("items:\n  Cat6: 0.30\n")
    with pytest.raises(SpecError) as told:
        job(tmp_path, "prices: prices.yaml\n")
    problem = told.value.problems[0]
    assert problem.place is not None
    assert (problem.place.file, problem.place.line) == ("prices.yaml", 2)
    assert "each" in problem.hint
