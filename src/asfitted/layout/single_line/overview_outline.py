"""The overview of many boards as an outline: each board a low box, what it feeds set in under it.

A spine goes down from the left of a board past all it feeds, so every feed is one short level line
and no two lines can cross. What is too high for a column is cut off between two boards and stands
in another column; each cut has a flag at both ends.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from asfitted.fonts import text_width_mm
from asfitted.geometry import Box, Point
from asfitted.layout.lettering import BODY, TAG, box_of
from asfitted.layout.sheet_layout import Text
from asfitted.layout.single_line.earth_rows import intake_height_mm
from asfitted.layout.single_line.intake import head_items, intake_at
from asfitted.layout.single_line.overview_parts import (
    BAND_MM,
    CUT_MM,
    CUT_X,
    FEED_Y,
    FLAG_MM,
    FLAG_ROW_MM,
    PAD,
    PROTECTIVE_Y,
    OverviewPage,
    PlacedBox,
    PlacedFeed,
    PlacedOverview,
    PlacedSpine,
    overview_sheets,
)
from asfitted.layout.single_line.overview_tree import (
    box_heading,
    compact_lines,
    distribution_tree,
    walk,
)
from asfitted.layout.single_line.parts import SUPPLY
from asfitted.layout.single_line.room import PITCH, SIGN, TAG_PITCH
from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.layout.sheet_model import Model
    from asfitted.layout.single_line.overview_tree import Node
    from asfitted.layout.single_line.sheet_rooms import SheetRoom

COLUMN_GAP_MM = 9.0
GAP_Y = 3.0
PIECE_GAP_MM = 5.0
SPINE_MM, FEED_MM = 3.5, 7.0
INDENT_MM = SPINE_MM + FEED_MM
STUB_APART_MM = 2.8  # both conductors meet the flag
STUB_MM = 9.0  # a board that stands elsewhere
TURN_MM = 8.0  # under the intake
LEAST_MM = 70.0  # a box is no narrower
WAYS_WORDS = "sheets 000/A1 to 000"
WAYS_MM = FLAG_MM + 3.5 + text_width_mm(WAYS_WORDS, BODY)  # in the heading of a box: its flag


@dataclass
class _Column:
    """A column that is being filled, and how far down it is."""

    box: Box
    y: float


@dataclass
class _Page(OverviewPage):
    """A sheet that is being filled, column by column."""

    columns: list[_Column] = field(default_factory=list)


def place_outline(model: Model, room: SheetRoom, count: int) -> tuple[PlacedOverview, ...] | None:
    """Return the sheets of an outline in so many columns, None where a board finds no room."""
    tree = distribution_tree(model.installation)
    pages = _Outline(model, room, count).placed(tree)
    if pages is None:
        return None
    return overview_sheets(pages, room)


class _Outline:
    """Cuts a tree into pieces that fit a column, and puts them in columns."""

    def __init__(self, model: Model, room: SheetRoom, count: int) -> None:
        self.model, self.area, self.count = model, room.area, count
        self.width = (room.area.width - (count - 1) * COLUMN_GAP_MM) / count
        self.detached: set[str] = set()

    def placed(self, tree: Node) -> list[_Page] | None:
        """Return the filled sheets, None where the tree cannot be cut small enough."""
        first = self._page(has_intake=True)
        pages = [first]
        head = first.columns[0]
        most = self.area.height - CUT_MM
        if not self._cut(tree, head.box.y1 - head.y):
            return None
        done: set[str] = set()
        self._draw(tree, first, head)
        while fresh := [n for n in walk(tree) if n.tag in self.detached - done]:
            done |= {node.tag for node in fresh}
            for node in fresh:
                if not self._cut(node, most):
                    return None
                self._put(node, pages)
        return pages

    def _page(self, *, has_intake: bool = False) -> _Page:
        """Return an empty sheet; on the first the intake stands over some of its columns."""
        columns = []
        low = self.area.y0 + intake_height_mm(self.model) + TURN_MM
        reach = self._intake_reach() if has_intake else self.area.x0
        for n in range(self.count):
            x = self.area.x0 + n * (self.width + COLUMN_GAP_MM)
            y = low if has_intake and (n == 0 or x < reach) else self.area.y0
            columns.append(_Column(Box(x, self.area.y0, x + self.width, self.area.y1), y))
        return _Page(columns=columns)

    def _intake_reach(self) -> float:
        """Return how far right the words of the intake go."""
        items = head_items(self.model, intake_at(self.area), self.area.x1)
        texts = (p for item in items for p in item.parts if isinstance(p, Text))
        return max(box_of(text).x1 for text in texts) + COLUMN_GAP_MM

    def _put(self, node: Node, pages: list[_Page]) -> None:
        """Draw a piece in the first column that has room for it."""
        need = CUT_MM + self._height(node, 0.0)
        for page in pages:
            for column in page.columns:
                if column.y + need <= column.box.y1 + 1e-6:
                    self._draw(node, page, column)
                    return
        pages.append(self._page())
        self._draw(node, pages[-1], pages[-1].columns[0])

    def _cut(self, root: Node, most: float) -> bool:
        """Cut boards off a piece until it is low enough, the highest that fits a column first."""
        column = self.area.height - CUT_MM
        while self._height(root, 0.0) > most or self._depth_mm(root) > self.width - LEAST_MM:
            loose = [n for n in self._below(root) if n.tag not in self.detached]
            if not loose:
                return False
            heights = [(self._height(n, 0.0), n) for n in loose]
            fit = [pair for pair in heights if pair[0] <= column] or heights
            best = max(fit, key=lambda pair: pair[0])[1]
            self.detached.add(best.tag)
        return True

    def _below(self, node: Node) -> Iterator[Node]:
        """Yield the boards of a piece under its first."""
        for child in node.children:
            if child.tag not in self.detached:
                yield child
                yield from self._below(child)

    def _depth_mm(self, node: Node) -> float:
        """Return how far boxes of a piece are set in."""
        loose = [c for c in node.children if c.tag not in self.detached]
        return max((INDENT_MM + self._depth_mm(child) for child in loose), default=0.0)

    def _words(self, node: Node, inset: float) -> tuple[tuple[str, ...], tuple[str, ...], bool]:
        """Return heading and facts of a box, and whether its flag has a row of its own."""
        room = self.width - inset - 2 * PAD
        is_flagged = node.tag != SUPPLY
        if is_flagged and self.model.installation.boards[node.tag].state is State.REMOVED:
            room -= BAND_MM
        left = room - WAYS_MM if is_flagged else room
        heading = box_heading(self.model, node, left, continued=False)
        is_tight = any(text_width_mm(line, TAG, bold=True) > left for line in heading)
        if is_tight:
            heading = box_heading(self.model, node, room, continued=False)
        facts = compact_lines(self.model, node, room)
        return tuple(heading), tuple(facts), is_tight and is_flagged

    def _box_mm(self, node: Node, inset: float) -> float:
        heading, lines, has_row = self._words(node, inset)
        row = FLAG_ROW_MM if has_row else 0.0
        return 2 * PAD + len(heading) * TAG_PITCH + len(lines) * PITCH + row

    def _height(self, node: Node, inset: float) -> float:
        """Return the height of a board with all that stands under it."""
        height = self._box_mm(node, inset)
        for child in node.children:
            is_stub = child.tag in self.detached
            height += GAP_Y + (STUB_MM if is_stub else self._height(child, inset + INDENT_MM))
        return height

    def _draw(self, node: Node, page: _Page, column: _Column) -> None:
        """Draw a piece at the height a column has come to."""
        if node.tag in self.detached:
            column.y += CUT_MM
            at = Point(column.box.x0 + CUT_X, column.y - SIGN / 2)
            page.flags[f"back:overview/{node.tag}/1"] = at
        column.y = self._branch(node, page, column, 0.0) + PIECE_GAP_MM

    def _branch(self, node: Node, page: _Page, column: _Column, inset: float) -> float:
        """Draw a board and all it feeds; return how far down they reach."""
        x, y = column.box.x0 + inset, column.y
        heading, lines, has_row = self._words(node, inset)
        low = y + self._box_mm(node, inset)
        frame = Box(x, y, column.box.x1, low)
        page.boxes.append(PlacedBox(node.tag, frame, heading, lines, 1, goes_on=False))
        self._flag_ways(node, page, frame, has_row=has_row)
        spine, last = x + SPINE_MM, low
        for child in node.children:
            column.y = low + GAP_Y
            if child.tag in self.detached:
                low, apart, end = column.y + STUB_MM, STUB_APART_MM, x + INDENT_MM
                last = column.y + STUB_MM / 2 - apart / 2
                page.flags[f"on:overview/{child.tag}/1"] = Point(
                    end + FLAG_MM / 2, last + apart / 2
                )
            else:
                last, end, apart = column.y + FEED_Y, x + INDENT_MM, PROTECTIVE_Y
                low = self._branch(child, page, column, inset + INDENT_MM)
            feed = PlacedFeed(node.tag, child.tag, spine, end, last, has_way=False, apart_mm=apart)
            page.feeds.append(feed)
        if node.children:
            foot = last + PROTECTIVE_Y + PAD
            page.spines.append(PlacedSpine(node.tag, Box(x, frame.y1, spine, foot)))
            low = max(low, foot)
        return low

    def _flag_ways(self, node: Node, page: _Page, frame: Box, *, has_row: bool) -> None:
        """Note the flag that leads to the ways of a board, right of its heading or at its foot."""
        if node.tag == SUPPLY:
            return
        installation = self.model.installation
        is_fed = installation.boards[node.tag].fed_by in installation.circuits
        at = Point(frame.x1 - WAYS_MM + FLAG_MM / 2, frame.y0 + PAD + FLAG_MM / 2 - 1.2)
        if has_row:
            at = Point(frame.x0 + PAD + FLAG_MM / 2, frame.y1 - PAD - FLAG_ROW_MM / 2)
        page.flags[f"{'ways' if is_fed else 'to'}:{node.tag}"] = at
