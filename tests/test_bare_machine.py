"""The main job runs where pip works: libcairo and every system font hidden."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

SPECS = Path(__file__).parent.parent / "specs"
HIDE = """
import sys


class Hidden:
    def find_spec(self, name, path=None, target=None):
        if name.split(".")[0] in {"cairosvg", "cairocffi", "cairo", "matplotlib"}:
            raise ModuleNotFoundError(f"No module named {name!r}", name=name)


sys.meta_path.insert(0, Hidden())
opened = []


def watch(event, arguments):
    if event == "open" and "/share/fonts" in str(arguments[0]):
        opened.append(arguments[0])


sys.addaudithook(watch)
from asfitted.cli import main

code = main(sys.argv[1:])
assert not opened, opened
sys.exit(code)
"""


def run_hidden(tmp_path: Path, *arguments: str) -> subprocess.CompletedProcess[str]:
    script = tmp_path / "hidden.py"
    script.write_text(HIDE)
    environment = {**os.environ, "FONTCONFIG_FILE": str(tmp_path / "no-such-fonts.conf")}
    return subprocess.run(
        [sys.executable, str(script), *arguments],
        env=environment,
        capture_output=True,
        text=True,
        check=False,
    )


def test_pack_without_libcairo_and_without_system_fonts(tmp_path: Path) -> None:
    job, out = SPECS / "community-shed.yaml", tmp_path / "out"
    done = run_hidden(tmp_path, "pack", str(job), "-o", str(out))
    assert done.returncode == 0, done.stderr
    assert list(out.glob("*.pdf"))
    assert len(list((out / "sheets").glob("*.svg"))) >= 9


def test_previews_without_libcairo_say_what_to_install(tmp_path: Path) -> None:
    job, out = SPECS / "shop-cctv.yaml", tmp_path / "out"
    done = run_hidden(tmp_path, "draw", str(job), "-o", str(out), "--png", "60")
    assert done.returncode == 3
    assert "pip install" in done.stderr
