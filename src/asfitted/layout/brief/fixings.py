"""Supports piece by piece, clips and ties kind by kind: how many, how far apart, and why."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.brief.in_place import FOUND, NOTHING_TO_DO, in_place
from asfitted.layout.table import Column, Table
from asfitted.reference.loader import table

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from asfitted.calculate.materials.items import Fixing
    from asfitted.layout.sheet_model import Model
    from asfitted.resolve.installation import Cable
    from asfitted.resolve.job_record import SiteMark

BOX = "☐"
RULE = "(common practice)"  # told once over the table
COLUMNS = (
    Column("Of"),
    Column("Where", least_mm=56.0),
    Column("What, and why", least_mm=62.0),
    Column("At most mm", align="end"),
    Column("No.", align="end", wraps=False),
    Column("Done", align="middle", wraps=False),
)


def position_words() -> str:
    """Return where on its piece each fixing goes (common practice)."""
    row = table("containment", "tray_supports").row(key="support_from_fitting_end")
    end_mm = round(1000 * float(row["value"]))
    return (
        f"Supports of runs: the first within {end_mm} of each end of a straight and of each bend, "
        "the rest equal between, never further apart than told. Clips, cleats and saddles: one at "
        f"each end of a leg and each side of a bend, the rest equal between {RULE}."
    )


def fixing_table(model: Model) -> Table:
    """Return fixing centres and counts: supports piece by piece, clips and ties kind by kind."""
    off = model.results.take_off
    cables, found = model.installation.cables, in_place(model.installation)
    rows, idents = [], []
    for i, same in enumerate(_alike(off.fixings if off is not None else (), cables)):
        first = same[0]
        is_clip = _is_of_cables(first, cables)
        subject = "cables" if is_clip else first.subject
        where = _by_cable(same, found) if is_clip else _by_place(same)
        count = str(sum(f.count for f in same))
        why = first.basis.removesuffix(f" {RULE}")
        what = first.what if is_clip or not why else f"{first.what}: {why}"
        done = NOTHING_TO_DO if subject in found else BOX
        rows.append((subject, where, what, str(first.spacing_mm), count, done))
        idents.append(f"{subject}/{i}")
    return Table(COLUMNS, tuple(rows), tuple(idents))


def source_words(model: Model) -> str:
    """Return where the spacing of clips, cleats, saddles and ties comes from."""
    off, cables = model.results.take_off, model.installation.cables
    held = [one for one in (off.fixings if off is not None else ()) if _is_of_cables(one, cables)]
    sources = dict.fromkeys(one.basis for one in held if one.basis)
    return f"Spacing of what holds cables: {'; '.join(sources)}." if sources else ""


def _is_of_cables(fixing: Fixing, cables: Mapping[str, Cable]) -> bool:
    """Tell whether a fixing holds cables, or the conduit that they lie in, and no run."""
    return fixing.subject.split()[0] in cables


def _by_place(same: Sequence[Fixing]) -> str:
    return "; ".join(dict.fromkeys(f"{f.where} {f.length_mm / 1000:g} m: {f.count}" for f in same))


def _by_cable(same: Sequence[Fixing], found: Mapping[str, SiteMark]) -> str:
    counts: dict[str, int] = {}
    for fixing in same:
        counts[fixing.subject] = counts.get(fixing.subject, 0) + fixing.count
    return ", ".join(
        f"{tag}: {count}" + (f" ({FOUND})" if tag in found else "") for tag, count in counts.items()
    )


def _alike(fixings: Sequence[Fixing], cables: Mapping[str, Cable]) -> list[list[Fixing]]:
    """Return the supports of one run together, and what holds cables by kind and spacing."""
    found: dict[tuple[str, str, int], list[Fixing]] = {}
    for one in fixings:
        subject = "" if _is_of_cables(one, cables) else one.subject
        key = (subject, one.what, one.spacing_mm)
        found.setdefault(key, []).append(one)
    return list(found.values())
