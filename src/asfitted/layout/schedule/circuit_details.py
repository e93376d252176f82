"""Details of the circuits of a board that whoever tests them needs at hand."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.check.readings import rcd_of
from asfitted.layout.given_words import NOT_RECORDED, state_behind
from asfitted.layout.schedule.circuit_readings import board_circuits
from asfitted.layout.schedule.words import device_words, figure
from asfitted.layout.table import Column, Table
from asfitted.reference.cables import family

if TYPE_CHECKING:
    from asfitted.calculate.results import CircuitResult, LeastCpc
    from asfitted.layout.sheet_model import Model
    from asfitted.resolve.installation import Board, Circuit

COLUMNS = (
    Column("Way", wraps=False),
    Column("Circuit"),
    Column("Points", align="middle"),
    Column("Cable"),
    Column("Method", align="middle"),
    Column("Live mm²", align="end", wraps=False),
    Column("cpc at board"),
    Column("Least cpc, where"),
    Column("Device"),
    Column("Standard"),
    Column("Breaks kA", align="end"),
    Column("RCD"),
    Column("Off within s", align="end"),
    Column("Zs most Ω", align="end"),
    Column("Upset by tests"),
)
UNKNOWN = "n/r"


def circuit_details(board: Board, model: Model) -> Table:
    """Return one row for each circuit of a board that stays, in order of its ways."""
    circuits = board_circuits(board, model)
    rows = tuple(_row(circuit, model) for circuit in circuits)
    return Table(COLUMNS, rows, tuple(circuit.tag for circuit in circuits))


def _row(circuit: Circuit, model: Model) -> tuple[str, ...]:
    figures = model.results.circuits.get(circuit.tag)
    first = model.results.cables.get(circuit.cables[0]) if circuit.cables else None
    kind = (
        family(model.installation.cables[circuit.cables[0]].family).words[0] if first else UNKNOWN
    )
    points = str(circuit.points_served) if circuit.points_served else UNKNOWN
    return (
        circuit.way,
        circuit.name + state_behind(circuit.state),
        NONE_SERVED if circuit.feeds_board else points,
        kind,
        first.method if first else UNKNOWN,
        f"{first.csa_mm2:g}" if first else UNKNOWN,
        _short(first.cpc_words) if first else UNKNOWN,
        least_cpc_words(figures, model),
        device_words(circuit.device),
        circuit.device.standard,
        f"{circuit.device.icn_ka:g}" if circuit.device.icn_ka else UNKNOWN,
        _rcd(circuit, model),
        figure(figures.disconnection_limit_s if figures else None, 1, missing=UNKNOWN),
        figure(figures.zs_limit_ohm if figures else None, 2, missing=UNKNOWN),
        UNKNOWN if circuit.vulnerable == NOT_RECORDED else circuit.vulnerable,
    )


NONE_SERVED = "–"


def least_cpc_words(figures: CircuitResult | None, model: Model) -> str:
    """Return the least protective conductor on the way of a circuit, and where it is.

    R1+R2 and the sum of the cpc under fault hang on it. Where that sum is closest to its limit in
    another cable, this is said too.
    """
    least = figures.least_cpc if figures else None
    if figures is None or least is None:
        return UNKNOWN
    size = _short(least.words)
    words = f"{size}, throughout" if least.throughout else f"{size}, {_in_cables(least, model)}"
    other = model.results.cables.get(figures.cpc_checked)
    if other is not None and other.tag not in least.cables:
        words += f"; nearer its limit under fault: {_short(other.cpc_words)} in {other.tag}"
    return words


def _short(cpc_words: str) -> str:
    return cpc_words.replace("steel armour", "armour")


def _in_cables(least: LeastCpc, model: Model) -> str:
    """Return the cables by tag; one alone with the end that it serves."""
    if len(least.cables) > 1:
        return f"in {' '.join(least.cables)}"
    tag = least.cables[0]
    return f"in {tag} to {model.installation.cables[tag].to_end}"


def _rcd(circuit: Circuit, model: Model) -> str:
    """Return the RCD by its figures, and that it sits in the outlet where it does."""
    rcd = rcd_of(circuit, model.installation)
    if rcd is None:
        return "none" if circuit.state == "new" else UNKNOWN
    words = f"{rcd.idn_ma:g} mA {rcd.type}{' delayed' if rcd.delayed else ''}"
    return words if circuit.device.rcd is not None else f"{words}, in outlet"
