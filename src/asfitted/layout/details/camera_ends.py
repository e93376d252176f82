"""How cameras and access points of the job are connected: figures, notes and table."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.errors import OutsideTableError
from asfitted.layout.breakable_words import with_breakable_words
from asfitted.layout.data_diagram.links import cables_by_device, recorder_of
from asfitted.layout.details.pairs import Conductor, Group, PairsFigure, Plug
from asfitted.layout.details.subject import Subject, in_order
from asfitted.layout.given_words import NOT_RECORDED
from asfitted.layout.schedule.words import length_words
from asfitted.layout.table import Column, Table
from asfitted.reference.cable_family import family
from asfitted.reference.cctv import pin_colours
from asfitted.reference.connections import (
    balun_duties,
    coax_power_conductors,
    poe_duty,
    source_of,
)
from asfitted.resolve.installation import State

if TYPE_CHECKING:
    from asfitted.layout.details.pairs import Carries
    from asfitted.layout.sheet_model import Model
    from asfitted.resolve.installation import Cable, DataDevice

CAUTION = (
    "Switch off and unplug the supply before a plug is made off; prove polarity and voltage with a "
    "meter before the camera is plugged in. Never join a PoE port to a balun or to coaxial cable. "
    "Cables for 230 V may lie beside: isolate and prove dead before a shared box is opened."
)
#: Pairs of the eight-way plug, blue, orange, green, brown (TIA-568, T568B).
PAIRS = ((4, 5), (1, 2), (3, 6), (7, 8))
PICTURE = "picture"
DC_PLUG = "centre + and sleeve − (common practice): read the label of the camera first"
COLUMNS = (
    Column("Device", wraps=False),
    Column("Figure", align="middle", wraps=False),
    Column("Cable"),
    Column("Length", align="end", wraps=False),
    Column("Picture and data go to"),
    Column("Supply"),
)


def camera_ends(model: Model, first: int = 1) -> Subject | None:
    """Return the subject of data connections, figures numbered from ``first``; None without new."""
    cables = cables_by_device(model.installation)
    devices = [
        d
        for d in model.installation.data_devices.values()
        if d.tag in cables and cables[d.tag].state is State.NEW
    ]
    kinds = [_kind(d, cables[d.tag]) for d in devices]
    if not devices:
        return None
    numbers = in_order(kinds, first)
    figures = tuple(
        _figure(
            kind,
            numbers[kind],
            tuple(d.tag for d, other in zip(devices, kinds, strict=True) if other == kind),
        )
        for kind in dict.fromkeys(kinds)
    )
    rows = tuple(
        _row(model, d, cables[d.tag], numbers[kind]) for d, kind in zip(devices, kinds, strict=True)
    )
    return Subject(
        key="data-ends",
        name="data connections",
        title="Detail: camera and data ends",
        caution=CAUTION,
        figures=figures,
        notes=_notes(dict.fromkeys(kinds)),
        table=with_breakable_words(Table(COLUMNS, rows, tuple(d.tag for d in devices))),
    )


def _kind(device: DataDevice, cable: Cable) -> tuple[str, int]:
    """Return the kind of connection, and the conductors each way of a balun's supply."""
    construction = family(cable.family).construction
    if device.baluns:
        return "balun", device.power_pairs or 0
    if construction == "coax_power":
        return "coax with power", 0
    if construction == "coax":
        return "coax", 0
    return ("PoE", 0) if device.kind != "data outlet" else ("data", 0)


def _figure(kind: tuple[str, int], number: int, tags: tuple[str, ...]) -> PairsFigure:
    name, each_way = kind
    key = f"data{number}"
    if name == "balun":
        return _balun(key, number, tags, each_way)
    if name in {"coax", "coax with power"}:
        return _coax(key, number, tags, with_power=name != "coax")
    return _network(key, number, tags, powered=name == "PoE")


def _balun(key: str, number: int, tags: tuple[str, ...], each_way: int) -> PairsFigure:
    """Return the figure of a power-and-video balun at both ends of a four-pair cable."""
    colours = pin_colours("T568B")
    try:
        duties = balun_duties(each_way)
    except OutsideTableError:
        duties = dict.fromkeys(colours, "not recorded")
    groups = []
    for pair in PAIRS:
        cores = [(pin, colours[pin - 1]) for pin in pair]
        said = [duties.get(colour, "spare") for _, colour in cores]
        conductors = tuple(
            Conductor(f"pin {pin}  {colour}", _carries(duty), duty, duty)
            for (pin, colour), duty in zip(cores, said, strict=True)
        )
        groups.append(Group(conductors))
    title = "Four-pair cable with power-and-video baluns"
    if each_way:
        title += f": {each_way} + {each_way} cores for 12 V"
    return PairsFigure(
        key,
        number,
        tags,
        title,
        "camera end: balun",
        "recorder end: balun",
        tuple(groups),
        _balun_plugs(groups),
        ringed=True,
    )


def _balun_plugs(groups: list[Group]) -> tuple[Plug, ...]:
    """Return one plug for the picture and one for the d.c. supply at each end."""
    plugs = []
    for symbol, carries in (("plug_bnc", "picture"), ("plug_dc", "dc")):
        found = [i for i, g in enumerate(groups) if g.conductors[0].carries == carries]
        if found:
            plugs.append(Plug(symbol, "left", found[0], found[-1]))
            plugs.append(Plug(symbol, "right", found[0], found[-1]))
    return tuple(plugs)


def _carries(duty: str) -> Carries:
    if duty.startswith(PICTURE):
        return "picture"
    return "dc" if "12 V" in duty else "spare"


def _coax(key: str, number: int, tags: tuple[str, ...], *, with_power: bool) -> PairsFigure:
    """Return the figure of a coaxial cable, with two supply cores where it has them."""
    made = coax_power_conductors()
    coaxial = tuple(Conductor(n, "picture", end, end) for n, _, end in made[:2])
    groups = [Group(coaxial)]
    plugs = [Plug("plug_bnc", "left", 0, 0), Plug("plug_bnc", "right", 0, 0)]
    if with_power:
        cores = tuple(
            Conductor(f"{name}: {carries}", "dc", end, f"supply output {carries[-1]}")
            for name, carries, end in made[2:]
        )
        groups.append(Group(cores))
        plugs.append(Plug("plug_dc", "left", 1, 1))
    title = "Coaxial cable with two supply cores" if with_power else "Coaxial cable"
    return PairsFigure(
        key,
        number,
        tags,
        title,
        "camera end",
        "recorder and 12 V supply",
        tuple(groups),
        tuple(plugs),
        ringed=False,
    )


def _network(key: str, number: int, tags: tuple[str, ...], *, powered: bool) -> PairsFigure:
    """Return the figure of a four-pair cable between a switch port and a device."""
    colours = pin_colours("T568B")
    groups = []
    for pair in PAIRS:
        conductors = tuple(
            Conductor(f"pin {pin}  {colours[pin - 1]}", "network", duty, duty)
            for pin in pair
            for duty in (poe_duty(pin) if powered else "data",)
        )
        groups.append(Group(conductors))
    title = "Four-pair cable: data and power (PoE)" if powered else "Four-pair cable: data"
    near = "device" if powered else "data outlet"
    plugs = (
        Plug("plug_rj45" if powered else "data_outlet", "left", 0, len(PAIRS) - 1),
        Plug("plug_rj45", "right", 0, len(PAIRS) - 1),
    )
    return PairsFigure(
        key, number, tags, title, near, "switch port", tuple(groups), plugs, ringed=True
    )


def _notes(kinds: dict[tuple[str, int], None]) -> tuple[tuple[str, str], ...]:
    names = {name for name, _ in kinds}
    notes = [
        (
            "Pins",
            (
                "shown for T568B; which scheme is used is not recorded: the same at both ends, "
                "tested for pin order and split pairs"
            ),
        )
    ]
    sources = ["pins and pairs TIA-568 (seen)"]
    if "balun" in names:
        notes.append(("Baluns", "the balun leaflet rules; the same colours at both ends"))
        notes.append(("D.c. plug", DC_PLUG))
        sources.append(f"balun cores {source_of('balun_cores').provenance}")
    if "coax with power" in names or "coax" in names:
        notes.append(
            ("Coaxial braid", "earthed at the recorder only, unless the maker says otherwise")
        )
        sources.append(f"d.c. cores and plug {source_of('coax_power_cores').provenance}")
    if names == {"coax with power"}:
        notes.append(("D.c. plug", DC_PLUG))
    if "PoE" in names:
        notes.append(("PoE", "the switch chooses mode A or B; types 3 and 4 use all four pairs"))
        sources.append(f"PoE pins {source_of('poe_pins').standard} (mode B seen, mode A memory)")
    if names == {"coax", "coax with power"} or names in ({"coax"}, {"coax with power"}):
        notes, sources = notes[1:], sources[1:]
    return (
        *notes,
        ("Outside", "drip loop, sealed box, strain taken off the plugs"),
        ("Sources", "; ".join(sources)),
    )


def _row(model: Model, device: DataDevice, cable: Cable, number: int) -> tuple[str, ...]:
    figures = model.results.data.get(device.tag)
    recorder = recorder_of(device, cable, model.installation)
    picture = ""
    if device.kind == "camera":
        channel = NOT_RECORDED if device.channel is None else str(device.channel)
        picture = f"{recorder or 'recorder not recorded'} channel {channel}"
    port = device.port.replace("/", " port ")
    return (
        device.tag,
        str(number),
        f"{cable.tag} {figures.medium if figures else family(cable.family).legend}",
        length_words(cable, figures.length_m if figures else None),
        ", ".join(part for part in (port, picture) if part) or NOT_RECORDED,
        _supply(device, figures.supply if figures else ""),
    )


def _supply(device: DataDevice, supply: str) -> str:
    if device.kind == "data outlet":
        return "–"
    if not supply:
        return NOT_RECORDED
    return f"{supply}, PoE class {device.poe_class}" if device.poe_class is not None else supply
