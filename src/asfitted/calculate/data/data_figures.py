"""The figures of each camera, data outlet and access point: signal, supply, picture detail."""

from __future__ import annotations

from dataclasses import dataclass
from types import MappingProxyType
from typing import TYPE_CHECKING

from asfitted.calculate.data.data_supply import fed_by
from asfitted.calculate.data.lens import (
    field_of_view_degrees,
    pixel_density_px_m,
    scene_width_m,
)
from asfitted.calculate.results import DataResult
from asfitted.calculate.working import Step
from asfitted.errors import OutsideTableError
from asfitted.reference import cables, cctv

if TYPE_CHECKING:
    from collections.abc import Mapping

    from asfitted.calculate.results import CableRoute
    from asfitted.reference.figure import Figure
    from asfitted.resolve.installation import Cable, DataDevice, Installation

LINKED_KINDS = ("camera", "data outlet", "access point")
BELOW_EVERY_CLASS = "below monitor"


@dataclass(frozen=True)
class Picture:
    """Field of view and detail of a camera at its target."""

    degrees: float | None = None
    density_px_m: float | None = None
    class_words: str = ""
    steps: tuple[Step, ...] = ()
    unknown: tuple[str, ...] = ()


def data_results(
    installation: Installation, routes: Mapping[str, CableRoute]
) -> Mapping[str, DataResult]:
    """Return the figures of every camera, outlet and access point, in the order of the spec."""
    cable_of = {c.circuit: c for c in installation.cables.values() if c.to_end == c.circuit}
    return MappingProxyType(
        {
            tag: _one(device, cable_of.get(tag), routes, installation)
            for tag, device in installation.data_devices.items()
            if device.kind in LINKED_KINDS
        }
    )


def _one(
    device: DataDevice,
    cable: Cable | None,
    routes: Mapping[str, CableRoute],
    installation: Installation,
) -> DataResult:
    if cable is None:
        return _without_cable(device)
    picture = _picture(device)
    route = routes.get(cable.tag)
    length = route.length_m if route is not None and route.length_m > 0 else None
    limit = signal_limit(device, cable)
    fed = fed_by(device, cable, length, installation)
    unknown = [] if length is not None else ["length of the cable is not known"]
    if isinstance(limit, str):
        unknown.append(limit)
    return DataResult(
        tag=device.tag,
        cable=cable.tag,
        length_m=length,
        medium=medium(device, cable),
        signal_limit_m=None if isinstance(limit, str) else limit.value,
        signal_source="" if isinstance(limit, str) else _source(limit),
        supply=fed.supply,
        supply_v=fed.supply_v,
        current_a=fed.current_a,
        at_device_v=fed.at_device_v,
        window_v=fed.window_v,
        poe_class_w=fed.class_w,
        load_w=device.load_w,
        density_px_m=picture.density_px_m,
        density_class=picture.class_words,
        field_of_view_deg=picture.degrees,
        steps=(*fed.steps, *picture.steps),
        not_known=tuple(dict.fromkeys((*unknown, *fed.unknown, *picture.unknown))),
    )


def _without_cable(device: DataDevice) -> DataResult:
    picture = _picture(device)
    return DataResult(
        tag=device.tag,
        cable="",
        length_m=None,
        medium="",
        signal_limit_m=None,
        signal_source="",
        supply="",
        supply_v=None,
        current_a=None,
        at_device_v=None,
        window_v=None,
        poe_class_w=None,
        load_w=device.load_w,
        density_px_m=picture.density_px_m,
        density_class=picture.class_words,
        field_of_view_deg=picture.degrees,
        steps=picture.steps,
        not_known=("no cable is given", *picture.unknown),
    )


def _source(limit: Figure) -> str:
    return f"{limit.source.replace('none;', 'no standard;')} ({limit.provenance})"


def medium(device: DataDevice, cable: Cable) -> str:
    """Name what carries the signal: "RG59+2", "Cat6 with baluns", "Cat6"."""
    word = cables.family(cable.family).words[0]
    return f"{word} with baluns" if device.baluns else word


def signal_limit(device: DataDevice, cable: Cable) -> Figure | str:
    """Return the longest run for the signal over this medium, m, or why it is not known."""
    construction = cables.family(cable.family).construction
    on_pairs = construction == "data" and not device.baluns
    if on_pairs:
        return cctv.channel_length_limit_m("permanent link")
    if not device.signal:
        return "signal of the camera is not given"
    name = signal_name(device.signal)
    try:
        if not device.baluns:
            return cctv.coax_distance_limit_m(name)
        hd = name.startswith("HD")
        return cctv.balun_distance_limit_m(
            name if hd else f"{name} colour", "passive HD pair" if hd else "passive pair"
        )
    except OutsideTableError as outside:
        return str(outside)


def signal_name(words: str) -> str:
    """Return the signal as the distance tables name it, from words such as "HD 1080p"."""
    plain = words.lower().replace(" ", "").replace("analogue", "").removeprefix("hd")
    known = {
        "720p": "HD analogue 720p",
        "1080p": "HD analogue 1080p",
        "2mp": "HD analogue 1080p",
        "4mp": "HD analogue 4-5 MP",
        "5mp": "HD analogue 4-5 MP",
        "8mp": "HD analogue 8 MP",
        "4k": "HD analogue 8 MP",
    }
    return known.get(plain, plain)


def _picture(device: DataDevice) -> Picture:
    if device.kind != "camera":
        return Picture()
    if device.lens_mm is None or not device.sensor:
        return Picture(unknown=("lens or sensor is not given: no field of view",))
    try:
        width = cctv.sensor_width_mm(device.sensor)
    except OutsideTableError as outside:
        return Picture(unknown=(str(outside),))
    degrees = field_of_view_degrees(sensor_width_mm=width.value, focal_length_mm=device.lens_mm)
    source = f"thin lens; sensor width {width.source} ({width.provenance})"
    view = Step(
        symbol="HFOV",
        words="horizontal angle of view",
        formula="2 atan(w / 2f)",
        substituted=f"2 atan({width.value:g} mm / (2 × {device.lens_mm:g} mm))",
        value=degrees,
        unit="°",
        source=source,
    )
    if device.target_m is None or device.pixels is None:
        return Picture(degrees, steps=(view,), unknown=("target or pixels are not given",))
    scene = scene_width_m(
        sensor_width_mm=width.value, focal_length_mm=device.lens_mm, distance_m=device.target_m
    )
    density = pixel_density_px_m(device.pixels, width_m=scene)
    words = density_class(density)
    detail = Step(
        symbol="px/m",
        words=f"detail at {device.target_m:g} m from the lens: {words}",
        formula="px × f / (w × D)",
        substituted=f"{device.pixels} px × {device.lens_mm:g} mm / "
        f"({width.value:g} mm × {device.target_m:g} m)",
        value=density,
        unit="px/m",
        source=f"{cctv.PIXEL_DENSITY_EDITION}; {source}",
    )
    return Picture(degrees, density, words, (view, detail))


def density_class(density_px_m: float) -> str:
    """Return the finest class of detail that a density reaches."""
    reached = [n for n, least in cctv.pixel_density_classes() if density_px_m >= least.value - 1e-9]
    return reached[-1] if reached else BELOW_EVERY_CLASS
