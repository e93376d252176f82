"""The register refuses a rule that is not whole."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import pytest

from asfitted.check.finding import Severity
from asfitted.check.registry import RuleRefusedError, all_rules, rule

if TYPE_CHECKING:
    from collections.abc import Iterator

WHOLE = """Title.

What it checks. One thing.

Why it matters on site. It does.

Bad. Wrong.

Good. Right.

To put it right. Do it.

Source. A book.
"""


def offer(*, doc: str = WHOLE, **changes: Any) -> None:
    def check(_: Any) -> Iterator[Any]:
        yield from ()

    check.__doc__ = doc
    plain: dict[str, Any] = {
        "id": "OC-98",
        "title": "Title",
        "clause": "BS 7671 1",
        "severity": Severity.NOTE,
        "provenance": "memory",
    }
    rule(**(plain | changes))(check)


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"id": "OC-1"}, "not a rule id"),
        ({"id": "ZZ-01"}, "not a rule id"),
        ({"id": "OC-01"}, "is taken"),
        ({"clause": " "}, "needs a title and a clause"),
        ({"title": ""}, "needs a title and a clause"),
        ({"provenance": "hearsay"}, "provenance"),
        ({"doc": ""}, "docstring needs"),
        ({"doc": WHOLE.replace("Bad. Wrong.", "")}, "docstring needs"),
        ({"doc": WHOLE.replace("Bad. Wrong.", "Bad.")}, "nothing stands under Bad."),
        ({"doc": WHOLE.replace("Bad. Wrong.\n\nGood. Right.", "Good. A.\n\nBad. B.")}, "in order"),
    ],
)
def test_a_rule_that_is_not_whole_is_refused(changes: dict[str, Any], words: str) -> None:
    before = dict(all_rules())
    with pytest.raises(RuleRefusedError, match=words):
        offer(**changes)
    assert dict(all_rules()) == before
