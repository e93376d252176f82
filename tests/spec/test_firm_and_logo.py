"""The firm and its mark: words, a block or a shared file; local files, looked through whole."""

from __future__ import annotations

import io
import struct
import zlib
from typing import TYPE_CHECKING

import pytest
from PIL import Image

from asfitted.errors import SpecError
from asfitted.resolve import resolve
from asfitted.spec import load_job
from asfitted.spec.logo_png import png_logo
from asfitted.spec.logo_svg import svg_logo
from asfitted.spec.svg_outlines import outlines_of_path

if TYPE_CHECKING:
    from pathlib import Path

    from asfitted.resolve.installation import Job

HEAD = "asfitted: 1\njob:\n  number: J1\n  title: A job\n"
FIRM = """\
asfitted-firm: 1
name: An invented firm
address: [1 Some Lane, Sometown]
phone: 01632 960 001
email: office@firm.example
registration: none, invented
"""
SVG = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 20 10">{}</svg>'
SQUARE = '<path d="M1 1 H9 V9 H1 Z" fill="#000"/>'


def png(width: int = 4, height: int = 2) -> bytes:
    out = io.BytesIO()
    Image.new("L", (width, height), 0).save(out, "PNG")
    return out.getvalue()


def job(folder: Path, lines: str, **files: str | bytes) -> Job:
    for name, content in files.items():
        path = folder / name.replace("__", ".")
        data = content.encode() if isinstance(content, str) else content
        path.write_bytes(data)
    path = folder / "job.yaml"
    path.write_text(HEAD + lines, encoding="utf-8")
    return resolve(load_job(path)).job


def refused(folder: Path, lines: str, **files: str | bytes) -> str:
    with pytest.raises(SpecError) as caught:
        job(folder, lines, **files)
    return str(caught.value)


def test_plain_words_are_the_name(tmp_path: Path) -> None:
    made = job(tmp_path, "  installer: An invented firm\n  phone: 01632 960 002\n")
    assert (made.installer, made.phone) == ("An invented firm", "01632 960 002")
    assert made.firm is not None
    assert made.firm.email == "not recorded"


def test_a_block_gives_all_details(tmp_path: Path) -> None:
    lines = "  installer:\n" + "".join(f"    {line}\n" for line in FIRM.splitlines()[1:])
    made = job(tmp_path, lines)
    assert made.firm is not None
    assert made.firm.address == ("1 Some Lane", "Sometown")
    assert made.phone == "01632 960 001"


def test_a_shared_file_gives_all_details_and_its_logo(tmp_path: Path) -> None:
    made = job(
        tmp_path,
        "  firm: firm.yaml\n",
        firm__yaml=FIRM + "logo: mark.svg\n",
        mark__svg=SVG.format(SQUARE),
    )
    assert made.installer == "An invented firm"
    assert made.firm is not None
    assert made.firm.logo is not None
    assert (made.firm.logo.width, made.firm.logo.height) == (20, 10)


def test_both_ways_at_once_are_refused(tmp_path: Path) -> None:
    said = refused(tmp_path, "  installer: X\n  firm: firm.yaml\n", firm__yaml=FIRM)
    assert "job.yaml:6" in said
    assert "keep one of them" in said


def test_a_fault_in_the_firms_file_is_told_with_its_place(tmp_path: Path) -> None:
    said = refused(tmp_path, "  firm: firm.yaml\n", firm__yaml=FIRM + "telephone: 1\n")
    assert "firm.yaml:7:1" in said
    assert "phone" in said


@pytest.mark.parametrize(
    ("path", "words"),
    [
        ("https://firm.example/mark.png", "nothing is fetched"),
        ("//server/mark.png", "nothing is fetched"),
        ("/srv/mark.png", "root of one machine"),
        ("missing.png", "is not there"),
        ("mark.gif", "no .png or .svg"),
    ],
)
def test_a_logo_that_is_not_a_local_picture_is_refused(
    tmp_path: Path, path: str, words: str
) -> None:
    lines = f'  installer:\n    name: X\n    logo: "{path}"\n'
    said = refused(tmp_path, lines, mark__gif=b"GIF89a")
    assert words in said
    assert "job.yaml:7:" in said


def test_a_logo_of_many_bytes_is_refused(tmp_path: Path) -> None:
    lines = "  installer: {name: X, logo: mark.png}\n"
    assert "600 kB" in refused(tmp_path, lines, mark__png=b"\0" * 600_000)


@pytest.mark.parametrize(
    ("inside", "words"),
    [
        ("<script>x()</script>", "<script>"),
        ("<style>a{}</style>", "<style>"),
        ('<image href="http://x.example/a.png"/>', "<image>"),
        ("<text>A</text>", "<text>"),
        ('<path d="M0 0 L1 1" onclick="x()"/>', "onclick"),
        ('<path d="M0 0 L1 1" transform="scale(2)"/>', "transform"),
        ('<path d="M1 1 A 2 2 0 0 1 4 4" fill="#000"/>', "arcs"),
        ('<rect x="1" y="1" width="9" height="3" fill="url(#g)"/>', "url(#g)"),
        ('<rect x="1" y="1" width="90" height="3"/>', "view box"),
        ("", "no outline"),
    ],
)
def test_an_svg_that_holds_more_than_outlines_is_refused(
    tmp_path: Path, inside: str, words: str
) -> None:
    lines = "  installer: {name: X, logo: mark.svg}\n"
    assert words in refused(tmp_path, lines, mark__svg=SVG.format(inside))


def test_an_svg_with_entities_is_refused(tmp_path: Path) -> None:
    bomb = '<!DOCTYPE svg [<!ENTITY a "b">]>' + SVG.format(SQUARE)
    lines = "  installer: {name: X, logo: mark.svg}\n"
    assert "document type" in refused(tmp_path, lines, mark__svg=bomb)


def test_colours_become_inks_of_the_sheet() -> None:
    fills = ("#111", "#777777", "#dddddd", "white")
    shapes = "".join(f'<rect x="1" y="1" width="2" height="2" fill="{f}"/>' for f in fills)
    logo = svg_logo(SVG.format(shapes).encode(), "mark.svg")
    assert [o.fill for o in logo.outlines] == ["black", "grey", "tint", "white"]


def test_a_hole_shows_the_paper() -> None:
    ring = '<path d="M1 1 H9 V9 H1 Z M3 3 H7 V7 H3 Z" fill="#000"/>'
    logo = svg_logo(SVG.format(ring).encode(), "mark.svg")
    assert [o.fill for o in logo.outlines] == ["black", "white"]


def test_a_path_is_followed_as_the_standard_says() -> None:
    # SVG 2, 9.3: relative commands, lines after a move, the point halfway along a quadratic curve
    ((points, closed),) = outlines_of_path("m1 1 2 0 l0 2 q 2 0 2 2 z")
    assert closed
    assert points[:3] == ((1, 1), (3, 1), (3, 3))
    assert points[8] == pytest.approx((4.5, 3.5))
    assert points[-1] == pytest.approx((5, 5))


def test_a_png_is_kept_byte_for_byte() -> None:
    data = png()
    logo = png_logo(data, "mark.png")
    assert (logo.png, logo.width, logo.height) == (data, 4, 2)


def test_a_damaged_png_is_refused(tmp_path: Path) -> None:
    whole = png()
    cut, changed = whole[:-6], whole.replace(b"IDAT", b"IDAT", 1)[:40] + b"\0" + whole[41:]
    lines = "  installer: {name: X, logo: mark.png}\n"
    for data in (cut, changed, b"not a png at all"):
        assert "logo" in refused(tmp_path, lines, mark__png=data)


def test_a_png_that_unpacks_to_more_than_it_says_is_refused(tmp_path: Path) -> None:
    def chunk(kind: bytes, body: bytes) -> bytes:
        check = struct.pack(">I", zlib.crc32(kind + body))
        return struct.pack(">I", len(body)) + kind + body + check

    head = struct.pack(">IIBBBBB", 4, 2, 8, 0, 0, 0, 0)
    pixels = zlib.compress(b"\0" * 3_000_000)
    data = (
        b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", pixels) + chunk(b"IEND", b"")
    )
    said = refused(tmp_path, "  installer: {name: X, logo: mark.png}\n", mark__png=data)
    assert "does not hold the pixels" in said
