"""Transformer and generator phrases, and the keys of rings, soil, insulation and harmonics."""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml

from asfitted.calculate.calculate import calculate
from asfitted.errors import NotUnderstoodError, SpecError
from asfitted.resolve.installation import Generator, Installation, Transformer
from asfitted.resolve.resolve_job import resolve
from asfitted.spec.load_job import load_job
from asfitted.spec.source_words import parse_generator, parse_transformer

SHED = Path(__file__).parents[2] / "specs" / "community-shed.yaml"


def test_phrases_of_machines() -> None:
    found = parse_transformer("500 kVA 4.75 %")
    assert (found.rating_kva, found.uk_percent) == (500, 4.75)
    assert parse_transformer("1.6 MVA, 6 %").rating_kva == 1600
    for words in ("60 kVA, x'' 12 %", '60 kVA xd" 12%', "60 kVA x\u2033 12 %"):
        generator = parse_generator(words)
        assert (generator.rating_kva, generator.x_percent) == (60, 12)


@pytest.mark.parametrize("text", ["500 kVA", "4.75 %", "500 kW 4.75 %", "500 kVA 475 %", "big"])
def test_what_is_no_transformer_is_refused_with_a_hint(text: str) -> None:
    with pytest.raises(NotUnderstoodError):
        parse_transformer(text)


def test_what_is_no_generator_is_refused() -> None:
    with pytest.raises(NotUnderstoodError):
        parse_generator("60 kVA 12 %")


def _edited(tmp_path: Path, **supply: str) -> Installation:
    written = yaml.load(SHED.read_text(encoding="utf-8"), Loader=yaml.BaseLoader)  # noqa: S506 - text only
    written["supply"].update(supply)
    written["circuits"][0].update(
        ring="true", insulation="200 mm", device="RCBO B32 30 mA type A 6 kA"
    )
    path = tmp_path / "job.yaml"
    path.write_text(yaml.safe_dump(written, sort_keys=False, allow_unicode=True), encoding="utf-8")
    return resolve(load_job(path))


def test_spec_reaches_the_installation_and_the_ring_comes_back(tmp_path: Path) -> None:
    job = _edited(tmp_path, transformer="100 kVA 4 %", losses="1.75 kW", upstream="100 MVA")
    assert job.supply is not None
    assert job.supply.source == Transformer(100, 4, 1750, 100)
    ring = next(circuit for circuit in job.circuits.values() if circuit.ring)
    last = job.cables[ring.cables[-1]]
    assert last.to_end == ring.board
    assert last.from_end == ring.points[-1]
    assert last.tag == f"W{ring.number:02d}-{len(ring.points) + 1}"
    assert last.insulation_mm == 200
    results = calculate(job)
    figures = results.circuits[ring.tag].ring
    assert figures is not None
    length = sum(results.routes[tag].length_m for tag in ring.cables)
    assert figures.length_m == pytest.approx(length)
    assert all(results.routes[tag].legs for tag in ring.cables)


def test_generator_in_the_spec(tmp_path: Path) -> None:
    job = _edited(tmp_path, generator="60 kVA, x'' 12 %")
    assert job.supply is not None
    assert job.supply.source == Generator(60, 12)


@pytest.mark.parametrize(
    "supply",
    [
        {"losses": "1.75 kW"},
        {"transformer": "100 kVA 4 %", "generator": "60 kVA, x'' 12 %"},
        {"transformer": "100 kVA 4 %", "losses": "9 kW"},
    ],
)
def test_sources_that_contradict_themselves(tmp_path: Path, supply: dict[str, str]) -> None:
    with pytest.raises(SpecError):
        _edited(tmp_path, **supply)
