"""Times each stage on a generated job, and how it grows from 500 to 5,000 circuits.

Run ``python -m asfitted.dev.benchmark``. Machines differ: read the growth, which comes from one
process (10 is straight growth for ten times the circuits), not the seconds.
"""

from __future__ import annotations

import sys
import tempfile
import time
from pathlib import Path

from asfitted.calculate.calculate import calculate
from asfitted.check.run import run_checks
from asfitted.resolve.resolve_job import resolve
from asfitted.spec.load_job import load_job

CIRCUITS_A_BOARD = 36  # twelve ways of three lines
HEAD = """asfitted: 1
job: {number: B1, title: Benchmark, client: None, site: None, installer: None, designer: None,
      edition: BS 7671:2018+A4:2026, date: 2026-01-01, revision: P01, status: Preliminary}
supply: {system: TN-S, phases: 3, voltage: 400/230 V, Ze: 0.1 ohm assumed,
         fault current: 5 kA assumed, cut-out: 800 A BS 88-2 assumed}
"""


def job_text(circuits: int) -> str:
    """Return a spec with so many lighting circuits, on boards in rooms of their own."""
    boards = -(-circuits // CIRCUITS_A_BOARD)
    rooms, board_lines, runs, rows = ["rooms:"], ["boards:"], ["containment:"], ["circuits:"]
    left = circuits
    for b in range(boards):
        walls = ", ".join(f"{w}{b}: {{length: 12 m}}" for w in "ABCD")
        rooms.append(f"  R{b}: {{height: 3 m, walls: {{{walls}}}}}")
        board_lines.append(
            f'  DB{b}: {{at: "wall A{b}, 1 m along, 1.5 m up", ways: 12, phases: 3, rating: 125 A,'
            " fed from: supply, main switch: 100 A switch-disconnector 4P}"
        )
        run = f"[A{b} 0.5 m, B{b}, C{b} 11 m]"
        size = "is: perforated tray, size: 600 x 25, for: power, level: 2.7 m T/O"
        runs.append(f"  T{b}: {{{size}, run: {run}}}")
        for n in range(min(left, CIRCUITS_A_BOARD)):
            place = f"wall {'ABC'[n % 3]}{b}, {1000 + 250 * n} along, 1200 up"
            rows.append(
                f"  - {{way: DB{b}/{n // 3 + 1}L{n % 3 + 1}, name: Light {n}, use: lighting,"
                " device: B10 SP 6 kA, cable: SWA 3c,"
                f' points: [{{tag: L{b}-{n}, is: luminaire, load: 100 W, at: "{place}"}}]}}'
            )
        left -= CIRCUITS_A_BOARD
    return HEAD + "\n".join([*rooms, *board_lines, *runs, *rows]) + "\n"


def stage_seconds(circuits: int) -> dict[str, float]:
    """Return the seconds that each stage takes on a generated job."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "job.yaml"
        path.write_text(job_text(circuits), encoding="utf-8")
        marks = [time.perf_counter()]
        loaded = load_job(path)
        marks.append(time.perf_counter())
        installation = resolve(loaded)
        marks.append(time.perf_counter())
        results = calculate(installation)
        marks.append(time.perf_counter())
        run_checks(installation, results)
        marks.append(time.perf_counter())
    names = ("spec", "resolve", "calculate", "check")
    return {n: b - a for n, a, b in zip(names, marks, marks[1:], strict=False)}


def main() -> int:
    """Run the command."""
    small, large = 500, 5000
    stage_seconds(36)  # tables and modules are loaded once
    few, many = stage_seconds(small), stage_seconds(large)
    sys.stdout.write(f"{'stage':<10} {small:>8} {large:>8}   growth\n")
    for name, seconds in many.items():
        growth = seconds / few[name]
        sys.stdout.write(f"{name:<10} {few[name]:8.2f} {seconds:8.2f}   {growth:6.1f}\n")
    return 0


if __name__ == "__main__":
    sys.exit(main())
