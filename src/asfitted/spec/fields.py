"""Field types of the spec models: text in, a parsed value out, and a shape for the schema."""

from __future__ import annotations

import datetime as dt
import re
from functools import partial
from typing import TYPE_CHECKING, Annotated, Any, Literal

from pydantic import BaseModel, BeforeValidator, ConfigDict, WithJsonSchema

from asfitted import quantities as q
from asfitted.errors import NotUnderstoodError
from asfitted.spec import building_words as b
from asfitted.spec import words as w
from asfitted.spec.device_words import DeviceWords, parse_device
from asfitted.spec.source_words import (
    GeneratorWords,
    TransformerWords,
    parse_generator,
    parse_transformer,
)

if TYPE_CHECKING:
    from collections.abc import Callable


class SpecModel(BaseModel):
    """A frozen block of keys; the keys are the field names with spaces for underscores."""

    model_config = ConfigDict(
        frozen=True,
        extra="forbid",
        alias_generator=lambda name: name.replace("_", " ").strip(),
        arbitrary_types_allowed=True,
    )


class ShapeError(ValueError):
    """A list or block of keys stands where words belong; carries what belongs there."""


def _from_text(parse: Callable[[str], Any], what: str) -> BeforeValidator:
    """Return a validator that hands text to ``parse`` and lets a parsed value pass."""

    def read(value: Any) -> Any:
        if isinstance(value, list | dict):
            raise ShapeError(what)
        return parse(value) if isinstance(value, str) else value

    return BeforeValidator(read)


def _schema(description: str, *, words: tuple[str, ...] = ()) -> WithJsonSchema:
    """Return the JSON shape of a scalar; YAML editors see a bare 4 as a number."""
    if words:
        return WithJsonSchema({"enum": list(words), "description": description})
    return WithJsonSchema({"type": ["string", "number"], "description": description})


def _quantity(kind: q.QuantityKind) -> tuple[BeforeValidator, WithJsonSchema]:
    return (
        _from_text(partial(q.parse_quantity, kind=kind), f"a {kind.name} such as {kind.example}"),
        _schema(f"{kind.name}, bare unit {kind.unit or 'none'}; such as {kind.example}"),
    )


def _figure(kind: q.QuantityKind) -> tuple[BeforeValidator, WithJsonSchema]:
    return (
        _from_text(partial(q.parse_figure, kind=kind), f"a {kind.name} such as {kind.example}"),
        _schema(f"{kind.name} and measured, declared or assumed; such as {kind.example} measured"),
    )


def _plain(text: str) -> str:
    words = " ".join(text.split())
    if not words:
        raise NotUnderstoodError("nothing is written here", "write it, or take the key away")
    return words


def _yes(text: str) -> bool:
    return w.one_of(text, ("yes", "no", "true", "false"), "word") in ("yes", "true")


def _date(text: str) -> str:
    try:
        if re.fullmatch(r"\d{4}-\d{2}-\d{2}", text):
            return dt.date.fromisoformat(text).isoformat()
    except ValueError:
        pass
    raise NotUnderstoodError(f'"{text}" is not a date', "write year-month-day: 2026-11-20")


def _phases(text: str) -> int:
    if text.strip() not in {"1", "3"}:
        raise NotUnderstoodError(f'"{text}" phases are not known', "write 1 or 3")
    return int(text)


def _power_factor(text: str) -> float:
    value = q.parse_quantity(text, q.NUMBER)
    if not 0 < value <= 1:
        raise NotUnderstoodError(f'power factor "{text}" is not above 0 and up to 1', "write 0.8")
    return value


def _ip(text: str) -> str:
    code = text.strip().upper()
    if not re.fullmatch(r"IP[0-6X][0-9X][A-D]?", code):
        raise NotUnderstoodError(f'"{text}" is not an IP code', "write it like IP44 or IP2X")
    return code


def _word(*known: str, what: str) -> tuple[BeforeValidator, WithJsonSchema]:
    parse = partial(w.one_of, known=known, what=what)
    return _from_text(parse, "one of " + ", ".join(known)), _schema(what, words=known)


def _parsed(parse: Callable[[str], Any], what: str) -> tuple[BeforeValidator, WithJsonSchema]:
    return _from_text(parse, what), _schema(what)


STATES = ("existing", "new", "removed")
USES = ("power", "sockets", "lighting", "heating", "motor", "board")
STATUSES = (
    "Preliminary",
    "For information",
    "For comment",
    "For approval",
    "Tender",
    "For construction",
    "As fitted",
    "Superseded",
    "Withdrawn",
)
BUILDING_USES = (
    "dwelling",
    "house in multiple occupation",
    "higher-risk residential building",
    "student accommodation",
    "care home",
    "shop",
    "office",
    "workshop",
    "other",
)
EDITIONS = ("BS 7671:2018+A4:2026",)

Text = Annotated[str, *_parsed(_plain, "words")]
Date = Annotated[str, *_parsed(_date, "a date: year-month-day")]
Phases = Annotated[Literal[1, 3], *_parsed(_phases, "1 or 3")]
Count = Annotated[int, *_parsed(q.parse_count, "a whole number")]
PowerFactor = Annotated[float, *_parsed(_power_factor, "power factor, such as 0.8")]
Ip = Annotated[str, *_parsed(_ip, "IP code, such as IP44")]
YesNo = Annotated[bool, *_parsed(_yes, "yes or no")]
State = Annotated[str, *_word(*STATES, what="state")]
Use = Annotated[str, *_word(*USES, what="use")]
Status = Annotated[str, *_word(*STATUSES, what="status")]
BuildingUse = Annotated[str, *_word(*BUILDING_USES, what="building use")]
DrawingPaper = Annotated[str, *_word("A3", "A4", what="paper of the drawings")]
Edition = Annotated[str, *_word(*EDITIONS, what="edition")]
System = Annotated[str, *_word("TN-S", "TN-C-S", "TT", what="system")]
Restart = Annotated[str, *_word("manual", "automatic", what="restart")]
Starter = Annotated[str, *_word("built in", "none", what="starter")]
Through = Annotated[str, *_word("wall", "floor", what="what is passed through")]
Turn = Annotated[str, *_word("right", "left", what="turn")]
OpeningKind = Annotated[
    str, *_word("door", "window", "roller door", "opening", what="kind of opening")
]
Bands = Annotated[str, *_word("power", "data", "power and data", what="use of the run")]
RunKind = Annotated[
    str,
    *_word(
        "perforated tray",
        "wire basket",
        "cable ladder",
        "steel trunking",
        "plastic trunking",
        "steel conduit",
        "plastic conduit",
        "buried duct",
        "hidden run",
        what="kind of containment",
    ),
]
EquipmentKind = Annotated[
    str, *_word("recorder", "12 V supply", "PoE switch", what="kind of equipment")
]
DataPointKind = Annotated[str, *_word("data outlet", "access point", what="kind of data point")]

PositionMm = Annotated[float, *_quantity(q.POSITION_MM)]
ExtentMm = Annotated[float, *_quantity(q.EXTENT_MM)]
LengthM = Annotated[float, *_quantity(q.LENGTH_M)]
CurrentA = Annotated[float, *_quantity(q.CURRENT_A)]
PowerW = Annotated[float, *_quantity(q.POWER_W)]
AreaMm2 = Annotated[float, *_quantity(q.AREA_MM2)]
FaultKa = Annotated[float, *_quantity(q.FAULT_KA)]
VoltageV = Annotated[float, *_quantity(q.VOLTAGE_V)]
FrequencyHz = Annotated[float, *_quantity(q.FREQUENCY_HZ)]
TemperatureC = Annotated[float, *_quantity(q.TEMPERATURE_C)]
DiskTb = Annotated[float, *_quantity(q.DISK_TB)]
ShortCircuitMva = Annotated[float, *_quantity(q.SHORT_CIRCUIT_MVA)]
SharePct = Annotated[float, *_quantity(q.SHARE_PCT)]
SoilKmW = Annotated[float, *_quantity(q.SOIL_KM_W)]
TimeDays = Annotated[float, *_quantity(q.TIME_DAYS)]
KnownOhm = Annotated[q.Figure, *_figure(q.RESISTANCE_OHM)]
KnownKa = Annotated[q.Figure, *_figure(q.FAULT_KA)]
KnownLengthM = Annotated[q.Figure, *_figure(q.LENGTH_M)]
Size = Annotated[
    tuple[float, float],
    *_parsed(q.parse_size_mm, "a size such as 150 x 25, or one figure if round"),
]

Position = Annotated[w.PositionWords, *_parsed(w.parse_position, "a position; " + w.POSITION_HINT)]
PlanPlace = Annotated[
    b.PlanPlaceWords, *_parsed(b.parse_plan_place, "a place on plan; " + b.PLAN_HINT)
]
FloorLevelMm = Annotated[float, *_quantity(q.FLOOR_LEVEL_MM)]
FireResistance = Annotated[
    float | None,
    *_parsed(b.parse_fire_resistance, 'fire resistance: "60 min", "none" or "not recorded"'),
]
FireStopping = Annotated[str, *_parsed(b.parse_fire_stopping, "yes, no or not recorded")]
Waypoint = Annotated[w.WaypointWords, *_parsed(w.parse_waypoint, "a waypoint such as D 1.0 m")]
Level = Annotated[w.LevelWords, *_parsed(w.parse_level, "a level such as 2.9 m T/O")]
CablePhrase = Annotated[w.CableWords, *_parsed(w.parse_cable, "a cable such as SWA 4c")]
Route = Annotated[w.RouteWords, *_parsed(w.parse_route, "clipped direct, 2.25 m up")]
Load = Annotated[w.LoadWords, *_parsed(w.parse_load, "a load such as 3 kW or 4 A")]
Voltage = Annotated[w.VoltageWords, *_parsed(w.parse_voltage, "230 V or 400/230 V")]
Tails = Annotated[w.TailsWords, *_parsed(w.parse_tails, "meter tails such as 25 mm2, 2 m")]
Surge = Annotated[str, *_parsed(w.parse_surge_protection, "surge protection; " + w.SURGE_HINT)]
Aim = Annotated[float, *_parsed(w.parse_aim, "square, 45 left or 30 right")]
Device = Annotated[DeviceWords, *_parsed(parse_device, "a device such as C32 TP 6 kA")]
Transformer = Annotated[
    TransformerWords, *_parsed(parse_transformer, "a transformer such as 500 kVA 4.75 %")
]
Generator = Annotated[
    GeneratorWords, *_parsed(parse_generator, "a generator such as 60 kVA, x'' 12 %")
]


class PlateWords(SpecModel):
    """What may be read off the rating plate of a thing; what was not read stays out."""

    make: Text | None = None
    model: Text | None = None
    serial_number: Text | None = None
