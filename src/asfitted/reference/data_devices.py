"""Outlines of data devices as drawn on an elevation."""

from __future__ import annotations

from asfitted.errors import OutsideTableError
from asfitted.reference.loader import table

_FILE = "data_devices"
_TABLE = "data_device_outlines"


def data_device_outline(kind: str) -> tuple[float, float]:
    """Return width and height in mm of the outline of a kind of data device (common practice).

    Raises:
        OutsideTableError: the kind is not in the table.
    """
    rows = table(_FILE, _TABLE).rows
    for row in rows:
        if row["kind"] == kind:
            return float(row["width"]), float(row["height"])
    known = ", ".join(str(row["kind"]) for row in rows)
    raise OutsideTableError(f"no outline for a data device of kind {kind!r}; known: {known}")
