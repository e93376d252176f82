"""Find what a name means in a job, and tell its working."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.errors import NotUnderstoodError
from asfitted.explain.circuit import explain_circuit
from asfitted.explain.other_things import explain_board, explain_data_device, explain_run
from asfitted.spec.words import did_you_mean

if TYPE_CHECKING:
    from asfitted.calculate.results import CalculationResults
    from asfitted.check.run import CheckReport
    from asfitted.explain.explanation import Explanation
    from asfitted.resolve.installation import Installation


def _meanings(installation: Installation) -> dict[str, str]:
    """Return every name that can be asked for, and the tag of the thing that it is told under.

    A cable or a point is told with its circuit or data device.
    """
    things = (
        installation.circuits,
        installation.boards,
        installation.data_devices,
        installation.containment,
    )
    found = {tag: tag for group in things for tag in group}
    for point in installation.points.values():
        found.setdefault(point.tag, point.circuit)
    for cable in installation.cables.values():
        found.setdefault(cable.tag, cable.circuit)
    return found


def explain(
    name: str, installation: Installation, results: CalculationResults, report: CheckReport
) -> Explanation:
    """Return the working of the circuit, board, data device or run that a name means.

    Args:
        name: A tag of the job, in any capitals; that of a cable or point means its circuit.
        installation: The job as resolved.
        results: Its figures.
        report: What the rules say of it.

    Raises:
        NotUnderstoodError: no such name; the hint gives the nearest.
    """
    meanings = _meanings(installation)
    by_lower = {key.lower(): tag for key, tag in reversed(meanings.items())}
    tag = by_lower.get(name.strip().lower())
    if tag is None:
        names = (*installation.circuits, *meanings)
        raise NotUnderstoodError(
            f'nothing in this job is named "{name}"', did_you_mean(name, dict.fromkeys(names))
        )
    if tag in installation.circuits:
        return explain_circuit(tag, installation, results, report)
    if tag in installation.boards:
        return explain_board(tag, installation, results, report)
    if tag in installation.containment:
        return explain_run(tag, installation, results, report)
    return explain_data_device(tag, installation, results, report)
