"""How a plan divides its sheet: the plan, the column at its right, title and notes at the foot."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Box
from asfitted.layout.frame import usable_box
from asfitted.layout.title_block import title_block_box

if TYPE_CHECKING:
    from asfitted.layout.sheet_layout import Paper

FOOT_MM = 12.0  # title and scale bar under the plan
CLEAR_MM = 3.0
GAP_MM = 8.0
LEGEND_MM = 118.0


@dataclass(frozen=True)
class PlanFrame:
    """Areas of a sheet with a plan. On A4 legend and notes stand on a sheet of their own."""

    paper: Paper

    @property
    def usable(self) -> Box:
        """What may be used inside the frame."""
        return usable_box(self.paper)

    @property
    def has_column(self) -> bool:
        """Whether there is a column for legend and tables beside the plan."""
        return self.paper == "A3"

    @property
    def foot(self) -> float:
        """Where title and scale bar end, y."""
        return title_block_box(self.paper).y0 - CLEAR_MM

    @property
    def area(self) -> Box:
        """Where the plan may lie."""
        box = self.usable
        right = box.x1 - LEGEND_MM - GAP_MM if self.has_column else box.x1
        return Box(box.x0, box.y0, right, self.foot - FOOT_MM - CLEAR_MM)

    @property
    def column(self) -> Box:
        """The column for legend and tables; on A4 the whole width of another sheet."""
        box = self.usable
        return Box(box.x1 - LEGEND_MM, box.y0, box.x1, self.foot)

    @property
    def notes(self) -> Box:
        """Where notes may stand: left of the title block."""
        block = title_block_box(self.paper)
        return Box(self.usable.x0, block.y0 + 1.0, block.x0 - 5.0, self.usable.y1)
