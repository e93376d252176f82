"""The JSON Schema has the words of the job files as keys and takes the example jobs."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml

from asfitted.spec import json_schema

SPECS = sorted((Path(__file__).parents[2] / "specs").glob("*.yaml"))
TYPES: dict[str, Any] = {
    "string": str,
    "number": (int, float),
    "object": dict,
    "array": list,
    "null": type(None),
}


def _is_type(value: Any, names: str | list[str]) -> bool:
    wanted = [names] if isinstance(names, str) else names
    return any(isinstance(value, TYPES[name]) for name in wanted)


def faults(value: Any, schema: dict[str, Any], root: dict[str, Any], at: str = "") -> list[str]:
    """Return what a value breaks; covers the words of JSON Schema that the schema uses."""
    if "$ref" in schema:
        return faults(value, root["$defs"][schema["$ref"].rsplit("/", 1)[1]], root, at)
    if "anyOf" in schema:
        tried = [faults(value, option, root, at) for option in schema["anyOf"]]
        return [] if [] in tried else min(tried, key=len)
    if "enum" in schema and value not in schema["enum"]:
        return [f"{at}: {value!r}"]
    if "type" in schema and not _is_type(value, schema["type"]):
        return [f"{at}: {type(value).__name__}"]
    if isinstance(value, dict):
        return _faults_of_block(value, schema, root, at)
    items = enumerate(value if isinstance(value, list) else [])
    return [f for n, item in items for f in faults(item, schema["items"], root, f"{at}/{n}")]


def _faults_of_block(
    value: dict[str, Any], schema: dict[str, Any], root: dict[str, Any], at: str
) -> list[str]:
    known = schema.get("properties", {})
    other = schema.get("additionalProperties", True)
    found = [f"{at}: lacks {key}" for key in schema.get("required", []) if key not in value]
    for key, inner in value.items():
        if key in known or isinstance(other, dict):
            found += faults(inner, known.get(key, other), root, f"{at}/{key}")
        elif other is False:
            found.append(f"{at}: {key}")
    return found


@pytest.mark.parametrize("path", SPECS, ids=lambda p: p.stem)
def test_example_job_fits_the_schema(path: Path) -> None:
    data = yaml.load(path.read_text(encoding="utf-8"), Loader=yaml.BaseLoader)  # noqa: S506 - text only
    assert faults(data, json_schema(), json_schema()) == []


def test_a_wrong_job_does_not_fit() -> None:
    data = {"asfitted": "1", "job": {"number": "1", "title": "x", "clinet": "y"}, "rooms": []}
    found = faults(data, json_schema(), json_schema())
    assert "/job: clinet" in found
    assert "/rooms: list" in found


def test_keys_are_written_with_spaces_and_capitals() -> None:
    defs = json_schema()["$defs"]
    assert {"fault current", "cut-out", "Ze", "earthing conductor"} <= set(
        defs["SupplyWords"]["properties"]
    )
    assert {"short-circuit rating", "IP", "fed from"} <= set(defs["BoardWords"]["properties"])
    assert {"RCD", "is", "power factor"} <= set(defs["PointWords"]["properties"])
    assert "PoE class" in defs["CameraWords"]["properties"]
    assert not [key for d in defs.values() for key in d.get("properties", {}) if "_" in key]
