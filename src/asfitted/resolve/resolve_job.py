"""A checked spec to an installation: every name looked up, every default filled and recorded."""

from __future__ import annotations

from types import MappingProxyType
from typing import TYPE_CHECKING

from asfitted.resolve.boards import boards_of, way_tables
from asfitted.resolve.building import building_of
from asfitted.resolve.cables import Legs
from asfitted.resolve.circuits import circuit_of, seats_of, with_cables
from asfitted.resolve.data_links import data_of
from asfitted.resolve.handover import handover_of, readings_of
from asfitted.resolve.installation import Installation
from asfitted.resolve.job_facts import marked_job
from asfitted.resolve.kept_tags import ordered_as_issued
from asfitted.resolve.ledger import Ledger
from asfitted.resolve.passages import passages_of
from asfitted.resolve.positions import Positions
from asfitted.resolve.runs import containment_of
from asfitted.resolve.starters import with_starters
from asfitted.resolve.stock import stock_of
from asfitted.resolve.supply import REFERENCE_AMBIENT_C, job_of, supply_of, waivers_of
from asfitted.resolve.surveyed_cables import as_surveyed

if TYPE_CHECKING:
    from collections.abc import Mapping

    from asfitted.resolve.installation import Cable, Circuit, PointServed, Supply
    from asfitted.resolve.ways import Seat
    from asfitted.spec.load_job import LoadedJob


def _ambient_c(supply: Supply | None, ledger: Ledger) -> float:
    if supply is not None:
        return supply.ambient_c
    reason = "reference ambient of BS 7671 Appendix 4"
    ledger.default("job", "ambient", f"{REFERENCE_AMBIENT_C:g} °C", reason)
    return REFERENCE_AMBIENT_C


def _circuits(
    seats: dict[int, Seat],
    positions: Positions,
    ways: Mapping[str, object],
    ambient_c: float,
) -> tuple[dict[str, Circuit], dict[str, PointServed], dict[str, Cable]]:
    ledger = positions.ledger
    circuits: dict[str, Circuit] = {}
    points: dict[str, PointServed] = {}
    cables: dict[str, Cable] = {}
    for index in sorted(seats):
        circuit = circuit_of(index, seats[index], positions, points)
        if circuit is None:
            continue
        words = ledger.loaded.spec.circuits[index]
        path = ("circuits", index)
        legs = Legs(circuit, words, path, ways, ledger=ledger, ambient_c=ambient_c).make(points)
        cables.update({cable.tag: cable for cable in legs})
        circuits[circuit.tag] = with_cables(circuit, tuple(cable.tag for cable in legs))
    return circuits, points, cables


def resolve(loaded: LoadedJob, issued: Installation | None = None) -> Installation:
    """Return the installation that a job file means.

    Args:
        loaded: the job as written.
        issued: the revision issued before, whose cables keep their tags.

    Raises:
        SpecError: with every problem found, in the order of the file.
    """
    ledger = Ledger(loaded, issued)
    job = job_of(loaded.spec.job, ledger)
    supply = supply_of(loaded.spec.supply, ledger) if loaded.spec.supply else None
    ambient_c = _ambient_c(supply, ledger)
    reason = 'whatever is not marked "existing" or "removed" comes with this job'
    ledger.default("job", "state", "new", reason)
    rooms, walls = building_of(ledger)
    positions = Positions(walls, ledger)
    runs = containment_of(positions)
    passages = passages_of(positions, rooms)
    ways = {**runs, **passages}
    tables = way_tables(ledger)
    seats = seats_of(tables, ledger)
    circuits, points, cables = _circuits(seats, positions, ways, ambient_c)
    points = with_starters(points, cables, ledger)
    boards = boards_of(positions, tables, circuits)
    cabinet, devices, data_cables = data_of(positions, ways, ambient_c)
    stock = stock_of(ledger)
    handover = handover_of(ledger, (*boards, *circuits, *points, *devices))
    readings = readings_of(ledger, circuits, boards, points)
    ledger.stop_if_wrong()
    found = Installation(
        job=marked_job(job, loaded.site_marks),
        supply=supply,
        rooms=MappingProxyType(rooms),
        walls=MappingProxyType(walls),
        boards=MappingProxyType(boards),
        circuits=MappingProxyType(circuits),
        points=MappingProxyType(points),
        cables=MappingProxyType(as_surveyed({**cables, **data_cables}, loaded.site_marks)),
        containment=MappingProxyType(runs),
        data_devices=MappingProxyType(devices),
        cabinet=cabinet,
        passages=MappingProxyType(passages),
        defaults=tuple(ledger.defaults),
        waivers=waivers_of(ledger),
        places=MappingProxyType(dict(ledger.places)),
        site_marks=tuple(loaded.site_marks),
        stock=stock,
        handover=handover,
        readings=readings,
    )
    return ordered_as_issued(found, issued)
