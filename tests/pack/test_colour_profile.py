"""The profile that the PDF carries, against the sRGB of an independent library."""

from __future__ import annotations

import io

import pytest
from PIL import Image, ImageCms

from asfitted.pack.colour_profile import srgb_profile


def test_colours_come_through_as_those_of_another_srgb() -> None:
    ours = ImageCms.ImageCmsProfile(io.BytesIO(srgb_profile()))
    theirs = ImageCms.createProfile("sRGB")
    colours = [(v, v, v) for v in range(256)]
    colours += [(v, 0, 255 - v) for v in range(256)] + [(0, v, 128) for v in range(256)]
    image = Image.new("RGB", (len(colours), 1))
    for x, colour in enumerate(colours):
        image.putpixel((x, 0), colour)
    seen = ImageCms.profileToProfile(image, ours, theirs)
    assert seen is not None
    for x, colour in enumerate(colours):
        assert seen.getpixel((x, 0)) == pytest.approx(colour, abs=2)


def test_it_is_a_display_profile_without_a_date() -> None:
    data = srgb_profile()
    assert int.from_bytes(data[:4], "big") == len(data)
    assert data[12:24] == b"mntrRGB XYZ "
    assert data[36:40] == b"acsp"
    assert data == srgb_profile()
