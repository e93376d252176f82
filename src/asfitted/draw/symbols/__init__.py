"""The catalogue of symbols: one file each in this folder, found by scanning it in sorted order.

To add a symbol, add one file with one subclass of ``Sign`` whose declared name is the file's name.
Modules whose names begin with an underscore are shared parts.
"""

from __future__ import annotations

import importlib
import inspect
import pkgutil
from functools import cache

from asfitted.draw.symbols._geometry import (
    SymbolCircle,
    SymbolGeometry,
    SymbolLine,
    SymbolText,
    read_geometry,
)
from asfitted.draw.symbols._sign import Declaration, Sign
from asfitted.errors import OutputError, ReferenceDataError
from asfitted.layout.sheet_layout import SymbolInfo

__all__ = [
    "Declaration",
    "Sign",
    "SymbolCircle",
    "SymbolGeometry",
    "SymbolLine",
    "SymbolText",
    "catalogue",
    "declarations",
    "geometry",
    "signs",
]


@cache
def signs() -> dict[str, type[Sign]]:
    """Return the class of every symbol by name, in sorted order.

    Raises:
        ReferenceDataError: a file does not hold exactly one symbol of its own name.
    """
    names = sorted(m.name for m in pkgutil.iter_modules(__path__) if not m.name.startswith("_"))
    return {name: _sign_in(name) for name in names}


def _sign_in(name: str) -> type[Sign]:
    module = importlib.import_module(f"{__name__}.{name}")
    found = [
        member
        for _, member in inspect.getmembers(module, inspect.isclass)
        if issubclass(member, Sign) and member.__module__ == module.__name__
    ]
    if len(found) != 1 or found[0].declaration.name != name:
        raise ReferenceDataError(f"symbols/{name}.py must declare one symbol named {name!r}")
    return found[0]


def declarations() -> dict[str, Declaration]:
    """Return what every symbol declares of itself, by name."""
    return {name: sign.declaration for name, sign in signs().items()}


def catalogue() -> dict[str, SymbolInfo]:
    """Return what layout may know of every symbol, by name."""
    return {
        name: SymbolInfo(name, told.legend, told.standard, told.group)
        for name, told in declarations().items()
    }


@cache
def geometry(name: str) -> SymbolGeometry:
    """Return the plain primitives of a symbol in its 10 x 10 box.

    Raises:
        OutputError: there is no such symbol.
    """
    if name not in signs():
        raise OutputError(f"there is no symbol named {name!r}")
    return read_geometry(signs()[name]())
