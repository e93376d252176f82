"""Ways in true order, the phase of single-pole ways, and boards fed from boards."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from small_job import HEAD, SPECS, resolved, socket_circuit

from asfitted.errors import SpecError
from asfitted.resolve import resolve
from asfitted.spec import load_job

if TYPE_CHECKING:
    from pathlib import Path


def test_every_way_of_every_board_stands_once_in_true_order() -> None:
    job = resolve(load_job(SPECS / "pottery-studio.yaml"))
    names = [way.name for way in job.boards["DB1"].ways]
    three_pole = [f"{n}TP" for n in range(2, 10)]
    single = ["1L1", "1L2", "1L3"]
    assert names == [*single, *three_pole, "10L1", "10L2", "10L3", "11TP", "12TP"]
    words = {way.name: (way.circuit, way.words) for way in job.boards["DB1"].ways}
    assert words["10L1"] == ("DB1/10L1", "")
    assert words["10L2"] == ("", "spare, C16 SP fitted")
    assert words["10L3"] == words["12TP"] == ("", "blank")


def test_every_circuit_is_on_one_way_of_its_board() -> None:
    for spec in sorted(SPECS.glob("*.yaml")):
        job = resolve(load_job(spec))
        on_ways = [way.circuit for b in job.boards.values() for way in b.ways if way.circuit]
        assert sorted(on_ways) == sorted(job.circuits)


def test_single_phase_ways_count_from_one() -> None:
    job = resolve(load_job(SPECS / "community-shed.yaml"))
    ways = job.boards["CU1"].ways
    assert [way.name for way in ways] == [str(n) for n in range(1, 9)]
    assert [way.words for way in ways if not way.circuit] == ["blank", "blank"]


def test_phase_that_is_not_given_goes_to_the_least_loaded_phase(tmp_path: Path) -> None:
    circuits = (
        socket_circuit("DB1/1", "S1")
        + socket_circuit("DB1/1L1", "S2", "load: 10 A, ")
        + socket_circuit("DB1/2L2", "S3", "load: 4 A, ")
        + socket_circuit("DB1/2", "S4", "load: 5 A, ")
        + socket_circuit("DB1/3", "S5", "load: 1 A, ")
    )
    job = resolved(tmp_path, HEAD + "circuits:\n" + circuits)
    # L1 has 10 A and L2 4 A: S1 (16 A by its device) goes to L3, S4 on way 2, whose L2 is taken, to
    # L1 (10 against 16), S5 to L2 (4 against 15 and 16).
    assert [c.tag for c in job.circuits.values()] == [
        "DB1/1L3",
        "DB1/1L1",
        "DB1/2L2",
        "DB1/2L1",
        "DB1/3L2",
    ]
    chosen = [(d.subject, d.value) for d in job.defaults if d.what == "phase"]
    assert chosen == [("DB1/1L3", "L3"), ("DB1/2L1", "L1"), ("DB1/3L2", "L2")]


def test_a_full_way_has_no_pole_to_give(tmp_path: Path) -> None:
    circuits = "".join(socket_circuit(f"DB1/1L{n}", f"S{n}") for n in (1, 2, 3))
    with pytest.raises(SpecError, match="way DB1/1 has no free pole"):
        resolved(tmp_path, HEAD + "circuits:\n" + circuits + socket_circuit("DB1/1", "S4"))


@pytest.mark.parametrize(
    ("first", "second"), [("DB1/1TP", "DB1/1L2"), ("DB1/1L2", "DB1/1TP"), ("DB1/1TP", "DB1/1TPN")]
)
def test_a_pole_is_given_once(tmp_path: Path, first: str, second: str) -> None:
    circuits = socket_circuit(first, "S1") + socket_circuit(second, "S2")
    with pytest.raises(SpecError, match=r"is taken already: S1"):
        resolved(tmp_path, HEAD + "circuits:\n" + circuits)


def board(tag: str, fed_from: str) -> str:
    return (
        f'  {tag}: {{at: "wall A, 3.0 m along, 1.5 m up", ways: 4, phases: 3, '
        f"fed from: {fed_from}}}\n"
    )


def feed(way: str, feeds: str) -> str:
    return f"  - {{way: {way}, name: feed, device: C40 TP, cable: SWA 4c, feeds: {feeds}}}\n"


def test_a_board_that_feeds_itself_is_refused(tmp_path: Path) -> None:
    text = HEAD + board("DB2", "DB3/1TP") + board("DB3", "DB2/1TP") + "circuits:\n"
    with pytest.raises(SpecError, match="DB2 feeds itself: DB2 - DB3 - DB2"):
        resolved(tmp_path, text + feed("DB2/1TP", "DB3") + feed("DB3/1TP", "DB2"))


def test_a_chain_of_boards_is_taken(tmp_path: Path) -> None:
    text = HEAD + board("DB2", "DB1/1TP") + board("DB3", "DB2/1TP") + "circuits:\n"
    job = resolved(tmp_path, text + feed("DB1/1TP", "DB2") + feed("DB2/1TP", "DB3"))
    assert {tag: b.fed_by for tag, b in job.boards.items()} == {
        "DB1": "supply",
        "DB2": "DB1/1TP",
        "DB3": "DB2/1TP",
    }
    assert [(c.from_end, c.to_end) for c in job.cables.values()] == [("DB1", "DB2"), ("DB2", "DB3")]
    assert {c.use for c in job.circuits.values()} == {"board"}


def test_feed_that_is_not_written_is_found_and_recorded(tmp_path: Path) -> None:
    text = HEAD + board("DB2", "DB1/1TP").replace(", fed from: DB1/1TP", "")
    job = resolved(tmp_path, text + "circuits:\n" + feed("DB1/1TP", "DB2"))
    assert job.boards["DB2"].fed_by == "DB1/1TP"
    assert ("DB2", "fed from", "DB1/1TP") in {(d.subject, d.what, d.value) for d in job.defaults}


def test_a_three_phase_board_on_one_phase_is_refused(tmp_path: Path) -> None:
    with pytest.raises(SpecError, match="three-phase board on a single-phase feed"):
        resolved(tmp_path, HEAD.replace("phases: 3}\nrooms", "phases: 1}\nrooms"))


def test_a_board_without_any_supply_is_refused(tmp_path: Path) -> None:
    text = HEAD.replace("supply: {system: TN-S, phases: 3}\n", "")
    with pytest.raises(SpecError, match='the job has no "supply"'):
        resolved(tmp_path, text)
    with pytest.raises(SpecError, match='the job has no "supply"'):
        resolved(tmp_path, text.replace(", fed from: supply", ""))


def test_a_spare_needs_its_phase_and_a_way_that_is_there(tmp_path: Path) -> None:
    spares = HEAD.replace("fed from: supply}", "fed from: supply, spares: {2: x, 9TP: y, Q: z}}")
    with pytest.raises(SpecError) as caught:
        resolved(tmp_path, spares)
    assert [p.message for p in caught.value.problems] == [
        "spare way 2 of DB1 lacks its phase",
        "DB1 has 4 ways; there is no way 9",
        '"Q" is not a way of DB1',
    ]
