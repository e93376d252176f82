"""The root of a job file."""

from __future__ import annotations

from pydantic import Field

from asfitted.spec.boards import BoardWords  # noqa: TC001 - pydantic needs it at run time
from asfitted.spec.circuits import CircuitWords  # noqa: TC001
from asfitted.spec.containment import RunWords  # noqa: TC001
from asfitted.spec.data import DataWords  # noqa: TC001
from asfitted.spec.fields import SpecModel, Text
from asfitted.spec.job import JobWords, WaiverWords  # noqa: TC001
from asfitted.spec.rooms import RoomWords  # noqa: TC001
from asfitted.spec.supply import SupplyWords  # noqa: TC001

VERSIONS = ("1",)


class JobSpec(SpecModel):
    """One job as written. Mappings keep the order of the file."""

    asfitted: Text
    job: JobWords
    supply: SupplyWords | None = None
    rooms: dict[str, RoomWords] = Field(default_factory=dict)
    boards: dict[str, BoardWords] = Field(default_factory=dict)
    containment: dict[str, RunWords] = Field(default_factory=dict)
    circuits: list[CircuitWords] = Field(default_factory=list)
    data: DataWords | None = None
    accept: list[WaiverWords] = Field(default_factory=list)
