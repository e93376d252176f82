"""The root of a job file."""

from __future__ import annotations

from pydantic import Field

from asfitted.spec.boards import BoardWords  # noqa: TC001 - pydantic needs it at run time
from asfitted.spec.circuits import CircuitWords  # noqa: TC001
from asfitted.spec.containment import RunWords  # noqa: TC001
from asfitted.spec.data import DataWords  # noqa: TC001
from asfitted.spec.fields import SpecModel, Text
from asfitted.spec.handover import HandoverWords  # noqa: TC001
from asfitted.spec.job import JobWords, WaiverWords  # noqa: TC001
from asfitted.spec.measured_results import MeasuredWords  # noqa: TC001
from asfitted.spec.passages import PassageWords  # noqa: TC001
from asfitted.spec.rooms import RoomWords  # noqa: TC001
from asfitted.spec.stock import LabelWords, StockWords  # noqa: TC001
from asfitted.spec.supply import SupplyWords  # noqa: TC001

VERSIONS = ("1",)


class JobSpec(SpecModel):
    """One job as written. Mappings keep the order of the file."""

    asfitted: Text
    job: JobWords
    supply: SupplyWords | None = None
    rooms: dict[str, RoomWords] = Field(default_factory=dict)
    passages: dict[str, PassageWords] = Field(default_factory=dict)
    boards: dict[str, BoardWords] = Field(default_factory=dict)
    containment: dict[str, RunWords] = Field(default_factory=dict)
    circuits: list[CircuitWords] = Field(default_factory=list)
    data: DataWords | None = None
    accept: list[WaiverWords] = Field(default_factory=list)
    handover: HandoverWords | None = None
    results: Text | None = None  # name of the file of measured results
    test_results: MeasuredWords | None = None
    stock: StockWords | None = None
    stock_file: Text | None = None
    prices: Text | None = None
    labels: LabelWords | None = None
