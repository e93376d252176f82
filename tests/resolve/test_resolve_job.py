"""The whole stage: the example jobs, cables and data links, defaults, and order of keys."""

from __future__ import annotations

import random
from typing import TYPE_CHECKING

import pytest
import yaml
from small_job import HEAD, SPECS, resolved, socket_circuit

from asfitted.errors import SpecError
from asfitted.reference.cable_family import families
from asfitted.reference.points import point_kinds
from asfitted.resolve import resolve
from asfitted.resolve.installation import Installation
from asfitted.resolve.rating_plate import Plate
from asfitted.spec import load_job

if TYPE_CHECKING:
    from pathlib import Path

MOTOR_AND_CABINET = """\
circuits:
  - way: DB1/1TP
    name: Mill
    device: C16 TP
    cable: SWA 4c
    points:
      - {tag: M1, is: motor, at: "wall B, 1 m along", load: 4 kW, overload: 8.1 A, restart: manual}
  - way: DB1/2L1
    name: Cabinet
    device: B10
    cable: T&E
    points:
      - {tag: F1, is: fused spur, fuse: 3 A, at: "wall C, 1.0 m along"}
data:
  cabinet: {tag: CAB1, at: "wall C, 1.0 m along, 2.0 m up", fed from: F1}
  equipment:
    REC1: {is: recorder, channels: 4, port: SW1/8}
    SW1: {is: PoE switch, ports: 8}
"""
STUDIO = SPECS / "pottery-studio.yaml"


@pytest.fixture(scope="module")
def studio() -> Installation:
    return resolve(load_job(STUDIO))


@pytest.mark.parametrize("path", sorted(SPECS.glob("*.yaml")), ids=lambda p: p.stem)
def test_example_job_resolves_with_every_name_found(path: Path) -> None:
    job = resolve(load_job(path))
    ends = {*job.boards, *job.points, *job.data_devices}
    known_families = {one.id for one in families()}
    for cable in job.cables.values():
        assert {cable.from_end, cable.to_end} <= ends, cable.tag
        assert cable.family in known_families
        assert set(cable.via) <= set(job.containment)
    for circuit in job.circuits.values():
        assert set(circuit.cables) <= set(job.cables)
        assert set(circuit.points) <= set(job.points)
    assert {p.kind for p in job.points.values()} <= set(point_kinds())
    tags = {*ends, *job.circuits, *job.cables, *job.containment, *job.rooms}
    assert tags <= set(job.places)
    assert job.places["job"].file == path.name


def test_resolving_twice_gives_the_same(studio: Installation) -> None:
    again = resolve(load_job(STUDIO))
    assert again == studio
    assert list(again.defaults) == list(studio.defaults)


def shuffled(data: object, chance: random.Random) -> object:
    """Return the data with the keys of every block in another order; the top order stays."""
    if isinstance(data, dict):
        keys = list(data)
        is_facts = all(isinstance(v, str) for v in data.values())
        if is_facts or {"at", "way", "is"} & set(keys):
            chance.shuffle(keys)
        return {key: shuffled(data[key], chance) for key in keys}
    if isinstance(data, list):
        return [shuffled(item, chance) for item in data]
    return data


@pytest.mark.parametrize("seed", range(3))
def test_order_of_keys_in_a_block_changes_nothing(
    studio: Installation, tmp_path: Path, seed: int
) -> None:
    data = load_job(STUDIO).document.data
    chance = random.Random(seed)  # noqa: S311 - no secret
    text = yaml.safe_dump(shuffled(data, chance), sort_keys=False)
    mixed = resolved(tmp_path, text)
    for name in Installation.__dataclass_fields__:
        if name not in ("places", "supply"):
            assert getattr(mixed, name) == getattr(studio, name), name


def test_cables_follow_the_circuit_from_the_board(studio: Installation) -> None:
    kiln = studio.circuits["DB1/6TP"]
    assert kiln.number == 8
    assert kiln.cables == ("W08", "W08-2")
    ends = [(studio.cables[t].from_end, studio.cables[t].to_end) for t in kiln.cables]
    assert ends == [("DB1", "Q1"), ("Q1", "K1")]
    assert studio.circuits["DB1/1L1"].cables == ()
    assert studio.cables["W12"].clipped_up_mm == 1350
    assert studio.cables["W08-2"].drop == "flexible conduit"
    assert studio.cables["W13"].drop == "25 mm steel conduit"


@pytest.mark.parametrize(
    ("tag", "family", "cores", "cpc"),
    [
        ("W05", "swa", 4, "armour"),  # three-phase socket-outlet with neutral
        ("W08", "swa", 4, "armour"),
        ("W08-2", "flex_rubber", 5, "core"),
        ("W09", "swa", 4, "core"),  # motor: no neutral, fourth core free
        ("W09-2", "flex_rubber", 4, "core"),
        ("W10-2", "swa", 4, "core"),
        ("W11", "swa", 4, "armour"),  # sub-board: three phases and neutral
        ("W12", "swa", 3, "core"),
        ("W13", "twin_earth", 2, "core"),
        ("D01", "coax_power", 2, "none"),
        ("D03", "cat6", 8, "none"),
    ],
)
def test_what_a_cable_phrase_means(
    studio: Installation, tag: str, family: str, cores: int, cpc: str
) -> None:
    cable = studio.cables[tag]
    assert (cable.family, cable.cores, cable.cpc) == (family, cores, cpc)


@pytest.mark.parametrize(
    ("phrase", "cores", "cpc", "csa_mm2"),
    [
        ("SWA", 3, "core", None),
        ("SWA 2c", 2, "armour", None),
        ("singles 4 mm2", 2, "separate", 4),
        ("T&E 2.5 mm2", 2, "core", 2.5),
        ("rubber flex", 3, "core", None),
    ],
)
def test_cable_phrases_on_a_single_phase_circuit(
    tmp_path: Path, phrase: str, cores: int, cpc: str, csa_mm2: float | None
) -> None:
    circuit = socket_circuit("DB1/1L1", "S1").replace("T&E", phrase)
    cable = resolved(tmp_path, HEAD + "circuits:\n" + circuit).cables["W01"]
    assert (cable.cores, cable.cpc, cable.csa_mm2) == (cores, cpc, csa_mm2)


def test_a_branch_comes_after_the_point_it_names(tmp_path: Path) -> None:
    points = "".join(
        f'{{tag: S{n}, is: 13 A socket, gangs: 2, at: "wall B, {n}.0 m along, 1.2 m up"{extra}}},'
        for n, extra in ((1, ""), (2, ""), (3, ", after: S1"), (4, ", after: DB1"))
    ).replace("4.0 m", "3.5 m")
    circuit = f"  - {{way: DB1/1L1, name: S, device: B16, cable: T&E, points: [{points}]}}\n"
    job = resolved(tmp_path, HEAD + "circuits:\n" + circuit)
    ends = [(c.tag, c.from_end, c.to_end) for c in job.cables.values()]
    assert ends == [
        ("W01", "DB1", "S1"),
        ("W01-2", "S1", "S2"),
        ("W01-3", "S1", "S3"),
        ("W01-4", "DB1", "S4"),
    ]
    assert job.circuits["DB1/1L1"].points_served == 4
    assert job.circuits["DB1/1L1"].device.poles == "SP"


def test_cable_facts_of_a_point_go_before_those_of_its_circuit(tmp_path: Path) -> None:
    runs = (
        "containment:\n"
        "  T1: {is: wire basket, size: 100 x 55, for: power and data, level: 2.5 m U/S, "
        "run: [A 1.0 m, B 3.0 m]}\n"
    )
    circuit = socket_circuit("DB1/1L1", "S1", "via: [T1], length: 23 m measured, ")
    job = resolved(tmp_path, HEAD + runs + "circuits:\n" + circuit)
    assert (job.cables["W01"].via, job.cables["W01"].measured_length_m) == (("T1",), 23)
    assert job.containment["T1"].bands == ("power", "data")
    own = circuit.replace('up"}', 'up", via: [], length: 7 m measured}')
    cable = resolved(tmp_path, HEAD + runs + "circuits:\n" + own).cables["W01"]
    assert (cable.via, cable.measured_length_m) == ((), 7)


def test_data_links_start_at_recorder_or_switch(studio: Installation) -> None:
    links = {c.tag: (c.from_end, c.to_end) for c in studio.cables.values() if c.band == "data"}
    assert links == {
        "D01": ("REC1", "CAM1"),
        "D02": ("REC1", "CAM2"),
        "D03": ("REC1", "CAM3"),
        "D04": ("REC1", "CAM4"),
        "D05": ("SW1", "D1"),
        "D06": ("SW1", "AP1"),
    }
    assert studio.cables["D01"].state == "existing"
    assert studio.cabinet is not None
    assert studio.data_devices["SW1"].position == studio.cabinet.position
    assert studio.data_devices["CAM3"].aim_deg == 45  # towards wall A, clockwise from looking west


def test_rcd_of_an_outlet_stays_at_the_point(studio: Installation) -> None:
    rcd = studio.points["X1"].rcd
    assert rcd is not None
    assert (rcd.idn_ma, rcd.type, rcd.rated_a) == (30, "A", 40)
    assert studio.circuits["DB1/3TP"].device.rcd is None
    assert studio.points["X1"].words == "32 A 5-pin socket-outlet, RCD 40 A 30 mA type A"


def test_what_is_left_out_is_filled_in_and_recorded(tmp_path: Path) -> None:
    circuit = socket_circuit("DB1/1L1", "S1").replace(", 1.2 m up", "")
    job = resolved(tmp_path, HEAD + "circuits:\n" + circuit)
    filled = {(d.subject, d.what): d.value for d in job.defaults}
    assert job.points["S1"].position.up_mm == 1200
    assert filled["S1", "height"] == "1200 mm"
    assert filled["S1", "gangs"] == "1"
    assert filled["DB1/1L1", "use"] == "sockets"
    assert filled["DB1/1L1", "drops"] == "clipped"
    assert filled["DB1", "size"] == "450 × 700 mm"
    assert filled["supply", "voltage"] == "400/230 V"
    assert filled["supply", "ambient"] == "30 °C"
    assert all(d.reason for d in job.defaults)


def test_nothing_measured_is_filled_in(tmp_path: Path) -> None:
    supply = resolved(tmp_path, HEAD).supply
    assert supply is not None
    assert supply.ze_ohm is None
    assert supply.ipf_ka is None
    assert supply.electrode_ohm is None
    assert supply.cut_out is None
    assert resolved(tmp_path, HEAD).job.client == "not recorded"


def test_a_figure_that_does_not_say_how_it_is_known_is_assumed(tmp_path: Path) -> None:
    job = resolved(tmp_path, HEAD.replace("phases: 3}\nrooms", "phases: 3, Ze: 0.2 ohm}\nrooms"))
    assert job.supply is not None
    assert job.supply.ze_ohm is not None
    assert job.supply.ze_ohm.basis == "assumed"


def test_facts_of_starter_surge_protection_and_cabinet_are_handed_on(tmp_path: Path) -> None:
    head = HEAD.replace("phases: 3}\nrooms", "phases: 3, surge protection: type 2 at DB1}\nrooms")
    job = resolved(tmp_path, head + MOTOR_AND_CABINET)
    assert job.supply is not None
    assert job.supply.surge_protection == "type 2 at DB1"
    assert (job.points["M1"].overload_a, job.points["M1"].restart) == (8.1, "manual")
    assert job.cabinet is not None
    assert job.cabinet.fed_from == "F1"
    assert job.data_devices["REC1"].port == "SW1/8"


def test_facts_of_starter_surge_protection_and_cabinet_are_never_filled_in(tmp_path: Path) -> None:
    silent = MOTOR_AND_CABINET
    for words in (", overload: 8.1 A, restart: manual", ", fed from: F1", ", port: SW1/8"):
        assert silent.count(words) == 1
        silent = silent.replace(words, "")
    job = resolved(tmp_path, HEAD + silent)
    assert job.supply is not None
    assert job.supply.surge_protection == ""
    assert (job.points["M1"].overload_a, job.points["M1"].restart) == (None, "")
    assert job.cabinet is not None
    assert job.cabinet.fed_from == ""
    assert job.data_devices["REC1"].port == ""


def test_rating_plates_are_handed_on_as_read_and_never_filled_in(tmp_path: Path) -> None:
    plate = ", make: make Q, model: A1, serial number: 00042"
    text = MOTOR_AND_CABINET.replace(", restart: manual", f", restart: manual{plate}")
    text = text.replace(", port: SW1/8", f", port: SW1/8{plate}")
    text = text.replace(", fed from: F1", f", fed from: F1{plate}")
    job = resolved(tmp_path, HEAD + text)
    assert job.cabinet is not None
    for thing in (job.points["M1"], job.data_devices["REC1"], job.cabinet):
        assert thing.plate == Plate("make Q", "A1", "00042")
        assert thing.plate.missing == ()
    assert job.boards["DB1"].plate == Plate()
    assert job.points["F1"].plate.missing == ("make", "model", "serial number")


def test_waivers_are_handed_on(tmp_path: Path) -> None:
    text = HEAD + "accept:\n  - {rule: R1, subject: DB1, reason: agreed on site, by: R. Ashdown}\n"
    (waiver,) = resolved(tmp_path, text).waivers
    assert (waiver.rule, waiver.subject, waiver.by) == ("R1", "DB1", "R. Ashdown")


@pytest.mark.parametrize("seed", range(60))
def test_a_spoilt_job_is_told_and_never_breaks_the_program(tmp_path: Path, seed: int) -> None:
    chance = random.Random(seed)  # noqa: S311 - no secret
    lines = STUDIO.read_text(encoding="utf-8").splitlines()
    for _ in range(chance.randint(1, 4)):
        spot = chance.randrange(len(lines))
        line = lines[spot]
        cut = chance.randrange(len(line) + 1)
        lines[spot] = chance.choice(
            [
                line[:cut],
                line[cut:],
                line + line,
                line[:cut] + chance.choice("{}[]:,-#&*!|>'\"%@x0 ") + line[cut:],
                line.replace("m", "", 1),
                line.replace("1", "99999", 1),
                "",
            ]
        )
    try:
        told = resolved(tmp_path, "\n".join(lines) + "\n").job.number
    except SpecError as error:
        told = error.problems[0].render()
    assert told
