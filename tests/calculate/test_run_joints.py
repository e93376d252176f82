"""How one run meets another: what is ordered for it. The fittings are trade custom."""

from __future__ import annotations

import pytest
from small_room import installation, run, walls

from asfitted.calculate.materials.run_shape import Joint, run_shapes

WALLS = walls()
A = WALLS["A"]


def _joint(kind: str, width_mm: float, ends: tuple[float, float], along_mm: float) -> Joint:
    """Return the joint of an upright run of a kind with a level one on wall A."""
    main = run("T1", [(A, 1000.0, 2500.0), (A, 7000.0, 2500.0)], ("A",), kind=kind)
    branch = run("T2", [(A, along_mm, end) for end in ends], ("A",), kind=kind, width_mm=width_mm)
    job = installation(on=WALLS, runs=(main, branch))
    shape = next(one for one in run_shapes(job) if one.run.tag == "T2")
    (joint,) = shape.joints
    return joint


@pytest.mark.parametrize(
    ("kind", "ends", "words", "riser"),
    [
        # the branch of a flat tee stays level: a riser turns it down the wall, or up
        ("perforated tray", (1500.0, 2500.0), "equal flat tee 150", "outside riser 90°"),
        ("perforated tray", (2500.0, 2900.0), "equal flat tee 150", "inside riser 90°"),
        ("cable ladder", (1500.0, 2500.0), "equal flat tee 150", "outside riser 90°"),
        ("wire basket", (1500.0, 2500.0), "equal flat tee 150", "outside riser 90°"),
        # trunking lies on the wall both ways: its tee turns in the plane of the wall
        ("steel trunking", (1500.0, 2500.0), "equal tee 150", ""),
        ("steel conduit", (1500.0, 2500.0), "equal tee box 150", ""),
    ],
)
def test_an_upright_off_the_middle_of_a_level_run(
    kind: str, ends: tuple[float, float], words: str, riser: str
) -> None:
    joint = _joint(kind, 150.0, ends, 4000.0)
    assert (joint.kind, joint.words, joint.riser) == ("tee", words, riser)


def test_widths_of_an_unequal_tee_are_told_larger_first() -> None:
    assert _joint("perforated tray", 100.0, (1500.0, 2500.0), 4000.0).words == (
        "unequal flat tee 150/100"
    )


@pytest.mark.parametrize(
    ("ends", "words"),
    [
        ((1500.0, 2500.0), "outside riser 90°"),
        ((2500.0, 2900.0), "inside riser 90°"),
    ],
)
def test_an_upright_at_the_end_of_a_level_run_is_a_riser_bend(
    ends: tuple[float, float], words: str
) -> None:
    joint = _joint("perforated tray", 150.0, ends, 7000.0)
    assert (joint.kind, joint.words) == ("bend", words)
    assert _joint("perforated tray", 100.0, ends, 7000.0).words == f"{words}, reduced 150/100"


def test_a_level_run_off_an_upright_leaves_by_a_vertical_tee() -> None:
    upright = run("T1", [(A, 4000.0, 500.0), (A, 4000.0, 2900.0)], ("A",))
    level = run("T2", [(A, 4000.0, 2000.0), (A, 7000.0, 2000.0)], ("A",))
    job = installation(on=WALLS, runs=(upright, level))
    shape = next(one for one in run_shapes(job) if one.run.tag == "T2")
    assert [(j.words, j.riser) for j in shape.joints] == [("equal vertical tee 150", "")]


def test_two_level_runs_keep_tee_coupler_and_reducer() -> None:
    one = run("T1", [(A, 1000.0, 2500.0), (A, 4000.0, 2500.0)], ("A",))
    for width_mm, words in ((150.0, "coupler pair 150"), (100.0, "reducer 150/100")):
        on = run("T2", [(A, 4000.0, 2500.0), (A, 7000.0, 2500.0)], ("A",), width_mm=width_mm)
        shape = next(
            s for s in run_shapes(installation(on=WALLS, runs=(one, on))) if s.run.tag == "T2"
        )
        assert [j.words for j in shape.joints] == [words]
