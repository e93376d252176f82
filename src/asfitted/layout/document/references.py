"""References to sheets in running text: measured before sheets are numbered, filled in after.

While pages are being broken every reference is three signs of the width of a digit, so that what
is filled in later never needs more room than was reserved.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from asfitted.layout.sheet_layout import READERS

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.sheet_layout import Text
    from asfitted.layout.sheet_model import Model, Numbers

#: As wide as three digits in our lettering, and used for nothing else.
PLACEHOLDER = "¤¤¤"
_MARK = re.compile(r"\[\[([^\]]+)\]\]")


@dataclass(frozen=True)
class Marked:
    """Words with placeholders, and the keys that they stand for, in order."""

    text: str
    keys: tuple[str, ...]


def marked(text: str) -> Marked:
    """Return the words ready to be measured, and the keys of their references."""
    return Marked(_MARK.sub(PLACEHOLDER, text), tuple(_MARK.findall(text)))


def count_in(texts: Sequence[Text]) -> int:
    """Return how many references stand in some lines."""
    return sum(text.text.count(PLACEHOLDER) for text in texts)


def filled(texts: Sequence[Text], keys: Sequence[str], numbers: Numbers) -> tuple[Text, ...]:
    """Return the lines with sheet numbers in place of the placeholders, taken in order."""
    left = iter(keys)
    done = []
    for text in texts:
        words = text.text
        while PLACEHOLDER in words:
            number = numbers.of(next(left).partition("#")[0])
            words = words.replace(PLACEHOLDER, number, 1)
        done.append(text if words is text.text else replace(text, text=words))
    return tuple(done)


def link_to(key: str, numbers: Numbers) -> str:
    """Return the link of an item to what a key names: ``07`` or ``07#cable-schedule:W05``."""
    sheet, _, item = key.partition("#")
    return f"{numbers.of(sheet)}#{item}" if item else numbers.of(sheet)


def sheet_key(model: Model, name: str) -> str | None:
    """Return the key of the first planned sheet of a kind: itself, its first part or one below."""
    keys = [key for plan in model.planned for key in (plan.key, *plan.also)]
    heads = (name, f"{name}-1")
    exact = next((key for key in keys if key in heads), None)
    below = (key for key in keys if key.startswith((f"{name}/", f"{name}-")))
    return exact or next(below, None)


def on_sheets(model: Model, name: str) -> str:
    """Return ``sheet [[key]]`` or ``sheets [[key]], [[key]]`` for every planned sheet of a kind."""
    found = [
        f"[[{plan.key}]]"
        for plan in model.planned
        if any(k == name or k.startswith((f"{name}/", f"{name}-")) for k in (plan.key, *plan.also))
    ]
    return f"sheet{'s' * (len(found) > 1)} {', '.join(found)}" if found else ""


def on_sheet(
    model: Model, name: str, before: str = "sheet ", *, readers: Sequence[str] = ()
) -> str:
    """Return ``sheet [[key]]`` for a planned sheet, or nothing where the job has none.

    Args:
        model: the job, with the sheets planned so far.
        name: key of the sheet, or how it begins.
        before: words before the number.
        readers: who reads the words; where one of them is not given the sheet it is said to stand
            in the full set.
    """
    key = sheet_key(model, name)
    if not key:
        return ""
    plan = next(one for one in model.planned if key in (one.key, *one.also))
    lacks = set(readers) - set(plan.readers or READERS)
    return f"{before}[[{key}]]" + (" of the full set" if lacks else "")
