"""What each row of the data diagram says, in words, before anything is placed."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from asfitted.layout.data_diagram.links import cables_by_device, port_number, recorder_of
from asfitted.layout.figures import metres, place_m, rounded
from asfitted.layout.given_words import state_before, state_word
from asfitted.rounding import rounded_down

if TYPE_CHECKING:
    from asfitted.calculate.results import CalculationResults, DataResult
    from asfitted.resolve.installation import Cable, DataDevice, Installation


@dataclass(frozen=True)
class LegWords:
    """One leg of a link: what it carries, the line above it, the line below, and its port."""

    carries: Literal["signal", "supply", "network"]
    above: str
    below: str
    port: str
    baluns: bool = False


@dataclass(frozen=True)
class LinkRow:
    """One device with its legs. ``facts`` stand beside the device.

    ``block`` is the equipment that its cable starts from, "" when it is not known; ``place`` its
    channel or port there. ``is_patch`` marks the patch lead of a recorder: a flag, no device.
    """

    device: str
    symbol: str
    state: str  # "", "existing" or "removed"
    facts: tuple[str, ...]
    legs: tuple[LegWords, ...]
    block: str = ""
    place: int = 0
    supplies: tuple[str, ...] = ()
    is_patch: bool = False


SYMBOLS = {"camera": "camera_fixed", "data outlet": "data_outlet", "access point": "access_point"}


def link_rows(installation: Installation, results: CalculationResults) -> tuple[LinkRow, ...]:
    """Return the rows by equipment in the order of the spec, recorders first, then by port."""
    cables = cables_by_device(installation)
    devices = installation.data_devices.values()
    rows = [
        _row(d, cables.get(d.tag), results.data.get(d.tag), installation)
        for d in devices
        if d.kind in SYMBOLS
    ]
    rows += [_patch_row(d) for d in devices if d.kind == "recorder" and d.port]
    kinds = {d.tag: d.kind for d in devices}
    place_of = {tag: i for i, tag in enumerate(kinds)}

    def order(row: LinkRow) -> tuple[bool, bool, int, int, str]:
        is_switch = kinds.get(row.block) != "recorder"
        return not row.block, is_switch, place_of.get(row.block, 0), row.place, row.device

    return tuple(sorted(rows, key=order))


def _row(
    device: DataDevice,
    cable: Cable | None,
    figures: DataResult | None,
    installation: Installation,
) -> LinkRow:
    block, place = cable.from_end if cable else "", device.channel or 0
    if device.port:
        block, place = device.port.partition("/")[0], port_number(device.port)
    legs: tuple[LegWords, ...] = ()
    if cable is not None and figures is not None:
        legs = (_network_leg(device, cable, figures),)
        if not device.port:
            legs = _camera_legs(device, cable, figures)
    supplies = (figures.supply,) if figures and figures.supply and not device.port else ()
    return LinkRow(
        device.tag,
        SYMBOLS[device.kind],
        state_word(device.state),
        _facts(device, figures, recorder_of(device, cable, installation)),
        legs,
        block,
        place,
        supplies,
    )


def _patch_row(recorder: DataDevice) -> LinkRow:
    """Return the row of the patch lead from a recorder to its port on a switch."""
    port = f"port {port_number(recorder.port)}"
    leg = LegWords("network", f"patch lead from {recorder.tag}", "", port)
    switch = recorder.port.partition("/")[0]
    place = port_number(recorder.port)
    return LinkRow(recorder.tag, "", "", (), (leg,), switch, place, is_patch=True)


def _facts(device: DataDevice, figures: DataResult | None, recorder: str) -> tuple[str, ...]:
    """Return what is said beside the device: place, view, picture detail, where it is recorded."""
    facts = [_place(device)]
    if device.kind == "camera":
        facts.append(f"looks at: {device.views or 'not recorded'}")
        facts.append(_detail(device, figures))
        if device.port:
            channel = "not recorded" if device.channel is None else str(device.channel)
            facts.append(f"recorded on {recorder or 'recorder not recorded'} channel {channel}")
    elif device.kind == "access point":
        facts.append("wireless access point")
    else:
        facts.append("data outlet")
    return tuple(facts)


def _place(device: DataDevice) -> str:
    where = device.position
    if where.end_of or not where.wall:
        return where.words
    side = " outside" if where.outside else ""
    out = f", {place_m(where.out_mm)} out" if where.out_mm else ""
    return f"wall {where.wall}{side}, C/L +{where.up_mm:.0f}{out}"


def _detail(device: DataDevice, figures: DataResult | None) -> str:
    if figures is None or figures.density_px_m is None:
        return "picture detail not checked"
    density = rounded_down(figures.density_px_m, 0)
    return f"{density} px/m at {device.target_m:g} m: {figures.density_class}"


def _length(cable: Cable, figures: DataResult) -> str:
    if not figures.length_m:
        return "L= not recorded"
    basis = " (m)" if cable.measured_length_m is not None else ""
    return f"L={metres(figures.length_m)}{basis}"


def _in_hand(margin: float, unit: str) -> str:
    """Return a margin in words; a negative one is what is lacking."""
    return f"{rounded(abs(margin), 1)} {unit} {'in hand' if margin >= 0 else 'too much'}"


def _above(cable: Cable, figures: DataResult) -> str:
    return f"{cable.tag}  {state_before(cable.state)}{figures.medium}  {_length(cable, figures)}"


def _network_leg(device: DataDevice, cable: Cable, figures: DataResult) -> LegWords:
    reach = _reach(figures)
    if device.poe_class is None:
        below = f"data only, {reach}"
    else:
        load = "not recorded" if device.load_w is None else f"{device.load_w:g} W"
        gives = "not checked" if figures.poe_class_w is None else f"{figures.poe_class_w:g} W"
        below = f"PoE class {device.poe_class}: load {load} of {gives}, {reach}"
    port = f"port {port_number(device.port)}" if device.port else "port not recorded"
    return LegWords("network", _above(cable, figures), below, port)


def _camera_legs(device: DataDevice, cable: Cable, figures: DataResult) -> tuple[LegWords, ...]:
    """Return the picture leg and, where the cable carries it, the 12 V leg."""
    signal = f"picture: {device.signal or 'signal not recorded'}, {_reach(figures)}"
    channel = "not recorded" if device.channel is None else str(device.channel)
    above = _above(cable, figures)
    legs = [LegWords("signal", above, signal, f"channel {channel}", device.baluns)]
    if figures.supply:
        legs.append(_supply_leg(device, figures))
    return tuple(legs)


def _reach(figures: DataResult) -> str:
    """Return how much of the reach of the signal the cable uses, and what is left."""
    if figures.signal_limit_m is None or not figures.length_m:
        return "reach not checked"
    limit = figures.signal_limit_m
    margin = _in_hand(limit - figures.length_m, "m")
    return f"{metres(figures.length_m)} of {limit:g} m reach ({margin})"


def _supply_leg(device: DataDevice, figures: DataResult) -> LegWords:
    if figures.at_device_v is None or figures.supply_v is None:
        words = "12 V supply: voltage at the camera not checked"
    else:
        cores = device.power_pairs or 1
        words = f"12 V on {cores} + {cores} cores: {figures.supply_v:.1f} V sent, "
        words += f"{figures.at_device_v:.1f} V at the camera"
        if figures.window_v is not None:
            low = figures.window_v[0]
            margin = figures.at_device_v - low
            over = f"{rounded(abs(margin), 1)} V {'over' if margin >= 0 else 'UNDER'}"
            words += f" (least {low:.1f} V, {over})"
    return LegWords("supply", "", words, f"{figures.supply} for {device.tag}")
