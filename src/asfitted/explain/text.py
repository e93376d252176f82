"""The working as plain text, for the screen and for a print."""

from __future__ import annotations

import textwrap
from typing import TYPE_CHECKING

from asfitted.explain.numbers import value_words

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from asfitted.calculate.results import SizeTried
    from asfitted.calculate.working import Step
    from asfitted.explain.explanation import Explanation, Margin, Part

WIDTH = 96
SYMBOL = 10


def as_text(told: Explanation) -> str:
    """Return the working as lines of text, at most 96 signs wide."""
    lines = [told.heading, "=" * min(len(told.heading), WIDTH)]
    for label, words in told.facts:
        lines += _wrapped(f"{label}: {words}", "", "    ")
    for part in told.parts:
        lines += ["", part.title, "-" * min(len(part.title), WIDTH), *_part(part)]
    lines += ["", "Margins", "-------", *_margins(told.margins)]
    lines += ["", "Findings", "--------", *_findings(told)]
    if told.not_known:
        lines += ["", "Not known (not checked, never taken as a pass)"]
        lines += [line for words in told.not_known for line in _wrapped(words, "  - ", "    ")]
    lines += ["", *told.cautions]
    return "\n".join(lines)


def _wrapped(words: str, first: str, next_: str) -> list[str]:
    return textwrap.wrap(
        words, WIDTH, initial_indent=first, subsequent_indent=next_, break_long_words=False
    )


def _part(part: Part) -> Iterator[str]:
    for words in part.lines:
        yield from _wrapped(words, "  ", "    ")
    for step in part.steps:
        yield from step_lines(step)
    if part.tried:
        yield "  Sizes tried"
        for tried in part.tried:
            yield from _tried(tried)


def step_lines(step: Step) -> Iterator[str]:
    """Yield one line of working: words, formula, figures and result, source."""
    indent = " " * (SYMBOL + 2)
    yield from _wrapped(step.words, f"  {step.symbol:<{SYMBOL}}", indent)
    if step.formula:
        yield from _wrapped(step.formula, f"{indent}= ", indent + "  ")
    if step.substituted:
        yield from _wrapped(step.substituted, f"{indent}= ", indent + "  ")
    yield f"{indent}= {value_words(step.value, step.unit)}"
    yield from _wrapped(f"[{step.source}]", indent, indent + " ")


def _tried(tried: SizeTried) -> list[str]:
    why = f"does not do: {tried.reason}" if tried.reason else "does"
    return _wrapped(f"{tried.csa_mm2:g} mm² {why}", " " * (SYMBOL + 2), " " * (SYMBOL + 4))


def _margins(margins: Iterable[Margin]) -> Iterator[str]:
    none = True
    for one in margins:
        none = False
        room = "" if one.room_pct is None else f", room {one.room_pct:.0f} %"
        verdict = "holds" if one.holds else "DOES NOT HOLD"
        words = (
            f"{one.words}: {value_words(one.found, one.unit)}, {one.relation} "
            f"{value_words(one.limit, one.unit)}: {verdict}{room}"
        )
        yield from _wrapped(words, "  ", "    ")
    if none:
        yield "  none: no figure stands beside a limit here"


def _findings(told: Explanation) -> list[str]:
    found = []
    for finding in told.findings:
        words = f"{finding.rule}  {finding.word}  {finding.subject}: {finding.message}"
        found += _wrapped(words, "  ", "    ")
        if finding.to_do:
            found += _wrapped(finding.to_do, "    ", "    ")
    return found or ["  none"]
