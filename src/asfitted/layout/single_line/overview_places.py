"""Places of the distribution overview: boxes side by side by level, a box as high as all it feeds.

A board stands left of the boards it feeds and spans them, so every feed is one level line and no
two lines can cross. What is too high for a sheet goes on on the next between two boards, and what
is too deep for its width starts again at the left; each cut has a flag at both ends. An outline is
drawn instead where it takes fewer sheets.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Box, Point
from asfitted.layout.single_line.earth_rows import intake_height_mm
from asfitted.layout.single_line.intake import EDGE_MM, JOG_MM, intake_at
from asfitted.layout.single_line.overview_outline import place_outline
from asfitted.layout.single_line.overview_parts import (
    BAND_MM,
    CUT_MM,
    CUT_X,
    FEED_Y,
    FLAG_MM,
    FLAG_ROW_MM,
    PAD,
    OverviewPage,
    PlacedBox,
    PlacedFeed,
    PlacedOverview,
    overview_sheets,
)
from asfitted.layout.single_line.overview_tree import (
    Node,
    box_heading,
    box_lines,
    distribution_tree,
)
from asfitted.layout.single_line.parts import SUPPLY
from asfitted.layout.single_line.room import PITCH, SIGN, TAG_PITCH
from asfitted.layout.single_line.sheet_rooms import UPRIGHT, WIDE
from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model
    from asfitted.layout.single_line.sheet_rooms import SheetRoom

GAP_X, GAP_Y = 15.0, 5.0
LEAST_MM, MOST_MM, SUPPLY_MM = 76.0, 150.0, 32.0  # widths of boxes
COLUMNS = {"A3": (3, 2), "A4 portrait": (1,)}  # of an outline, by paper


@dataclass
class _Open:
    """A box whose foot is not placed yet."""

    node: Node
    column: int
    y0: float
    heading: tuple[str, ...]
    lines: tuple[str, ...]
    part: int
    beyond: bool

    @property
    def words_mm(self) -> float:
        """Height of its words and flags, mm."""
        words = len(self.heading) * TAG_PITCH + len(self.lines) * PITCH
        flags = int(self.part == 1 and self.node.tag != SUPPLY) + int(self.beyond)
        return 2 * PAD + words + flags * FLAG_ROW_MM


def place_overview(model: Model) -> tuple[PlacedOverview, ...]:
    """Return the sheets of the overview, the intake at the head of the first."""
    room = UPRIGHT if model.installation.job.paper == "A4" else WIDE
    spans = _place_spans(model, room)
    if len(spans) == 1:
        return spans
    outlines = (place_outline(model, room, count) for count in COLUMNS[room.paper])
    return min((spans, *(made for made in outlines if made)), key=len)


def _place_spans(model: Model, room: SheetRoom) -> tuple[PlacedOverview, ...]:
    """Return the sheets on which each board spans what it feeds."""
    tree = distribution_tree(model.installation)
    pages = _Placing(model, room, tree).pages
    return overview_sheets(pages, room)


def columns_of(area: Box, tree: Node) -> list[tuple[float, float]]:
    """Return left and right edge of each column of boxes, as many as stand side by side.

    The supply, where it feeds several boards, has a narrow column of its own.
    """
    edges, x, depth = [], area.x0, tree.depth
    if tree.tag == SUPPLY:
        edges, x, depth = [(x, x + SUPPLY_MM)], x + SUPPLY_MM + GAP_X, depth - 1
    room = area.x1 - x + GAP_X
    count = max(1, min(depth, int(room // (LEAST_MM + GAP_X))))
    width = min(MOST_MM, room / count - GAP_X)
    for _ in range(count):
        edges.append((x, x + width))
        x += width + GAP_X
    return edges


class _Placing:
    """Places a tree from the top down, sheet after sheet."""

    def __init__(self, model: Model, room: SheetRoom, tree: Node) -> None:
        self.model = model
        self.area = room.area
        self.columns = columns_of(room.area, tree)
        self.pages = [OverviewPage()]
        self.open: list[_Open] = []
        self.later: list[tuple[Node, int]] = []
        jog = JOG_MM if self.columns[0][1] < intake_at(self.area).x + EDGE_MM else 0.0
        self.y = self.start = self.area.y0 + intake_height_mm(model) + jog + 2.0
        self._put(tree, 0)
        while self.later:
            self._put_later(*self.later.pop(0))

    @property
    def page(self) -> OverviewPage:
        return self.pages[-1]

    def _opened(self, node: Node, column: int, part: int) -> _Open:
        """Return a box with its words, at the height reached."""
        x0, x1 = self.columns[column]
        room = x1 - x0 - 2 * PAD
        board = self.model.installation.boards.get(node.tag)
        if board is not None and board.state is State.REMOVED:
            room -= BAND_MM
        continued = part > 1
        heading = box_heading(self.model, node, room, continued=continued)
        lines = [] if continued else box_lines(self.model, node, room)
        beyond = bool(node.children) and column + 1 >= len(self.columns)
        return _Open(node, column, self.y, tuple(heading), tuple(lines), part, beyond)

    def _need_mm(self, node: Node, column: int) -> float:
        """Return the height that a board takes together with the first of each it feeds."""
        own = self._opened(node, column, 1).words_mm
        if node.children and column + 1 < len(self.columns):
            return max(own, self._need_mm(node.children[0], column + 1))
        return own

    def _put(self, node: Node, column: int) -> float:
        """Place a board and all it feeds; return how far down they reach."""
        foot = self.area.y1 - (CUT_MM if self.open else 0.0)
        if self.y + self._need_mm(node, column) > foot and self.y > self.start:
            self._turn_page()
        box = self._opened(node, column, 1)
        if self.open:
            self._feed(box)
        if box.beyond:
            self.later.append((node, 2))
        return self._fill(box)

    def _fill(self, box: _Open) -> float:
        """Place what a box feeds, then close it; return how far down it reaches."""
        self.open.append(box)
        low = 0.0
        if not box.beyond:
            for i, child in enumerate(box.node.children):
                if i:
                    self.y = low + GAP_Y
                low = self._put(child, box.column + 1)
        self.open.pop()
        low = max(low, box.y0 + box.words_mm)
        self._close(box, low, goes_on=False)
        return low

    def _put_later(self, node: Node, part: int) -> None:
        """Start again at the left with the boards that one board feeds."""
        self.columns = columns_of(self.area, node)
        low = max((b.box.y1 for b in self.page.boxes), default=self.area.y0)
        self.y = low + GAP_Y + CUT_MM
        if self.y + self._need_mm(node.children[0], 1) > self.area.y1 - CUT_MM:
            self.pages.append(OverviewPage())
            self.y = self.start = self.area.y0 + CUT_MM
        box = self._opened(node, 0, part)
        self._back_flag(box)
        self._fill(box)

    def _turn_page(self) -> None:
        """Go on on a new sheet; boxes that are not done stand there again."""
        foot = self.area.y1 - CUT_MM
        for box in self.open:
            self._close(box, foot, goes_on=True)
        self.pages.append(OverviewPage())
        self.y = self.start = self.area.y0 + (CUT_MM if self.open else 0.0)
        for box in self.open:
            again = self._opened(box.node, box.column, box.part + 1)
            box.y0, box.heading, box.lines, box.part = self.y, again.heading, (), again.part
            self._back_flag(box)

    def _close(self, box: _Open, low: float, *, goes_on: bool) -> None:
        x0, x1 = self.columns[box.column]
        frame = Box(x0, box.y0, x1, low)
        tag = box.node.tag
        flags = self.page.flags
        y = box.y0 + box.words_mm - PAD - FLAG_ROW_MM / 2
        if goes_on:
            flags[f"on:overview/{tag}/{box.part + 1}"] = Point(x0 + CUT_X, low + SIGN / 2)
        if box.beyond:
            flags[f"on:overview/{tag}/2"] = Point(x0 + PAD + FLAG_MM / 2, y)
            y -= FLAG_ROW_MM
        if box.part == 1 and tag != SUPPLY:
            fed_by = self.model.installation.boards[tag].fed_by
            name = f"ways:{tag}" if fed_by in self.model.installation.circuits else f"to:{tag}"
            flags[name] = Point(x0 + PAD + FLAG_MM / 2, y)
        self.page.boxes.append(
            PlacedBox(tag, frame, box.heading, box.lines, box.part, goes_on, box.beyond)
        )

    def _back_flag(self, box: _Open) -> None:
        x0 = self.columns[box.column][0]
        name = f"back:overview/{box.node.tag}/{box.part}"
        self.page.flags[name] = Point(x0 + CUT_X, box.y0 - SIGN / 2)

    def _feed(self, box: _Open) -> None:
        parent = self.open[-1]
        x0, x1 = self.columns[parent.column][1], self.columns[box.column][0]
        feed = PlacedFeed(parent.node.tag, box.node.tag, x0, x1, box.y0 + FEED_Y)
        self.page.feeds.append(feed)
