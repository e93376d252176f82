"""The command line: parse, call the pipeline, print.

Exit codes: 0 clean, 1 findings of error severity, 2 unusable spec, 3 our fault.
"""

from __future__ import annotations

import argparse
import json
import sys
import traceback
from pathlib import Path
from typing import TYPE_CHECKING, cast

from asfitted import __version__
from asfitted.compare.report import as_text as as_lines
from asfitted.errors import AsfittedError, NotUnderstoodError, OutputError, SpecError
from asfitted.explain.find import explain
from asfitted.explain.text import as_text, step_lines
from asfitted.layout.sheet_layout import READERS
from asfitted.pack.blank_results import blank_results
from asfitted.pack.design_json import findings_data
from asfitted.pack.job_files import job_attachments
from asfitted.pack.plain_data import plain
from asfitted.pack.write import put, write_pack, write_reader_packs, write_sheets
from asfitted.pipeline import changed_sheets, check_job, dump_stage, lay_out_job, model_of
from asfitted.quick_sums import quick_sum, quick_sums
from asfitted.quick_sums._sum import split_typed
from asfitted.spec.schema import json_schema

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from asfitted.check.run import CheckReport
    from asfitted.pipeline import Checked
    from asfitted.resolve.installation import Installation

CLEAN, FINDINGS, BAD_SPEC, OUR_FAULT = 0, 1, 2, 3
CAUTION = (
    "Design aid, not a certificate: for a competent person, against the current BS 7671. "
    "Isolate, lock off and prove dead before work."
)


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command line and return the exit code."""
    options = _parser().parse_args(arguments)
    try:
        return int(options.run(options))
    except SpecError as error:
        for problem in error.problems:
            print(problem.render(), file=sys.stderr)
        count = len(error.problems)
        print(
            f"\n{count} problem{'s' * (count != 1)} in the spec; nothing was drawn.",
            file=sys.stderr,
        )
        return BAD_SPEC
    except NotUnderstoodError as error:
        print(f"asfitted: {error.message}", file=sys.stderr)
        if error.hint:
            print(f"         {error.hint}", file=sys.stderr)
        return BAD_SPEC
    except Exception as error:  # noqa: BLE001 - the last stop: say whose fault it is
        return _our_fault(error, debug=options.debug)


def _our_fault(error: Exception, *, debug: bool) -> int:
    if debug:
        traceback.print_exc()
    kind = "" if isinstance(error, AsfittedError) else f"{type(error).__name__}: "
    print(f"asfitted: {kind}{error}", file=sys.stderr)
    if not isinstance(error, AsfittedError):
        print("This is a fault of the tool; --debug shows where.", file=sys.stderr)
    return OUR_FAULT


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="asfitted",
        description="Draws an electrical installation from a written spec.",
        epilog=CAUTION,
    )
    parser.add_argument("--version", action="version", version=f"asfitted {__version__}")
    commands = parser.add_subparsers(required=True, metavar="COMMAND")
    check = _command(commands, "check", "check the design and print the findings", _check)
    check.add_argument("job", type=Path, help="the job file (YAML)")
    check.add_argument("--json", action="store_true", help="print the findings as JSON")
    _issue_arguments(check)
    compared = _command(commands, "compare", "say what changed from one issue to another", _compare)
    compared.add_argument("old", type=Path, help="the job file of the older issue")
    compared.add_argument("new", type=Path, help="the job file of the newer issue")
    compared.add_argument("--site", type=Path, metavar="FILE", help="mark-ups over the newer issue")
    compared.add_argument("--json", action="store_true", help="print the changes as JSON")
    for name, words, run in (
        ("draw", "draw every sheet as SVG", _draw),
        ("pack", "draw every sheet and bind the pack", _pack),
    ):
        command = _command(commands, name, words, run)
        command.add_argument("job", type=Path, help="the job file (YAML)")
        command.add_argument("-o", "--output", type=Path, required=True, help="folder to write to")
        command.add_argument("--png", type=float, metavar="DPI", help="also write PNG previews")
        command.add_argument("--dxf", action="store_true", help="also write each sheet as DXF")
        _issue_arguments(command)
        if name == "pack":
            command.add_argument(
                "--for",
                dest="readers",
                action="append",
                choices=READERS,
                help="only the PDF of one reader; may be given more than once",
            )
    dump = _command(commands, "dump", "print the result of one stage as JSON", _dump)
    dump.add_argument("stage", choices=("spec", "resolve", "calculate", "check", "layout"))
    dump.add_argument("job", type=Path, help="the job file (YAML)")
    told = _command(commands, "explain", "print the working of one thing of a job", _explain)
    told.add_argument("job", type=Path, help="the job file (YAML)")
    told.add_argument("name", help="tag of a circuit, board, cable, point, run or data device")
    told.add_argument("--json", action="store_true", help="print the working as JSON")
    sums = _command(commands, "calc", "work out one quick sum without a job file", _calc)
    sums.add_argument("name", nargs="?", help="name of the sum; without it, all are listed")
    sums.add_argument("given", nargs="*", metavar="NAME=VALUE", help="inputs, such as length=25 m")
    sums.add_argument("--json", action="store_true", help="print the working as JSON")
    blank = _command(commands, "results", "write an empty file for test results", _results)
    blank.add_argument("job", type=Path, help="the job file (YAML)")
    blank.add_argument(
        "-o", "--output", type=Path, required=True, metavar="FILE", help="new file to write"
    )
    _command(commands, "schema", "print the JSON Schema of a job file", _schema)
    return parser


def _issue_arguments(command: argparse.ArgumentParser) -> None:
    """Let a command take the issue to compare with, and mark-ups from site."""
    command.add_argument(
        "--since",
        type=Path,
        metavar="JOB",
        help="the job file of the issue before: clouds go round what differs",
    )
    command.add_argument(
        "--site",
        type=Path,
        metavar="FILE",
        help="mark-ups from site to lay over the job, which stays as it is",
    )


def _command(
    commands: argparse._SubParsersAction[argparse.ArgumentParser],
    name: str,
    words: str,
    run: Callable[[argparse.Namespace], int],
) -> argparse.ArgumentParser:
    command = commands.add_parser(name, help=words, description=words, epilog=CAUTION)
    command.add_argument("--debug", action="store_true", help="show where a fault of the tool is")
    command.set_defaults(run=run)
    return command


def _say(words: str) -> None:
    print(f"  {words}", file=sys.stderr, flush=True)


def _check(options: argparse.Namespace) -> int:
    checked = check_job(options.job, since=options.since, site=options.site)
    if not options.json:
        _tell_marks(checked)
    if options.json:
        print(json.dumps(findings_data(checked.report), indent=1, ensure_ascii=False))
    else:
        for finding in checked.report.findings:
            print(finding.render())
        print(_summary(checked.report))
    return _verdict(checked.report)


def _summary(report: CheckReport) -> str:
    """Return the closing line: how much was judged, and what was not."""
    words = [f.word for f in report.findings]
    counts = [
        f"{words.count(w)} {w}{'s' * (words.count(w) != 1)}" for w in ("error", "warning", "note")
    ]
    counts.append(f"{words.count('not checked')} not checked")
    passed = sum(report.checked.values())
    return f"{', '.join(counts)}; {passed} checks passed by {len(report.checked)} rules.\n{CAUTION}"


def _verdict(report: CheckReport) -> int:
    return FINDINGS if report.errors else CLEAN


def _tell_marks(checked: Checked) -> None:
    """Say which mark-ups from site were laid over the job."""
    for mark in checked.installation.site_marks:
        print(f"site  {mark.tag}: {mark.words} ({mark.by}, {mark.date})", file=sys.stderr)


def _compare(options: argparse.Namespace) -> int:
    checked = check_job(options.new, _say, since=options.old, site=options.site)
    changes = checked.changes
    if changes is None:
        return CLEAN
    _say("laying out both issues")
    sheets = [change for change in changed_sheets(checked) if change.is_concerned]
    if options.json:
        data = {"changes": plain(changes), "sheets": [sheet.facts for sheet in sheets]}
        print(json.dumps({**data, "caution": CAUTION}, indent=1, ensure_ascii=False))
        return CLEAN
    _tell_marks(checked)
    print(as_lines(changes, [sheet.words for sheet in sheets]))
    print(CAUTION)
    return CLEAN


def _draw(options: argparse.Namespace) -> int:
    checked = check_job(options.job, _say, since=options.since, site=options.site)
    _tell_marks(checked)
    sheets = lay_out_job(checked, _say)
    names = write_sheets(
        sheets, options.output, png_dpi=options.png, dxf=options.dxf, progress=_say
    )
    print(f"{len(names)} files in {options.output}")
    return _report_errors(checked.report)


def _pack(options: argparse.Namespace) -> int:
    checked = check_job(options.job, _say, since=options.since, site=options.site)
    _tell_marks(checked)
    sheets = lay_out_job(checked, _say)
    attachments = job_attachments(options.job, since=options.since, site=options.site)
    if options.readers:
        written = write_reader_packs(
            model_of(checked),
            sheets,
            options.output,
            options.readers,
            progress=_say,
            attachments=attachments,
        )
    else:
        written = write_pack(
            model_of(checked),
            sheets,
            options.output,
            png_dpi=options.png,
            dxf=options.dxf,
            progress=_say,
            attachments=attachments,
        )
    for name in written.files:
        print(options.output / name)
    return _report_errors(checked.report)


def _report_errors(report: CheckReport) -> int:
    """Print what stops the work, and the summary; the rest is on the design check sheet."""
    for finding in report.errors:
        print(finding.render(), file=sys.stderr)
    print(_summary(report), file=sys.stderr)
    return _verdict(report)


def _dump(options: argparse.Namespace) -> int:
    print(json.dumps(plain(dump_stage(options.job, options.stage)), indent=1, ensure_ascii=False))
    return CLEAN


def _explain(options: argparse.Namespace) -> int:
    checked = check_job(options.job)
    told = explain(options.name, checked.installation, checked.results, checked.report)
    if options.json:
        print(json.dumps(plain(told), indent=1, ensure_ascii=False))
    else:
        print(as_text(told))
    return CLEAN


def _calc(options: argparse.Namespace) -> int:
    if options.name is None:
        for one in quick_sums().values():
            print(f"{one.name:<18} {one.title}")
        print("\nasfitted calc NAME shows the inputs of a sum.")
        return CLEAN
    one = quick_sum(options.name)
    if not options.given:
        print("\n".join(one.usage()))
        return CLEAN
    steps = one.working(split_typed(options.given))
    if options.json:
        told = {"sum": one.name, "steps": plain(steps), "note": one.note, "caution": CAUTION}
        print(json.dumps(told, indent=1, ensure_ascii=False))
        return CLEAN
    for step in steps:
        print("\n".join(step_lines(step)))
    print("\n".join(words for words in (one.note, CAUTION) if words))
    return CLEAN


def _results(options: argparse.Namespace) -> int:
    """Write every reading that is owed, and no value; a file that is there stays as it is."""
    installation = dump_stage(options.job, "resolve")
    if options.output.exists():
        raise OutputError(f"{options.output} is there already: readings are never overwritten")
    put(options.output, blank_results(cast("Installation", installation)).encode())
    print(f'{options.output}: fill it in, then name it in the job file under "results:"')
    return CLEAN


def _schema(_: argparse.Namespace) -> int:
    print(json.dumps(json_schema(), indent=1, ensure_ascii=False))
    return CLEAN


if __name__ == "__main__":
    sys.exit(main())
