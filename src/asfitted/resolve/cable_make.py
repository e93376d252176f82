"""What a cable phrase means: family, number of cores, and what serves as protective conductor."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from asfitted.errors import OutsideTableError
from asfitted.reference.cable_family import CableFamily, families, family
from asfitted.reference.cables import standard_sizes
from asfitted.spec.problem_codes import Code
from asfitted.spec.words import did_you_mean

if TYPE_CHECKING:
    from asfitted.resolve.ledger import Ledger
    from asfitted.spec.load_yaml import SpecPath
    from asfitted.spec.words import CableWords

Cpc = Literal["core", "armour", "none", "separate"]


@dataclass(frozen=True)
class Make:
    """A cable as made: family, cores, and what its protective conductor is."""

    family: CableFamily
    cores: int
    cpc: Cpc


@dataclass(frozen=True)
class Live:
    """Live conductors that a circuit needs: 2, 3 (three-phase, no neutral) or 4."""

    needed: int
    why: str = ""


def family_of(words: CableWords, path: SpecPath, ledger: Ledger) -> CableFamily | None:
    """Return the family that a phrase names; an unknown one is noted."""
    try:
        return family(words.family)
    except OutsideTableError:
        known = [word for one in families() for word in one.words]
        message = f'cable "{words.family}" is not known'
        ledger.problem(Code.NAME, message, path, did_you_mean(words.family, known))
        return None


def _usual_cores(made: CableFamily, live: Live) -> int:
    if made.construction in ("flat", "single"):
        return 2 if made.construction == "flat" else live.needed
    if made.construction in ("data", "coax", "coax_power"):
        return made.cores[-1]
    if made.construction == "armoured" and live.needed == 4:
        return 4
    return live.needed + 1


def _cores(words: CableWords, made: CableFamily, live: Live, subject: str, ledger: Ledger) -> int:
    if words.cores is not None:
        return words.cores
    cores = _usual_cores(made, live)
    if made.construction in ("armoured", "flexible", "multicore"):
        reason = "the cable phrase gives none; usual for its circuit"
        ledger.default(subject, f"cores of {words.words}", str(cores), reason)
    return cores


def _cpc(made: CableFamily, cores: int, live: Live) -> Cpc:
    if made.band == "I":
        return "none"
    if made.construction == "flat":
        return "core"
    if made.construction == "single":
        return "separate"
    if made.construction == "armoured":
        return "core" if cores > live.needed else "armour"
    least = 3 if live.needed > 2 else 2
    return "core" if cores > least else "none"


def _size_is_known(
    words: CableWords, made: CableFamily, cores: int, path: SpecPath, ledger: Ledger
) -> bool:
    """Tell whether the tables hold the written size; one that they do not hold is noted."""
    if words.csa_mm2 is None or made.band != "II":
        return True
    sizes = standard_sizes(made.id, made.cores[0] if made.construction == "single" else cores)
    if words.csa_mm2 in sizes:
        return True
    made_as = made.legend if made.construction == "single" else f"{cores}-core {made.legend}"
    message = f"{words.csa_mm2:g} mm² is not a size of {made_as} in the tables"
    known = ", ".join(f"{size:g}" for size in sizes)
    ledger.problem(Code.CIRCUIT, message, path, f"sizes: {known} mm²")
    return False


def make_of(
    words: CableWords, live: Live, path: SpecPath, subject: str, ledger: Ledger
) -> Make | None:
    """Return what a phrase means on a circuit with so many live conductors.

    Armoured cable with a core to spare has that core as protective conductor, else its armour. A
    three-phase load that needs no neutral leaves the fourth core to the protective conductor; this
    is recorded as a default.
    """
    made = family_of(words, path, ledger)
    if made is None:
        return None
    cores = _cores(words, made, live, subject, ledger)
    if cores not in made.cores and made.construction != "single":
        known = ", ".join(f"{n}c" for n in made.cores)
        message = f"{words.family} is not made with {cores} cores"
        ledger.problem(Code.CIRCUIT, message, path, f"made with {known}")
        return None
    if not _size_is_known(words, made, cores, path, ledger):
        return None
    least = 3 if live.needed > 2 else 2
    if made.band == "II" and cores < least and made.construction != "single":
        message = f'{subject}: cable "{words.words}" has too few cores for a three-phase circuit'
        ledger.problem(Code.CIRCUIT, message, path, "at least 4c, or 3c for a load without neutral")
        return None
    cpc = _cpc(made, cores, live)
    if made.construction == "armoured" and live.needed == 3 and cores == 4:
        ledger.default(subject, "protective conductor", "fourth core", live.why)
    if made.construction == "armoured" and live.needed == 4 and cores == 3:
        reason = "three cores on a three-phase circuit: the armour is the protective conductor"
        ledger.default(subject, "neutral", "none", reason)
    return Make(made, cores, cpc)
