"""Every quick sum against the published figure it names, and what is said of wrong inputs."""

from __future__ import annotations

import json

import pytest

from asfitted.cli import main
from asfitted.errors import NotUnderstoodError
from asfitted.quick_sums import quick_sum, quick_sums
from asfitted.quick_sums._sum import split_typed

NAMES = sorted(quick_sums())


@pytest.mark.parametrize("name", NAMES)
def test_the_example_gives_its_published_figure(name: str) -> None:
    one = quick_sum(name)
    result = one.working(one.example.given)[-1]
    assert result.value == pytest.approx(one.example.result, abs=one.example.tolerance)
    assert any(mark in one.example.source for mark in ("(seen)", "(memory)", "by hand"))


@pytest.mark.parametrize("name", NAMES)
def test_every_step_has_words_and_source(name: str) -> None:
    one = quick_sum(name)
    for step in one.working(one.example.given):
        assert step.words
        assert step.source


@pytest.mark.parametrize("name", NAMES)
def test_an_input_left_out_is_asked_for_by_name(name: str) -> None:
    one = quick_sum(name)
    needed = [each.name for each in one.inputs if each.default is None]
    assert needed
    for missing in needed:
        rest = {key: text for key, text in one.example.given.items() if key != missing}
        with pytest.raises(NotUnderstoodError, match=f'needs "{missing}"') as refused:
            one.working(rest)
        assert f"{missing}=" in refused.value.hint


def test_known_figures_of_bs_7671_tables() -> None:
    # BS 7671:2018 Table 41.3 (memory): B6 7.28, C32 0.68; Table 41.2 BS 3036 30 A 1.04 ohm
    def limit(**typed: str) -> float:
        return quick_sum("max-zs").working(typed)[-1].value

    assert limit(device="B", rating="6") == pytest.approx(7.28, abs=0.005)
    assert limit(device="C", rating="32") == pytest.approx(0.68, abs=0.005)
    assert limit(device="BS 3036", rating="30") == pytest.approx(1.04, abs=0.01)


def test_drop_from_the_table_of_a_cable_equals_that_of_its_mv() -> None:
    # BS 7671 Table 4D2B: 4 mm2, two-core, 11 mV/A/m
    typed = {"current": "25", "length": "16", "family": "multicore PVC", "size": "4"}
    assert quick_sum("voltage-drop").working(typed)[-1].value == pytest.approx(4.4)


def test_the_capacity_falls_with_grouping_and_heat() -> None:
    # Ca 0.94 at 35 C, 70 C insulation (Table 4B1); Cg 0.80 for two bunched (Table 4C1)
    typed = {"family": "multicore PVC", "size": "10", "method": "C", "phases": "3"}
    value = quick_sum("cable-capacity").working({**typed, "ambient": "35 C", "group": "2"})[-1]
    assert value.value == pytest.approx(57 * 0.94 * 0.80)


def test_words_without_quotes_join_the_input_before() -> None:
    typed = split_typed(["size=6", "mm2", "length=25"])
    assert typed == {"size": "6 mm2", "length": "25"}
    with pytest.raises(NotUnderstoodError, match="not an input"):
        split_typed(["6", "mm2"])
    with pytest.raises(NotUnderstoodError, match="twice"):
        split_typed(["a=1", "a=2"])


@pytest.mark.parametrize(
    ("words", "said", "hint"),
    [
        (["zz"], 'no sum is named "zz"', "known here"),
        (["voltage-dropp", "a=1"], "no sum is named", 'did you mean "voltage-drop"?'),
        (["zs", "zee=1"], 'no input "zee"', 'did you mean "ze"?'),
        (["zs", "ze=0,15", "r1r2=0.3"], "ze:", "decimal comma: write 0.15"),
        (["zs", "ze=0.15 A", "r1r2=0.3"], "unit", "0.15 ohm"),
        (["max-zs", "device=B", "rating=32", "time=9 s"], "outside 0.1 to 5 s", "asfitted calc"),
        (["adiabatic", "k=115"], 'give "current" and "time"', "asfitted calc adiabatic"),
        (["conduit-fill", "sizes=4,6", "counts=1", "length=2 m"], "2 sizes, but 1 counts", ""),
    ],
)
def test_errors_are_in_the_electricians_words(
    words: list[str], said: str, hint: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["calc", *words]) == 2
    errors = capsys.readouterr().err
    assert said in errors
    assert hint in errors
    assert "Traceback" not in errors


def test_the_list_the_inputs_and_the_result_are_printed(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert main(["calc"]) == 0
    listed = capsys.readouterr().out
    assert all(name in listed for name in NAMES)
    assert main(["calc", "voltage-drop"]) == 0
    assert "design current Ib [A, such as 32 A; needed]" in capsys.readouterr().out
    assert main(["calc", "voltage-drop", "current=25", "A", "length=16", "m", "mv=11"]) == 0
    said = capsys.readouterr().out
    assert "11 × 25 A × 16 m / 1000" in said
    assert "= 4.4 V" in said
    assert "not a certificate" in said


def test_the_result_as_json(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["calc", "zs", "ze=0.15", "r1r2=0.3", "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert told["steps"][-1]["value"] == pytest.approx(0.45)
    assert "not a certificate" in told["caution"]
