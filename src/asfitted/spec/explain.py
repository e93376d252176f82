"""What the model found wrong, told in the words of the job file."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, get_args, get_origin

from pydantic import BaseModel

from asfitted.errors import NotUnderstoodError, Problem
from asfitted.spec.fields import ShapeError
from asfitted.spec.job_spec import JobSpec
from asfitted.spec.problem_codes import Code
from asfitted.spec.words import did_you_mean

if TYPE_CHECKING:
    from collections.abc import Callable

    from pydantic import ValidationError
    from pydantic_core import ErrorDetails

    from asfitted.spec.load_yaml import Document, SpecPath

_BLOCKS = {"model_type", "model_attributes_type", "dict_type"}


def _models_in(annotation: Any) -> list[Any]:
    """Return the model, mapping or list types inside an annotation such as ``X | None``."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return [annotation]
    if get_origin(annotation) in {dict, list}:
        return [annotation]
    return [found for part in get_args(annotation) for found in _models_in(part)]


def _step(node: Any, key: str | int) -> Any:
    if get_origin(node) in {dict, list}:
        inner = _models_in(get_args(node)[-1])
    else:
        fields = [f for f in node.model_fields.values() if f.alias == key]
        inner = _models_in(fields[0].annotation) if fields else []
    return inner[0] if inner else None


def keys_known_at(path: SpecPath, root: Any = JobSpec) -> list[str]:
    """Return the keys that may stand in the block at a path, [] where names are free."""
    node: Any = root
    for key in path:
        node = _step(node, key)
        if node is None:
            return []
    if get_origin(node) in {dict, list}:
        return []
    return [str(f.alias) for f in node.model_fields.values()]


def _block_words(path: SpecPath, document: Document) -> str:
    """Return how a block is called in a message: its key, tag or way, or ``circuits, item 3``."""
    if not path:
        return "the file"
    last = path[-1]
    if not isinstance(last, int):
        return f'"{last}"'
    block = document.value(path)
    names = [block.get(key) for key in ("tag", "way")] if isinstance(block, dict) else []
    named = next((name for name in names if isinstance(name, str) and name), "")
    return f'"{named}"' if named else f'"{path[-2]}", item {last + 1}'


def _unknown_key(path: SpecPath, document: Document, root: Any) -> Problem:
    key = str(path[-1])
    known = keys_known_at(path[:-1], root)
    hint = did_you_mean(key, known)
    if document.value(path) == "" and not hint.startswith("did you mean"):
        hint = 'words that hold a comma need quotes between { }: at: "wall B, 1.0 m along"'
    message = f'key "{key}" has no meaning in {_block_words(path[:-1], document)}'
    return Problem(Code.UNKNOWN_KEY, message, document.place(path, of_key=True), hint)


def _missing_key(path: SpecPath, document: Document) -> Problem:
    parent = path[:-1]
    message = f'{_block_words(parent, document)} lacks "{path[-1]}"'
    return Problem(Code.MISSING, message, document.place(parent))


def _value_error(detail: ErrorDetails, path: SpecPath, document: Document) -> Problem:
    error = detail.get("ctx", {}).get("error")
    key = next((str(step) for step in reversed(path) if isinstance(step, str)), "")
    place = document.place(path)
    if isinstance(error, NotUnderstoodError):
        code = Code.FIGURE if error.is_quantity else Code.WORDS
        says_key = error.message.lower().startswith(key.lower())
        message = error.message if says_key else f"{key}: {error.message}"
        return Problem(code, message, place, error.hint)
    if isinstance(error, ShapeError):
        message = f"{key}: a list or block stands where words belong"
        return Problem(Code.SHAPE, message, place, f"write {error}")
    return Problem(Code.WORDS, f"{key}: not understood", place)


def _wrong_shape(words: str) -> Callable[[SpecPath, Document], Problem]:
    def problem(path: SpecPath, document: Document) -> Problem:
        known = keys_known_at(path)
        hint = "keys known here: " + ", ".join(known[:8]) if known else ""
        message = f"{_block_words(path, document)} needs {words}"
        return Problem(Code.SHAPE, message, document.place(path), hint)

    return problem


def _problem_of(detail: ErrorDetails, document: Document, root: Any) -> Problem:
    path = tuple(step for step in detail["loc"] if step != "[key]")
    kind = detail["type"]
    if kind == "extra_forbidden":
        return _unknown_key(path, document, root)
    if kind == "missing":
        return _missing_key(path, document)
    if kind == "list_type":
        return _wrong_shape("a list: [ ... ] or lines that start with a dash")(path, document)
    if kind in _BLOCKS:
        return _wrong_shape("keys with values below it")(path, document)
    return _value_error(detail, path, document)


def explain(error: ValidationError, document: Document, root: Any = JobSpec) -> list[Problem]:
    """Return every problem of a failed validation, each with its place in the file.

    ``root`` is the model of the whole file: a job unless told otherwise.
    """
    return [_problem_of(d, document, root) for d in error.errors(include_url=False)]
