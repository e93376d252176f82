"""Disk space and recording rate of cameras."""

from __future__ import annotations

from asfitted.calculate.ranges import require_above_zero, require_fraction, require_not_negative

SECONDS_PER_DAY = 86_400


def storage_gb(
    bit_rate_mbit_s: float, *, days: float, cameras: int = 1, record_fraction: float = 1.0
) -> float:
    """Return the recorded amount, GB of 1e9 bytes.

    GB = rate / 8 x 86400 x days x cameras x fraction / 1000

    Args:
        bit_rate_mbit_s: Bit rate of one camera, Mbit/s, above 0.
        days: Time kept, days, above 0.
        cameras: Number of such cameras, 0 or more.
        record_fraction: Share of the time that is recorded, ratio, above 0 to 1.

    Returns:
        Amount, GB.

    Raises:
        InputOutOfRangeError: an input lies outside its range.

    Source:
        Arithmetic of decimal units.

    Example:
        >>> round(storage_gb(4, days=31, cameras=4))
        5357
    """
    require_above_zero(bit_rate_mbit_s=bit_rate_mbit_s, days=days)
    require_not_negative(cameras=cameras)
    require_fraction(record_fraction=record_fraction)
    return bit_rate_mbit_s / 8.0 * SECONDS_PER_DAY * days * cameras * record_fraction / 1000.0


def disk_tb(recorded_gb: float, *, formatted_share: float = 0.93, margin: float = 1.1) -> float:
    """Return the disk to buy, TB of 1e12 bytes as printed on its label.

    TB = GB x margin / (1000 x share left after formatting)

    Args:
        recorded_gb: Recorded amount, GB, 0 or more.
        formatted_share: Share of the labelled size that can be used, ratio, above 0 to 1.
        margin: Factor for more detail at night and the like, ratio, above 0.

    Returns:
        Size, TB.

    Raises:
        InputOutOfRangeError: an input lies outside its range.

    Source:
        Common practice; a binary terabyte is 1.0995 decimal ones.

    Example:
        >>> round(disk_tb(5357, margin=1.0), 2)
        5.76
    """
    require_not_negative(recorded_gb=recorded_gb)
    require_fraction(formatted_share=formatted_share)
    require_above_zero(margin=margin)
    return recorded_gb * margin / (1000.0 * formatted_share)


def days_kept(
    disk_size_tb: float, *, total_rate_mbit_s: float, formatted_share: float = 0.93
) -> float:
    """Return how many days a disk keeps, always recording.

    days = TB x 1e6 x share / (rate / 8 x 86400)

    Args:
        disk_size_tb: Labelled size, TB, above 0.
        total_rate_mbit_s: Bit rate of all cameras together, Mbit/s, above 0.
        formatted_share: Share of the labelled size that can be used, ratio, above 0 to 1.

    Returns:
        Time, days; not rounded.

    Raises:
        InputOutOfRangeError: an input lies outside its range.

    Source:
        Arithmetic of decimal units.

    Example:
        >>> round(days_kept(6, total_rate_mbit_s=16), 1)
        32.3
    """
    require_above_zero(disk_size_tb=disk_size_tb, total_rate_mbit_s=total_rate_mbit_s)
    require_fraction(formatted_share=formatted_share)
    return disk_size_tb * 1e6 * formatted_share / (total_rate_mbit_s / 8.0 * SECONDS_PER_DAY)


def binary_from_decimal(amount: float) -> float:
    """Return an amount of decimal MB as recorders print GB, divided by 1024.

    Args:
        amount: Amount, MB of 1e6 bytes, 0 or more.

    Returns:
        Amount in units of 1024 MB.

    Raises:
        InputOutOfRangeError: the amount is below 0.

    Source:
        Common practice of recorder makers; mixes decimal and binary units.

    Example:
        >>> round(binary_from_decimal(16200), 2)
        15.82
    """
    require_not_negative(amount=amount)
    return amount / 1024.0
