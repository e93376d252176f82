"""Turns frozen results into plain lists, mappings, text and numbers, in a fixed order."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from enum import Enum

#: Decimals kept in files: enough to check by hand, too few to show the noise of the last bit.
DECIMALS = 6


def plain(value: object) -> object:
    """Return a value as plain data: dataclasses become mappings, tuples lists.

    Numbers are rounded to six decimals so that files are the same on every machine.
    """
    if isinstance(value, Enum):
        value = value.value
    if isinstance(value, float):
        return round(value, DECIMALS) + 0.0  # the sum turns a negative zero into zero
    if isinstance(value, bytes):
        return f"{len(value)} bytes"
    if value is None or isinstance(value, bool | int | str):
        return value
    named = _named_parts(value)
    if named is not None:
        return {str(key): plain(part) for key, part in named.items()}
    if isinstance(value, set | frozenset):
        value = sorted(value)
    if isinstance(value, list | tuple):
        return [plain(part) for part in value]
    return str(value)


def _named_parts(value: object) -> Mapping[object, object] | None:
    """Return the parts of anything that has names for them, else None."""
    if isinstance(value, Mapping):
        return value
    if hasattr(value, "model_dump"):
        dumped: Mapping[object, object] = value.model_dump(by_alias=True, mode="python")
        return dumped
    if is_dataclass(value) and not isinstance(value, type):
        return {f.name: getattr(value, f.name) for f in fields(value)}
    if isinstance(value, tuple) and hasattr(value, "_asdict"):
        return dict(value._asdict())
    return None
