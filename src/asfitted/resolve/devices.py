"""Device phrases to devices: kind, standard and poles filled in where the phrase implies them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal, cast

from asfitted.resolve.installation import Device, Rcd
from asfitted.spec.problem_codes import Code

if TYPE_CHECKING:
    from asfitted.resolve.ledger import Ledger
    from asfitted.spec.device_words import DeviceWords
    from asfitted.spec.load_yaml import SpecPath

Kind = Literal["mcb", "rcbo", "fuse", "mccb", "switch-disconnector", "rcd"]
Poles = Literal["SP", "SP+N", "DP", "TP", "TP+N", "4P"]

STANDARDS: dict[str, str] = {
    "mcb": "BS EN 60898",
    "rcbo": "BS EN 61009",
    "rcd": "BS EN 61008",
    "mccb": "BS EN 60947-2",
    "switch-disconnector": "BS EN 60947-3",
}
_POLES: dict[str, Poles] = {
    "SP": "SP",
    "1P": "SP",
    "SP+N": "SP+N",
    "SPN": "SP+N",
    "DP": "DP",
    "2P": "DP",
    "TP": "TP",
    "3P": "TP",
    "TP+N": "TP+N",
    "TPN": "TP+N",
    "4P": "4P",
}


def _kind_of(words: DeviceWords) -> Kind | None:
    if words.kind == "isolator":
        return "switch-disconnector"
    if words.kind:
        return cast("Kind", words.kind)
    if words.curve:
        return "rcbo" if words.idn_ma else "mcb"
    if words.standard.startswith(("BS 88", "BS 1361", "BS 3036", "BS 1362")):
        return "fuse"
    by_standard = {standard: kind for kind, standard in STANDARDS.items()}
    if words.standard in by_standard:
        return cast("Kind", by_standard[words.standard])
    return "rcd" if words.idn_ma else None


def _poles_of(kind: Kind, words: DeviceWords, *, three_phase: bool) -> Poles:
    if words.poles:
        return _POLES[words.poles]
    if kind in {"switch-disconnector", "rcd"}:
        return "4P" if three_phase else "DP"
    if kind == "rcbo":
        return "TP+N" if three_phase else "SP+N"
    return "TP" if three_phase else "SP"


def rcd_of(words: DeviceWords, path: SpecPath, ledger: Ledger, subject: str) -> Rcd | None:
    """Return the residual part of a device phrase; None when there is none.

    A type that is not written is noted as a problem: it decides what the device can see.
    """
    if words.idn_ma is None:
        return None
    if not words.rcd_type:
        message = f'{subject}: RCD "{words.words}" does not say its type'
        ledger.problem(Code.CIRCUIT, message, path, 'add "type A" (or AC, F, B)')
    return Rcd(words.idn_ma, words.rcd_type or "A", words.rating_a, words.delayed)


def _printed(words: DeviceWords) -> str:
    """Return the phrase without the word that says how it is known."""
    text = words.words
    return text.removesuffix(words.basis).strip() if words.basis else text


def device_of(
    words: DeviceWords, path: SpecPath, ledger: Ledger, subject: str, *, three_phase: bool
) -> Device | None:
    """Return the device that a phrase names.

    Poles that are not written follow the way or supply that the device stands in, and are recorded
    as a default. None when the kind of device cannot be told; that is noted as a problem.
    """
    kind = _kind_of(words)
    if kind is None:
        message = f'{subject}: "{words.words}" does not say what device it is'
        hint = 'add "BS 88-3", a letter B, C or D, "switch-disconnector" or "MCCB"'
        ledger.problem(Code.CIRCUIT, message, path, hint)
        return None
    poles = _poles_of(kind, words, three_phase=three_phase)
    if not words.poles:
        reason = "not given; taken as of its way or supply"
        ledger.default(subject, f"poles of {_printed(words)}", poles, reason)
    standard = words.standard.upper() or STANDARDS.get(kind, "")
    if not standard:
        message = f'{subject}: fuse "{words.words}" does not say its standard'
        ledger.problem(Code.CIRCUIT, message, path, 'add "BS 88-3" or "BS 88-2"')
        return None
    _check_settings(kind, words, path, ledger, subject)
    return Device(
        words=_printed(words),
        kind=kind,
        standard=standard,
        rating_a=words.ir_a or words.rating_a or 0.0,
        poles=poles,
        curve=words.curve,
        icn_ka=words.icn_ka,
        rcd=rcd_of(words, path, ledger, subject),
        frame_a=words.rating_a if words.ir_a else None,
        im_a=words.im_a,
        afdd=words.afdd,
    )


def _check_settings(
    kind: Kind, words: DeviceWords, path: SpecPath, ledger: Ledger, subject: str
) -> None:
    """Note settings on a device that has none, and a setting above the rating of the frame."""
    if (words.ir_a or words.im_a) and kind != "mccb":
        message = f'{subject}: "{words.words}" has settings Ir or Im, which a {kind} has not'
        ledger.problem(Code.CIRCUIT, message, path, 'write "MCCB" if it is one')
    if words.ir_a and words.rating_a and words.ir_a > words.rating_a:
        message = f"{subject}: Ir {words.ir_a:g} A is above the rating {words.rating_a:g} A"
        ledger.problem(Code.CIRCUIT, message, path, "write the rating of the frame first")
