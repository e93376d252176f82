"""Invented rooms of any size with many things on their walls, from a seed, as job specs."""

from __future__ import annotations

import random
from typing import TYPE_CHECKING

from asfitted.draw.symbols import catalogue
from asfitted.layout.sheet_model import Model, Numbers
from asfitted.pipeline import check_job

if TYPE_CHECKING:
    from pathlib import Path

    from asfitted.layout.sheet_model import SheetPlan

HEAD = """asfitted: 1
job: {number: J9000, title: Grown room, client: Nobody, site: Nowhere, installer: Nobody,
      designer: N. Body, edition: "BS 7671:2018+A4:2026", date: 2026-11-18, revision: P01,
      status: For construction}
supply: {system: TN-S, phases: 1, voltage: 230 V, Ze: 0.35 ohm measured,
         fault current: 0.9 kA measured, cut-out: 60 A BS 88-3 declared, tails: "16 mm2, 1.5 m",
         earthing conductor: 16 mm2}
"""


def grown_spec(seed: int, *, long_m: float, wide_m: float, sockets: int) -> str:
    """Return a spec of one room with so many socket-outlets spread over its walls."""
    rng = random.Random(seed)  # noqa: S311  # no secret: the same seed makes the same room
    height = rng.choice((2.4, 2.8, 3.6, 4.5))
    level = height - 0.4
    lengths = {"A": long_m, "B": wide_m, "C": long_m, "D": wide_m}
    walls = ", ".join(f"{w}: {{length: {m} m}}" for w, m in lengths.items())
    lines = [
        HEAD,
        f"rooms: {{The long room with the long name: {{height: {height} m, walls: {{{walls}}}}}}}",
        f'boards: {{CU1: {{at: "wall A, {long_m / 2:.2f} m along, 1.5 m up", ways: 40, phases: 1,',
        "  rating: 100 A, fed from: supply, main switch: 100 A switch-disconnector 2P,",
        "  short-circuit rating: 6 kA}}",
        "containment:",
        "  T1: {is: steel trunking, size: 100 x 100, for: power,",
        f"       level: {level:.2f} m U/S,",
        f"       run: [A {long_m / 4:.2f} m, B, C, D {wide_m / 2:.2f} m]}}",
        "  T2: {is: wire basket, size: 100 x 55, for: data,",
        f"       level: {level - 0.3:.2f} m U/S, run: [A, B {wide_m / 2:.2f} m]}}",
        "circuits:",
    ]
    for i in range(sockets):
        wall = rng.choice("ABBBCD")
        along = rng.uniform(0.1, lengths[wall] - 0.1)
        up = rng.choice((0.3, 0.45, 1.1, 1.2, 1.2))
        lines.append(
            f"  - {{way: CU1/{i + 1}, name: Sockets {i}, device: RCBO B16 30 mA type A 6 kA,"
            f" cable: T&E, drops: 20 mm steel conduit, points: [{{tag: S{i + 1}, is: 13 A socket,"
            f' gangs: 2, at: "wall {wall}, {along:.2f} m along, {up} m up"}}]}}'
        )
    return "\n".join(lines) + "\n"


def grown_model(folder: Path, seed: int, *, long_m: float, wide_m: float, sockets: int) -> Model:
    """Return a grown room, resolved and calculated."""
    path = folder / f"grown-{seed}.yaml"
    spec = grown_spec(seed, long_m=long_m, wide_m=wide_m, sockets=sockets)
    path.write_text(spec, encoding="utf-8")
    checked = check_job(path)
    return Model(checked.installation, checked.results, checked.report, catalogue())


def numbers_for(plans: list[SheetPlan]) -> Numbers:
    """Return numbers for some planned sheets, from 01."""
    numbered = enumerate(plans, start=1)
    return Numbers({key: f"{i:02d}" for i, p in numbered for key in (p.key, *p.also)})
