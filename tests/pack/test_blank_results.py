"""The empty results file: all that is owed and no value; blank it counts for nothing."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path
from types import MappingProxyType
from typing import TYPE_CHECKING

import pytest
import yaml

from asfitted.cli import main
from asfitted.pack.blank_results import (
    AFDD,
    BOARD,
    CIRCUIT,
    ELECTRODE,
    LAST,
    PHASES,
    RCD,
    RING,
    SUPPLY,
    TAKEN,
    blank_results,
)
from asfitted.pipeline import check_job
from asfitted.spec.load_results import load_results
from asfitted.spec.measured_results import BoardReadings, CircuitReadings, SupplyReadings

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model
    from asfitted.pipeline import Checked
    from asfitted.spec.fields import SpecModel

SPECS = Path(__file__).parent.parent.parent / "specs"
JOBS = ("pottery-studio", "community-shed", "shop-cctv")
SHED = (SPECS / "community-shed.yaml").read_text(encoding="utf-8")
INSTRUMENT = "instruments:\n  A: {name: tester, serial: '12', checked: 2026-01-31}"


def with_results(folder: Path, text: str) -> Checked:
    (folder / "readings.yaml").write_text(text, encoding="utf-8")
    job = folder / "job.yaml"
    job.write_text(f"{SHED}\nresults: readings.yaml\n", encoding="utf-8")
    return check_job(job)


def filled(text: str, circuit: str, **readings: str) -> str:
    """Return the file with readings of one circuit written behind their keys."""
    head, _, rest = text.partition(f"  {circuit}:")
    for key, value in readings.items():
        name = key.replace("_", " ").replace("R1R2", "R1+R2").replace("RCD time", "RCD time")
        assert f"    {name}:\n" in rest, name
        rest = rest.replace(f"    {name}:\n", f"    {name}: {value}\n", 1)
    return f"{head}  {circuit}:{rest}"


@pytest.mark.parametrize("job", JOBS)
def test_it_holds_every_circuit_and_board_and_no_value(
    demo_models: dict[str, Model], job: str
) -> None:
    installation = demo_models[job].installation
    data = yaml.safe_load(blank_results(installation))
    assert data.pop("asfitted") == 1
    live = [c.tag for c in installation.circuits.values() if c.state != "removed"]
    assert list(data.get("circuits", {})) == live
    assert list(data.get("boards", {})) == list(installation.boards)

    def values(part: object) -> list[object]:
        if isinstance(part, dict):
            return [value for one in part.values() for value in values(one)]
        return [part]

    assert set(values(data)) == {None}, "nothing is ever filled in"


@pytest.mark.parametrize(
    ("model", "keys"),
    [
        (SupplyReadings, (*SUPPLY, ELECTRODE, *TAKEN, "remarks")),
        (BoardReadings, (*BOARD, PHASES, *TAKEN, "remarks")),
        (CircuitReadings, (*RING, *CIRCUIT, *RCD, *AFDD, *LAST, *TAKEN)),
    ],
)
def test_its_keys_are_those_of_the_language(model: type[SpecModel], keys: tuple[str, ...]) -> None:
    known = {field.alias or name for name, field in model.model_fields.items()}
    assert {key.replace("_", " ") for key in known} == set(keys)


def test_only_what_applies_is_asked_for(demo_models: dict[str, Model]) -> None:
    installation = demo_models["pottery-studio"].installation
    circuits = yaml.safe_load(blank_results(installation))["circuits"]
    # specs/pottery-studio.yaml: a new isolator circuit without an RCD, and an RCBO
    assert "RCD time" not in circuits["DB1/6TP"]
    assert "RCD time" in circuits["DB1/1L2"]
    assert "RCD time" in circuits["DB1/1L1"], "older, and its RCD not recorded: not excused"
    assert not any("r1" in keys for keys in circuits.values()), "no ring in this job"


def test_left_blank_it_says_nothing(tmp_path: Path, demo_models: dict[str, Model]) -> None:
    """Silence is no pass: a blank file is the same as none."""
    plain = demo_models["community-shed"]
    checked = with_results(tmp_path, blank_results(plain.installation))
    assert checked.installation.readings is None
    before = [(f.rule, f.subject, f.word) for f in plain.report.findings]
    assert [(f.rule, f.subject, f.word) for f in checked.report.findings] == before
    assert checked.report.checked == plain.report.checked


def test_what_is_filled_in_is_judged_and_the_rest_is_not_checked(
    tmp_path: Path, demo_models: dict[str, Model]
) -> None:
    model = demo_models["community-shed"]
    installation = model.installation
    first, second, *rest = [c.tag for c in installation.circuits.values() if c.state == "new"]
    text = blank_results(installation)
    text = text.replace("\ninstruments:", f"\n{INSTRUMENT}", 1).replace(
        "\ninstrument:", "\ninstrument: A"
    )
    text = filled(text, first, Zs="0.20 ohm", insulation_earth='">999 Mohm"')
    # far beyond any limit of a 230 V circuit: BS 7671 Table 41.3 allows a few ohms at most
    text = filled(text, second, Zs="90 ohm")
    checked = with_results(tmp_path, text)
    readings = checked.installation.readings
    assert readings is not None
    assert set(readings.circuits) == {first, second}
    assert readings.boards == {}
    assert readings.supply is None
    told = {(f.rule, f.subject): f.word for f in checked.report.findings}
    assert told[("TR-01", second)] == "error"
    assert ("TR-01", first) not in told
    for tag in rest:
        assert told[("TR-07", tag)] == "not checked"


def test_the_command_writes_it_once_and_never_over_readings(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    job, target = str(SPECS / "community-shed.yaml"), tmp_path / "readings.yaml"
    assert main(["results", job, "-o", str(target)]) == 0
    assert re.search(r'name it in the job file under "results:"', capsys.readouterr().out)
    written = target.read_text(encoding="utf-8")
    target.write_text(written.replace("Ze:", "Ze: 0.31 ohm", 1), encoding="utf-8")
    kept = target.read_bytes()
    assert main(["results", job, "-o", str(target)]) != 0
    assert "never overwritten" in capsys.readouterr().err
    assert target.read_bytes() == kept


@pytest.mark.parametrize("tag", ["DB1/3TP", "1/2L1", "no", "010", "a: b", "CU-2 way 3", "#4"])
def test_a_tag_is_read_back_as_it_stands(
    tag: str, tmp_path: Path, demo_models: dict[str, Model]
) -> None:
    installation = demo_models["community-shed"].installation
    circuit = replace(next(iter(installation.circuits.values())), tag=tag)
    job = replace(installation, circuits=MappingProxyType({tag: circuit}))
    path = tmp_path / "blank.yaml"
    path.write_text(blank_results(job), encoding="utf-8")
    assert list(load_results(path).words.circuits) == [tag]
