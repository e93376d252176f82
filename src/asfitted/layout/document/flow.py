"""Strips to pages: filled from the top, broken only where nothing is torn apart."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, TypeVar

from asfitted.errors import DoesNotFitError

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from asfitted.layout.document.strips import Strip

Pages = TypeVar("Pages", bound="tuple[object, ...]")
SLACK_MM = 1e-6
THIN = 1 / 3  # of a page: what ends with less looks left over
BALANCE_MM = 4.0  # step in which pages that share a text are lowered


@dataclass(frozen=True)
class Placed:
    """One strip on a page, and how far its top lies below the top of the text, mm."""

    strip: Strip
    top_mm: float


@dataclass
class _Page:
    placed: list[Placed]
    used_mm: float = 0.0

    def top_for(self, strip: Strip) -> float:
        """Return where the top of a strip would lie, mm below the top of the text."""
        above = strip.before_mm if self.placed else 0.0
        return self.used_mm + max(above, self._after_table(strip)) + self._header(strip)

    def _header(self, strip: Strip) -> float:
        """Return the height of the header that a row needs above it: none below its own table."""
        if strip.table is None:
            return 0.0
        last = self.placed[-1].strip.table if self.placed else None
        same = last is not None and last.ident == strip.table.ident
        return 0.0 if same else strip.table.fitted.header_mm

    def _after_table(self, strip: Strip) -> float:
        last = self.placed[-1].strip.table if self.placed else None
        if last is None or (strip.table is not None and strip.table.ident == last.ident):
            return 0.0
        return 2.2

    def add(self, strip: Strip) -> None:
        """Place a strip below what is there."""
        top = self.top_for(strip)
        self.placed.append(Placed(strip, top))
        self.used_mm = top + strip.height_mm


def pages_of(strips: Sequence[Strip], height_mm: float) -> tuple[tuple[Placed, ...], ...]:
    """Return the strips of each page of a height in mm.

    Strips that belong together go to the next page together; only where they fill more than a
    page are they parted.

    Raises:
        DoesNotFitError: one strip alone is higher than a page.
    """
    pages = [_Page([])]
    for chain in _chains(strips):
        if chain[0].new_page:
            if pages[-1].placed:
                pages.append(_Page([]))
            chain = chain[1:]  # noqa: PLW2901 - the break itself takes no room
        if pages[-1].placed and not _fits(pages[-1], chain, height_mm):
            pages.append(_Page([]))
        for strip in chain:
            if pages[-1].placed and not _fits(pages[-1], [strip], height_mm):
                pages.append(_Page([]))
            if not _fits(pages[-1], [strip], height_mm):
                raise DoesNotFitError(
                    f"{strip.ident} is {strip.height_mm:.0f} mm high: no page holds it"
                )
            pages[-1].add(strip)
    return tuple(tuple(page.placed) for page in pages if page.placed)


def is_thin(pages: Sequence[Sequence[Placed]], height_mm: float) -> bool:
    """Tell whether a text that runs over several pages leaves its last nearly empty."""
    if len(pages) < 2:
        return False
    last = pages[-1][-1]
    return last.top_mm + last.strip.height_mm < THIN * height_mm


def balanced_pages(strips: Sequence[Strip], height_mm: float) -> tuple[tuple[Placed, ...], ...]:
    """Return the strips of each page, the pages lowered until the last is no longer thin.

    Raises:
        DoesNotFitError: one strip alone is higher than a page.
    """
    return balanced(
        lambda room_mm: pages_of(strips, room_mm),
        lambda pages: is_thin(pages, height_mm),
        height_mm,
    )


def balanced(
    pages_at: Callable[[float], Pages], is_last_thin: Callable[[Pages], bool], height_mm: float
) -> Pages:
    """Return pages, lowered step by step until their last is no longer thin or one more is needed.

    Args:
        pages_at: gives the pages for a height in mm.
        is_last_thin: tells whether the last of several pages is nearly empty.
        height_mm: height of a page.

    Raises:
        DoesNotFitError: a piece alone is higher than a page.
    """
    found = pages_at(height_mm)
    lower = height_mm
    while is_last_thin(found):
        lower -= BALANCE_MM
        try:
            tried = pages_at(lower)
        except DoesNotFitError:
            return found
        if len(tried) > len(found):
            return found
        found = tried
    return found


def _chains(strips: Sequence[Strip]) -> list[list[Strip]]:
    """Return the strips in groups that stay on one page."""
    chains: list[list[Strip]] = []
    joined = False
    for strip in strips:
        if joined and not strip.new_page:
            chains[-1].append(strip)
        else:
            chains.append([strip])
        joined = strip.with_next
    return chains


def _fits(page: _Page, chain: Sequence[Strip], height_mm: float) -> bool:
    trial = _Page(list(page.placed), page.used_mm)
    for strip in chain:
        trial.add(strip)
    return trial.used_mm <= height_mm + SLACK_MM
