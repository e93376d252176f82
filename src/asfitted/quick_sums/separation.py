"""Separation of data cables from power."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

from asfitted.calculate.working import Step
from asfitted.quick_sums._sum import Example, Input, QuickSum
from asfitted.reference import segregation

if TYPE_CHECKING:
    from asfitted.quick_sums._sum import Values

IN = {
    "none or plastic": "none_or_plastic",
    "mesh": "mesh",
    "perforated": "perforated",
    "solid metal": "solid_metal",
}


def work(given: Values) -> tuple[Step, ...]:
    """Return the distance to keep."""
    letter = given.word("class")
    inside = cast("segregation.Containment", IN[given.word("containment")])
    circuits = given.count("circuits")
    base = segregation.base_separation_mm(letter, inside)
    factor = segregation.power_factor_p(circuits)
    whole = segregation.separation_mm(letter, inside, circuits)
    return (
        Step(
            symbol="A",
            words=f"separation, data class {letter}, {circuits} circuits of 230 V 20 A",
            formula="S × P",
            substituted=f"{base.value:g} mm × {factor.value:g}",
            value=whole.value,
            unit="mm",
            source=f"{whole.source} ({whole.provenance})",
        ),
    )


SUM = QuickSum(
    name="separation",
    title="Separation of data cables from power",
    inputs=(
        Input(
            "class",
            "class of the data cable: b for unscreened, a for coaxial",
            choices=("a", "b", "c", "d"),
        ),
        Input("containment", "what the power cable runs in", choices=tuple(IN)),
        Input("circuits", "230 V 20 A circuits; a three-phase one counts three", is_count=True),
    ),
    work=work,
    example=Example(
        {"class": "b", "containment": "none or plastic", "circuits": "3"},
        20,
        1e-9,
        "by hand: BS EN 50174-2 base 100 mm for class b, factor 0.2 for up to 3 circuits (seen)",
    ),
)
