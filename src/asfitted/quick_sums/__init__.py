"""Quick sums on site, one file each, found by scanning this folder.

A sum is a module with ``SUM``, a :class:`asfitted.quick_sums._sum.QuickSum`.
"""

from __future__ import annotations

import importlib
import pkgutil
from functools import cache
from types import MappingProxyType
from typing import TYPE_CHECKING

from asfitted.errors import NotUnderstoodError
from asfitted.spec.words import did_you_mean

if TYPE_CHECKING:
    from collections.abc import Mapping

    from asfitted.quick_sums._sum import QuickSum


@cache
def quick_sums() -> Mapping[str, QuickSum]:
    """Return every sum by name, in the order of the alphabet."""
    names = sorted(m.name for m in pkgutil.iter_modules(__path__) if not m.name.startswith("_"))
    sums = [importlib.import_module(f"{__name__}.{name}").SUM for name in names]
    return MappingProxyType({one.name: one for one in sums})


def quick_sum(name: str) -> QuickSum:
    """Return the sum of a name.

    Raises:
        NotUnderstoodError: no such sum; the hint gives the nearest.
    """
    found = quick_sums().get(name.strip().lower())
    if found is None:
        raise NotUnderstoodError(
            f'no sum is named "{name}"', did_you_mean(name, sorted(quick_sums()))
        )
    return found
