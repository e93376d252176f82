"""Conduit for single-core conductors."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

from asfitted.calculate.containment.containment_fill import smallest_by_term, total_term
from asfitted.calculate.working import Step
from asfitted.quantities import LENGTH_M, NUMBER
from asfitted.quick_sums._conductors import COUNTS, SIZES, counted
from asfitted.quick_sums._sum import Example, Input, QuickSum
from asfitted.reference import containment

if TYPE_CHECKING:
    from asfitted.quick_sums._sum import Values

DIAMETERS_MM = (16.0, 20.0, 25.0, 32.0)
SHORT_M = 3.0


def work(given: Values) -> tuple[Step, ...]:
    """Return the term of the smallest conduit, then the sum of terms."""
    pairs = counted(given)
    length, bends = (
        given.number("length"),
        round(given.number("bends")) if given.has("bends") else 0,
    )
    short = bends == 0 and length <= SHORT_M
    kind: Literal["conduit_short", "conduit_long"] = "conduit_short" if short else "conduit_long"
    terms = [containment.cable_term(size, containment=kind) for _, size in pairs]
    total = total_term([(n, t.value) for (n, _), t in zip(pairs, terms, strict=True)])
    held = {f"{d:g}": containment.conduit_term(d, length, bends).value for d in DIAMETERS_MM}
    smallest = smallest_by_term(total, terms=held)
    source = f"{terms[0].source} ({terms[0].provenance})"
    sum_words = " + ".join(f"{n} × {t.value:g}" for (n, _), t in zip(pairs, terms, strict=True))
    run = f"{length:g} m with {bends} bend(s)"
    return (
        Step(
            "term",
            f"of {smallest} mm conduit, {run}, the smallest that holds them",
            "",
            "",
            held[smallest],
            "",
            source,
        ),
        Step(
            symbol="sum",
            words=f"of the terms of the conductors: {smallest} mm conduit",
            formula="sum(n × term)",
            substituted=sum_words,
            value=total,
            unit="",
            source=source,
        ),
    )


SUM = QuickSum(
    name="conduit-fill",
    title="Conduit for single-core conductors",
    inputs=(
        SIZES,
        COUNTS,
        Input("length", "length between draw-in points", LENGTH_M),
        Input("bends", "right angles or double sets in it, 0 to 4", NUMBER, default=""),
    ),
    work=work,
    example=Example(
        {"sizes": "4", "counts": "6", "length": "3 m"},
        348,
        1e-9,
        "wholesaler's conduit and trunking capacity chart: six 4 mm² in 3 m go in 20 mm (seen)",
    ),
)
