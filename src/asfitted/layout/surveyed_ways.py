"""How a cable is told whose length was found on site but whose way was not surveyed there.

It is drawn the way that it was designed; its tag carries a mark wherever its way is drawn, and a
note says what the mark means, so that nobody takes the drawn way for the one found.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable

    from asfitted.calculate.results import CalculationResults

MARK = "‡"
MEANING = "length as measured on site, way not surveyed"


def told(tag: str, results: CalculationResults) -> str:
    """Return the tag of a cable, marked where its way was not surveyed."""
    route = results.routes.get(tag)
    return tag if route is None or route.way_surveyed else f"{tag}{MARK}"


def all_told(tags: Iterable[str], results: CalculationResults) -> tuple[str, ...]:
    """Return the tags of some cables, marked where their ways were not surveyed."""
    return tuple(told(tag, results) for tag in tags)


def way_notes(tags: Iterable[str], results: CalculationResults) -> tuple[str, ...]:
    """Return the note on those of some cables whose way was not surveyed, if there are any.

    Args:
        tags: cables, marked or not, as often as wished.
        results: the calculated job.
    """
    bare = dict.fromkeys(tag.removesuffix(MARK) for tag in tags)
    marked = [tag for tag in results.routes if tag in bare and told(tag, results) != tag]
    if not marked:
        return ()
    return (f"{MARK} {' '.join(marked)}: {MEANING}. Drawn as designed.",)
