"""Lays out generated jobs and measures every sheet with the independent drawing measurer.

Run from anywhere::

    python -m asfitted.dev.measure_jobs --seeds 0-199 --measurer PATH --kinds door_charts

Each sheet is measured as lettered, and again as a viewer with an ordinary font would show it. What
breaks a gate, and every sheet that cannot be laid out, is printed and counted by kind of sheet.
"""

from __future__ import annotations

import argparse
import json
import os
import random
import subprocess
import sys
import tempfile
import time
from collections import Counter
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING, Any

from asfitted.dev.generated_jobs import generated_job
from asfitted.dev.sheet_faults import faults_of
from asfitted.draw.svg import write_svg
from asfitted.fonts import FILES
from asfitted.pipeline import check_job, model_of
from asfitted.sheets import framed, numbered, planned_sheets, sheet_kinds

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.sheet_layout import SheetLayout
    from asfitted.layout.sheet_model import Model, SheetPlan
    from asfitted.sheets import SheetKind

ENV = "ASFITTED_MEASURER"
#: The two letterings: our own font, and what the measurer finds on the machine.
LETTERINGS = {"ours": [f"--font={path}" for path in FILES.values()], "ordinary": []}


@dataclass
class Measured:
    """What came of one job: sheets by kind, and failures as (kind, what)."""

    seed: int
    sheets: Counter[str] = field(default_factory=Counter)
    measured: Counter[str] = field(default_factory=Counter)
    failures: list[tuple[str, str]] = field(default_factory=list)
    seconds: float = 0.0


def kind_name(kind: SheetKind) -> str:
    """Return the module name of a sheet kind."""
    return str(kind.__name__).rsplit(".", 1)[-1]  # type: ignore[attr-defined] # kinds are modules


def lay_out_what_can_be(
    model: Model, wanted: Sequence[str], failures: list[tuple[str, str]]
) -> list[tuple[str, SheetLayout]]:
    """Return the sheets of the wanted kinds (all when none is named) that can be laid out.

    Only these kinds are planned and numbered, which is quick; a sheet that names one of another
    kind needs that kind too. What goes wrong is noted in ``failures``; the other sheets still come.
    """
    kinds = [k for k in sheet_kinds() if not wanted or kind_name(k) in wanted]

    def plan_of(kind: SheetKind, told: Model) -> list[SheetPlan]:
        try:
            return list(kind.plan(told))
        except Exception as error:  # noqa: BLE001 - whatever goes wrong is what is looked for
            failures.append((kind_name(kind), f"plan: {type(error).__name__}: {error}"))
            return []

    planned = planned_sheets(model, kinds, plan_of)
    numbers = numbered(planned)
    sheets = []
    for kind, plan in planned:
        name = kind_name(kind)
        try:
            sheets.append((name, framed(plan, kind.build(plan, model, numbers), model, numbers)))
        except Exception as error:  # noqa: BLE001
            failures.append((name, f"build {plan.key}: {type(error).__name__}: {error}"))
    return sheets


def measure_job(
    seed: int, kinds: tuple[str, ...], measurer: str, letterings: Sequence[str], sample: int
) -> Measured:
    """Return what comes of one generated job; ``sample`` sheets of it are measured, 0: all."""
    start, done = time.monotonic(), Measured(seed)
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        spec = folder / "job.yaml"
        spec.write_text(generated_job(seed), encoding="utf-8")
        try:
            model = model_of(check_job(spec))
        except Exception as error:  # noqa: BLE001 - whatever goes wrong is what is looked for
            done.failures.append(("before layout", f"{type(error).__name__}: {error}"))
            return done
        sheets = lay_out_what_can_be(model, kinds, done.failures)
        files: dict[Path, str] = {}
        for kind, sheet in sheets:
            done.sheets[kind] += 1
            done.failures += [(kind, f"{sheet.name} {fault}") for fault in faults_of(sheet)]
        for kind, sheet in sampled(sheets, sample, seed):
            done.measured[kind] += 1
            path = folder / f"{sheet.name}.svg"
            path.write_text(write_svg(sheet), encoding="utf-8")
            files[path] = kind
        if files and measurer:
            for lettering in letterings:
                done.failures += _measured(files, measurer, lettering)
    done.seconds = time.monotonic() - start
    return done


def sampled(
    sheets: list[tuple[str, SheetLayout]], count: int, seed: int
) -> list[tuple[str, SheetLayout]]:
    """Return so many sheets, 0 for all, one kind after the other, by lot from the seed."""
    if not count:
        return sheets
    lots = random.Random(seed)  # noqa: S311 - a sample that comes again, not a secret
    mixed = lots.sample(sheets, len(sheets))
    seen: Counter[str] = Counter()
    ranked: list[tuple[int, int, str, SheetLayout]] = []
    for kind, sheet in mixed:
        ranked.append((seen[kind], len(ranked), kind, sheet))
        seen[kind] += 1
    return [(kind, sheet) for _, _, kind, sheet in sorted(ranked, key=lambda r: r[:2])][:count]


def _measured(files: dict[Path, str], measurer: str, lettering: str) -> list[tuple[str, str]]:
    """Return the broken gates of many sheets, measured in one call."""
    command = [
        sys.executable,
        measurer,
        "--gates",
        "--json",
        *LETTERINGS[lettering],
        *map(str, files),
    ]
    found = subprocess.run(command, capture_output=True, text=True, check=False)  # noqa: S603
    if found.returncode not in (0, 1):
        return [("measurer", found.stderr.strip()[-300:])]
    return [
        (
            files[Path(sheet["file"])],
            f"{Path(sheet['file']).stem} [{lettering}] {_words(fail)}",
        )
        for sheet in json.loads(found.stdout)
        for fail in sheet["failures"]
    ]


def _words(fail: dict[str, Any]) -> str:
    x, y = fail["place_mm"]
    return f"{fail['gate']}: {fail['element']} at {x}, {y} mm: {fail['detail']}"


def _seeds(words: str) -> list[int]:
    """Return the seeds of ``0-9,40``."""
    seeds: list[int] = []
    for part in words.split(","):
        first, _, last = part.partition("-")
        seeds += range(int(first), int(last or first) + 1)
    return seeds


def _options() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--seeds", type=_seeds, default=_seeds("0-9"), help="such as 0-9,40")
    parser.add_argument("--measurer", default=os.environ.get(ENV, ""), help=f"else from {ENV}")
    parser.add_argument("--kinds", default="", help="names of sheet modules, parted by commas")
    parser.add_argument("--lettering", choices=("ours", "ordinary", "both"), default="both")
    parser.add_argument("--processes", type=int, default=1)
    parser.add_argument("--sample", type=int, default=0, help="sheets measured a job; 0: all")
    parser.add_argument("--failures", type=Path, help="file to which failures are appended")
    return parser.parse_args()


def main() -> int:
    """Run the command: exit status 1 when anything failed."""
    options = _options()
    kinds = tuple(kind for kind in options.kinds.split(",") if kind)
    letterings = list(LETTERINGS) if options.lettering == "both" else [options.lettering]
    sheets: Counter[str] = Counter()
    measured: Counter[str] = Counter()
    failed: Counter[str] = Counter()
    if not options.measurer:
        sys.stdout.write(f"no measurer ({ENV} or --measurer): sheets are laid out only\n")
    with ProcessPoolExecutor(options.processes) as pool:
        waiting = [
            pool.submit(measure_job, seed, kinds, options.measurer, letterings, options.sample)
            for seed in options.seeds
        ]
        for done in (one.result() for one in waiting):
            sheets += done.sheets
            measured += done.measured
            failed.update(kind for kind, _ in done.failures)
            _report(done, options.failures)
    sys.stdout.write(f"\n{'sheet kind':<28} {'sheets':>7} {'measured':>9} {'failures':>9}\n")
    for kind in sorted(sheets.keys() | failed.keys()):
        sys.stdout.write(f"{kind:<28} {sheets[kind]:7} {measured[kind]:9} {failed[kind]:9}\n")
    sys.stdout.write(f"{'all':<28} {sheets.total():7} {measured.total():9} {failed.total():9}\n")
    return int(failed.total() > 0)


def _report(done: Measured, path: Path | None) -> None:
    """Print one job, and append its failures to the file."""
    lines = [f"seed {done.seed}: {kind}: {what}" for kind, what in done.failures]
    head = f"seed {done.seed}: {done.sheets.total()} sheets, {len(lines)} failures"
    sys.stdout.write(f"{head}, {done.seconds:.0f} s\n")
    sys.stdout.writelines(f"  {line}\n" for line in lines[:20])
    sys.stdout.flush()
    if path is not None and lines:
        with path.open("a", encoding="utf-8") as file:
            file.writelines(f"{line}\n" for line in lines)


if __name__ == "__main__":
    sys.exit(main())
