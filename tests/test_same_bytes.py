"""The same spec gives the same bytes: two processes, different hash seeds, other folders."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

SPECS = Path(__file__).parent.parent / "specs"


def packed(spec: Path, folder: Path, seed: str) -> dict[str, bytes]:
    folder.mkdir()
    environment = {**os.environ, "PYTHONHASHSEED": seed}
    done = subprocess.run(
        [sys.executable, "-m", "asfitted", "pack", str(spec), "-o", "out"],
        cwd=folder,
        env=environment,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    files = (folder / "out").rglob("*")
    return {p.relative_to(folder).as_posix(): p.read_bytes() for p in files if p.is_file()}


def test_pack_is_byte_identical_in_two_processes(tmp_path: Path) -> None:
    first = packed(SPECS / "pottery-studio.yaml", tmp_path / "one", "1")
    second = packed(SPECS / "pottery-studio.yaml", tmp_path / "two", "4242")
    assert first.keys() == second.keys()
    assert any(name.endswith(".pdf") for name in first)
    assert sum(name.endswith(".svg") for name in first) >= 9
    for name, data in first.items():
        assert data == second[name], f"{name} differs between two runs"
