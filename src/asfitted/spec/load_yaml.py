"""YAML text to plain mappings, lists and TEXT, with the line and column of every value.

Scalars stay as written: ``no``, ``010`` and ``1:30`` are words, never a truth value, an octal
number or a count of seconds. Anchors, aliases and tags are refused, so that what is read is what
stands on the page.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

import yaml

from asfitted.errors import Place, Problem, SpecError
from asfitted.spec.problem_codes import Code

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

Loader: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
MAX_DEPTH = 20

SpecPath = tuple[str | int, ...]


@dataclass(frozen=True)
class Document:
    """A read spec: plain data, and where each thing stands (line and column from 0)."""

    file: str
    lines: tuple[str, ...]
    data: dict[str, Any] = field(default_factory=dict)
    values: dict[SpecPath, tuple[int, int]] = field(default_factory=dict)
    keys: dict[SpecPath, tuple[int, int]] = field(default_factory=dict)

    def place_at(self, line: int, column: int) -> Place:
        """Return the place of a line and column that count from 0."""
        text = self.lines[line] if 0 <= line < len(self.lines) else ""
        return Place(self.file, line + 1, column + 1, text)

    def place(self, path: SpecPath, *, of_key: bool = False) -> Place:
        """Return where a value stands; for a block of keys, where its own key stands.

        A path that is not in the file gives the place of the nearest block that would hold it.
        """
        for end in range(len(path), 0, -1):
            part = path[:end]
            if part in self.values:
                is_block = isinstance(self.value(part), dict | list)
                use_key = (of_key or is_block or end < len(path)) and part in self.keys
                return self.place_at(*(self.keys if use_key else self.values)[part])
        return self.place_at(0, 0)

    def value(self, path: SpecPath) -> Any:
        """Return the plain data at a path, or None."""
        data: Any = self.data
        for step in path:
            try:
                data = data[step]
            except (KeyError, IndexError, TypeError):
                return None
        return data


def _file_text(path: Path) -> str:
    try:
        raw = path.read_bytes()
    except OSError as error:
        reason = error.strerror or "unreadable"
        raise SpecError([Problem(Code.FILE, f"{path.name}: {reason}")]) from error
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = raw[: error.start].count(b"\n") + 1
        message = f"{path.name}: line {line} is not UTF-8 text"
        hint = "save the file as UTF-8 (plain text)"
        raise SpecError([Problem(Code.FILE, message, hint=hint)]) from error
    if not text.strip():
        hint = 'a job file starts with "asfitted: 1"'
        raise SpecError([Problem(Code.FILE, f"{path.name}: the file is empty", hint=hint)])
    return text


def _tab_problems(document: Document) -> Iterator[Problem]:
    for number, line in enumerate(document.lines):
        if "\t" in line:
            place = document.place_at(number, line.index("\t"))
            yield Problem(Code.YAML, "a tab stands here", place, "use spaces")


def _feature_problem(event: Any) -> tuple[str, str] | None:
    if isinstance(event, yaml.AliasEvent):
        return f'an alias "*{event.anchor}" is not taken', "write the value out again"
    if getattr(event, "anchor", None):
        return f'an anchor "&{event.anchor}" is not taken', "write the value out where it is used"
    if getattr(event, "tag", None):
        tag = event.tag.replace("tag:yaml.org,2002:", "!!")
        return f'a YAML tag "{tag}" is not taken', "write the plain value"
    return None


def _event_problems(document: Document, text: str) -> list[Problem]:
    """Return what the stream of events shows before anything is built from it."""
    problems: list[Problem] = []
    depth = documents = 0
    for event in yaml.parse(text, Loader=Loader):
        place = _mark_place(document, event.start_mark)
        if isinstance(event, yaml.DocumentStartEvent):
            documents += 1
            if documents == 2:
                message = 'a second document starts here with "---"'
                problems.append(Problem(Code.YAML_FEATURE, message, place, "one job, one file"))
        if feature := _feature_problem(event):
            problems.append(Problem(Code.YAML_FEATURE, feature[0], place, feature[1]))
        if isinstance(event, yaml.CollectionStartEvent):
            depth += 1
        if isinstance(event, yaml.CollectionEndEvent):
            depth -= 1
        if depth > MAX_DEPTH:
            message = f"blocks are nested more than {MAX_DEPTH} deep"
            return [*problems, Problem(Code.YAML, message, place)]
    return problems


def _mark_place(document: Document, mark: Any) -> Place:
    return document.place_at(mark.line, mark.column) if mark else document.place_at(0, 0)


class _Walk:
    """One walk over the composed nodes that builds data and notes places."""

    def __init__(self, document: Document) -> None:
        self.document = document
        self.problems: list[Problem] = []

    def build(self, node: Any, path: SpecPath) -> Any:
        self.document.values[path] = (node.start_mark.line, node.start_mark.column)
        if isinstance(node, yaml.MappingNode):
            return self._mapping(node, path)
        if isinstance(node, yaml.SequenceNode):
            return [self.build(item, (*path, n)) for n, item in enumerate(node.value)]
        return node.value

    def _mapping(self, node: Any, path: SpecPath) -> dict[str, Any]:
        built: dict[str, Any] = {}
        for key_node, value_node in node.value:
            place = _mark_place(self.document, key_node.start_mark)
            if not isinstance(key_node, yaml.ScalarNode):
                self.problems.append(Problem(Code.SHAPE, "a key must be plain words", place))
                continue
            key = key_node.value
            if key in built:
                first = self.document.keys[(*path, key)][0] + 1
                message = f'"{key}" is written twice; first on line {first}'
                self.problems.append(Problem(Code.KEY_TWICE, message, place, "keep one of them"))
                continue
            inner = (*path, key)
            self.document.keys[inner] = (key_node.start_mark.line, key_node.start_mark.column)
            built[key] = self.build(value_node, inner)
        return built


def _syntax_problem(document: Document, error: yaml.YAMLError) -> Problem:
    mark = getattr(error, "problem_mark", None) or getattr(error, "context_mark", None)
    words = getattr(error, "problem", None) or getattr(error, "reason", None) or "not readable"
    return Problem(
        Code.YAML,
        f"the file cannot be read from here on: {words}",
        _mark_place(document, mark),
        "look for a missing colon, quote or bracket here or on the line above",
    )


def load_yaml(path: Path) -> Document:
    """Read a job file.

    Raises:
        SpecError: unreadable, not UTF-8, empty, not YAML, or YAML that is not taken; holds every
            such problem.
    """
    text = _file_text(path)
    document = Document(path.name, tuple(text.splitlines()))
    if tabs := list(_tab_problems(document)):
        raise SpecError(tabs)
    try:
        if problems := _event_problems(document, text):
            raise SpecError(problems)
        root = yaml.compose(text, Loader=Loader)
    except yaml.YAMLError as error:
        raise SpecError([_syntax_problem(document, error)]) from error
    if not isinstance(root, yaml.MappingNode):
        hint = 'a job file starts with "asfitted: 1", then "job:" and its facts'
        message = "the file holds no keys at its top"
        raise SpecError([Problem(Code.SHAPE, message, document.place_at(0, 0), hint)])
    walk = _Walk(document)
    document.data.update(walk.build(root, ()))
    if walk.problems:
        raise SpecError(walk.problems)
    return document
