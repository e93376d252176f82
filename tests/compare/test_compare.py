"""What changed between two issues of a job, in plain words, whatever the order of the file."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import pytest
from small_issues import JOB, changes_of, edited

from asfitted.compare.report import as_text

if TYPE_CHECKING:
    from pathlib import Path

S1 = '{tag: S1, is: 13 A socket, gangs: 2, at: "wall A, 2.0 m along, 1.2 m up"}'
S2 = '{tag: S2, is: 13 A socket, gangs: 2, at: "wall B, 1.0 m along, 1.2 m up"}'
NEW_CIRCUIT = """\
  - way: CU1/4
    name: Pump
    device: RCBO B6 30 mA type A 6 kA
    cable: T&E 1.5 mm2
    drops: 20 mm steel conduit
    points:
      - {tag: F2, is: fused spur, fuse: 3 A, load: 100 W, at: "wall B, 0.5 m along, 1.2 m up"}
"""

#: Name, edit, kind and tag of a change that it must give, and the words of it.
EDITS = (
    (
        "moved",
        (S1, S1.replace("2.0 m along", "3.0 m along")),
        ("moved", "S1"),
        "moved: from wall A, 2 m along, 1.2 m up to wall A, 3 m along, 1.2 m up",
    ),
    (
        "re-protected",
        ("RCBO B16 30 mA", "RCBO B20 30 mA"),
        ("re-protected", "CU1/3"),
        "CU1/3 Propagator: device now RCBO B20 30 mA type A 6 kA, was RCBO B16",
    ),
    (
        "re-sized cable",
        (
            "B20 30 mA type A 6 kA\n    cable: T&E 2.5 mm2",
            "B20 30 mA type A 6 kA\n    cable: T&E 4 mm2",
        ),
        ("re-sized", "W01"),
        "make now 4/1.5 mm² PVC twin and earth, was 2.5/1.5 mm² PVC twin and earth",
    ),
    (
        "added circuit",
        ("  - way: CU1/2\n", NEW_CIRCUIT + "  - way: CU1/2\n"),
        ("added", "CU1/4"),
        "CU1/4 Pump added: RCBO B6 30 mA type A 6 kA, serves F2",
    ),
    (
        "removed point",
        (f"      - {S2}\n", ""),
        ("removed", "S2"),
        "S2 (13 A twin socket-outlet) is no longer in the job",
    ),
    (
        "marked as removed",
        ("tag: F1, is: fused spur", "tag: F1, state: removed, is: fused spur"),
        ("removed", "F1"),
        "is now marked as removed",
    ),
    (
        "re-fed to another way",
        ("way: CU1/3", "way: CU1/5"),
        ("re-fed", "CU1/5"),
        "CU1/5 Propagator: way now CU1/5, was CU1/3",
    ),
    (
        "re-loaded",
        ("load: 2 kW", "load: 1.5 kW"),
        ("re-loaded", "F1"),
        "load now 1.5 kW, was 2 kW",
    ),
    (
        "measured",
        ("fuse: 13 A, load: 2 kW,", "fuse: 13 A, load: 2 kW, length: 11.5 m measured,"),
        ("measured", "W03"),
        "length now 11.5 m measured, was",
    ),
    (
        "lengthened",
        ("fuse: 13 A, load: 2 kW,", "fuse: 13 A, load: 2 kW, extra: 2 m,"),
        ("lengthened", "W03"),
        "length now",
    ),
    (
        "containment of another size",
        ("size: 50 x 50", "size: 75 x 75"),
        ("re-sized", "T1"),
        "T1 (steel trunking): size now 75 × 75 steel trunking, was 50 × 50 steel trunking",
    ),
    (
        "containment of another level",
        ("level: 2.2 m T/O", "level: 2.4 m T/O"),
        ("moved", "T1"),
        "level now 2.4 m T/O, was 2.2 m T/O",
    ),
    (
        "supply",
        ("Ze: 0.35 ohm measured", "Ze: 0.42 ohm measured"),
        ("altered", "supply"),
        "Supply: Ze now 0.42 ohm measured, was 0.35 ohm measured",
    ),
)


@pytest.mark.parametrize(
    ("edit", "kind_and_tag", "words"), [e[1:] for e in EDITS], ids=[e[0] for e in EDITS]
)
def test_an_edit_is_told_in_plain_words(
    tmp_path: Path, edit: tuple[str, str], kind_and_tag: tuple[str, str], words: str
) -> None:
    changes = changes_of(tmp_path, edited(edit)).changes
    found = [c for c in changes if (c.kind, c.tag) == kind_and_tag]
    assert any(words in change.words for change in found), [c.words for c in changes]


def test_the_same_job_has_no_changes(tmp_path: Path) -> None:
    changes = changes_of(tmp_path, JOB)
    assert changes.changes == ()
    assert "Nothing changed." in as_text(changes)


def test_the_order_of_the_file_changes_nothing(tmp_path: Path) -> None:
    head, tail = JOB.split("circuits:\n")
    blocks = re.split(r"(?m)^(?=  - way)", tail)[1:]
    assert len(blocks) == 3
    turned = head + "circuits:\n" + "".join(reversed(blocks))
    assert changes_of(tmp_path, turned).changes == ()


def test_a_circuit_written_first_leaves_the_tags_of_other_cables(tmp_path: Path) -> None:
    changes = changes_of(tmp_path, edited(("circuits:\n", "circuits:\n" + NEW_CIRCUIT)))
    cables = {c.tag: c.kind for c in changes.changes if c.what == "cable" and c.kind != "figures"}
    assert cables == {"W04": "added"}


def test_a_moved_point_tells_its_length_and_its_volt_drop(tmp_path: Path) -> None:
    newer = edited(("wall B, 2.0 m along, 1.2 m up", "wall B, 2.0 m along, 0.2 m up"))
    (change,) = changes_of(tmp_path, newer).of("F1")
    effects = {(e.tag, e.what): (e.old, e.new) for e in change.effects}
    old, new = effects["W03", "length"]
    # one metre lower on the wall: one metre more of drop, by geometry
    assert float(new.split()[0]) - float(old.split()[0]) == pytest.approx(1.0, abs=0.11)
    assert ("CU1/3", "volt drop") in effects


def test_extra_length_is_in_the_length_and_in_the_length_to_cut(tmp_path: Path) -> None:
    newer = edited(("fuse: 13 A, load: 2 kW,", "fuse: 13 A, load: 2 kW, extra: 2 m,"))
    changes = changes_of(tmp_path, newer)
    (longer,) = [c for c in changes.of("W03") if c.kind == "lengthened"]
    was, now = (float(words.split()[0]) for words in (longer.old, longer.new))
    assert now - was == pytest.approx(2.0, abs=0.05)


def test_knock_on_figures_are_told_once(tmp_path: Path) -> None:
    changes = changes_of(tmp_path, edited(("load: 2 kW", "load: 1.5 kW")))
    told = [(e.tag, e.what) for c in changes.changes for e in c.effects]
    assert ("supply", "maximum demand") in told
    assert len(told) == len(set(told))


def test_the_report_groups_what_went_before_what_came(tmp_path: Path) -> None:
    newer = edited((f"      - {S2}\n", ""), ("  - way: CU1/2\n", NEW_CIRCUIT + "  - way: CU1/2\n"))
    text = as_text(changes_of(tmp_path, newer), ["07  Single-line diagram: 2 items changed"])
    assert text.index("No longer there:") < text.index("Added:") < text.index("Sheets concerned:")
    assert "J2801 P01 (2026-10-01, For construction)" in text
