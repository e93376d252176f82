"""Every public calculation says its units, its range errors, its source, and shows an example."""

from __future__ import annotations

import doctest
import importlib
import inspect
import re
from types import FunctionType, ModuleType

import pytest

NAMES = (
    "adiabatic",
    "containment.containment_fill",
    "current_capacity",
    "data.dc_supply",
    "design_current",
    "diversity",
    "earth_fault_loop",
    "fault_current",
    "data.lens",
    "neutral_current",
    "phase_balance",
    "data.poe",
    "ring_final",
    "data.storage",
    "voltage_drop",
)
UNITS = (
    "A", "V", "W", "kW", "kVA", "MVA", "ohm", "mohm/m", "ohm/m", "ohm/100 m", "mV/A/m", "mm",
    "mm2", "m", "s", "A2s", "A s^0.5 / mm2", "%", "ratio", "C", "degrees", "px", "px/m", "GB", "MB",
    "TB", "Mbit/s", "days", "kA", "Type",
)  # fmt: skip
# a unit stands after a comma: "Current, A, above 0."
A_UNIT = re.compile(rf"(?<=, )(?:complex )?({'|'.join(map(re.escape, UNITS))})(?![A-Za-z])")
ARGUMENT = re.compile(r"^    (\w+): (.*(?:\n {8}.*)*)", re.MULTILINE)
# whole numbers and names, which have no unit
COUNTS = {"phases", "pairs", "cameras", "sockets", "in_parallel", "conductors_each_way", "c"}
NAMED = {"load", "premises", "lines", "fixed", "terms", "cables", "loads", "demand_factors"}
NAMED |= {"x_over_r", "r_over_x"}


def _functions(module: ModuleType) -> dict[str, FunctionType]:
    return {
        name: found
        for name, found in vars(module).items()
        if isinstance(found, FunctionType)
        and found.__module__ == module.__name__
        and not name.startswith("_")
    }


ALL = [
    pytest.param(function, id=f"{name}.{function_name}")
    for name in NAMES
    for function_name, function in _functions(
        importlib.import_module(f"asfitted.calculate.{name}")
    ).items()
]


def _section(text: str, title: str) -> str:
    found = re.search(rf"^{title}:\n((?:    .*\n|\n)+)", text + "\n", re.MULTILINE)
    return found.group(1) if found else ""


@pytest.mark.parametrize("function", ALL)
def test_docstring_matches_the_signature_and_names_unit_and_source(function: FunctionType) -> None:
    text = inspect.getdoc(function) or ""
    described = dict(
        re.findall(r"^    (\w+): (.*(?:\n {8}.*)*)", _section(text, "Args"), re.MULTILINE)
    )
    assert list(described) == list(inspect.signature(function).parameters)
    for name, words in described.items():
        assert name in COUNTS | NAMED or A_UNIT.search(words), f"{name}: no unit"
    returned = _section(text, "Returns")
    assert A_UNIT.search(returned) or re.search("in the unit|units of|Index|Line|Type", returned)
    assert "InputOutOfRangeError" in _section(text, "Raises")
    assert len(_section(text, "Source").strip()) > 5
    assert ">>> " in _section(text, "Example")


@pytest.mark.parametrize("function", ALL)
def test_arguments_beyond_two_are_named(function: FunctionType) -> None:
    kinds = [p.kind for p in inspect.signature(function).parameters.values()]
    positional = [k for k in kinds if k is inspect.Parameter.POSITIONAL_OR_KEYWORD]
    assert len(positional) <= 2 or function.__name__ == "neutral_current_a"


@pytest.mark.parametrize("name", NAMES)
def test_examples_run(name: str) -> None:
    module = importlib.import_module(f"asfitted.calculate.{name}")
    outcome = doctest.testmod(module)
    assert outcome.attempted >= len(_functions(module))
    assert outcome.failed == 0
