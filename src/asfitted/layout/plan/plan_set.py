"""All plans of a job: the key plan alone, or a key plan and a floor plan of each part."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.layout.plan.plan_frame import PlanFrame
from asfitted.layout.plan.plan_parts import PlanPart, plan_parts
from asfitted.layout.plan.plan_sheet import lay_out_plan

if TYPE_CHECKING:
    from asfitted.layout.plan.plan_sheet import LaidOutPlan
    from asfitted.layout.sheet_model import Model

KEY_PLAN = "key-plan"
FLOOR_PLAN = "floor-plan"


@dataclass(frozen=True)
class PlanSet:
    """The plans of a job before they are laid out."""

    frame: PlanFrame
    parts: tuple[PlanPart, ...]

    @property
    def is_one(self) -> bool:
        """Whether one sheet shows it all: then the key plan is the only plan."""
        return len(self.parts) == 1

    def key_of(self, part: PlanPart) -> str:
        """Return the key of the sheet of a part."""
        return KEY_PLAN if self.is_one else f"{FLOOR_PLAN}/{part.number}"

    def title_of(self, part: PlanPart) -> str:
        """Return the title of a part: storey, rooms, which part of a room."""
        if self.is_one:
            return "Key plan"
        storey = f"{part.storey}: " if part.storey else "Floor plan: "
        number, of = part.of_room
        which = f", part {number} of {of}" if of > 1 else ""
        return f"{storey}{', '.join(part.rooms)}{which}"

    def laid_out(self, model: Model, part: PlanPart) -> LaidOutPlan:
        """Lay out the plan of a part."""
        keys = {p.number: self.key_of(p) for p in self.parts}
        return lay_out_plan(model, part, self.frame, self.title_of(part), keys)


def plan_set(model: Model) -> PlanSet:
    """Return which plans a job needs on the paper it is wanted on."""
    frame = PlanFrame(model.installation.job.paper)
    return PlanSet(frame, plan_parts(model.installation, frame.area))
