"""What a job file says of its issues: earlier revisions, and what was not seen on site."""

from __future__ import annotations

from typing import Annotated, Any

from pydantic import BeforeValidator, WithJsonSchema

from asfitted.spec.fields import Date, SpecModel, Text


class RevisionWords(SpecModel):
    """One entry of ``revisions:``, the oldest first."""

    revision: Text
    date: Date
    what: Text
    by: Text | None = None
    checked: Text | None = None


def _none_is_a_statement(value: Any) -> Any:
    """Let the word "none" say that nothing was left unseen; an empty list says nothing."""
    if isinstance(value, str) and value.strip().lower() == "none":
        return []
    return [value] if isinstance(value, str) else value


NotSeen = Annotated[
    list[Text],
    BeforeValidator(_none_is_a_statement),
    WithJsonSchema(
        {
            "anyOf": [{"type": "string"}, {"type": "array", "items": {"type": "string"}}],
            "description": "what was not seen on site, a list; or the word none",
        }
    ),
]
