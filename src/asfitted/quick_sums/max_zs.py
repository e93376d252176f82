"""Greatest loop impedance for a device."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.earth_fault_loop import measured_limit_ohm
from asfitted.calculate.working import Step
from asfitted.errors import InputOutOfRangeError
from asfitted.quantities import CURRENT_A
from asfitted.quick_sums._kinds import TIME_S, U0
from asfitted.quick_sums._sum import Example, Input, QuickSum
from asfitted.reference import devices

if TYPE_CHECKING:
    from asfitted.quick_sums._sum import Values

CURVES = ("B", "C", "D")


def work(given: Values) -> tuple[Step, ...]:
    """Return the greatest reading, cold, then the greatest Zs."""
    kind, rating = given.word("device"), given.number("rating")
    time, u0 = given.number("time"), given.number("u0")
    curve = kind if kind in CURVES else ""
    standard = "BS EN 60898" if curve else kind
    if not curve and kind not in devices.FUSES:
        raise InputOutOfRangeError(f"{kind} does not disconnect an overcurrent")
    limit = devices.maximum_zs(standard, curve, rating, time, u0)
    current = devices.current_for_disconnection(standard, curve, rating, time)
    cold = devices.measured_zs_factor()
    source = f"{limit.source} ({limit.provenance})"
    return (
        Step(
            "Ia",
            f"current that disconnects in {time:g} s",
            "",
            "",
            current.value,
            "A",
            f"{current.source} ({current.provenance})",
        ),
        Step(
            symbol="Zs read",
            words="greatest reading with the conductors cold",
            formula="factor × Zs max",
            substituted=f"{cold.value:g} × {limit.value:.4f} Ω",
            value=measured_limit_ohm(limit.value, factor=cold.value),
            unit="Ω",
            source=f"{cold.source} ({cold.provenance})",
        ),
        Step(
            symbol="Zs max",
            words=f"greatest Zs for {curve or kind + ' '}{rating:g} A in {time:g} s",
            formula="Cmin × U0 / Ia",
            substituted=f"{devices.C_MIN:g} × {u0:g} V / {current.value:.4g} A",
            value=limit.value,
            unit="Ω",
            source=source,
        ),
    )


SUM = QuickSum(
    name="max-zs",
    title="Greatest earth fault loop impedance for a device",
    inputs=(
        Input(
            "device",
            "type of breaker, or standard of fuse",
            choices=(*CURVES, "BS 88-2", "BS 88-3", "BS 3036", "BS 1362"),
        ),
        Input("rating", "rated current In", CURRENT_A),
        Input("time", "longest time to disconnect", TIME_S, default="0.4 s"),
        U0,
    ),
    work=work,
    example=Example(
        {"device": "B", "rating": "32 A"},
        1.37,
        0.006,
        "BS 7671:2018 Table 41.3, 32 A type B; 1.37 Ω also seen on a page (memory)",
    ),
)
