"""Make, model and serial number as read off a rating plate."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from asfitted.spec.fields import PlateWords


@dataclass(frozen=True)
class Plate:
    """What was read off a rating plate; empty = not recorded."""

    make: str = ""
    model: str = ""
    serial: str = ""

    @property
    def missing(self) -> tuple[str, ...]:
        """What was not recorded, in words."""
        held = (("make", self.make), ("model", self.model), ("serial number", self.serial))
        return tuple(what for what, value in held if not value)


def plate_of(words: PlateWords) -> Plate:
    """Return what the spec gives of a rating plate."""
    return Plate(words.make or "", words.model or "", words.serial_number or "")
