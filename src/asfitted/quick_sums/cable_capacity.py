"""Capacity of a cable where it runs."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.current_capacity import combined_factor, corrected_capacity_a
from asfitted.calculate.working import Step
from asfitted.quick_sums._kinds import AMBIENT, FAMILY, METHOD, PHASES, SIZE
from asfitted.quick_sums._sum import Example, Input, QuickSum
from asfitted.reference import cables, factors

if TYPE_CHECKING:
    from asfitted.quick_sums._sum import Values
    from asfitted.reference.figure import Figure

GROUND_C = 20.0
ARRANGEMENTS = tuple(name.replace("_", " ") for name in factors.ARRANGEMENTS)


def _step(symbol: str, words: str, figure: Figure) -> Step:
    note = f"; {figure.note}" if figure.note else ""
    source = f"{figure.source} ({figure.provenance}){note}"
    return Step(symbol, words, "", "", figure.value, figure.unit, source)


def work(given: Values) -> tuple[Step, ...]:
    """Return It, Ca, Cg and Iz."""
    family = cables.family(given.word("family")).id
    size, method = given.number("size"), given.word("method")
    loaded = 3 if given.word("phases") == "3" else 2
    insulation_c = cables.rating_insulation_c(family)
    table = cables.tabulated_capacity(family, size, method, loaded)
    if method == "D":
        air, where = factors.ground(insulation_c, GROUND_C), f"ground at {GROUND_C:g} °C"
    else:
        ambient = given.number("ambient")
        air, where = factors.ambient_air(insulation_c, ambient), f"air at {ambient:g} °C"
    group = given.count("group")
    lay = given.word("arrangement")
    together = factors.grouping(lay.replace(" ", "_"), group)
    product = combined_factor(ca=air.value, cg=together.value)
    lie = f"{group} circuits, {lay}" if group > 1 else "alone"
    return (
        _step("It", f"tabulated capacity, {size:g} mm², method {method}, {loaded} loaded", table),
        _step("Ca", where, air),
        _step("Cg", lie, together),
        Step(
            symbol="Iz",
            words="capacity where it runs; the worst part of its way governs",
            formula="It × Ca × Cg",
            substituted=f"{table.value:g} A × {air.value:g} × {together.value:g}",
            value=corrected_capacity_a(table.value, factor=product),
            unit="A",
            source=f"BS 7671 Appendix 4, 5.1; 523.8; {table.source} ({table.provenance})",
        ),
    )


SUM = QuickSum(
    name="cable-capacity",
    title="Capacity of a cable where it runs",
    inputs=(
        FAMILY,
        SIZE,
        METHOD,
        PHASES,
        AMBIENT,
        Input("group", "circuits together, this one counted", is_count=True, default="1"),
        Input("arrangement", "how they lie", choices=ARRANGEMENTS, default="bunched"),
    ),
    work=work,
    example=Example(
        {"family": "multicore PVC", "size": "10 mm2", "method": "C", "phases": "3"},
        57,
        1e-9,
        "BS 7671 Table 4D2A, 10 mm², method C, three-phase, as used in a teaching sheet (seen)",
    ),
    note="Thermal insulation, burial and a BS 3036 fuse lower it further: see required-capacity.",
)
