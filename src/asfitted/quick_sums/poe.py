"""Power left at a device fed over its data cable."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.data.poe import device_power_w
from asfitted.calculate.working import Step
from asfitted.quick_sums._sum import Example, Input, QuickSum
from asfitted.reference import cctv

if TYPE_CHECKING:
    from asfitted.quick_sums._sum import Values


def work(given: Values) -> tuple[Step, ...]:
    """Return the power at the device after a channel of 100 m."""
    kind = cctv.poe_type(int(given.word("type")))
    amps = kind.current_ma / 1000
    source = f"{kind.source} ({kind.provenance})"
    return (
        Step("P source", f"power of a type {kind.number} port", "", "", kind.source_w, "W", source),
        Step(
            symbol="P",
            words="power left at the device after a 100 m channel",
            formula="P source - I² × R",
            substituted=f"{kind.source_w:g} W - ({amps:g} A)² × {kind.channel_ohm:g} Ω",
            value=device_power_w(kind.source_w, current_a=amps, channel_ohm=kind.channel_ohm),
            unit="W",
            source=source,
        ),
    )


SUM = QuickSum(
    name="poe",
    title="Power left at a device fed over its data cable",
    inputs=(Input("type", "type of the source, IEEE 802.3", choices=("1", "2")),),
    work=work,
    example=Example(
        {"type": "1"},
        12.95,
        0.001,
        'application note "Calculating PoE power loss due to cable resistance" (seen)',
    ),
)
