"""Edit a frozen job by path, so that a case in YAML says in one line what is different."""

from __future__ import annotations

from dataclasses import is_dataclass, replace
from enum import Enum
from types import MappingProxyType
from typing import TYPE_CHECKING, Any

from asfitted.calculate import results as result_types
from asfitted.geometry import Point3
from asfitted.resolve import installation as installation_types

if TYPE_CHECKING:
    from collections.abc import Mapping


def edited(thing: Any, path: str, value: Any) -> Any:
    """Return a copy of a frozen thing in which the value at a dotted path is another one.

    A segment names a field, a key of a mapping or an index of a tuple. ``{"make": "Rcd", ...}``
    builds a record, ``{"copies_of": "CAM2", "count": 25}`` repeats one of a mapping, and "(gone)"
    takes a key out of it.
    """
    head, _, rest = path.partition(".")
    if isinstance(thing, MappingProxyType):
        return _edited_mapping(thing, head, rest, value)
    if isinstance(thing, tuple) and not hasattr(thing, "_fields"):
        place = int(head)
        new = edited(thing[place], rest, value) if rest else built(value)
        return (*thing[:place], new, *thing[place + 1 :])
    if not is_dataclass(thing) or isinstance(thing, type):
        raise TypeError(f"{path!r}: nothing to edit in {thing!r}")
    old = getattr(thing, head)
    if isinstance(value, dict) and "copies_of" in value and not rest:
        return replace(thing, **{head: _with_copies(old, value["copies_of"], value["count"])})
    new = edited(old, rest, value) if rest else _like(old, built(value))
    return replace(thing, **{head: new})


def _edited_mapping(thing: Mapping[str, Any], head: str, rest: str, value: Any) -> Any:
    if not rest and value == "(gone)":
        assert head in thing, f"no {head!r} to take out"
        return MappingProxyType({k: v for k, v in thing.items() if k != head})
    new = edited(thing[head], rest, value) if rest else built(value)
    return MappingProxyType({**thing, head: new})


def _with_copies(group: Mapping[str, Any], tag: str, count: int) -> Any:
    """Return a mapping with a thing so many times in all: CAM2, CAM2.2, CAM2.3 and so on."""
    first, more = group[tag], {}
    for number in range(2, count + 1):
        renamed = {"tag": f"{tag}.{number}"}
        if hasattr(first, "cable"):
            renamed["cable"] = f"{first.cable}.{number}"
        more[renamed["tag"]] = replace(first, **renamed)
    return MappingProxyType({**group, **more})


def _like(old: Any, new: Any) -> Any:
    return type(old)(new) if isinstance(old, Enum) and new is not None else new


def built(value: Any) -> Any:
    """Return a YAML value with lists as tuples, records built, and points in the building."""
    if isinstance(value, list):
        return tuple(built(part) for part in value)
    if isinstance(value, dict) and "point" in value:
        return Point3(*value["point"])
    if isinstance(value, dict):
        fields = {key: built(part) for key, part in value.items() if key != "make"}
        module = installation_types if hasattr(installation_types, value["make"]) else result_types
        return getattr(module, value["make"])(**fields)
    return value
