"""One cable, one gland: take-off, cable cards and detail sheets of every job say the same."""

from __future__ import annotations

import re
from collections import Counter
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from asfitted.layout.brief.card_words import card_words, looked_up
from asfitted.layout.details.armoured_ends import armoured_ends
from asfitted.layout.details.isolators import isolators
from asfitted.layout.details.outlets import outlets
from asfitted.pipeline import check_job, model_of
from asfitted.reference.cable_family import family

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.layout.sheet_model import Model

SPECS = Path(__file__).parents[2] / "specs"
JOBS = sorted(path.stem for path in SPECS.glob("*.yaml"))
ON_CARD = re.compile(r"gland (\w+) (BW|CW) \S+, tag, shroud, strip A armour (\d+), C cores ≥ (\d+)")
Said = tuple[str, str, str]  # size, bared armour, cores


@pytest.fixture(scope="module")
def models() -> dict[str, Model]:
    return {name: model_of(check_job(SPECS / f"{name}.yaml")) for name in JOBS}


def _on_cards(model: Model) -> Iterator[tuple[tuple[str, str], str, Said]]:
    """Yield cable and end, type and figures of each gland on the cards."""
    looked = looked_up(model)
    for cable in model.installation.cables.values():
        if cable.state != "new" or not family(cable.family).is_armoured:
            continue
        rows = dict(card_words(cable, model, looked).rows)
        for end in (cable.from_end, cable.to_end):
            match = ON_CARD.search(rows.get(f"At {end}") or rows["Ends"])  # told once where equal
            assert match, (cable.tag, end)
            yield (cable.tag, end), match[2], (match[1], match[3], match[4])


@pytest.mark.parametrize("name", JOBS)
def test_take_off_cards_and_details_agree(models: dict[str, Model], name: str) -> None:
    model = models[name]
    off = model.results.take_off
    assert off is not None
    cards = {place: (kind, said) for place, kind, said in _on_cards(model)}
    counted = {
        (g.cable, g.at): (g.kind, (g.size, f"{g.armour_mm:g}", f"{g.core_mm:g}"))
        for g in off.glands
    }
    assert counted == cards
    subject = armoured_ends(model)
    assert (subject is None) == (not cards)
    for row in subject.table.rows if subject else ():
        tags = row[9].replace("\u200b", "").split(", ")
        kinds = [kind for (tag, _), (kind, _) in cards.items() if tag in tags]
        assert {said for (tag, _), (_, said) in cards.items() if tag in tags} == {
            (row[3], row[5], row[6])
        }
        counts = sorted(Counter(kinds).items())
        assert row[8] == ", ".join(f"{count} {kind}" for kind, count in counts)


@pytest.mark.parametrize("name", JOBS)
def test_outlets_and_isolators_name_the_gland_of_the_card(
    models: dict[str, Model], name: str
) -> None:
    model = models[name]
    cards = {at: (said[0], kind) for (_, at), kind, said in _on_cards(model)}
    seen = 0
    for subject, gland in ((outlets(model), 6), (isolators(model), 7)):
        for row in subject.table.rows if subject else ():
            if row[gland] != "–":
                assert row[gland] == " ".join(cards[row[0]])
                seen += 1
    fed = [p for p in model.installation.points.values() if p.tag in cards and p.kind == "isolator"]
    assert seen >= len(fed)
