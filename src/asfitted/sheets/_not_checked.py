"""What was not checked, told at the front: how much, the first of it, and where the rest stands."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.document.blocks import Boxed
from asfitted.layout.document.plain_words import counted, sentence, some_of
from asfitted.sheets._document_pages import DocumentPage

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model

#: Ident of the table of what was not checked, on the sheet of outstanding items.
TABLE = "open-not-checked"
MOST_SUBJECTS = 4  # of one line
NOTHING = "Every check that applies found the facts it needs; what it said stands on {}."


def not_checked_box(model: Model, most: int) -> Boxed:
    """Return the box for the front of a set: the count, the first reasons, a link to all.

    Args:
        model: the job, with the sheet of outstanding items planned.
        most: how many reasons are told at most.
    """
    found = [f for f in model.report.findings if f.word == "not checked"]
    words = [f.word for f in model.report.findings]
    errors, decisions = words.count("error"), words.count("warning")
    others = f"{counted(errors, 'error')}, {counted(decisions, 'decision')} open"
    whole = _whole_list(model)
    if not found:
        return Boxed(f"Not checked: nothing ({others})", (NOTHING.format(whole),))
    reasons: dict[str, list[str]] = {}
    for finding in found:
        reason = finding.message.removeprefix("Not checked: ")
        reasons.setdefault(reason, []).append(finding.subject)
    told = [
        f"{some_of(list(dict.fromkeys(subjects)), MOST_SUBJECTS)}: {sentence(reason)}"
        for reason, subjects in reasons.items()
    ]
    left = len(told) - most
    more = f"And {counted(left, 'more reason')}. " if left > 0 else ""
    lines = (*told[:most], f"{more}The whole list: {whole}. Not checked is not a pass.")
    return Boxed(f"Not checked: {counted(len(found), 'check')} ({others})", lines)


def _whole_list(model: Model) -> str:
    """Return the reference to the first row of the whole list."""
    first = f"{TABLE}:0000"
    for sheet in model.planned:
        page = sheet.payload
        if isinstance(page, DocumentPage) and any(p.strip.ident == first for p in page.placed):
            return f"sheet [[{sheet.key}#{first}]]"
    return next(
        (f"sheet [[{s.key}]]" for s in model.planned if s.key.startswith("outstanding")),
        "the sheet of outstanding items",
    )
