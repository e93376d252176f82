"""Takes a PNG as a mark after looking through it whole: nothing half-read reaches a drawing."""

from __future__ import annotations

import struct
import zlib

from asfitted.spec.logo import Logo, LogoRefusedError

_SIGNATURE = b"\x89PNG\r\n\x1a\n"
_SAMPLES = {0: 1, 2: 3, 3: 1, 4: 2, 6: 4}  # of a pixel, by colour type (PNG specification, 11.2.2)
MAX_SIDE_PX = 4000


def png_logo(data: bytes, file: str) -> Logo:
    """Return the mark that a PNG holds.

    Raises:
        LogoRefusedError: not a PNG, damaged, interlaced, of 16 bits, or of too many pixels.
    """
    if not data.startswith(_SIGNATURE):
        raise LogoRefusedError("the file is no PNG, whatever its name says")
    chunks = _chunks(data)
    if chunks[0][0] != b"IHDR" or len(chunks[0][1]) != 13 or chunks[-1][0] != b"IEND":
        raise LogoRefusedError("the PNG is not complete")
    width, height, depth, colour, *_, interlace = struct.unpack(">IIBBBBB", chunks[0][1])
    if not 0 < max(width, height) <= MAX_SIDE_PX or not min(width, height):
        raise LogoRefusedError(f"{width} x {height} pixels", f"at most {MAX_SIDE_PX} a side")
    if depth > 8 or interlace or colour not in _SAMPLES:
        raise LogoRefusedError("the PNG is interlaced or of 16 bits", "save it as a plain PNG")
    row = 1 + (width * depth * _SAMPLES[colour] + 7) // 8
    pixels = b"".join(body for kind, body in chunks if kind == b"IDAT")
    _check_pixels(pixels, row * height)
    return Logo(file, float(width), float(height), png=data)


def _chunks(data: bytes) -> list[tuple[bytes, bytes]]:
    """Return kind and body of each chunk; a wrong check sum or a cut chunk is refused."""
    found: list[tuple[bytes, bytes]] = []
    at = len(_SIGNATURE)
    while at + 12 <= len(data):
        (length,) = struct.unpack(">I", data[at : at + 4])
        kind, body = data[at + 4 : at + 8], data[at + 8 : at + 8 + length]
        check = data[at + 8 + length : at + 12 + length]
        if len(body) < length or check != struct.pack(">I", zlib.crc32(kind + body)):
            raise LogoRefusedError("the PNG is damaged")
        found.append((kind, body))
        at += 12 + length
    if not found or at != len(data):
        raise LogoRefusedError("the PNG is damaged")
    return found


def _check_pixels(packed: bytes, expected: int) -> None:
    """Unpack no more than the size in the header promises, and no less."""
    unpacker = zlib.decompressobj()
    try:
        unpacked = unpacker.decompress(packed, expected + 1)
    except zlib.error as error:
        raise LogoRefusedError("the PNG is damaged") from error
    if len(unpacked) != expected:
        raise LogoRefusedError("the PNG does not hold the pixels that it says")
