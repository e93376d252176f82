"""Width of tray for cables in one layer."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.containment.containment_fill import stock_width_mm, tray_width_mm
from asfitted.calculate.working import Step
from asfitted.quick_sums._kinds import DIAMETER_MM, PERCENT
from asfitted.quick_sums._sum import Example, Input, QuickSum
from asfitted.reference import containment

if TYPE_CHECKING:
    from asfitted.quick_sums._sum import Values


def work(given: Values) -> tuple[Step, ...]:
    """Return the stock width, then the least width."""
    diameters, spare = given.numbers("diameters"), given.number("spare") / 100
    edge = containment.edge_allowance_mm()
    least = tray_width_mm(diameters, edge_mm=edge.value, spare_fraction=spare)
    stock = containment.stock("medium tray")
    return (
        Step(
            "order",
            "next stock width of medium tray",
            "",
            "",
            stock_width_mm(least, widths_mm=stock.widths_mm),
            "mm",
            f"{stock.source} ({stock.provenance})",
        ),
        Step(
            symbol="W",
            words="least width in one layer, touching",
            formula="(sum of diameters + 2 edges) / (1 - spare)",
            substituted=f"({sum(diameters):g} + 2 × {edge.value:g}) mm / (1 - {spare:g})",
            value=least,
            unit="mm",
            source=f"{edge.source} ({edge.provenance})",
        ),
    )


SUM = QuickSum(
    name="tray-width",
    title="Width of tray for cables in one layer",
    inputs=(
        Input("diameters", "overall diameter of each cable", DIAMETER_MM, many=True),
        Input("spare", "room to keep free", PERCENT, default="25 %"),
    ),
    work=work,
    example=Example(
        {"diameters": "20, 15, 15", "spare": "20 %"},
        87.5,
        0.001,
        "by hand: (20 + 15 + 15 + 2 x 10) / (1 - 0.2), edges of 10 mm (common practice)",
    ),
)
