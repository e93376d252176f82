"""The notes of a single-line diagram: how it is drawn, and what protects people."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.single_line.words import tags_words

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.sheet_model import Model
    from asfitted.layout.single_line.parts import Part

#: More ways than this are not listed: each is marked where it stands.
MOST_LISTED = 6
ADDITIONAL_MA = 30.0  # BS 7671 415.1.1: additional protection by an RCD of 30 mA or less

CALCULATED = (
    "Ib, Iz, drop and Zs under a circuit are calculated: Iz is the least of its cables but those "
    "told as not checked, drop and Zs are at its worst point, at most is the limit of Zs. A "
    "length L is that of the drawn route with its tails."
)
EXISTING = (
    "Existing work is drawn narrow and marked existing. What was not found out reads "
    "not recorded; what could not be worked out reads not checked."
)


def note_sentences(model: Model, parts: Sequence[Part]) -> list[str]:
    """Return the notes of a sheet."""
    return [
        "Drawn dead: all contacts shown open.",
        f"{protective_measure(model)} {additional_protection(model, parts)}".strip(),
        CALCULATED,
        "Given figures and lengths: (m) measured, (d) declared, (a) assumed.",
        EXISTING,
        f"Designed to {model.installation.job.edition}.",
    ]


def protective_measure(model: Model) -> str:
    """Return the protective measure against electric shock, with the earthing system."""
    supply = model.installation.supply
    system = "earthing system not recorded" if supply is None else supply.system
    return f"Protective measure: automatic disconnection of supply (ADS), {system}."


def additional_protection(model: Model, parts: Sequence[Part]) -> str:
    """Return which ways and outlets of a sheet have an RCD of 30 mA or less."""
    installation = model.installation
    circuits = [
        installation.circuits[column.circuit]
        for part in parts
        for column in part.columns
        if column.circuit
    ]
    ways = [c.tag for c in circuits if c.device.rcd and c.device.rcd.idn_ma <= ADDITIONAL_MA]
    outlets = [
        tag
        for circuit in circuits
        for tag in circuit.points
        if (rcd := installation.points[tag].rcd) is not None and rcd.idn_ma <= ADDITIONAL_MA
    ]
    found = []
    if ways:
        found.append(f"ways {', '.join(ways)}" if len(ways) <= MOST_LISTED else "ways so marked")
    if outlets:
        listed = tags_words(outlets) if len(outlets) <= MOST_LISTED else "outlets so marked"
        found.append(f"in outlets {listed}" if len(outlets) <= MOST_LISTED else f"in {listed}")
    if not circuits:
        return ""
    if not found:
        return "No RCD for additional protection on the circuits of this sheet."
    return f"RCD 30 mA additional protection: {'; '.join(found)}."
