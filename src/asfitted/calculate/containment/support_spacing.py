"""How far apart the supports of a run may be by the tables, whatever it carries."""

from __future__ import annotations

from types import MappingProxyType
from typing import TYPE_CHECKING, Literal

from asfitted.errors import OutsideTableError
from asfitted.reference import containment

if TYPE_CHECKING:
    from asfitted.resolve.installation import Containment

#: Kinds of run that cables are laid in, by the name that the tables of supports give them.
LAID_IN = MappingProxyType(
    {"perforated tray": "tray", "wire basket": "basket", "cable ladder": "ladder"}
)


def support_spacing_mm(
    run: Containment, direction: Literal["horizontal", "vertical"] = "horizontal"
) -> float | None:
    """Return the greatest spacing of the supports of a run, mm; None where no table has its kind.

    Source: On-Site Guide tables of supports, as ``reference.containment.support_spacing``.
    """
    kind = LAID_IN.get(run.kind, run.kind)
    size = run.width_mm * run.height_mm if "trunking" in kind else run.width_mm
    try:
        return containment.support_spacing(kind, size, direction).value
    except OutsideTableError:
        return None
