"""Reading the file itself: places, traps of YAML, and files that cannot be read."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from asfitted.errors import SpecError
from asfitted.spec.load_yaml import MAX_DEPTH, load_yaml

if TYPE_CHECKING:
    from pathlib import Path


def write(folder: Path, text: str | bytes) -> Path:
    path = folder / "job.yaml"
    path.write_bytes(text if isinstance(text, bytes) else text.encode("utf-8"))
    return path


def first_problem(path: Path) -> tuple[str, str]:
    with pytest.raises(SpecError) as caught:
        load_yaml(path)
    return caught.value.problems[0].code, caught.value.problems[0].message


def test_words_stay_words(tmp_path: Path) -> None:
    traps = "a: no\nb: off\nc: on\nd: 010\ne: 1:30\nf: 1e3\ng: 2026-11-20\nh: ~\ni: 1_000\nj: y\n"
    data = load_yaml(write(tmp_path, traps)).data
    assert list(data.values()) == [
        "no",
        "off",
        "on",
        "010",
        "1:30",
        "1e3",
        "2026-11-20",
        "~",
        "1_000",
        "y",
    ]


def test_each_value_and_key_knows_its_place(tmp_path: Path) -> None:
    document = load_yaml(write(tmp_path, "job:\n  title: Shed\nruns:\n  - {tag: T1, size: 50}\n"))
    value = document.place(("runs", 0, "size"))
    assert (value.line, value.column, value.text) == (4, 21, "  - {tag: T1, size: 50}")
    key = document.place(("job", "title"), of_key=True)
    assert (key.line, key.column) == (2, 3)


def test_place_of_what_is_not_there_is_that_of_its_block(tmp_path: Path) -> None:
    document = load_yaml(write(tmp_path, "a: 1\njob:\n  title: Shed\n"))
    place = document.place(("job", "client"))
    assert (place.line, place.column) == (2, 1)


@pytest.mark.parametrize(
    ("text", "code", "words"),
    [
        ("\n \n", "SP-01", "empty"),
        (b"a: caf\xe9\n", "SP-01", "line 1 is not UTF-8"),
        ("- a\n", "SP-10", "no keys at its top"),
        ("just words", "SP-10", "no keys at its top"),
        ("a:\n\tb: 1\n", "SP-02", "a tab"),
        ("a: [1\n", "SP-02", "cannot be read"),
        ("a: &x 1\n", "SP-03", "anchor"),
        ("a: &x {b: *x}\n", "SP-03", "anchor"),
        ("a: !!python/object:os.system x\n", "SP-03", "tag"),
        ("a: 1\n---\nb: 2\n", "SP-03", "second document"),
        ("? [a]\n: 1\n", "SP-10", "plain words"),
        ("a: 1\na: 2\n", "SP-04", "twice; first on line 1"),
        ("a: " + "[" * 30 + "]" * 30, "SP-02", f"more than {MAX_DEPTH} deep"),
        ("a: \x07\n", "SP-02", "cannot be read"),
    ],
)
def test_files_that_are_not_taken(tmp_path: Path, text: str | bytes, code: str, words: str) -> None:
    found, message = first_problem(write(tmp_path, text))
    assert found == code
    assert words in message


def test_missing_file_and_folder(tmp_path: Path) -> None:
    assert first_problem(tmp_path / "none.yaml") == (
        "SP-01",
        "none.yaml: No such file or directory",
    )
    assert first_problem(tmp_path)[0] == "SP-01"


def test_byte_order_mark_and_windows_line_ends_are_taken(tmp_path: Path) -> None:
    document = load_yaml(write(tmp_path, b"\xef\xbb\xbfa: 1\r\nb: x y\r\n"))
    assert document.data == {"a": "1", "b": "x y"}


def test_bottomless_nesting_is_refused_and_not_followed(tmp_path: Path) -> None:
    assert first_problem(write(tmp_path, "a: " + "[" * 50_000))[0] == "SP-02"
