"""What reaches a camera or access point over its cable: 12 V d.c. or Power over Ethernet."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from asfitted.calculate.data.dc_supply import load_current_a, loop_resistance_ohm, voltage_at_load_v
from asfitted.calculate.data.poe import channel_current_a
from asfitted.calculate.working import Step
from asfitted.errors import InputOutOfRangeError, OutsideTableError
from asfitted.reference import cables, cctv

if TYPE_CHECKING:
    from asfitted.reference.figure import Figure
    from asfitted.resolve.installation import Cable, DataDevice, Installation

POE_GREATEST_V = 57.0  # IEEE 802.3 clauses 33 and 145
_TYPE_OF_CLASS = {0: 1, 1: 1, 2: 1, 3: 1, 4: 2, 5: 3, 6: 3, 7: 4, 8: 4}


@dataclass(frozen=True)
class Fed:
    """How a device is fed and what reaches it; None where not known or not fed."""

    supply: str = ""
    supply_v: float | None = None
    current_a: float | None = None
    at_device_v: float | None = None
    window_v: tuple[float, float] | None = None
    class_w: float | None = None
    steps: tuple[Step, ...] = ()
    unknown: tuple[str, ...] = ()


def is_poe(device: DataDevice, cable: Cable) -> bool:
    """Tell whether a device takes its power over a four-pair cable from a switch."""
    four_pair = cables.family(cable.family).construction == "data"
    wants_power = device.kind in ("camera", "access point")
    return four_pair and not device.baluns and wants_power


def fed_by(
    device: DataDevice, cable: Cable, length_m: float | None, installation: Installation
) -> Fed:
    """Return what reaches a device over its cable."""
    if is_poe(device, cable):
        return _over_ethernet(device, cable, length_m)
    carries = device.baluns or cables.family(cable.family).construction == "coax_power"
    if device.kind == "camera" and carries:
        return _twelve_volts(device, cable, length_m, installation)
    return Fed()


def _twelve_volts(
    device: DataDevice, cable: Cable, length_m: float | None, installation: Installation
) -> Fed:
    supplies = [d for d in installation.data_devices.values() if d.kind == "12 V supply"]
    supply = supplies[0] if len(supplies) == 1 else None
    output_v = supply.output_v if supply else None
    if supply is None or output_v is None:
        why = "which 12 V supply is not known" if supplies else "no 12 V supply is given"
        return Fed(unknown=(why,))
    window = cctv.camera_window()
    fed = Fed(supply.tag, output_v, window_v=(window.least_v, window.greatest_v))
    if device.load_w is None:
        return replace(fed, unknown=("load of the camera is not given",))
    current = load_current_a(device.load_w, least_v=window.least_v)
    fed = replace(fed, current_a=current, steps=(_current(device, current),))
    each_way = device.power_pairs if device.baluns else 1
    if each_way is None:
        return replace(fed, unknown=("conductors in parallel for the supply are not given",))
    if length_m is None:
        return replace(fed, unknown=("length of the cable is not known",))
    try:
        per_100m = cctv.conductor_ohm_per_100m(cable.family, cable.csa_mm2 or 0.0)
    except OutsideTableError as outside:
        return replace(fed, unknown=(str(outside),))
    return _at_camera(fed, output_v, per_100m, length_m, each_way)


def _at_camera(fed: Fed, output_v: float, per_100m: Figure, length_m: float, each_way: int) -> Fed:
    current = fed.current_a or 0.0
    loop = loop_resistance_ohm(per_100m.value, length_m=length_m, conductors_each_way=each_way)
    volts = voltage_at_load_v(output_v, current_a=current, loop_ohm=loop)
    resistance = Step(
        symbol="R",
        words=f"resistance out and back, {each_way} conductor(s) each way",
        formula="2 × r × L / (100 × n)",
        substituted=f"2 × {per_100m.value:g} Ω/100 m × {length_m:.2f} m / (100 × {each_way})",
        value=loop,
        unit="Ω",
        source=f"{per_100m.source} ({per_100m.provenance})",
    )
    arrives = Step(
        symbol="V",
        words="voltage at the camera",
        formula="Vsupply - I × R",
        substituted=f"{output_v:g} V - {current:.3f} A × {loop:.3f} Ω",
        value=volts,
        unit="V",
        source="Ohm's law; the current of the lowest voltage is the safe side",
    )
    return replace(fed, at_device_v=volts, steps=(*fed.steps, resistance, arrives))


def _current(device: DataDevice, current: float) -> Step:
    window = cctv.camera_window()
    return Step(
        symbol="I",
        words="current of the camera at the lowest voltage it works at",
        formula="P / Vmin",
        substituted=f"{device.load_w:g} W / {window.least_v:g} V",
        value=current,
        unit="A",
        source=f"supply window of 12 V cameras ({window.provenance})",
    )


def _over_ethernet(device: DataDevice, cable: Cable, length_m: float | None) -> Fed:
    switch = device.port.partition("/")[0] or cable.from_end
    if device.poe_class is None:
        return Fed(switch, unknown=("class of Power over Ethernet is not given",))
    try:
        class_w = cctv.poe_class_device_w(device.poe_class)
        kind = cctv.poe_type(_TYPE_OF_CLASS[device.poe_class])
        pairs_ohm = cctv.loop_ohm_per_100m(cable.family, 2 if kind.pairs == 2 else 4)
    except (OutsideTableError, KeyError) as outside:
        return Fed(switch, unknown=(f"Power over Ethernet: {outside}",))
    window = (kind.device_min_v, POE_GREATEST_V)
    step = Step(
        symbol="P class",
        words=f"power that class {device.poe_class} leaves at the device after 100 m",
        formula="",
        substituted="",
        value=class_w.value,
        unit="W",
        source=f"{class_w.source} ({class_w.provenance})",
    )
    fed = Fed(
        switch,
        kind.source_min_v,
        window_v=window,
        class_w=class_w.value,
        steps=(step,),
    )
    if device.load_w is None:
        return replace(fed, unknown=("load of the device is not given",))
    if length_m is None:
        return replace(fed, unknown=("length of the cable is not known",))
    return _at_powered_device(fed, kind, device.load_w, pairs_ohm.value * length_m / 100)


def _at_powered_device(fed: Fed, kind: cctv.PoeType, load_w: float, loop_ohm: float) -> Fed:
    source_v = kind.source_min_v
    try:
        current = channel_current_a(load_w, source_v=source_v, channel_ohm=max(loop_ohm, 1e-6))
    except InputOutOfRangeError as outside:
        return replace(fed, unknown=(str(outside),))
    volts = voltage_at_load_v(source_v, current_a=current, loop_ohm=loop_ohm)
    step = Step(
        symbol="V",
        words=f"voltage at the device, {kind.pairs} pairs, least voltage of type {kind.number}",
        formula="Vsource - I × R",
        substituted=f"{source_v:g} V - {current:.3f} A × {loop_ohm:.3f} Ω",
        value=volts,
        unit="V",
        source=f"{kind.source} ({kind.provenance})",
    )
    return replace(fed, current_a=current, at_device_v=volts, steps=(*fed.steps, step))
