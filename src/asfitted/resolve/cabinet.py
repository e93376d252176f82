"""The data cabinet: where it is, its size, and the point that supplies it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.resolve.installation import Cabinet
from asfitted.resolve.rating_plate import plate_of
from asfitted.spec.problem_codes import Code

if TYPE_CHECKING:
    from asfitted.resolve.ledger import Ledger
    from asfitted.resolve.positions import Positions
    from asfitted.spec.data import CabinetWords, DataWords
    from asfitted.spec.load_yaml import SpecPath

CABINET_SIZE_MM = (600.0, 400.0)  # common practice


def cabinet_of(words: DataWords, positions: Positions) -> Cabinet | None:
    """Return the cabinet, None when the job has none."""
    if words.cabinet is None:
        return None
    ledger, path = positions.ledger, ("data", "cabinet")
    tag = words.cabinet.tag
    ledger.claim(tag, path)
    position = positions.resolve(words.cabinet.at, (*path, "at"), tag)
    size_mm = words.cabinet.size or CABINET_SIZE_MM
    if words.cabinet.size is None:
        written = f"{size_mm[0]:g} × {size_mm[1]:g} mm"
        ledger.default(tag, "size", written, "usual size (common practice)")
    fed_from = _feeding_point(words.cabinet, path, ledger)
    plate = plate_of(words.cabinet)
    return Cabinet(tag, position, *size_mm, fed_from, plate) if position else None


def _feeding_point(words: CabinetWords, path: SpecPath, ledger: Ledger) -> str:
    """Return the tag of the point that supplies the cabinet, "" when it is not recorded."""
    points = [point.tag for circuit in ledger.loaded.spec.circuits for point in circuit.points]
    if words.fed_from is not None and words.fed_from not in points:
        ledger.unknown(Code.NAME, "point", words.fed_from, points, (*path, "fed from"))
        return ""
    return words.fed_from or ""
