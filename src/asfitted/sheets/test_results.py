"""Test results of each board: instruments, signatures, circuit details, readings beside limits.

A reading is printed only where somebody gave it; every other cell is left for the pen.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.document.blocks import Heading, Paragraph, Ruled
from asfitted.layout.document.plain_words import board_name, place_words
from asfitted.layout.document.references import on_sheet
from asfitted.layout.given_words import NOT_RECORDED
from asfitted.layout.schedule.board_readings import board_readings
from asfitted.layout.schedule.circuit_details import circuit_details
from asfitted.layout.schedule.circuit_readings import circuit_readings
from asfitted.layout.table import Column, Table
from asfitted.sheets._document_pages import build_document, plan_document

if TYPE_CHECKING:
    from asfitted.layout.document.blocks import Block
    from asfitted.layout.sheet_model import Content, Model, Numbers, SheetPlan
    from asfitted.resolve.installation import Board

ORDER = 100
LATE = 1
READERS = ("second-electrician", "inspector")
PEN_MM = 8.5  # least height of a row that is written in by hand
COLD = "Calculated, cold: conductors at 20 °C; no reading. Zs most, cold: 80 % of the limit."
ASIDE = (
    "Blank: not measured.   –: does not apply.",
    "Least cpc: conducts least on the way, tails counted.",
    "n/t: not tested; why stands under remarks.",
    "n/r, n/k: not recorded, not known.",
    COLD,
)
INSTRUMENT_COLUMNS = (
    Column("Instrument, as marked"),
    Column("Serial number"),
    Column("Last checked", least_mm=28.0),
    Column("Used for"),
)
SIGNED_COLUMNS = (
    Column("Tested by"),
    Column("Date", least_mm=30.0),
    Column("Signature", least_mm=60.0),
)


def plan(model: Model) -> list[SheetPlan]:
    """Plan the sheets of every board; none for a job without boards."""
    plans: list[SheetPlan] = []
    for board in model.installation.boards.values():
        plans += plan_document(
            key=f"test-results/{board.tag}",
            title=f"Test results {board.tag}",
            section="Tests",
            heading=f"{board.tag}: test results",
            blocks=_blocks(board, model),
            papers=("A4", "A3"),
            aside=ASIDE,
        )
    return plans


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:  # noqa: ARG001 - planned whole
    """Lay out one page."""
    return build_document(plan, numbers)


def _blocks(board: Board, model: Model) -> list[Block]:
    installation = model.installation
    where = place_words(board.position, installation)
    fed = "the supply" if board.fed_by == "supply" else board.fed_by
    switch = board.main_switch.words if board.main_switch else NOT_RECORDED
    chart = on_sheet(model, f"door-chart/{board.tag}", " Chart: sheet ")
    words = f"{board_name(board)}: {where}. Fed from {fed}. Main switch: {switch}.{chart}"
    links = _working(board, model)
    return [
        Paragraph(words),
        Ruled(f"board:{board.tag}", board_readings(board, model), least_row_mm=PEN_MM),
        Heading("Instruments, and who tested"),
        Ruled(f"instruments:{board.tag}", _instruments(model), least_row_mm=PEN_MM),
        Ruled(f"signed:{board.tag}", _signed(board, model), least_row_mm=PEN_MM),
        Heading("Circuit details"),
        Ruled(f"details:{board.tag}", circuit_details(board, model), links),
        Heading("Readings"),
        Ruled(f"readings:{board.tag}", circuit_readings(board, model), links, PEN_MM),
    ]


def _working(board: Board, model: Model) -> dict[str, str]:
    """Return, by circuit, the calculation sheet item that its row leads to."""
    held: dict[str, str] = {}
    for plan in model.planned:
        if not plan.key.startswith("calculations"):
            continue
        for ident in plan.payload.fitted.table.row_idents:
            tag, _, row = ident.rpartition(":")
            if row == "0":
                held[tag] = f"{plan.key}#calculations:{ident}"
    tags = [way.circuit for way in board.ways if way.circuit]
    return {tag: held[tag] for tag in tags if tag in held}


def _instruments(model: Model) -> Table:
    readings = model.installation.readings
    rows: list[tuple[str, ...]] = []
    if readings is not None:
        for one in readings.instruments.values():
            used = [t for t, c in readings.circuits.items() if c.taken.instrument == one.tag]
            words = f"{len(used)} circuits" if used else ""
            rows.append((one.name, one.serial, one.checked, words))
    rows = rows or [("", "", "", "")] * 2
    idents = tuple(f"{i:03d}" for i in range(len(rows)))
    return Table(INSTRUMENT_COLUMNS, tuple(rows), idents)


def _signed(board: Board, model: Model) -> Table:
    readings = model.installation.readings
    own = [way.circuit for way in board.ways if way.circuit]
    found: dict[tuple[str, str], None] = {}
    for tag in own if readings else ():
        taken = readings.circuits[tag].taken if readings and tag in readings.circuits else None
        if taken is not None:
            found[taken.by, taken.date] = None
    rows = [(by, date, "") for by, date in found] or [("", "", "")] * 2
    idents = tuple(f"{i:03d}" for i in range(len(rows)))
    return Table(SIGNED_COLUMNS, tuple(rows), idents)
