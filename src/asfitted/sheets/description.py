"""Description of the works and the basis of design: extent, supply, protection, demand, sources."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.network import fault_of_ipf
from asfitted.layout.document.blocks import Bullets, Heading, Paragraph, Ruled
from asfitted.layout.document.edition_words import CLAUSES
from asfitted.layout.document.plain_words import (
    FULL_BASIS,
    circuits_in_state,
    counted,
    joined,
    known_words,
    or_not_recorded,
    recorded,
    sentence,
    some_of,
)
from asfitted.layout.document.references import on_sheet
from asfitted.layout.given_words import NOT_RECORDED, how_given
from asfitted.layout.schedule.words import figure
from asfitted.layout.table import Column, Table
from asfitted.resolve.installation import Transformer
from asfitted.sheets._document_pages import build_document, plan_document

if TYPE_CHECKING:
    from asfitted.layout.document.blocks import Block
    from asfitted.layout.sheet_model import Content, Model, Numbers, SheetPlan
    from asfitted.resolve.installation import Installation, Supply

ORDER = 4
LATE = 3
KEY = "description"
TITLE = "Description of works"
HEADING = "Description and design basis"
READERS = ("second-electrician", "inspector")
LENGTHS = (
    "Lengths are those of the drawn routes with tails unless marked (m). Capacity is for "
    "terminals at 70 °C unless declared otherwise."
)
SUPPLY_COLUMNS = (Column("At the origin"), Column("Figure"), Column("How it is known"))
DEMAND_COLUMNS = (
    Column("Board", wraps=False),
    Column("Fed from"),
    Column("Connected L1, L2, L3 A"),
    Column("After diversity L1, L2, L3 A"),
    Column("Neutral A", align="end", wraps=False),
    Column("Ways used", align="end"),
)


def plan(model: Model) -> list[SheetPlan]:
    """Plan the description."""
    return plan_document(
        key=KEY, title=TITLE, heading=HEADING, section="Front", blocks=_blocks(model)
    )


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:  # noqa: ARG001 - planned whole
    """Lay out one page."""
    return build_document(plan, numbers)


def _blocks(model: Model) -> list[Block]:
    installation = model.installation
    job = installation.job
    what = sentence(job.description) if recorded(job.description) else NOT_RECORDED
    blocks: list[Block] = [
        Heading("Extent of the works"),
        Paragraph(what if recorded(job.description) else f"Description: {NOT_RECORDED}."),
        Bullets(_extent(installation)),
        Heading("Not included"),
        Bullets(_exclusions(installation)),
        Heading("Supply and earthing"),
        *_supply(installation),
        *_protection(model),
        *_demand(model),
        Heading("Basis of the calculation"),
        Bullets(_basis(model)),
        Heading("Departures"),
        Bullets(_departures(installation)),
    ]
    return blocks


def _extent(installation: Installation) -> tuple[str, ...]:
    entries = []
    for state, words in (("new", "New"), ("existing", "Existing, shown"), ("removed", "Removed")):
        circuits = circuits_in_state(installation, state)
        boards = [b.tag for b in installation.boards.values() if b.state == state]
        devices = [d.tag for d in installation.data_devices.values() if d.state == state]
        told = []
        if boards:
            told.append(f"{counted(len(boards), 'board')} ({some_of(boards, 6)})")
        if circuits:
            told.append(counted(len(circuits), "circuit"))
        if devices:
            told.append(f"{counted(len(devices), 'data device')} ({some_of(devices, 10)})")
        if told:
            entries.append(f"{words}: {joined(told)}.")
    rooms = [room.name for room in installation.rooms.values()]
    if rooms:
        entries.append(f"Rooms drawn: {some_of(rooms, 12)}.")
    return tuple(entries)


def _exclusions(installation: Installation) -> tuple[str, ...]:
    given = tuple(sentence(words) for words in installation.handover.not_included)
    silent = [
        c.tag for c in installation.circuits.values() if not c.cables and c.state == "existing"
    ]
    more = (
        (f"Circuits not surveyed beyond the board, and not checked: {some_of(silent, 12)}.",)
        if silent
        else ()
    )
    return (*(given or (f"Exclusions agreed with the client: {NOT_RECORDED}.",)), *more)


def _supply(installation: Installation) -> list[Block]:
    supply = installation.supply
    if supply is None:
        return [Paragraph("No supply is part of this job; what feeds it is not recorded.")]
    volts = f"{supply.line_v:g}/{supply.u0_v:g} V" if supply.phases == 3 else f"{supply.u0_v:g} V"
    rows = [
        ("Earthing system", supply.system, "as given"),
        (
            "Phases, voltage, frequency",
            f"{supply.phases}, {volts}, {supply.frequency_hz:g} Hz",
            _voltage_given(installation),
        ),
        ("External loop impedance Ze", *known_words(supply.ze_ohm, "Ω")),
        (
            f"Prospective fault current, {fault_of_ipf(supply.phases)}",
            *known_words(supply.ipf_ka, "kA"),
        ),
        (
            "Cut-out",
            supply.cut_out.words if supply.cut_out else NOT_RECORDED,
            str(supply.cut_out_basis.value) if supply.cut_out_basis else "–",
        ),
        ("Meter tails", _tails(supply), "as given" if supply.tails_mm2 else "–"),
        ("Earthing conductor", *_size(supply.earthing_conductor_mm2)),
        ("Main bonding", _bonds(supply), "as given" if supply.bonds else "–"),
        (
            "Surge protection",
            or_not_recorded(supply.surge_protection),
            "as given" if supply.surge_protection else "–",
        ),
    ]
    if supply.system == "TT" or supply.electrode_ohm:
        rows.append(("Earth electrode", *known_words(supply.electrode_ohm, "Ω")))
    if supply.source is not None:
        rows.append(("Behind it", _source(supply), "as given"))
    rows = [(what, words, how) for what, words, how in rows]
    idents = tuple(what for what, _, _ in rows)
    return [Ruled("supply", Table(SUPPLY_COLUMNS, tuple(rows), idents))]


def _voltage_given(installation: Installation) -> str:
    """Return how phases, voltage and frequency are known: what the tool filled in is named."""
    parts = ("voltage", "frequency")
    filled = [part for part in parts if how_given(installation, "supply", part) == "assumed"]
    return f"as given; {joined(filled)} assumed" if filled else "as given"


def _tails(supply: Supply) -> str:
    if supply.tails_mm2 is None:
        return NOT_RECORDED
    length = f", {supply.tails_m:g} m" if supply.tails_m else f", length {NOT_RECORDED}"
    return f"{supply.tails_mm2:g} mm²{length}"


def _size(csa_mm2: float | None) -> tuple[str, str]:
    return (NOT_RECORDED, "–") if csa_mm2 is None else (f"{csa_mm2:g} mm² copper", "as given")


def _bonds(supply: Supply) -> str:
    if not supply.bonds:
        return NOT_RECORDED
    return ", ".join(f"{what} {csa:g} mm²" for what, csa in supply.bonds)


def _source(supply: Supply) -> str:
    source = supply.source
    if isinstance(source, Transformer):
        return f"transformer {source.rating_kva:g} kVA, {source.uk_percent:g} %"
    return f"generator {source.rating_kva:g} kVA, x'' {source.x_percent:g} %" if source else ""


def _protection(model: Model) -> list[Block]:
    installation = model.installation
    if not installation.boards:
        return []
    system = installation.supply.system if installation.supply else NOT_RECORDED
    live = [c for c in installation.circuits.values() if c.state != "removed"]
    at_board = [c.tag for c in live if c.device.rcd is not None]
    at_outlet = [
        f"{c.tag} ({tag})"
        for c in live
        for tag in c.points
        if installation.points[tag].rcd is not None
    ]
    entries = [
        f"Measure against electric shock: automatic disconnection of supply (ADS), {system}.",
        f"RCD in the device at the board: {some_of(at_board, 16) if at_board else 'none'}.",
    ]
    if at_outlet:
        entries.append(f"RCD in the socket-outlet: {some_of(at_outlet, 16)}.")
    return [Heading("Protection"), Bullets(tuple(entries))]


def _demand(model: Model) -> list[Block]:
    installation, results = model.installation, model.results
    if not installation.boards:
        return []
    rows, idents = [], []
    for board in installation.boards.values():
        found = results.boards.get(board.tag)
        fed = "supply" if board.fed_by == "supply" else board.fed_by
        if found is None:
            rows.append((board.tag, fed, "not checked", "not checked", "–", "–"))
        else:
            lines = 3 if board.phases == 3 else 1
            rows.append(
                (
                    board.tag,
                    fed,
                    ", ".join(f"{a:.0f}" for a in found.connected_a[:lines]),
                    ", ".join(f"{a:.0f}" for a in found.demand_a[:lines]),
                    f"{found.neutral_a:.0f}",
                    f"{found.ways_used} of {found.ways_total}",
                )
            )
        idents.append(board.tag)
    most = figure(results.max_demand_a, 0, "A")
    basis = f", {results.demand_basis}" if results.demand_basis else ""
    words = f"Greatest demand of a line at the origin: {most}, calculated{basis}."
    return [
        Heading("Demand and diversity"),
        Paragraph(words, leads=True),
        Ruled("demand", Table(DEMAND_COLUMNS, tuple(rows), tuple(idents))),
    ]


def _basis(model: Model) -> tuple[str, ...]:
    job = model.installation.job
    calculations = on_sheet(model, "calculation-keys", readers=READERS)
    check = on_sheet(model, "design-check")
    left = on_sheet(model, "outstanding")
    marks = ", ".join(f"({letter}) {word}" for letter, word in FULL_BASIS.items() if letter != "c")
    entries = [
        f"Designed to {job.edition}. {CLAUSES}",
        f"Given figures carry how they are known: {marks}. Everything else is calculated.",
        LENGTHS,
    ]
    if calculations:
        entries.append(f"The working, its formulae and the source of each figure: {calculations}.")
    if check:
        entries.append(f"What was checked against which clause: {check}.")
    if left:
        entries.append(f"What was left open and taken as usual: {left}.")
    return tuple(entries)


def _departures(installation: Installation) -> tuple[str, ...]:
    given = [sentence(words) for words in installation.handover.departures]
    waived = [
        f"{w.rule} for {w.subject}: accepted by {w.by}; {sentence(w.reason)}"
        for w in installation.waivers
    ]
    return (*given, *waived) or ("None is recorded.",)
