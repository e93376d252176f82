"""Two issues of one small job: the text of the older, edited into the newer."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.pipeline import Checked, check_job

if TYPE_CHECKING:
    from pathlib import Path

    from asfitted.compare.changes import Changes

JOB = """\
asfitted: 1
job:
  number: J2801
  title: Potting shed
  installer: An invented firm
  designer: D. Signer
  date: 2026-10-01
  revision: P01
  status: For construction
supply:
  system: TN-S
  phases: 1
  Ze: 0.35 ohm measured
  fault current: 1.1 kA measured
  cut-out: 60 A BS 88-3 declared
  tails: 16 mm2, 1 m
  earthing conductor: 10 mm2
rooms:
  Shed:
    height: 2.6 m
    walls:
      A: {length: 5.0 m}
      B: {length: 3.0 m}
      C: {length: 5.0 m}
      D: {length: 3.0 m}
boards:
  CU1:
    at: wall A, 0.5 m along, 1.6 m up
    ways: 6
    phases: 1
    main switch: 63 A switch-disconnector DP
    fed from: supply
containment:
  T1:
    is: steel trunking
    size: 50 x 50
    for: power
    level: 2.2 m T/O
    run: [A 0.5 m, B 3.0 m]
circuits:
  - way: CU1/1
    name: Benches
    device: RCBO B20 30 mA type A 6 kA
    cable: T&E 2.5 mm2
    drops: 20 mm steel conduit
    points:
      - {tag: S1, is: 13 A socket, gangs: 2, at: "wall A, 2.0 m along, 1.2 m up"}
      - {tag: S2, is: 13 A socket, gangs: 2, at: "wall B, 1.0 m along, 1.2 m up"}
  - way: CU1/2
    name: Lighting
    use: lighting
    device: RCBO B6 30 mA type A 6 kA
    cable: T&E 1.5 mm2
    drops: 20 mm steel conduit
    points:
      - {tag: LS1, is: light switch, at: "wall A, 1.0 m along, 1.2 m up"}
      - {tag: L1, is: linear luminaire, load: 40 W, at: "wall A, 2.5 m along, 2.5 m up, 1.5 m out"}
  - way: CU1/3
    name: Propagator
    device: RCBO B16 30 mA type A 6 kA
    cable: T&E 2.5 mm2
    drops: 20 mm steel conduit
    points:
      - {tag: F1, is: fused spur, fuse: 13 A, load: 2 kW, at: "wall B, 2.0 m along, 1.2 m up"}
"""


def edited(*edits: tuple[str, str]) -> str:
    """Return the job with words replaced; each must be there once at least."""
    text = JOB
    for before, after in edits:
        assert before in text, before
        text = text.replace(before, after, 1)
    return text


def issues(folder: Path, newer: str, older: str = JOB) -> Checked:
    """Return the newer issue, checked, with the older as the issue before it."""
    old, new = folder / "old.yaml", folder / "new.yaml"
    old.write_text(older, encoding="utf-8")
    new.write_text(newer, encoding="utf-8")
    return check_job(new, since=old)


def changes_of(folder: Path, newer: str, older: str = JOB) -> Changes:
    """Return what changed between the two."""
    found = issues(folder, newer, older).changes
    assert found is not None
    return found
