"""The same spec gives the same bytes: two processes, different hash seeds, other folders."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

SPECS = Path(__file__).parent.parent / "specs"


def packing(spec: Path, folder: Path, seed: str) -> subprocess.Popen[str]:
    folder.mkdir()
    return subprocess.Popen(
        [sys.executable, "-m", "asfitted", "pack", str(spec), "-o", "out"],
        cwd=folder,
        env={**os.environ, "PYTHONHASHSEED": seed},
        stdout=subprocess.DEVNULL,
        stderr=subprocess.PIPE,
        text=True,
    )


def packed(process: subprocess.Popen[str], folder: Path) -> dict[str, bytes]:
    _, said = process.communicate()
    assert process.returncode == 0, said
    files = (folder / "out").rglob("*")
    return {p.relative_to(folder).as_posix(): p.read_bytes() for p in files if p.is_file()}


def test_pack_is_byte_identical_in_two_processes(tmp_path: Path) -> None:
    folders = tmp_path / "one", tmp_path / "two"
    spec = SPECS / "pottery-studio.yaml"
    at_once = [
        packing(spec, folder, seed) for folder, seed in zip(folders, ("1", "4242"), strict=True)
    ]
    first, second = (packed(one, folder) for one, folder in zip(at_once, folders, strict=True))
    assert first.keys() == second.keys()
    assert any(name.endswith(".pdf") for name in first)
    assert sum(name.endswith(".svg") for name in first) >= 9
    for name, data in first.items():
        assert data == second[name], f"{name} differs between two runs"
