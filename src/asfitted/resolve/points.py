"""Points served: kind looked up, height and ratings filled in where their kind implies them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal, cast

from asfitted.errors import OutsideTableError
from asfitted.reference.points import PointKind, point_kind, point_words
from asfitted.resolve.devices import rcd_of
from asfitted.resolve.installation import PointServed, State
from asfitted.resolve.rating_plate import plate_of
from asfitted.resolve.starters import STARTER
from asfitted.spec.problem_codes import Code
from asfitted.spec.words import LoadWords, did_you_mean

if TYPE_CHECKING:
    from asfitted.resolve.ledger import Ledger
    from asfitted.resolve.positions import Positions
    from asfitted.resolve.ways import Phase, Seat
    from asfitted.spec.circuits import CircuitWords, PointWords
    from asfitted.spec.load_yaml import SpecPath

NOT_RECORDED = "not recorded"
NO_LOAD = LoadWords()
#: What a point that is no motor may say of one: the starter before it, a machine with one inside.
HOLDS = {STARTER: ("overload", "restart"), "equipment": ("overload", "restart", "starter")}


def kind_of(words: PointWords, path: SpecPath, ledger: Ledger) -> PointKind | None:
    """Return the kind of a point; an unknown one is noted."""
    try:
        return point_kind(words.kind)
    except OutsideTableError:
        message = f'{words.tag}: kind of point "{words.kind}" is not known'
        hint = did_you_mean(words.kind, point_words())
        ledger.problem(Code.NAME, message, (*path, "is"), hint)
        return None


def _poles(words: PointWords, kind: PointKind, phase: Phase, ledger: Ledger) -> int | None:
    if words.poles is not None or "{poles}" not in kind.drawn_as:
        return words.poles
    poles = 4 if phase == "TP" else 2
    ledger.default(
        words.tag, "poles", str(poles), "every live conductor of its circuit is switched"
    )
    return poles


def _gangs(words: PointWords, kind: PointKind, ledger: Ledger) -> int:
    if words.gangs is None and "{gangs}" in kind.drawn_as:
        ledger.default(words.tag, "gangs", "1", "none was given")
    return words.gangs or 1


def _power_factor(words: PointWords, kind: PointKind, ledger: Ledger) -> float:
    if words.power_factor is not None:
        return words.power_factor
    if words.load is not None:
        reason = f"usual for {kind.key} ({kind.provenance}); replace by the rating plate"
        ledger.default(words.tag, "power factor", f"{kind.power_factor:g}", reason)
    return kind.power_factor


def _check_kind(
    words: PointWords, kind: PointKind, phase: Phase, path: SpecPath, ledger: Ledger
) -> None:
    if kind.phases == "3" and phase in ("L1", "L2", "L3", ""):
        message = f"{words.tag} is a three-phase {kind.key} on a single-phase circuit"
        ledger.problem(Code.CIRCUIT, message, (*path, "is"))
    lacks = kind.lacks(rating_a=words.rating or kind.rating_a, fuse_a=words.fuse)
    if lacks and words.state != "existing":
        message = f'{words.tag} lacks "{lacks}"'
        example = "rating: 32 A" if lacks == "rating" else "fuse: 13 A"
        ledger.problem(Code.MISSING, message, path, f"add {example}")
    given = {"overload": words.overload, "restart": words.restart, "starter": words.starter}
    for key, value in given.items():
        may_have = kind.use == "motor" or key in HOLDS.get(kind.key, ())
        if value is not None and not may_have:
            message = f'{words.tag} is no motor or fan, so it has no "{key}"'
            hint = "write it at the motor that the starter serves"
            ledger.problem(Code.CIRCUIT, message, (*path, key), hint)


def point_of(
    words: PointWords,
    path: SpecPath,
    circuit: CircuitWords,
    seat: Seat,
    positions: Positions,
) -> PointServed | None:
    """Return a point, or None when its kind or position cannot be told."""
    ledger = positions.ledger
    kind = kind_of(words, path, ledger)
    default_up_mm = kind.default_height_mm if kind else 0.0
    position = positions.resolve(words.at, (*path, "at"), words.tag, default_up_mm=default_up_mm)
    if kind is None or position is None:
        return None
    _check_kind(words, kind, seat.way.phase, path, ledger)
    rcd = rcd_of(words.rcd, (*path, "RCD"), ledger, words.tag) if words.rcd else None
    if words.rcd and rcd is None:
        message = f'{words.tag}: RCD "{words.rcd.words}" does not say its residual current'
        ledger.problem(Code.CIRCUIT, message, (*path, "RCD"), 'add "30 mA"')
    gangs = _gangs(words, kind, ledger)
    poles = _poles(words, kind, seat.way.phase, ledger)
    rating_a = words.rating if words.rating is not None else kind.rating_a
    described = kind.describe(rating_a=rating_a, gangs=gangs, poles=poles, fuse_a=words.fuse)
    load = words.load or NO_LOAD
    return PointServed(
        tag=words.tag,
        kind=kind.key,
        words=f"{described}, RCD {words.rcd.words}" if words.rcd else described,
        name=words.name or "",
        state=State(words.state or circuit.state or "new"),
        position=position,
        rating_a=rating_a,
        poles=poles,
        gangs=gangs,
        fuse_a=words.fuse,
        ip=words.ip or NOT_RECORDED,
        rcd=rcd,
        load_w=load.power_w,
        load_a=load.current_a,
        power_factor=_power_factor(words, kind, ledger),
        circuit=seat.tag,
        overload_a=words.overload,
        restart=cast("Literal['manual', 'automatic', '']", words.restart or ""),
        plate=plate_of(words),
        starter=words.starter or "",
    )
