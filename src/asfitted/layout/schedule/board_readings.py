"""Readings at a board and, for a board fed by the supply, at the origin."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.network import fault_of_ipf
from asfitted.layout.given_words import known
from asfitted.layout.schedule.words import figure
from asfitted.layout.table import Column, Table

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model
    from asfitted.resolve.installation import Board
    from asfitted.resolve.readings import BoardReading, Reading, SupplyReading

COLUMNS = (
    Column("At the board"),
    Column("Taken for the design"),
    Column("Calculated", align="end"),
    Column("Measured", align="middle", least_mm=36.0),
)
NONE = "–"


def board_readings(board: Board, model: Model) -> Table:
    """Return what is to be measured at a board; what was not measured is empty."""
    given = model.installation.readings
    own = given.boards.get(board.tag) if given else None
    rows = _origin_rows(model) if board.fed_by == "supply" else []
    rows += _board_rows(board, own, model)
    return Table(COLUMNS, tuple(rows), tuple(row[0] for row in rows))


def _origin_rows(model: Model) -> list[tuple[str, ...]]:
    supply, given = model.installation.supply, model.installation.readings
    if supply is None:
        return []
    own: SupplyReading | None = given.supply if given else None
    rows: list[tuple[str, ...]] = [
        (
            "Ze at the origin",
            known(supply.ze_ohm, "Ω"),
            NONE,
            _shown(own.ze_ohm if own else None, "Ω"),
        ),
        (
            f"Fault current at the origin, {fault_of_ipf(supply.phases)}",
            known(supply.ipf_ka, "kA"),
            NONE,
            _shown(own.fault_ka if own else None, "kA"),
        ),
        ("Polarity of the supply", NONE, NONE, _word(own.polarity if own else None)),
    ]
    if supply.system == "TT":
        electrode = _shown(own.electrode_ohm if own else None, "Ω")
        rows.append(("Earth electrode", known(supply.electrode_ohm, "Ω"), NONE, electrode))
    return rows


def _board_rows(board: Board, own: BoardReading | None, model: Model) -> list[tuple[str, ...]]:
    figures = model.results.boards.get(board.tag)
    fault = figures.fault_max_3ph_ka if figures and board.phases == 3 else None
    if figures and board.phases == 1:
        fault = figures.fault_max_1ph_ka
    zs = figure(figures.zs_ohm if figures else None, 2, "Ω")
    rows: list[tuple[str, ...]] = [
        ("Zs at the board", known(board.zs_ohm, "Ω"), zs, _shown(own.zs_ohm if own else None, "Ω")),
        (
            f"Fault current at the board, {fault_of_ipf(board.phases)}",
            known(board.ipf_ka, "kA"),
            figure(fault, 1, "kA"),
            _shown(own.fault_ka if own else None, "kA"),
        ),
    ]
    if board.fed_by != "supply":
        rows.append(("Polarity at the board", NONE, NONE, _word(own.polarity if own else None)))
    if board.phases == 3:
        rows.append(("Phase sequence", NONE, NONE, _word(own.phase_sequence if own else None)))
    return rows


def _shown(reading: Reading | None, unit: str) -> str:
    """Return what the instrument showed, or nothing."""
    if reading is None:
        return ""
    return (
        f"not tested: {reading.not_tested}" if reading.value is None else f"{reading.shown} {unit}"
    )


def _word(result: str | None) -> str:
    return result or ""
