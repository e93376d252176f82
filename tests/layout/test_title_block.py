"""The title block: every field filled or "not recorded", nothing outside, figures with basis."""

from __future__ import annotations

import dataclasses

from asfitted.layout.lettering import box_of
from asfitted.layout.sheet_layout import Text
from asfitted.layout.title_block import (
    TitleFacts,
    supply_words,
    title_block_box,
    title_block_items,
)
from asfitted.resolve.installation import Basis, Job, Known, Supply

JOB = Job(
    number="J1",
    title="A job with a title long enough to need its room and a little more than that",
    client="A client with a long name",
    site="A site",
    installer="An installer",
    phone="not recorded",
    designer="D. Signer",
    checker="not recorded",
    edition="BS 7671:2018+A4:2026",
    date="2026-11-20",
    revision="P01",
    status="For construction",
    description="",
)
SUPPLY = Supply(
    system="TN-C-S",
    phases=3,
    u0_v=230,
    line_v=400,
    frequency_hz=50,
    ze_ohm=Known(0.15, "ohm", Basis.MEASURED),
    ipf_ka=None,
    cut_out=None,
    cut_out_basis=None,
    tails_mm2=25,
    tails_m=2,
    earthing_conductor_mm2=16,
    bonds=(),
    electrode_ohm=None,
    ambient_c=30,
)
FACTS = TitleFacts(JOB, SUPPLY, "Single-line diagram", "Drawings", "01", 9, "Not to scale", "A3")


def texts(facts: TitleFacts) -> list[Text]:
    return [p for i in title_block_items(facts) for p in i.parts if isinstance(p, Text)]


def test_all_words_lie_inside_the_block_and_apart() -> None:
    for paper in ("A3", "A4", "A4 portrait"):
        facts = dataclasses.replace(FACTS, paper=paper)
        boxes = [box_of(t) for t in texts(facts)]
        outline = title_block_box(facts.paper)
        for i, one in enumerate(boxes):
            assert outline.holds(one)
            assert not any(one.meets(other) for other in boxes[i + 1 :])


def test_a_missing_fact_reads_not_recorded() -> None:
    words = [
        t.text for t in texts(dataclasses.replace(FACTS, job=dataclasses.replace(JOB, site="")))
    ]
    assert "not recorded" in words
    assert "" not in words


def test_supply_figures_say_how_they_are_known() -> None:
    said = supply_words(SUPPLY)
    assert "Ze 0.15 Ω (m)" in said
    assert "Ipf not recorded" in said
    assert "cut-out not recorded" in said
    assert supply_words(None) == "Supply: not part of this job"


def test_the_caution_stands_on_every_sheet() -> None:
    said = " ".join(t.text for t in texts(FACTS))
    for words in ("not a certificate", "competent person", "BS 7671", "prove dead"):
        assert words in said


def test_the_count_of_sheets_stands_whole_in_the_narrow_block() -> None:
    def field(revision: str, paper: str) -> str:
        job = dataclasses.replace(FACTS.job, revision=revision)
        facts = dataclasses.replace(FACTS, job=job, number="084", total=105, paper=paper)  # type: ignore[arg-type]
        (item,) = [i for i in title_block_items(facts) if i.ident == "title-block:revision, sheet"]
        return " ".join(p.text for p in item.parts if isinstance(p, Text))

    assert field("P01-S", "A3") == "P01-S, 84 of 105"
    assert field("P01-S", "A4 portrait") == "P01-S, 84/105"
    assert field("P01 as marked up", "A4 portrait") == "84 of 105"
