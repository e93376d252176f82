"""Which core, contact or terminal goes where: core colours, socket contacts, connectors."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.errors import OutsideTableError
from asfitted.reference.loader import table

if TYPE_CHECKING:
    from collections.abc import Sequence

_FILE = "connections"
PROTECTIVE = "PE"


@dataclass(frozen=True)
class Source:
    """Where a set of connections comes from, in few words for a sheet."""

    standard: str
    provenance: str

    @property
    def words(self) -> str:
        """``BS 7671 Table 51 (memory)``."""
        return f"{self.standard} ({self.provenance})"


def source_of(table_id: str) -> Source:
    """Return where a table of connections comes from.

    Raises:
        ReferenceDataError: there is no such table.
    """
    found = table(_FILE, table_id)
    return Source(found.standard, found.provenance)


def conductor_colour(mark: str) -> str:
    """Return the colour that identifies a conductor.

    Args:
        mark: "L", "L1", "L2", "L3", "N" or "PE".

    Raises:
        OutsideTableError: another mark.
    """
    return str(table(_FILE, "conductor_colours").row(mark=mark)["colour"])


def core_colours(construction: str, cores: int) -> tuple[str, ...]:
    """Return the colours of the cores of a cable as made, in the order of the standard.

    Args:
        construction: Of the cable family: "armoured", "flat", "flexible" or "multicore".
        cores: Number of cores; live cores only for flat cable, whose bare core comes last.

    Raises:
        OutsideTableError: the colours of such a cable are not held.
    """
    held = "flexible" if construction == "multicore" else construction
    row = table(_FILE, "core_colours").row(construction=held, cores=cores)
    return tuple(row["colours"])


def core_for_each(marks: Sequence[str], colours: Sequence[str]) -> tuple[str, ...]:
    """Return which core serves each conductor, and how it is sleeved where its colour is another.

    A core of the right colour is taken first; the cores left over follow in order.

    Args:
        marks: Conductors in order, such as ("L", "N", "PE").
        colours: Colours of the cores as made.

    Example:
        >>> core_for_each(("L", "N", "PE"), ("brown", "black", "grey"))
        ('brown', 'black sleeved blue', 'grey sleeved green-and-yellow')
    """
    left = list(colours)
    found: dict[str, str] = {}
    for mark in marks:
        if conductor_colour(mark) in left:
            left.remove(conductor_colour(mark))
            found[mark] = conductor_colour(mark)
    for mark in marks:
        if mark not in found:
            found[mark] = f"{left.pop(0)} sleeved {conductor_colour(mark)}" if left else "no core"
    return tuple(found[mark] for mark in marks)


def residual_device_terminals(mark: str) -> tuple[str, str]:
    """Return the marks of the supply and the load terminal of a pole of an RCD.

    Raises:
        OutsideTableError: no such pole.
    """
    row = table(_FILE, "residual_device_terminals").row(mark=mark)
    return str(row["supply_side"]), str(row["load_side"])


def motor_terminal(mark: str) -> str:
    """Return the mark of the motor terminal that a line goes to, "" where none is held."""
    try:
        return str(table(_FILE, "motor_terminals").row(mark=mark)["terminal"])
    except OutsideTableError:
        return ""


def five_pin_face(volts: float) -> tuple[tuple[str, ...], str, str]:
    """Return contacts clockwise from earth as seen from the front, clock position and colour.

    Args:
        volts: Voltage between lines of the five-pin outlet, V.

    Raises:
        OutsideTableError: no five-pin outlet is held for that voltage.
    """
    found = table("termination", "industrial_socket_clock")
    sequence = next(
        r["sequence_clockwise_from_front"]
        for r in found.rows
        if "sequence_clockwise_from_front" in r
    )
    for row in found.rows:
        if row["poles"] == "3P+N+E" and row.get("v_min", volts + 1) <= volts <= row["v_max"]:
            return tuple(sequence), str(row["clock"]), str(row["colour"])
    raise found.outside("v_min", volts)


def balun_duties(each_way: int) -> dict[str, str]:
    """Return what each core colour carries through a power-and-video balun.

    Args:
        each_way: Conductors in parallel each way for the d.c. supply.

    Raises:
        OutsideTableError: no layout is held for that number.
    """
    row = table(_FILE, "balun_cores").row(each_way=each_way)
    words = {
        "video_plus": "picture +",
        "video_minus": "picture −",
        "dc_plus": "12 V +",
        "dc_minus": "12 V −",
        "spare": "spare",
    }
    return {colour: said for column, said in words.items() for colour in row[column]}


def coax_power_conductors() -> tuple[tuple[str, str, str], ...]:
    """Return conductor, what it carries and where it ends at the camera, in order."""
    rows = table(_FILE, "coax_power_cores").rows
    return tuple((r["conductor"], r["carries"], r["camera_end"]) for r in rows)


def poe_duty(pin: int) -> str:
    """Return what power a pin may carry.

    Raises:
        OutsideTableError: not 1 to 8.
    """
    found = table(_FILE, "poe_pins")
    for row in found.rows:
        if pin in row["pins"]:
            return str(row["duty"])
    raise found.outside("pins", pin)
