"""Disk for a recorder."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.data.storage import disk_tb, storage_gb
from asfitted.calculate.working import Step
from asfitted.quantities import TIME_DAYS
from asfitted.quick_sums._kinds import BIT_RATE
from asfitted.quick_sums._sum import Example, Input, QuickSum

if TYPE_CHECKING:
    from asfitted.quick_sums._sum import Values


def work(given: Values) -> tuple[Step, ...]:
    """Return the disk to fit, then the amount recorded."""
    rate, days, cameras = given.number("rate"), given.number("days"), given.count("cameras")
    amount = storage_gb(rate, days=days, cameras=cameras)
    return (
        Step(
            "TB",
            "disk as labelled, 10 % margin, 93 % left after formatting",
            "GB × 1.1 / (1000 × 0.93)",
            f"{amount:.4g} GB × 1.1 / (1000 × 0.93)",
            disk_tb(amount),
            "TB",
            "common practice",
        ),
        Step(
            symbol="GB",
            words="recorded, always on; GB of 10⁹ bytes",
            formula="rate / 8 × 86400 × days × cameras / 1000",
            substituted=f"{rate:g} Mbit/s / 8 × 86400 × {days:g} × {cameras} / 1000",
            value=amount,
            unit="GB",
            source="bits to bytes; the rate is the cameras' own setting",
        ),
    )


SUM = QuickSum(
    name="storage",
    title="Disk for a recorder",
    inputs=(
        Input("rate", "bit rate of one camera", BIT_RATE),
        Input("days", "time to keep", TIME_DAYS),
        Input("cameras", "number of cameras", is_count=True, default="1"),
    ),
    work=work,
    example=Example(
        {"rate": "1.024 Mbit/s", "days": "1"},
        11.06,
        0.06,
        'handout "CCTV storage calculation formula", published as 11 GB (seen)',
    ),
)
