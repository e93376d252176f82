"""The root of a job file."""

from __future__ import annotations

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
    rooms: dict[str, RoomWords] = {}
    boards: dict[str, BoardWords] = {}
    containment: dict[str, RunWords] = {}
    circuits: list[CircuitWords] = []
    data: DataWords | None = None
    accept: list[WaiverWords] = []
