"""Used against available: recorder channels and disk, 12 V supply, switch ports and budget."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.data.dc_supply import supply_rating_a
from asfitted.calculate.data.poe import switch_load_w
from asfitted.calculate.data.storage import disk_tb, storage_gb
from asfitted.calculate.results import EquipmentResult
from asfitted.calculate.working import Step
from asfitted.errors import OutsideTableError
from asfitted.reference import cctv

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from asfitted.calculate.results import DataResult
    from asfitted.resolve.installation import DataDevice, Installation

USUAL_WIDTH_PX = 1920  # common practice, where the spec does not give the picture size


def equipment_results(
    installation: Installation, data: Mapping[str, DataResult]
) -> tuple[EquipmentResult, ...]:
    """Return the totals of every recorder, 12 V supply and switch, in the order of the spec."""
    found: list[EquipmentResult] = []
    for device in installation.data_devices.values():
        if device.kind == "recorder":
            found += _recorder(device, installation)
        elif device.kind == "12 V supply":
            found.append(_supply(device, data))
        elif device.kind == "PoE switch":
            found += _switch(device, installation, data)
    return tuple(found)


def _cameras_of(recorder: DataDevice, installation: Installation) -> list[DataDevice]:
    """Return the cameras of a recorder: cabled to it, or with a channel when it is the only one."""
    devices = installation.data_devices.values()
    from_ends = {c.circuit: c.from_end for c in installation.cables.values()}
    only = sum(d.kind == "recorder" for d in devices) == 1
    return [
        d
        for d in devices
        if d.kind == "camera"
        and (from_ends.get(d.tag) == recorder.tag or (only and d.channel is not None))
    ]


def _recorder(recorder: DataDevice, installation: Installation) -> list[EquipmentResult]:
    cameras = _cameras_of(recorder, installation)
    channels = EquipmentResult(
        recorder.tag,
        "channels",
        float(len(cameras)),
        None if recorder.channels is None else float(recorder.channels),
        "channels",
    )
    if recorder.keep_days is None or not cameras:
        return [channels]
    return [channels, _storage(recorder, cameras, recorder.keep_days)]


def camera_storage_tb(camera: DataDevice, *, days: float) -> float:
    """Return the share of one camera in the disk of its recorder, TB as labelled.

    Args:
        camera: Its ``pixels`` or ``signal`` give the picture size; 1080p where neither does.
        days: Days to keep, above 0.

    Returns:
        Disk, TB; the shares of a recorder's cameras add up to its storage.

    Raises:
        InputOutOfRangeError: ``days`` is not above 0.

    Source:
        Planning bit rates, H.264, always recording (common practice).
    """
    rate = _rate(camera.pixels or _width_of(camera.signal) or USUAL_WIDTH_PX)
    return disk_tb(storage_gb(rate, days=days))


def _storage(recorder: DataDevice, cameras: Sequence[DataDevice], days: float) -> EquipmentResult:
    """Return the disk needed, TB, always recording, H.264, with the margin of the method."""
    widths = [camera.pixels or _width_of(camera.signal) for camera in cameras]
    rates = [_rate(width or USUAL_WIDTH_PX) for width in widths]
    recorded = sum(storage_gb(rate, days=days) for rate in rates)
    needed = disk_tb(recorded)
    assumed = sum(width is None for width in widths)
    note = f"; picture size of {assumed} not given, taken as 1080p" if assumed else ""
    terms = " + ".join(f"{rate:g}" for rate in rates)
    steps = (
        Step(
            symbol="GB",
            words=f"recorded in {days:g} days, always on{note}",
            formula="rate / 8 × 86400 s × days / 1000",
            substituted=f"({terms}) Mbit/s / 8 × 86400 × {days:g} / 1000",
            value=recorded,
            unit="GB",
            source="planning bit rates, H.264 (common practice)",
        ),
        Step(
            symbol="TB",
            words="disk as labelled, 10 % margin, 93 % left after formatting",
            formula="GB × 1.1 / (1000 × 0.93)",
            substituted=f"{recorded:.0f} GB × 1.1 / (1000 × 0.93)",
            value=needed,
            unit="TB",
            source="common practice",
        ),
    )
    return EquipmentResult(recorder.tag, "storage", needed, recorder.disk_tb, "TB", steps)


def _width_of(signal: str) -> int | None:
    plain = signal.lower().replace(" ", "")
    widths = {"720p": 1280, "1080p": 1920, "4mp": 2560, "5mp": 2592, "8mp": 3840, "4k": 3840}
    return next((width for word, width in widths.items() if word in plain), None)


def _rate(width_px: int) -> float:
    try:
        return cctv.bit_rate_mbit_s(width_px, "h264").value
    except OutsideTableError:
        return cctv.frame_sizes()[-1].h264_mbit_s


def _supply(supply: DataDevice, data: Mapping[str, DataResult]) -> EquipmentResult:
    mine = [one for one in data.values() if one.supply == supply.tag]
    currents = tuple(one.current_a for one in mine if one.current_a is not None)
    headroom = cctv.supply_headroom()
    needed = supply_rating_a(currents, headroom=headroom.value)
    missing = len(mine) - len(currents)
    note = f"; load of {missing} not given, not counted" if missing else ""
    terms = " + ".join(f"{amps:.3f}" for amps in currents) or "0"
    step = Step(
        symbol="I",
        words=f"rating for {len(currents)} cameras with headroom{note}",
        formula="headroom × sum of I",
        substituted=f"{headroom.value:g} × ({terms}) A",
        value=needed,
        unit="A",
        source=f"{headroom.source} ({headroom.provenance})",
    )
    return EquipmentResult(supply.tag, "current", needed, supply.rating_a, "A", (step,))


def _switch(
    switch: DataDevice, installation: Installation, data: Mapping[str, DataResult]
) -> list[EquipmentResult]:
    on_ports = [
        device
        for device in installation.data_devices.values()
        if device.port.partition("/")[0] == switch.tag
    ]
    ports = EquipmentResult(
        switch.tag,
        "ports",
        float(len(on_ports)),
        None if switch.ports is None else float(switch.ports),
        "ports",
    )
    powered = [d for d in on_ports if d.tag in data and data[d.tag].supply == switch.tag]
    return [ports, _budget(switch, powered)]


def _budget(switch: DataDevice, powered: Sequence[DataDevice]) -> EquipmentResult:
    """Return the load on the power budget: known loads with cable loss, else the whole class."""
    loads = [d.load_w for d in powered if d.load_w is not None]
    by_class = [
        cctv.poe_class_source_w(d.poe_class).value
        for d in powered
        if d.load_w is None and d.poe_class is not None
    ]
    unknown = len(powered) - len(loads) - len(by_class)
    note = f"; {unknown} without load or class, not counted" if unknown else ""
    used = switch_load_w(loads) + sum(by_class)
    terms = " + ".join(f"{watts:g}" for watts in loads) or "0"
    more = "".join(f" + {watts:g} W" for watts in by_class)
    reserved = sum(
        cctv.poe_class_source_w(d.poe_class).value for d in powered if d.poe_class is not None
    )
    steps = (
        Step(
            symbol="P",
            words=f"load on the budget, cable loss allowed for{note}",
            formula="sum of P / 0.85 + whole class where the load is not given",
            substituted=f"({terms}) W / 0.85{more}",
            value=used,
            unit="W",
            source="IEEE 802.3 clauses 33 and 145",
        ),
        Step(
            symbol="P class",
            words="for comparison: set aside where the switch reserves by class",
            formula="sum of class powers at the source",
            substituted="",
            value=reserved,
            unit="W",
            source="IEEE 802.3 classes",
        ),
    )
    return EquipmentResult(switch.tag, "PoE budget", used, switch.budget_w, "W", steps)
