"""Readings of the circuits of a board: what was measured, beside its limit and the calculation.

A cell of a reading is empty until somebody gives the reading: it is never filled from a
calculated figure, which stands in a column of its own.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.check.readings import may_have_rcd, rcd_of
from asfitted.layout.schedule.words import figure
from asfitted.layout.table import Column, Table
from asfitted.reference.reading_limits import longest_trip_ms

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model
    from asfitted.resolve.installation import Board, Circuit
    from asfitted.resolve.readings import CircuitReading, Reading

NONE, NOT_TESTED = "–", "n/t"
MEASURED_MM = 13.0
#: What a rule that fails means in the last column.
TOLD = {
    "TR-01": "Zs over its limit",
    "TR-02": "Zs over the limit for a cold reading",
    "TR-03": "insulation too low",
    "TR-04": "RCD outside its time",
    "TR-05": "result wrong",
    "TR-06": "far from the calculation",
}


@dataclass(frozen=True)
class ReadingColumn:
    """One column: its heading, whether it is measured, and on which boards it stands."""

    column: Column
    measured: bool = False
    only_with: str = ""  # "ring" or "afdd"


def _read(header: str, only_with: str = "") -> ReadingColumn:
    column = Column(header, align="middle", least_mm=MEASURED_MM)
    return ReadingColumn(column, measured=True, only_with=only_with)


def _given(header: str) -> ReadingColumn:
    return ReadingColumn(Column(header, align="end"))


COLUMNS = (
    ReadingColumn(Column("Way", wraps=False)),
    ReadingColumn(Column("Circuit", least_mm=30.0)),
    _read("Ring r1 read Ω", "ring"),
    _read("Ring rn read Ω", "ring"),
    _read("Ring r2 read Ω", "ring"),
    _given("R1+R2 calculated Ω"),
    _read("R1+R2 read Ω"),
    _read("Test at V"),
    _read("Live to live MΩ"),
    _read("Live to earth MΩ"),
    _read("Polarity"),
    _given("Zs most, cold Ω"),
    _given("Zs calculated Ω"),
    _read("Zs read Ω"),
    _given("RCD most ms"),
    _read("RCD read ms"),
    _read("RCD button"),
    _read("AFDD button", "afdd"),
    ReadingColumn(Column("Remarks", least_mm=22.0)),
)


def circuit_readings(board: Board, model: Model) -> Table:
    """Return one row for each circuit of a board that stays, in order of its ways."""
    circuits = board_circuits(board, model)
    columns = columns_of(circuits)
    rows: list[tuple[str, ...]] = []
    idents: list[str] = []
    strong = set[int]()
    for circuit in circuits:
        said = _findings(circuit.tag, model)
        if any(rule in {"TR-01", "TR-03", "TR-04", "TR-05"} for rule in said):
            strong.add(len(rows))
        cells = _cells(circuit, said, model)
        rows.append(tuple(cells[each.column.header] for each in columns))
        idents.append(circuit.tag)
    heads = tuple(each.column for each in columns)
    return Table(heads, tuple(rows), tuple(idents), strong_rows=frozenset(strong))


def board_circuits(board: Board, model: Model) -> list[Circuit]:
    """Return the circuits of a board that stay, in order of its ways."""
    found = [model.installation.circuits[way.circuit] for way in board.ways if way.circuit]
    return [circuit for circuit in found if circuit.state != "removed"]


def columns_of(circuits: list[Circuit]) -> list[ReadingColumn]:
    """Return the columns that some of the circuits need."""
    has = {
        "": True,
        "ring": any(circuit.ring for circuit in circuits),
        "afdd": any(circuit.device.afdd for circuit in circuits),
    }
    return [column for column in COLUMNS if has[column.only_with]]


def _findings(tag: str, model: Model) -> list[str]:
    """Return the ids of the rules on test results that a circuit fails."""
    return [
        f.rule
        for f in model.report.findings
        if f.subject == tag and f.rule in TOLD and f.word != "not checked"
    ]


def _cells(circuit: Circuit, said: list[str], model: Model) -> dict[str, str]:
    given = model.installation.readings
    reading = given.circuits.get(circuit.tag) if given else None
    return {
        **_known_cells(circuit, model),
        **_measured_cells(circuit, reading, model),
        "Remarks": _remarks(reading, said),
    }


def _known_cells(circuit: Circuit, model: Model) -> dict[str, str]:
    """Return what is known without an instrument: limits, and figures for cold conductors."""
    figures = model.results.circuits.get(circuit.tag)
    expected = model.results.expected.get(circuit.tag)
    most = figures.zs_limit_measured_ohm if figures else None
    return {
        "Way": circuit.way,
        "Circuit": circuit.name,
        "R1+R2 calculated Ω": figure(expected.r1r2_ohm if expected else None, 2, missing="n/k"),
        "Zs most, cold Ω": figure(most, 2, missing="n/k"),
        "Zs calculated Ω": figure(expected.zs_ohm if expected else None, 2, missing="n/k"),
        "RCD most ms": _rcd_limit(circuit, model),
    }


def _rcd_limit(circuit: Circuit, model: Model) -> str:
    """Return the longest tripping time, ms; "n/k" where an older circuit's RCD is not recorded."""
    rcd = rcd_of(circuit, model.installation)
    if rcd is None:
        return "n/k" if may_have_rcd(circuit, model.installation) else NONE
    return f"{longest_trip_ms(delayed=rcd.delayed).value:g}"


def _measured_cells(
    circuit: Circuit, reading: CircuitReading | None, model: Model
) -> dict[str, str]:
    """Return what an instrument showed; empty where nothing was given."""
    has_rcd = may_have_rcd(circuit, model.installation)
    whole = NOT_TESTED if reading and reading.not_tested else ""
    ring = whole if circuit.ring else NONE
    rcd = whole if has_rcd else NONE
    cells = {
        "Ring r1 read Ω": ring,
        "Ring rn read Ω": ring,
        "Ring r2 read Ω": ring,
        "R1+R2 read Ω": whole,
        "Test at V": whole,
        "Live to live MΩ": whole,
        "Live to earth MΩ": whole,
        "Polarity": whole,
        "Zs read Ω": whole,
        "RCD read ms": rcd,
        "RCD button": rcd,
        "AFDD button": whole if circuit.device.afdd else NONE,
    }
    if reading is None:
        return cells
    r2 = f"R2 {reading.r2_ohm.shown}" if reading.r2_ohm and not reading.r1r2_ohm else ""
    volts = reading.insulation_test_v
    shown = {
        "Ring r1 read Ω": _shown(reading.r1_ohm),
        "Ring rn read Ω": _shown(reading.rn_ohm),
        "Ring r2 read Ω": _shown(reading.ring_r2_ohm),
        "R1+R2 read Ω": _shown(reading.r1r2_ohm) or r2,
        "Test at V": f"{volts:g}" if volts else "",
        "Live to live MΩ": _shown(reading.insulation_live_mohm),
        "Live to earth MΩ": _shown(reading.insulation_earth_mohm),
        "Polarity": reading.polarity or "",
        "Zs read Ω": _shown(reading.zs_ohm),
        "RCD read ms": _shown(reading.rcd_ms),
        "RCD button": reading.rcd_button or "",
        "AFDD button": reading.afdd_button or "",
    }
    return {head: shown[head] or blank for head, blank in cells.items()}


def _shown(reading: Reading | None) -> str:
    if reading is None:
        return ""
    return NOT_TESTED if reading.value is None else reading.shown


def _remarks(reading: CircuitReading | None, said: list[str]) -> str:
    """Return what the rules say, why something was not tested, and what was written."""
    words = [TOLD[rule] for rule in said]
    if reading is not None:
        reasons = [reading.not_tested] + [
            one.not_tested
            for one in (
                reading.r1r2_ohm,
                reading.r2_ohm,
                reading.insulation_live_mohm,
                reading.insulation_earth_mohm,
                reading.zs_ohm,
                reading.rcd_ms,
            )
            if one is not None
        ]
        words += [f"not tested: {why}" for why in dict.fromkeys(r for r in reasons if r)]
        words += [reading.taken.remarks] if reading.taken.remarks else []
    return "; ".join(words)
