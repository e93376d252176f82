"""The conductors of a cable at its end: which marks, which cores, what is the protective one."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.errors import OutsideTableError
from asfitted.reference.cable_family import family
from asfitted.reference.connections import PROTECTIVE, core_colours, core_for_each

if TYPE_CHECKING:
    from asfitted.resolve.installation import Cable

MARKS = {2: ("L", "N"), 3: ("L1", "L2", "L3"), 4: ("L1", "L2", "L3", "N")}
CONSTRUCTION_WORDS = {
    "armoured": "armoured cable",
    "flexible": "flexible cable",
    "flat": "flat twin and earth",
    "multicore": "multicore cable",
    "single": "single-core cables",
}


@dataclass(frozen=True)
class CableEnd:
    """A kind of cable end: equal for cables that are connected in the same way."""

    construction: str  # "armoured", "flexible", ...; "" when no cable is recorded
    cores: int
    cpc: str  # "core", "armour", "separate", "none"
    drop: str = ""  # what a tail runs in, "" where it does not matter

    @property
    def live(self) -> tuple[str, ...]:
        """Marks of the live conductors, in order."""
        count = self.cores - (self.cpc == "core" and self.construction != "flat")
        return MARKS.get(count, MARKS[2] if count < 2 else MARKS[4])

    @property
    def has_earth_core(self) -> bool:
        """Whether a core or a separate conductor is the protective conductor."""
        return self.cpc in {"core", "separate"}

    @property
    def colours(self) -> dict[str, str]:
        """Colour words by mark, PE with its core; "not recorded" where the cable is not held."""
        marks = (*self.live, PROTECTIVE) if self.has_earth_core else self.live
        if self.construction == "single":
            return dict(zip(marks, core_for_each(marks, _ANY), strict=True))
        try:
            made = core_colours(self.construction, self.cores)
        except OutsideTableError:
            return dict.fromkeys(marks, "not recorded")
        if "bare" in made:
            live = core_for_each(self.live, made[:-1])
            return {
                **dict(zip(self.live, live, strict=True)),
                PROTECTIVE: "bare sleeved green-and-yellow",
            }
        return dict(zip(marks, core_for_each(marks, made), strict=True))

    @property
    def words(self) -> str:
        """``four-core armoured cable``."""
        if not self.construction:
            return "cable not recorded"
        if self.construction in {"flat", "single"}:
            return CONSTRUCTION_WORDS[self.construction]
        number = {2: "two", 3: "three", 4: "four", 5: "five", 7: "seven"}.get(self.cores)
        name = CONSTRUCTION_WORDS.get(self.construction, self.construction)
        return f"{number or self.cores}-core {name}"

    @property
    def earth_words(self) -> str:
        """What is the circuit protective conductor (cpc), in words."""
        return {
            "armour": "armour as cpc",
            "core": "one core as cpc",
            "separate": "separate cpc",
        }.get(self.cpc, "cpc not recorded")


_ANY = ("brown", "black", "grey", "blue", "green-and-yellow")


def end_of(cable: Cable, *, drop: bool = False) -> CableEnd:
    """Return the kind of end of a cable; ``drop`` keeps what its tail runs in."""
    construction = family(cable.family).construction
    return CableEnd(construction, cable.cores, cable.cpc, cable.drop if drop else "")
