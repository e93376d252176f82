"""Renders every job of ``specs/`` into ``gallery/``, or tells what there is stale.

Of its sheets only the drawings are kept. Run from the top of the repository::

    python -m asfitted.dev.gallery           # write
    python -m asfitted.dev.gallery --check   # exit 1 if anything differs
"""

from __future__ import annotations

import argparse
import re
import shutil
import sys
import tempfile
from pathlib import Path

from asfitted.pack.write import write_pack
from asfitted.pipeline import check_job, lay_out_job, model_of

#: The bytes of embedded fonts follow the version of the font library: they are not compared.
_FONT = re.compile(rb"base64,[A-Za-z0-9+/=]+")
COMPARED = {".svg", ".csv", ".json"}
#: Section of the pack whose sheets are kept as SVG.
KEPT = "Drawings"
MOST_DRAWINGS = 40


def render(specs: Path, folder: Path) -> set[str]:
    """Render every job of ``specs`` into a folder of its own name.

    Returns the sheets that the gallery keeps, relative to ``folder``. Text pages are in the PDF
    and the schedules; of a job with many drawings the first of each kind is kept.
    """
    kept: set[str] = set()
    for spec in sorted(specs.glob("*.yaml")):
        checked = check_job(spec)
        sheets = lay_out_job(checked)
        write_pack(model_of(checked), sheets, folder / spec.stem)
        drawings = [sheet for sheet in sheets if sheet.section == KEPT]
        if len(drawings) > MOST_DRAWINGS:
            first = {_kind(sheet.key): sheet for sheet in reversed(drawings)}
            drawings = list(first.values())
        kept |= {f"{spec.stem}/sheets/{sheet.name}.svg" for sheet in drawings}
    return kept


def _kind(key: str) -> str:
    """Return what a sheet is, without its room, part or number."""
    return key.split("/", maxsplit=1)[0].rstrip("0123456789-")


def _files(folder: Path) -> dict[str, bytes]:
    return {
        path.relative_to(folder).as_posix(): _FONT.sub(b"", path.read_bytes())
        for path in sorted(folder.rglob("*"))
        if path.suffix in COMPARED
    }


def stale_files(specs: Path, gallery: Path, fresh_in: Path) -> list[str]:
    """Return the files of the gallery that differ from a fresh rendering, are missing or extra."""
    keeps = render(specs, fresh_in)
    fresh, held = _files(fresh_in), _files(gallery)
    fresh = {name: data for name, data in fresh.items() if name in keeps or ".svg" not in name}
    return sorted(f for f in fresh.keys() | held.keys() if fresh.get(f) != held.get(f))


def write(specs: Path, gallery: Path) -> None:
    """Render the gallery anew; what it no longer holds is removed."""
    with tempfile.TemporaryDirectory() as name:
        fresh = Path(name, "gallery")
        keeps = render(specs, fresh)
        for path in sorted(fresh.rglob("*.svg")):
            if path.relative_to(fresh).as_posix() not in keeps:
                path.unlink()
        if gallery.exists():
            shutil.rmtree(gallery)
        shutil.move(fresh, gallery)


def main() -> int:
    """Run the command."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--check", action="store_true", help="only tell what is stale")
    parser.add_argument("--into", type=Path, help="where a check leaves what it rendered")
    options = parser.parse_args()
    specs, gallery = Path("specs"), Path("gallery")
    if not options.check:
        write(specs, gallery)
        return 0
    with tempfile.TemporaryDirectory() as name:
        stale = stale_files(specs, gallery, options.into or Path(name))
    for name in stale:
        sys.stdout.write(f"stale: {name}\n")
    return int(bool(stale))


if __name__ == "__main__":
    sys.exit(main())
