"""The least protective conductor of a circuit, against tabulated resistances per metre."""

from __future__ import annotations

from types import SimpleNamespace
from typing import TYPE_CHECKING, Any

import pytest

from asfitted.calculate.cable_facts import CpcKind, cable_facts
from asfitted.calculate.least_cpc import least_cpc

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model


def sized(tag: str, family: str, cores: int, csa_mm2: float, cpc: CpcKind = "core") -> Any:
    """Return what of a sized cable the sum asks for."""
    facts = cable_facts(family, cores, csa_mm2, cpc, 3)
    return SimpleNamespace(facts=facts, stretch=SimpleNamespace(cable=SimpleNamespace(tag=tag)))


def test_the_flexible_cable_at_the_end_holds_the_least() -> None:
    # BS EN 60228, class 2 and 5, 20 °C: 2.5 mm² 7.41 and 7.98, 1.5 mm² 13.3 Ω/km
    found = least_cpc([sized("W09", "swa", 4, 2.5), sized("W09-2", "flex_rubber", 4, 1.5)])
    assert found is not None
    assert (found.words, found.cables, found.throughout) == ("1.5 mm² core", ("W09-2",), False)


def test_armour_is_compared_by_what_it_conducts_not_by_its_area() -> None:
    # BS 5467: armour of 4c × 10 mm² about 3.7 Ω/km at 20 °C (memory)
    # BS EN 60228: 10 mm² class 5 1.91 Ω/km
    found = least_cpc(
        [sized("W08", "swa", 4, 10.0, "armour"), sized("W08-2", "flex_rubber", 5, 10.0)]
    )
    assert found is not None
    assert found.words.startswith("steel armour")
    assert found.cables == ("W08",)


def test_a_cable_without_any_is_the_least_of_all() -> None:
    found = least_cpc([sized("W01", "swa", 4, 2.5), sized("W02", "flex_rubber", 4, 1.5, "none")])
    assert found is not None
    assert (found.words, found.cables) == ("none", ("W02",))


def test_alike_all_along_and_nothing_known() -> None:
    found = least_cpc([sized("W01", "swa", 4, 1.5), sized("W02", "swa", 4, 1.5)])
    assert found is not None
    assert found.throughout
    assert least_cpc([]) is None


@pytest.mark.parametrize("job", ["pottery-studio", "community-shed"])
def test_it_is_never_better_than_what_is_checked_under_fault(
    demo_models: dict[str, Model], job: str
) -> None:
    results = demo_models[job].results
    seen = 0
    for circuit in results.circuits.values():
        if circuit.least_cpc is None:
            continue
        assert circuit.cpc_checked in demo_models[job].installation.circuits[circuit.tag].cables
        least, checked = (
            results.cables[tag] for tag in (circuit.least_cpc.cables[0], circuit.cpc_checked)
        )
        routes = results.routes
        per_m = [c.r1r2_ohm / routes[c.tag].length_m for c in (least, checked)]
        same_line = least.csa_mm2 == checked.csa_mm2
        assert not same_line or per_m[0] >= per_m[1] - 1e-9, circuit.tag
        seen += 1
    assert seen > 4
