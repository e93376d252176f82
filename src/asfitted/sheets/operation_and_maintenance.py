"""Operation and maintenance: how each thing is isolated, and what is looked at how often."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.document.blocks import Bullets, Heading, Paragraph, Ruled
from asfitted.layout.document.plain_words import (
    head_boards,
    or_not_recorded,
    sentence,
    short_place,
    some_of,
)
from asfitted.layout.document.references import on_sheet
from asfitted.layout.given_words import NOT_RECORDED, state_behind
from asfitted.layout.table import Column, Table
from asfitted.resolve.starters import STARTER
from asfitted.sheets._document_pages import build_document, plan_document

if TYPE_CHECKING:
    from asfitted.layout.document.blocks import Block
    from asfitted.layout.sheet_model import Content, Model, Numbers, SheetPlan
    from asfitted.resolve.installation import Circuit, Installation

ORDER = 114
LATE = 1
KEY = "operation-and-maintenance"
READERS = ("client", "inspector")
ISOLATION_COLUMNS = (
    Column("What"),
    Column("Where it is"),
    Column("Local isolator"),
    Column("Switch off at", wraps=False),
    Column("Device"),
)
ROUTINE_COLUMNS = (
    Column("What"),
    Column("How often", least_mm=34.0),
    Column("Who"),
    Column("Why, and from where"),
)
HOW = (
    "A local isolator serves work on the machine behind it. Whoever opens anything else switches "
    "off at the board, locks off, and proves dead with an instrument proved before and after. "
    "Only a competent person does this."
)
FAULTS = (
    "One way is off and stays off: unplug everything on it; call if it still does not hold.",
    "A device with a test button trips now and then: damp or a failing appliance; call.",
    "Everything is off: look whether the neighbours are, then at the main switch; then call.",
    "Lamps flicker or are very bright: switch off at the main switch and call at once.",
)
SPARES = "Spares: fuses and devices of the same type and make group as the board only."
PRACTICE = "common practice"
MOST_STARTERS = 12


def plan(model: Model) -> list[SheetPlan]:
    """Plan the pages."""
    return plan_document(
        key=KEY,
        title="Operation and maintenance",
        section="Handover",
        blocks=_blocks(model),
        part_words=", {} of {}",  # the longer words do not fit the title block
    )


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:  # noqa: ARG001 - planned whole
    """Lay out one page."""
    return build_document(plan, numbers)


def _blocks(model: Model) -> list[Block]:
    installation = model.installation
    blocks: list[Block] = []
    rows = _isolation_rows(model)
    if rows:
        idents = tuple(f"{i:03d}" for i in range(len(rows)))
        table = Table(ISOLATION_COLUMNS, tuple(rows), idents)
        blocks += [Heading("How each thing is isolated"), Paragraph(HOW), Ruled("isolation", table)]
    routine = tuple(_routine(model))
    table = Table(ROUTINE_COLUMNS, routine, tuple(f"{i:03d}" for i in range(len(routine))))
    blocks += [Heading("What is looked at, and how often"), Ruled("routine", table)]
    if installation.boards:
        blocks += [Heading("Finding a fault"), Bullets((*FAULTS, SPARES))]
    care = tuple(f"{tag}: {sentence(words)}" for tag, words in installation.handover.care.items())
    equipment = on_sheet(model, "equipment-schedule")
    leaflets = (
        "Makers' leaflets belong to this part only for the models fitted"
        + (f" ({equipment})" if equipment else "")
        + "; none is attached to this set.",
    )
    return [*blocks, Heading("Care of single items"), Bullets((*care, *leaflets))]


def _isolation_rows(model: Model) -> list[tuple[str, ...]]:
    """Return one row for each thing that can be isolated, in the order of the ways."""
    installation = model.installation
    rows: list[tuple[str, ...]] = []
    for board in installation.boards.values():
        for way in board.ways:
            circuit = installation.circuits.get(way.circuit)
            if circuit is not None and circuit.state != "removed":
                rows += _circuit_rows(circuit, installation)
    cabinet = installation.cabinet
    if cabinet is not None:
        fed = installation.points.get(cabinet.fed_from)
        local = f"{fed.tag}, {short_place(fed.position, installation)}" if fed else NOT_RECORDED
        place = short_place(cabinet.position, installation)
        rows.append((f"{cabinet.tag} data cabinet", place, local, fed.circuit if fed else "–", "–"))
    return rows


def _circuit_rows(circuit: Circuit, installation: Installation) -> list[tuple[str, ...]]:
    """Return the rows of one circuit: its points behind isolators, or the circuit as a whole."""
    points = [installation.points[tag] for tag in circuit.points]
    local = next((p for p in points if p.kind in {"isolator", "fused spur"}), None)
    switch = f"{local.tag}, {short_place(local.position, installation)}" if local else "none"
    behind = [p for p in points if local is not None and p.tag != local.tag and p.kind != STARTER]
    name = circuit.name + state_behind(circuit.state)
    if circuit.feeds_board:
        place = short_place(installation.boards[circuit.feeds_board].position, installation)
        own = installation.boards[circuit.feeds_board].main_switch
        switch = f"main switch of {circuit.feeds_board}" if own else "none"
    elif behind:
        place = short_place(behind[0].position, installation)
    elif points:
        place = short_place(points[0].position, installation)
        place += f" and {len(points) - 1} more" if len(points) > 1 else ""
    else:
        place = or_not_recorded(circuit.place)
        switch = NOT_RECORDED
    if len(points) > 1 and not local:
        name = f"{name} ({points[0].tag} to {points[-1].tag})"
    elif points:
        name = f"{name} ({', '.join(p.tag for p in (behind or points)[:3])})"
    rows = [(name, place, switch, circuit.tag, circuit.device.words)]
    return [*rows, *_starter_rows(circuit, switch, installation)]


def _starter_rows(
    circuit: Circuit, switch: str, installation: Installation
) -> list[tuple[str, ...]]:
    """Return a row for each starter: it is opened for its reset and its setting, so isolated."""
    return [
        (
            f"{circuit.name}: motor starter {point.tag}",
            short_place(point.position, installation),
            switch,
            circuit.tag,
            circuit.device.words,
        )
        for point in (installation.points[tag] for tag in circuit.points)
        if point.kind == STARTER and point.state != "removed"
    ]


def _starter_routine(installation: Installation) -> list[tuple[str, ...]]:
    """Return what is looked at on every starter: the setting that the motor is guarded by."""
    told = [
        f"{p.tag} {f'{p.overload_a:g} A' if p.overload_a is not None else NOT_RECORDED}"
        for p in installation.points.values()
        if p.kind == STARTER and p.state != "removed"
    ]
    if not told:
        return []
    what = f"Motor starters, setting of the overload: {some_of(told, MOST_STARTERS)}"
    return [(what, "at each inspection", "electrician", PRACTICE)]


def _routine(model: Model) -> list[tuple[str, ...]]:
    installation, facts = model.installation, model.installation.handover
    rows: list[tuple[str, ...]] = []
    live = [c for c in installation.circuits.values() if c.state != "removed"]
    outlets = [p.tag for p in installation.points.values() if p.rcd is not None]
    if any(c.device.rcd for c in live) or outlets:
        often = facts.rcd_test or "every six months"
        source = "as recorded for this job" if facts.rcd_test else "BS 7671 514.12.2 (memory)"
        where = f"; also in {', '.join(outlets[:6])}" if outlets else ""
        rows.append((f"Test buttons of RCDs{where}", often, "client", f"{source}: it must trip"))
    if any(c.device.afdd for c in live):
        rows.append(("Test buttons of AFDDs", "as its maker says", "client", "maker's leaflet"))
    if any(p.kind == "emergency luminaire" for p in installation.points.values()):
        rows.append(("Emergency lighting, short", "every month", "client", "BS EN 50172 (memory)"))
        rows.append(
            ("Emergency lighting, full time", "every year", "electrician", "BS EN 50172 (memory)")
        )
    supply = installation.supply
    if supply and supply.surge_protection and not supply.surge_protection.startswith("not fitted"):
        rows.append(("Window of the surge protection", "every month", "client", PRACTICE))
    if head_boards(installation):
        rows.append(("Boards: heat, smell, damage, covers", "every month", "client", PRACTICE))
        rows.append(("Terminals, labels, charts", "at each inspection", "electrician", PRACTICE))
        inspection = or_not_recorded(facts.next_inspection)
        rows.append(("Inspection and test of the whole", inspection, "electrician", "as recorded"))
    rows += _starter_routine(installation)
    rows += _camera_routine(installation)
    return rows


def _camera_routine(installation: Installation) -> list[tuple[str, ...]]:
    devices = installation.data_devices.values()
    if not any(d.kind == "camera" and d.state != "removed" for d in devices):
        return []
    return [
        ("Cameras: picture, date and time", "every week", "client", PRACTICE),
        ("Cameras: clean glass, tight brackets", "every six months", "client", PRACTICE),
        ("Recorder: play something back", "every month", "client", PRACTICE),
        ("Sign, reason and keeping time of pictures", "every year", "client", "UK GDPR guidance"),
    ]
