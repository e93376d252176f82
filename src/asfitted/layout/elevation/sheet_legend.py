"""The legend of an elevation sheet: every symbol used on it, and nothing else."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.geometry import Point
from asfitted.layout.legend import lay_out_legend, used_symbols
from asfitted.layout.sheet_layout import SymbolUse

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from asfitted.layout.legend import Legend
    from asfitted.layout.sheet_layout import Item, SymbolInfo

ORIGIN = Point(0.0, 0.0)


@dataclass(frozen=True)
class LegendPanel:
    """The symbols of a sheet with their words."""

    names: tuple[str, ...]
    sizes_mm: Mapping[str, float]
    symbols: Mapping[str, SymbolInfo]
    beside: bool = True
    widths: tuple[float, ...] = (66.0, 78.0, 92.0, 134.0)

    @classmethod
    def of(
        cls, items: Sequence[Item], symbols: Mapping[str, SymbolInfo]
    ) -> tuple[LegendPanel, ...]:
        """Return the legend of some items, or nothing where they use no symbol."""
        names = tuple(n for n in used_symbols(items) if n in symbols)
        sizes = {p.name: p.size_mm for i in items for p in i.parts if isinstance(p, SymbolUse)}
        return (cls(names, sizes, symbols),) if names else ()

    def _legend(self, at: Point, width: float) -> Legend:
        return lay_out_legend(
            at=at,
            width_mm=width,
            columns=2 if width > 90.0 else 1,
            symbols=self.names,
            catalogue=self.symbols,
            sizes_mm=self.sizes_mm,
        )

    def height(self, width: float) -> float | None:
        """Return the height of the legend."""
        return self._legend(ORIGIN, width).height_mm

    def items(self, at: Point, width: float) -> tuple[Item, ...]:
        """Return the legend."""
        return self._legend(at, width).items
