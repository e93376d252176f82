"""Renders every job of ``specs/`` into ``gallery/``, or tells what there is stale.

Of its sheets only the drawings are kept. Run from the top of the repository::

    python -m asfitted.dev.gallery           # write
    python -m asfitted.dev.gallery --check   # exit 1 if anything differs
"""

from __future__ import annotations

import argparse
import re
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


def render(specs: Path, folder: Path) -> None:
    """Render every job of ``specs`` into a folder of its own name."""
    for spec in sorted(specs.glob("*.yaml")):
        checked = check_job(spec)
        sheets = lay_out_job(checked)
        write_pack(model_of(checked), sheets, folder / spec.stem)
        for sheet in sheets:
            if sheet.section != KEPT:  # tables and documents are in the PDF and the schedules
                (folder / spec.stem / "sheets" / f"{sheet.name}.svg").unlink()


def _files(folder: Path) -> dict[str, bytes]:
    return {
        path.relative_to(folder).as_posix(): _FONT.sub(b"", path.read_bytes())
        for path in sorted(folder.rglob("*"))
        if path.suffix in COMPARED
    }


def stale_files(specs: Path, gallery: Path) -> list[str]:
    """Return the files of the gallery that differ from a fresh rendering, are missing or extra."""
    with tempfile.TemporaryDirectory() as name:
        render(specs, Path(name))
        fresh, kept = _files(Path(name)), _files(gallery)
    return sorted(f for f in fresh.keys() | kept.keys() if fresh.get(f) != kept.get(f))


def main() -> int:
    """Run the command."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--check", action="store_true", help="only tell what is stale")
    options = parser.parse_args()
    specs, gallery = Path("specs"), Path("gallery")
    if not options.check:
        render(specs, gallery)
        return 0
    stale = stale_files(specs, gallery)
    for name in stale:
        sys.stdout.write(f"stale: {name}\n")
    return int(bool(stale))


if __name__ == "__main__":
    sys.exit(main())
