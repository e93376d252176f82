"""A comparison as text for the command line."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.compare.changes import Change, Changes

_ORDER = {
    "removed": "No longer there",
    "added": "Added",
    "moved": "Moved",
    "re-fed": "Fed otherwise",
    "re-protected": "Protected otherwise",
    "re-sized": "Of another size",
    "re-routed": "Routed otherwise",
    "measured": "Measured",
    "lengthened": "Longer",
    "shortened": "Shorter",
    "re-loaded": "Loaded otherwise",
    "altered": "Altered besides",
    "figures": "Figures that follow",
}


def heading(changes: Changes) -> str:
    """Return from which issue to which."""
    old, new = changes.old, changes.new
    return (
        f"{old.number} {old.revision} ({old.date}, {old.status}) → "
        f"{new.number} {new.revision} ({new.date}, {new.status})"
    )


def grouped(changes: Changes) -> list[tuple[str, tuple[Change, ...]]]:
    """Return the changes by what happened, what went first, under plain headings."""
    groups = []
    for kind, words in _ORDER.items():
        found = tuple(change for change in changes.changes if change.kind == kind)
        if found:
            groups.append((words, found))
    return groups


def as_text(changes: Changes, sheets: Sequence[str] = ()) -> str:
    """Return the comparison as lines: what changed, its effects, the sheets concerned."""
    lines = [heading(changes), ""]
    for words, found in grouped(changes):
        lines.append(f"{words}:")
        for change in found:
            lines.append(f"  {change.words}")
            lines += [
                f"      {_effect(change, effect.tag)}{effect.words}" for effect in change.effects
            ]
        lines.append("")
    if not changes.changes:
        lines += ["Nothing changed.", ""]
    if sheets:
        lines += ["Sheets concerned:", *(f"  {sheet}" for sheet in sheets), ""]
    return "\n".join(lines).rstrip()


def _effect(change: Change, tag: str) -> str:
    return "" if tag == change.tag else f"{tag} "
