"""What changed since the last print, thing by thing, and on which sheets each is drawn."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.layout.brief.in_place import FOUND
from asfitted.layout.brief.index import card_key
from asfitted.layout.document.references import PLACEHOLDER
from asfitted.layout.table import Column, Table

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from asfitted.compare.changes import Change
    from asfitted.layout.sheet_model import Model
    from asfitted.resolve.job_record import SiteMark

COLUMNS = (
    Column("Tag", wraps=False),
    Column("What changed", least_mm=90.0),
    Column("Drawn on sheet", least_mm=26.0),
)
KEY_PLAN = "key-plan"
LENGTH = "length"
FIGURES = "figures"  # nothing to do on site: the record of change has them


@dataclass(frozen=True)
class ChangeTable:
    """Rows of what changed, with the keys of the sheets of each row by its ident."""

    table: Table
    sheets: Mapping[str, tuple[str, ...]]


def standing_words(model: Model) -> str:
    """Return since when, and which print holds for what."""
    changes, revision = model.changes, model.installation.job.revision
    if changes is None:
        return f"Revision {revision}: first issue, nothing to compare."
    old = changes.old
    if model.installation.site_marks:
        return (
            f"Marked up on site over revision {old.revision} of {old.date}. What was found "
            "otherwise on site holds as it stands on this print; all else holds as issued in "
            f"{old.revision}."
        )
    if not changes.changes:
        return f"Nothing changed since revision {old.revision}."
    return f"Since revision {old.revision} of {old.date}:"


def change_table(model: Model) -> ChangeTable:
    """Return what changed with what was noted on site; figures that only follow are left out."""
    rows: list[tuple[str, ...]] = []
    idents: list[str] = []
    sheets: dict[str, tuple[str, ...]] = {}
    for ident, tag, words in _told(model):
        keys = sheets_of(tag, model)
        rows.append((tag, words, ", ".join([PLACEHOLDER] * len(keys)) or "–"))
        idents.append(ident)
        sheets[ident] = keys
    return ChangeTable(Table(COLUMNS, tuple(rows), tuple(idents)), sheets)


def _told(model: Model) -> Iterator[tuple[str, str, str]]:
    """Yield ident, tag and words of each row: what changed of a thing, notes, what follows."""
    marks = {m.tag: m for m in model.installation.site_marks if m.note or m.is_in_place}
    changes = model.changes.changes if model.changes is not None else ()
    follow = [change.tag for change in changes if change.kind == FIGURES]
    by_thing: dict[tuple[str, str], list[Change]] = {}
    for change in changes:
        if change.kind != FIGURES:
            by_thing.setdefault((change.what, change.tag), []).append(change)
    for (what, tag), of_thing in by_thing.items():
        mark = marks.pop(tag, None)
        noted = f". {_mark_words(mark)}" if mark is not None else ""
        yield f"{what}/{tag}", tag, f"{_together(of_thing)}{noted}"
    for tag, mark in marks.items():
        yield f"site/{tag}", tag, _mark_words(mark)
    if follow:
        words = f"Figures that follow, nothing to do on site: {', '.join(follow)}"
        yield "figures", "", words


def _together(changes: Sequence[Change]) -> str:
    """Return the changes of one thing in a sentence; of figures only a length matters here."""
    first, *more = changes
    words = [first.words, *(change.words.partition(": ")[2] or change.words for change in more)]
    effects = [e.words for change in changes for e in change.effects if e.what == LENGTH]
    is_told = any(f"{LENGTH} now" in one for one in words)
    return "; ".join([*words, *(effects if not is_told else [])])


def _mark_words(mark: SiteMark) -> str:
    """Return what a mark-up says besides what it changed: in place, noted, by whom, photograph."""
    said = "; ".join(words for words in (FOUND if mark.is_in_place else "", mark.note) if words)
    photo = f", photograph {mark.photo}" if mark.photo else ""
    return f"On site: {said} ({mark.by}, {mark.date}{photo})"


def sheets_of(tag: str, model: Model) -> tuple[str, ...]:
    """Return the keys of the sheets that draw a thing: its walls, and the card of a cable."""
    planned = [key for plan in model.planned for key in (plan.key, *plan.also)]
    views = {f"elevation/{wall}" for wall in _walls_of(tag, model)}
    outside = "/outside" if _is_outside(tag, model) else ""
    found = [key for key in planned if _view_of(key, outside) in views]
    if tag and not found:
        found = [key for key in planned if key.startswith(KEY_PLAN)][:1]
    cable = model.installation.cables.get(tag)
    if cable is not None and cable.state == "new":
        found.append(card_key(tag))
    return tuple(dict.fromkeys(found))


def _view_of(key: str, outside: str) -> str:
    """Return the wall that a sheet shows: "elevation/A/2" shows A; outer faces where asked for."""
    head, _, part = key.rpartition("/")
    is_part = part.isdigit() or (outside and part == outside.removeprefix("/"))
    return head if is_part else key


def _is_outside(tag: str, model: Model) -> bool:
    """Tell whether a thing, or an end of a cable, is on the outer face of its wall."""
    job = model.installation
    cable = job.cables.get(tag)
    ends = (cable.from_end, cable.to_end) if cable is not None else (tag,)
    placed = {*job.boards, *job.points, *job.data_devices}
    return any(job.position_of(end).outside for end in ends if end in placed)


def _walls_of(tag: str, model: Model) -> Sequence[str]:
    """Return the walls that a thing stands on, or that a run or cable goes along."""
    job, results = model.installation, model.results
    if tag in results.routes:
        return [leg.wall for leg in results.routes[tag].legs if leg.wall]
    if tag in job.containment:
        return [wall for wall in job.containment[tag].walls if wall]
    for group in (job.boards, job.points, job.data_devices):
        if tag in group:
            return [job.position_of(tag).wall]
    if job.cabinet is not None and job.cabinet.tag == tag:
        return [job.cabinet.position.wall]
    return []
