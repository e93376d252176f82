"""Demand of circuits of one kind after diversity."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.diversity import diversified_current_a
from asfitted.calculate.working import Step
from asfitted.quick_sums._kinds import CURRENT_OR_NONE
from asfitted.quick_sums._sum import Example, Input, QuickSum
from asfitted.reference.diversity import PREMISES, allowance, load_kinds

if TYPE_CHECKING:
    from asfitted.quick_sums._sum import Values
    from asfitted.reference.diversity import Allowance

KINDS = {name.replace("_", " "): name for name in load_kinds()}
PLACES = {name.replace("_", " "): name for name in PREMISES}


def _formula(rule: Allowance) -> str:
    if rule.full_to_a:
        return f"first {rule.full_to_a:g} A + {rule.rest_percent:g} % of the rest"
    return (
        f"{rule.first_percent:g} % of the largest + {rule.second_percent:g} % of the second + "
        f"{rule.others_percent:g} % of the others"
    )


def work(given: Values) -> tuple[Step, ...]:
    """Return the demand."""
    kind, place = KINDS[given.word("kind")], PLACES[given.word("premises")]
    currents = given.numbers("currents")
    rule = allowance(kind, place)
    return (
        Step(
            symbol="I",
            words=f"demand of {given.word('kind')}, {given.word('premises')}",
            formula=_formula(rule),
            substituted=" and ".join(f"{amps:g} A" for amps in currents),
            value=diversified_current_a(kind, premises=place, currents_a=currents),
            unit="A",
            source=f"{rule.source} ({rule.provenance})",
        ),
    )


SUM = QuickSum(
    name="diversity",
    title="Demand of circuits of one kind after diversity",
    inputs=(
        Input("kind", "kind of load", choices=tuple(KINDS)),
        Input("premises", "kind of premises", choices=tuple(PLACES)),
        Input("currents", "connected current of each circuit", CURRENT_OR_NONE, many=True),
    ),
    work=work,
    example=Example(
        {"kind": "cooking", "premises": "dwelling", "currents": "66 A"},
        26.8,
        0.01,
        "electricians' forum thread, household cooker of 66 A: 10 + 0.3 x (66 - 10) (seen)",
    ),
)
