"""What a symbol file holds: a declaration, and a schemdraw element that draws itself."""

from __future__ import annotations

from abc import abstractmethod
from dataclasses import dataclass
from typing import Any, ClassVar, Literal

from asfitted.draw.symbols._schemdraw import Element
from asfitted.draw.symbols._strokes import flipped

Group = Literal["supply", "protection", "wiring", "accessories", "data", "containment", "marks"]


#: The four places of the box where a wire may end (x right, y down).
WIRE_ENDS = {"supply": (5.0, 0.0), "load": (5.0, 10.0), "left": (0.0, 5.0), "right": (10.0, 5.0)}


@dataclass(frozen=True)
class Declaration:
    """The words that go with a symbol.

    ``iec_60617`` is the number of the part and of the database entry as remembered; "area" means
    that only the neighbourhood is remembered. ``standard`` is False for a sign that no standard is
    remembered to hold: the legend marks it with a dagger.
    """

    name: str
    legend: str
    group: Group
    standard: bool
    iec_60617: str = ""

    @property
    def provenance(self) -> str:
        """Say where the shape comes from."""
        if self.iec_60617:
            return f"memory of IEC 60617, {self.iec_60617}"
        return "composed from memory of IEC 60617" if self.standard else "common practice"


class Sign(Element):  # type: ignore[misc]  # schemdraw ships no types
    """Base of every symbol: a schemdraw element in a 10 x 10 box."""

    declaration: ClassVar[Declaration]
    #: Which of ``WIRE_ENDS`` the strokes reach; they become the anchors.
    wire_ends: ClassVar[tuple[str, ...]] = ()

    def __init__(self) -> None:
        """Build the segments and anchors."""
        super().__init__()
        self.segments.extend(self.strokes())
        for end in self.wire_ends:
            self.anchors[end] = flipped(*WIRE_ENDS[end])

    @abstractmethod
    def strokes(self) -> list[Any]:
        """Return the schemdraw segments of the symbol."""
