"""Cameras and data cable: resistance, distance, PoE, picture detail, bit rate, camera power."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from asfitted.errors import OutsideTableError
from asfitted.reference.cable_family import family
from asfitted.reference.figure import Figure
from asfitted.reference.loader import table

_FILE = "cctv"
PIXEL_DENSITY_EDITION = "BS EN 62676-4:2015"


@dataclass(frozen=True)
class PoeType:
    """One type of Power over Ethernet, IEEE 802.3.

    Attributes:
        number: 1 to 4.
        source_w: Least power at the source, W.
        device_w: Least power at the device after 100 m, W.
        source_min_v: Least voltage at the source, V.
        device_min_v: Least voltage at the device, V.
        current_ma: Greatest current of one pair set, mA.
        channel_ohm: Greatest resistance of one pair set of the channel, ohm.
        pairs: Pairs that carry power, 2 or 4.
        source: Standard.
        provenance: Provenance word.
    """

    number: int
    source_w: float
    device_w: float
    source_min_v: float
    device_min_v: float
    current_ma: float
    channel_ohm: float
    pairs: int
    source: str
    provenance: str


@dataclass(frozen=True)
class CameraWindow:
    """Voltages between which a 12 V camera works."""

    least_v: float
    nominal_v: float
    greatest_v: float
    source: str
    provenance: str


@dataclass(frozen=True)
class FrameSize:
    """A picture size and its planning bit rates."""

    name: str
    width_px: int
    height_px: int
    h264_mbit_s: float
    h265_mbit_s: float
    source: str
    provenance: str


def conductor_ohm_per_100m(family_id: str, csa_mm2: float = 0.0) -> Figure:
    """Return the d.c. resistance of one conductor at 20 C, ohm per 100 m.

    Args:
        family_id: "cat6", "cat5e" or "coax_power".
        csa_mm2: Size of the power cores of a combined coax, mm2.

    Raises:
        OutsideTableError: the cable carries no d.c. supply, or the size is not held.
    """
    one = family(family_id)
    found = table(_FILE, "conductor_dc_resistance")
    if not one.dc_resistance:
        raise OutsideTableError(f"{one.title}: no power conductors in the table")
    if one.dc_resistance == "flexible":
        rows = [r for r in found.rows if r.get("area") == csa_mm2 and "flexible" in r["size"]]
        if not rows:
            raise found.outside("area", csa_mm2)
        return found.figure(rows[0], "r", "ohm/100 m")
    return found.figure(found.row(size=one.dc_resistance), "r", "ohm/100 m")


def loop_ohm_per_100m(family_id: str, pairs: Literal[1, 2, 4]) -> Figure:
    """Return the loop resistance per 100 m of data cable, ohm, out and back.

    Args:
        family_id: "cat6" or "cat5e".
        pairs: 1 = out and back on one pair; 2 and 4 = half the pairs each way, in parallel.

    Raises:
        OutsideTableError: another cable or number of pairs.
    """
    found = table(_FILE, "loop_resistance")
    start = {1: "one pair out", 2: "two pairs", 4: "four pairs"}.get(pairs)
    rows = [r for r in found.rows if start and r["item"].startswith(start)]
    if not rows:
        raise found.outside("pairs", pairs)
    return found.figure(rows[0], family(family_id).id, "ohm/100 m")


def channel_length_limit_m(item: Literal["channel", "permanent link"] = "channel") -> Figure:
    """Return the longest data channel (100 m) or fixed part of it (90 m)."""
    found = table(_FILE, "channel_length")
    name = "permanent link (solid cable)" if item == "permanent link" else item
    return found.figure(found.row(item=name), "max", "m")


def coax_distance_limit_m(signal: str, cable: str = "RG59") -> Figure:
    """Return the design limit, m, of a coax run for a signal such as "HD analogue 1080p".

    Raises:
        OutsideTableError: signal or cable not held.
    """
    found = table(_FILE, "coax_distance")
    return found.figure(found.row(cable=cable, signal=signal), "design", "m")


def balun_distance_limit_m(signal: str, balun: str) -> Figure:
    """Return the design limit, m, of a run through baluns on unscreened data cable.

    Raises:
        OutsideTableError: signal or balun not held.
    """
    found = table(_FILE, "balun_distance")
    return found.figure(found.row(signal=signal, balun=balun), "design", "m")


def poe_type(number: int) -> PoeType:
    """Return one type of Power over Ethernet.

    Raises:
        OutsideTableError: not 1 to 4.
    """
    found = table(_FILE, "poe_types")
    row = found.row(type=number)
    return PoeType(
        number=number,
        source_w=float(row["pse_W"]),
        device_w=float(row["pd_W"]),
        source_min_v=float(row["pse_V"][0]),
        device_min_v=float(row["pd_V"][0]),
        current_ma=_leading_number(row["i_max_mA"]),
        channel_ohm=_leading_number(row["r_channel_ohm"]),
        pairs=int(row["pairs"]),
        source=found.standard,
        provenance=f"{row['provenance']}; channel resistance {row['r_provenance']}",
    )


def _leading_number(value: object) -> float:
    return float(str(value).split()[0])


def poe_class_source_w(number: int) -> Figure:
    """Return the power a source sets aside for a class of device, W."""
    found = table(_FILE, "poe_classes")
    return found.figure(found.row(**{"class": number}), "pse_W", "W")


def poe_class_device_w(number: int) -> Figure:
    """Return the power left for a class of device after 100 m, W."""
    found = table(_FILE, "poe_classes")
    return found.figure(found.row(**{"class": number}), "pd_W", "W")


def poe_conductor_current_limit_ma() -> Figure:
    """Return the greatest continuous current of a conductor or contact, mA."""
    return Figure(
        750.0,
        "mA",
        "BS 7671:2018+A4:2026 Section 716",
        "seen",
        "read on one lesson page, worded per contact; clause not read",
    )


def poe_bundle_limit() -> Figure:
    """Return the greatest number of powered data cables in one bundle."""
    found = table(_FILE, "poe_checks")
    return found.figure(found.row(check="bundle"), "value", "cables")


def pixel_density_classes() -> tuple[tuple[str, Figure], ...]:
    """Return the classes of picture detail and their pixels per metre, coarsest first."""
    found = table(_FILE, "pixel_density")
    return tuple((r["category"], found.figure(r, "density", "px/m")) for r in found.rows)


def pixel_density(category: str) -> Figure:
    """Return the pixels per metre of a class such as "recognise" (BS EN 62676-4:2015).

    Raises:
        OutsideTableError: no such class.
    """
    found = table(_FILE, "pixel_density")
    return found.figure(found.row(category=category.lower()), "density", "px/m")


def sensor_width_mm(optical_format: str) -> Figure:
    """Return the width of an image sensor such as "1/2.8", mm.

    Raises:
        OutsideTableError: format not held.
    """
    found = table(_FILE, "sensor_sizes")
    return found.figure(found.row(format=optical_format), "w", "mm")


def sensor_height_mm(optical_format: str) -> Figure:
    """Return the height of an image sensor such as "1/2.8", mm."""
    found = table(_FILE, "sensor_sizes")
    return found.figure(found.row(format=optical_format), "h", "mm")


def frame_sizes() -> tuple[FrameSize, ...]:
    """Return the usual picture sizes, smallest first."""
    found = table(_FILE, "resolutions")
    return tuple(
        FrameSize(
            name=row["name"],
            width_px=int(row["px"][0]),
            height_px=int(row["px"][1]),
            h264_mbit_s=float(row["h264"]),
            h265_mbit_s=float(row["h265"]),
            source=found.source,
            provenance=str(row["provenance"]),
        )
        for row in found.rows
    )


def bit_rate_mbit_s(width_px: int, coding: Literal["h264", "h265"] = "h265") -> Figure:
    """Return the planning bit rate, Mbit/s, of the next larger picture size.

    Raises:
        OutsideTableError: wider than any size held.
    """
    found = table(_FILE, "resolutions")
    for row in found.rows:
        if row["px"][0] >= width_px:
            return found.figure(row, coding, "Mbit/s")
    raise found.outside("px", width_px)


def camera_window() -> CameraWindow:
    """Return the supply window of a 12 V d.c. camera: 10.8 to 13.2 V."""
    found = table(_FILE, "camera_power")
    row = found.row(type="supply window 12 V d.c.")
    return CameraWindow(
        float(row["min_V"]),
        float(row["nominal_V"]),
        float(row["max_V"]),
        found.standard,
        str(row["provenance"]),
    )


def supply_headroom() -> Figure:
    """Return the factor by which a 12 V supply exceeds the sum of the loads."""
    found = table(_FILE, "camera_power")
    return found.figure(found.row(type="supply headroom"), "value", "")


def pin_colours(scheme: Literal["T568A", "T568B"]) -> tuple[str, ...]:
    """Return the core colours of an RJ45 connector, pins 1 to 8."""
    return tuple(str(row[scheme]) for row in table(_FILE, "pinouts").rows)


def recorder_ports(cameras: int) -> Figure:
    """Return the recorder size, ports, that leaves at least one port spare.

    Raises:
        OutsideTableError: more cameras than the largest recorder held.
    """
    found = table(_FILE, "recorder_ports")
    return found.figure(found.row_at_or_above("ports", cameras + 1), "ports", "ports")
