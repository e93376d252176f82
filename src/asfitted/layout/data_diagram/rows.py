"""What each row of the data diagram says, in words, before anything is placed."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from asfitted.layout.figures import metres
from asfitted.layout.given_words import state_before, state_word

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
    """One device with its legs. ``facts`` stand beside the device."""

    device: str
    symbol: str
    state: str  # "", "existing" or "removed"
    facts: tuple[str, ...]
    legs: tuple[LegWords, ...]


SYMBOLS = {"camera": "camera_fixed", "data outlet": "data_outlet", "access point": "access_point"}


def link_rows(installation: Installation, results: CalculationResults) -> tuple[LinkRow, ...]:
    """Return the rows in order of port: recorder channels first, then switch ports."""
    cables = {c.to_end: c for c in installation.cables.values() if c.band == "data"}
    devices = [d for d in installation.data_devices.values() if d.kind in SYMBOLS]
    order = sorted(devices, key=lambda d: (bool(d.port), d.channel or 0, d.port, d.tag))
    rows = []
    for device in order:
        cable, figures = cables.get(device.tag), results.data.get(device.tag)
        rows.append(_row(device, cable, figures, installation))
    return tuple(rows)


def _row(
    device: DataDevice,
    cable: Cable | None,
    figures: DataResult | None,
    installation: Installation,
) -> LinkRow:
    if cable is None or figures is None:
        legs: tuple[LegWords, ...] = ()
    elif device.port:
        legs = (_network_leg(device, cable, figures),)
    else:
        legs = _camera_legs(device, cable, figures, installation)
    symbol = SYMBOLS[device.kind]
    return LinkRow(device.tag, symbol, state_word(device.state), _facts(device, figures), legs)


def _facts(device: DataDevice, figures: DataResult | None) -> tuple[str, ...]:
    """Return what is said beside the device: place, view, picture detail."""
    facts = [_place(device)]
    if device.kind == "camera":
        facts.append(f"looks at: {device.views or 'not recorded'}")
        facts.append(_detail(device, figures))
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
    out = f", {where.out_mm / 1000:.1f} m out" if where.out_mm else ""
    return f"wall {where.wall}{side}, C/L +{where.up_mm:.0f}{out}"


def _detail(device: DataDevice, figures: DataResult | None) -> str:
    if figures is None or figures.density_px_m is None:
        return "picture detail not checked"
    return f"{figures.density_px_m:.0f} px/m at {device.target_m:g} m: {figures.density_class}"


def _length(cable: Cable, figures: DataResult) -> str:
    if not figures.length_m:
        return "L= not recorded"
    basis = " (m)" if cable.measured_length_m is not None else ""
    return f"L={metres(figures.length_m)}{basis}"


def _network_leg(device: DataDevice, cable: Cable, figures: DataResult) -> LegWords:
    above = f"{cable.tag}  {figures.medium}  {_length(cable, figures)}"
    limit = "" if figures.signal_limit_m is None else f", limit {figures.signal_limit_m:g} m"
    if device.poe_class is None:
        below = f"data only{limit}"
    else:
        load = "not recorded" if device.load_w is None else f"{device.load_w:g} W"
        gives = "?" if figures.poe_class_w is None else f"{figures.poe_class_w:g} W"
        below = f"PoE class {device.poe_class}: load {load} of {gives} at the device{limit}"
    return LegWords("network", above, below, device.port.replace("/", " port "))


def _camera_legs(
    device: DataDevice, cable: Cable, figures: DataResult, installation: Installation
) -> tuple[LegWords, ...]:
    """Return the picture leg and, where the cable carries it, the 12 V leg."""
    recorder = next((d for d in installation.data_devices.values() if d.kind == "recorder"), None)
    state = state_before(cable.state)
    above = f"{cable.tag}  {state}{figures.medium}  {_length(cable, figures)}"
    signal = f"picture: {device.signal or 'signal not recorded'}, {_reach(figures)}"
    name = recorder.tag if recorder else "recorder"
    channel = device.channel if device.channel is not None else "not recorded"
    legs = [LegWords("signal", above, signal, f"{name} channel {channel}", device.baluns)]
    if figures.supply:
        legs.append(_supply_leg(device, figures))
    return tuple(legs)


def _reach(figures: DataResult) -> str:
    """Return how much of the reach of the signal the cable uses."""
    if figures.signal_limit_m is None or not figures.length_m:
        return "reach not checked"
    return f"{metres(figures.length_m)} of {figures.signal_limit_m:g} m reach"


def _supply_leg(device: DataDevice, figures: DataResult) -> LegWords:
    if figures.at_device_v is None or figures.supply_v is None:
        words = "12 V supply: voltage at the camera not checked"
    else:
        cores = device.power_pairs or 1
        words = f"12 V on {cores} + {cores} cores: {figures.supply_v:.1f} V sent, "
        words += f"{figures.at_device_v:.1f} V at the camera"
        if figures.window_v is not None:
            low, high = figures.window_v
            words += f" (needs {low:.1f} to {high:.1f} V)"
    channel = device.channel if device.channel is not None else device.tag
    return LegWords("supply", "", words, f"{figures.supply} output {channel}")
