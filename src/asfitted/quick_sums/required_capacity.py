"""Least tabulated capacity of a cable."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.current_capacity import combined_factor, required_capacity_a
from asfitted.calculate.working import Step
from asfitted.quantities import CURRENT_A, NUMBER
from asfitted.quick_sums._sum import Example, Input, QuickSum

if TYPE_CHECKING:
    from asfitted.quick_sums._sum import Values

FACTORS = {
    "ca": "temperature of the surroundings",
    "cg": "grouping",
    "ci": "thermal insulation",
    "cd": "depth of burial",
    "cs": "soil",
    "cc": "0.725 for a fuse to BS 3036, 0.9 for a buried cable",
}


def work(given: Values) -> tuple[Step, ...]:
    """Return It,min from In and the factors."""
    factors = {name: given.number(name) for name in FACTORS}
    product = combined_factor(**factors)
    rating = given.number("rating")
    used = {n: v for n, v in factors.items() if v != 1.0} or {"ca": 1.0}
    symbols = " × ".join(name.capitalize() for name in used)
    values = " × ".join(f"{value:g}" for value in used.values())
    return (
        Step(
            symbol="It,min",
            words="least tabulated capacity; compare it unrounded",
            formula=f"In / ({symbols})",
            substituted=f"{rating:g} A / ({values})",
            value=required_capacity_a(rating, factor=product),
            unit="A",
            source="BS 7671 Appendix 4, 5.1",
        ),
    )


SUM = QuickSum(
    name="required-capacity",
    title="Least tabulated capacity for a device and its rating factors",
    inputs=(
        Input("rating", "rated current In of the device", CURRENT_A),
        *(Input(name, f"factor: {words}", NUMBER, default="1") for name, words in FACTORS.items()),
    ),
    work=work,
    example=Example(
        {"rating": "32 A", "ca": "0.94"},
        34.04,
        0.01,
        "teaching sheet on sizing cable, house extension sub-main, BS 7671 Table 4D1A (seen)",
    ),
)
