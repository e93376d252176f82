"""The sRGB colour profile that the PDF names for its inks, written from the published figures.

A matrix profile of version 2 (ICC.1:2001-04): primaries and white of IEC 61966-2-1 adapted to D50,
and its tone curve as 1024 samples. Made here, so that no file of others and no date comes along.
"""

from __future__ import annotations

import struct
from functools import cache

SAMPLES = 1024
#: X, Y, Z at D50 of white and of the red, green and blue primaries (IEC 61966-2-1, Bradford).
_XYZ = {
    b"wtpt": (0.9642, 1.0, 0.8249),
    b"rXYZ": (0.43607, 0.22249, 0.01392),
    b"gXYZ": (0.38515, 0.71687, 0.09708),
    b"bXYZ": (0.14307, 0.06061, 0.71410),
}
_NAME = "sRGB, made from IEC 61966-2-1"
_COPYRIGHT = "No copyright, use freely"


def _fixed(value: float) -> bytes:
    """Return a number as s15Fixed16."""
    return struct.pack(">i", round(value * 65536))


def _xyz(values: tuple[float, float, float]) -> bytes:
    return b"XYZ \0\0\0\0" + b"".join(_fixed(v) for v in values)


def _linear(share: float) -> float:
    """Return the light for a share of the signal, by the curve of IEC 61966-2-1."""
    return share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4


def _curve() -> bytes:
    samples = [round(65535 * _linear(i / (SAMPLES - 1))) for i in range(SAMPLES)]
    return b"curv\0\0\0\0" + struct.pack(f">I{SAMPLES}H", SAMPLES, *samples)


def _description() -> bytes:
    words = _NAME.encode("ascii") + b"\0"
    return b"desc\0\0\0\0" + struct.pack(">I", len(words)) + words + b"\0" * (4 + 4 + 2 + 1 + 67)


def _header(size: int) -> bytes:
    """Return the 128 bytes of the header: display, RGB to XYZ, no date, no maker."""
    return (
        struct.pack(">I4sI4s4s4s", size, b"\0\0\0\0", 0x02400000, b"mntr", b"RGB ", b"XYZ ")
        + struct.pack(">6H", 2000, 1, 1, 0, 0, 0)
        + b"acsp"
        + b"\0" * 28
        + _fixed(0.9642)
        + _fixed(1.0)
        + _fixed(0.8249)
        + b"\0" * 48
    )


@cache
def srgb_profile() -> bytes:
    """Return the profile: always the same bytes."""
    curve = _curve()
    parts = {
        b"desc": _description(),
        b"cprt": b"text\0\0\0\0" + _COPYRIGHT.encode("ascii") + b"\0",
        **{name: _xyz(values) for name, values in _XYZ.items()},
        b"rTRC": curve,
    }
    table, body = b"", b""
    start = 128 + 4 + 12 * (len(parts) + 2)  # two more entries share the one tone curve
    places: dict[bytes, tuple[int, int]] = {}
    for name, data in parts.items():
        places[name] = (start + len(body), len(data))
        body += data + b"\0" * (-len(data) % 4)
    places |= {b"gTRC": places[b"rTRC"], b"bTRC": places[b"rTRC"]}
    for name, (at, length) in places.items():
        table += struct.pack(">4sII", name, at, length)
    size = start + len(body)
    return _header(size) + struct.pack(">I", len(places)) + table + body
