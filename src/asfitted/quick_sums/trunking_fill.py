"""Trunking for single-core conductors."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.containment.containment_fill import smallest_by_term, total_term
from asfitted.calculate.working import Step
from asfitted.errors import OutsideTableError
from asfitted.quick_sums._conductors import COUNTS, SIZES, counted
from asfitted.quick_sums._kinds import PERCENT
from asfitted.quick_sums._sum import Example, Input, QuickSum
from asfitted.reference import containment

if TYPE_CHECKING:
    from asfitted.quick_sums._sum import Values


def _terms() -> dict[str, float]:
    found = {}
    for size in containment.stock("steel trunking").sizes:
        try:
            found[size] = containment.trunking_term(size).value
        except OutsideTableError:
            continue
    return found


def work(given: Values) -> tuple[Step, ...]:
    """Return the term of the smallest stock trunking, then the sum of terms."""
    pairs = counted(given)
    terms = [containment.cable_term(size) for _, size in pairs]
    spare = given.number("spare")
    total = total_term(
        [(n, t.value) for (n, _), t in zip(pairs, terms, strict=True)], spare_percent=spare
    )
    held = _terms()
    smallest = smallest_by_term(total, terms=held)
    source = f"{terms[0].source} ({terms[0].provenance})"
    sum_words = " + ".join(f"{n} × {t.value:g}" for (n, _), t in zip(pairs, terms, strict=True))
    return (
        Step(
            "term",
            f"of {smallest} mm steel trunking, the smallest that holds them",
            "",
            "",
            held[smallest],
            "",
            source,
        ),
        Step(
            symbol="sum",
            words=f"of the terms of PVC singles: {smallest} mm trunking",
            formula="sum(n × term) × (1 + spare / 100)",
            substituted=f"({sum_words}) × (1 + {spare:g} / 100)",
            value=total,
            unit="",
            source=source,
        ),
    )


SUM = QuickSum(
    name="trunking-fill",
    title="Trunking for PVC single-core conductors",
    inputs=(SIZES, COUNTS, Input("spare", "room to add", PERCENT, default="0 %")),
    work=work,
    example=Example(
        {"sizes": "1.5, 2.5", "counts": "30, 50", "spare": "10 %"},
        976.8,
        0.1,
        "by hand: (30 x 8.6 + 50 x 12.6) x 1.1, terms of On-Site Guide Appendix E (memory)",
    ),
)
