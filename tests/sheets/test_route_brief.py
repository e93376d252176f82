"""Cards, labels and cut list of the pottery say the same, read from the texts of the sheets."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import pytest

from asfitted.layout.figures import metres
from asfitted.layout.sheet_layout import Text
from asfitted.layout.sheet_model import Numbers
from asfitted.sheets import cut_list, labels, materials, route_brief

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.sheet_layout import Item
    from asfitted.layout.sheet_model import Content, Model, SheetPlan
    from asfitted.sheets import SheetKind

    Models = dict[str, Model]


def built(kind: SheetKind, model: Model) -> list[Content]:
    plans = kind.plan(model)
    return [kind.build(plan, model, numbered(plans)) for plan in plans]


def numbered(plans: Sequence[SheetPlan]) -> Numbers:
    places = enumerate(plans, start=1)
    return Numbers({key: f"{i:02d}" for i, plan in places for key in (plan.key, *plan.also)})


def said(item: Item) -> str:
    return " ".join(part.text for part in item.parts if isinstance(part, Text))


def words_by_ident(pages: list[Content]) -> dict[str, str]:
    return {item.ident: said(item) for page in pages for item in page.items}


@pytest.fixture(scope="module")
def model(demo_models: Models) -> Model:
    return demo_models["pottery-studio"]


@pytest.fixture(scope="module")
def brief(model: Model) -> list[Content]:
    return built(route_brief, model)


def test_tag_size_and_length_are_the_same_on_card_label_and_cut_list(
    model: Model, brief: list[Content]
) -> None:
    cards = words_by_ident(brief)
    cuts = words_by_ident(built(cut_list, model))
    ends = words_by_ident(built(labels, model))
    new = [c for c in model.installation.cables.values() if c.state == "new"]
    assert len(new) == 29
    for cable in new:
        route, figures = model.results.routes[cable.tag], model.results.cables.get(cable.tag)
        size = figures.words if figures else model.results.data[cable.to_end].medium
        head, row = cards[f"card:{cable.tag}:head"], cuts[f"cut-list:{cable.tag}"]
        both = [w for ident, w in ends.items() if ident.startswith(f"label:{cable.tag}@")]
        start = cable.circuit if cable.from_end.startswith("DB") else cable.from_end
        line = f"{start} to {cable.to_end}"
        assert head == f"{cable.tag} {line} {size} cut {metres(route.cut_m)}"
        assert row.startswith(f"{cable.tag} ")
        assert size in row
        assert metres(route.cut_m) in row
        assert len(both) == 2
        assert all(line in text for text in both)
        assert all(text.startswith(f"{cable.tag} ") and size in text for text in both)


def test_the_sum_on_a_card_adds_up_to_what_is_cut(model: Model, brief: list[Content]) -> None:
    cards = words_by_ident(brief)
    for cable in model.installation.cables.values():
        if cable.state != "new":
            continue
        text = cards[f"card:{cable.tag}:words"]
        terms, total = re.search(r"Cut (.+?) = ([\d.]+) m", text).groups()  # type: ignore[union-attr]
        figures = [float(term.split()[-1]) for term in terms.split(" + ")]
        assert sum(figures) == pytest.approx(float(total), abs=1e-6), cable.tag


def test_the_way_of_a_sum_is_what_the_rows_of_the_way_add_up_to(
    model: Model, brief: list[Content]
) -> None:
    """The legs are told once, in the rows of the way; the cut list has them term by term."""
    cards = words_by_ident(brief)
    seen = 0
    for cable in model.installation.cables.values():
        if cable.state != "new":
            continue
        text = cards[f"card:{cable.tag}:words"]
        level = r"(?:for \d changes? of level .*? \+ )?"
        way = re.search(rf"Cut way ([\d.]+) \+ {level}tails ([\d.]+)", text)
        assert way, cable.tag
        rows = text[text.index("Way 1") : text.index("Cut ")]
        legs = [float(m) for m in re.findall(r", ([\d.]+) m\b(?! deep)", rows)]
        assert sum(legs) == pytest.approx(float(way[1]), abs=1e-6), cable.tag
        parts = model.results.routes[cable.tag].parts
        tails = sum(part.length_m for part in parts if part.words.startswith("tail at"))
        assert float(way[2]) == pytest.approx(tails, abs=1e-6), cable.tag
        seen += 1
    assert seen == 29


def test_tails_stand_on_every_card(model: Model, brief: list[Content]) -> None:
    cards = words_by_ident(brief)
    for cable in model.installation.cables.values():
        if cable.state != "new":
            continue
        text = cards[f"card:{cable.tag}:words"]
        for end, part in zip(
            (cable.from_end, cable.to_end),
            (p for p in model.results.routes[cable.tag].parts if p.words.startswith("tail at")),
            strict=True,
        ):
            assert part.words == f"tail at {end}"
            tail = f"{part.length_m * 1000:.0f}"
            assert re.search(rf"tails? .*\b{tail}\b", text, re.IGNORECASE), (cable.tag, end)


def test_the_brief_is_no_longer_than_it_was_made(brief: list[Content]) -> None:
    """Twenty pages before rows shared lines; isolation, index and reasons came after."""
    assert len(brief) <= 15
    caps = {
        part.cap_mm
        for page in brief
        for item in page.items
        for part in item.parts
        if isinstance(part, Text)
    }
    assert min(caps) >= 2.5, "denser, never smaller"


def test_pages_are_named_after_what_they_hold(model: Model) -> None:
    plans = route_brief.plan(model)
    for plan in plans:
        page = route_brief.build(plan, model, numbered(plans))
        idents = {item.ident for item in page.items}
        for part, head in (
            ("order of work", ("brief:live", "brief:steps", "brief:index", "brief:zone")),
            ("walls", "brief:wall:"),
            ("cable cards", "card:"),
            ("fixings", "brief:fixing"),
        ):
            assert (part in plan.title) == any(i.startswith(head) for i in idents), plan.title


def test_a_card_says_way_lines_levels_gland_and_what_to_tick(brief: list[Content]) -> None:
    cards = words_by_ident(brief)
    text = cards["card:W05:words"]
    for told in (
        "DB1/3TP, L1 L2 L3, C32 TP 6 kA",
        "L1 brown, L2 black, L3 grey, N blue, cpc is the armour",
        "T/O +2900",
        "drop on wall B +2900 to +1300, clipped",
        "4 metal cleats at 550",
        "gland 20 CW M20x1.5",  # at X1, IP44
        "strip A armour 35, C cores ≥ 200",
        "leave inside 250",
    ):
        assert told in text, told
    for word in ("pulled", "glanded", "terminated", "tested"):
        assert f"☐ {word}" in cards["card:W05:ticks"]
    assert "glanded" not in cards["card:W13:ticks"]


@pytest.mark.parametrize(
    ("tag", "cores"),
    [
        # colours: BS 7671 Table 51; a motor needs no neutral, its fourth core is the cpc
        ("W09", "L1 brown, L2 black, L3 grey, no neutral, cpc blue sleeved green-and-yellow"),
        ("W08-2", "L1 brown, L2 black, L3 grey, N blue, cpc green-and-yellow"),
        ("W14", "L2 brown, N blue, cpc bare sleeved green-and-yellow"),
    ],
)
def test_a_card_says_what_each_core_is_for(brief: list[Content], tag: str, cores: str) -> None:
    assert f"Cores {cores}" in words_by_ident(brief)[f"card:{tag}:words"]


def test_a_data_card_has_no_cores_of_power(brief: list[Content]) -> None:
    assert "Cores" not in words_by_ident(brief)["card:D05:words"]


def test_walls_say_where_cables_may_run_and_when_to_drill(brief: list[Content]) -> None:
    text = words_by_ident(brief)["brief:wall:B:clear"]
    assert "straight above and below 1000" in text
    assert "Do not drill" not in text
    for told in ("Scan first", "only for the fixings listed", "with the circuit dead"):
        assert told in text


def test_every_page_bears_the_caution_and_no_card_is_parted(brief: list[Content]) -> None:
    for page in brief:
        idents = {item.ident for item in page.items}
        assert "caution" in idents
        caution = next(said(item) for item in page.items if item.ident == "caution")
        assert "Prove dead before opening anything" in caution
        assert "supply side stays live" in caution
        for ident in idents:
            if ident.startswith("card:"):
                tag = ident.split(":")[1]
                assert {f"card:{tag}:{p}" for p in ("frame", "head", "words", "ticks")} <= idents


def test_the_brief_says_order_live_ways_zones_and_first_issue(brief: list[Content]) -> None:
    text = " ".join(said(item) for page in brief[:2] for item in page.items)
    assert "first issue" in text
    assert "DB1 IS LIVE until isolated, locked off and proved dead" in text
    assert "may be live" not in text
    for tag in ("D1", "AP1", "REC1"):
        assert re.search(rf"(Fix data devices|Fit in)[^☐]*\b{tag}\b", text), tag
    assert "DB2 (new)" in text
    assert text.index("Connect at the boards") < text.index("polarity, Zs, RCDs")
    assert text.index("polarity, Zs, RCDs") < text.index("energise for use, certificate")
    assert "person named" not in text
    assert "522.6.202" in text
    assert "within 150 of the top of a wall" in text
    assert text.index("Fix supports") < text.index("lay armoured cables")


def test_walls_show_only_what_is_to_be_done(model: Model, brief: list[Content]) -> None:
    rows = {
        item.ident: said(item)
        for page in brief
        for item in page.items
        if item.ident.startswith("brief:wall:")
    }
    table = "\n".join(rows.values())
    for point in model.installation.points.values():
        if point.position.wall and not point.position.out_mm:
            assert re.search(rf"(^|\n){point.tag} fix ", table), point.tag
    assert "CAM1" not in table  # existing
    assert re.search(r"DB1 distribution board 450 × 700: existing, live", table)


def test_material_lines_stand_on_the_sheet_as_counted(model: Model) -> None:
    text = "\n".join(words_by_ident(built(materials, model)).values())
    off = model.results.take_off
    assert off is not None
    assert "225 × 25 perforated tray 19.95 m 24 m 8×3 m" in text
    assert "not priced" in text
    for line in off.lines:
        assert " ".join(line.item.split()[:3]) in text


def test_isolation_stands_before_any_work_at_a_live_board(brief: list[Content]) -> None:
    """Electricity at Work Regulations 1989, 12 and 13: isolation, and work made dead.

    The tray T4 is fixed over DB1, which stands on wall D at 5.4 m.
    """
    told = words_by_ident(brief)
    live = told["brief:live:1"]
    for words in (
        "main switch (100 A switch-disconnector 4P) of DB1, wall D 5.40 m, +1600",
        "the supply side of the main switch stays live: only the distributor makes it dead",
    ):
        assert words in live, words
    assert "asbestos register seen before any hole" in told["brief:steps:step 1"]
    step = told["brief:steps:step 2"]
    for words in ("at or above DB1 (here T1, T4, T3)", "main switch", "lock off, prove dead"):
        assert words in step, words
    later = [told[f"brief:steps:step {n}"] for n in range(3, 8)]
    assert any("T4" in words for words in later)


def test_the_index_names_the_page_of_each_card_and_wall(model: Model, brief: list[Content]) -> None:
    pages = {item.ident: f"{n:02d}" for n, page in enumerate(brief, 1) for item in page.items}
    entries = [i for page in brief for i in page.items if i.ident.startswith("brief:index:")]
    led = {item.ident: item for item in entries if item.link}
    new = [c.tag for c in model.installation.cables.values() if c.state == "new"]
    assert len(led) == len(new) + 4
    for item in led.values():
        number, _, target = item.link.partition("#")
        assert pages[target] == number
        assert said(item).endswith(f" {number}")
    for tag in new:
        assert led[f"brief:index:cable:{tag}"].link.endswith(f"#card:{tag}:head")


def test_fixings_tell_load_reason_and_places(brief: list[Content]) -> None:
    """1.5 m up to 25 kg/m, the first support within 300 mm (common practice)."""
    told = words_by_ident(brief)
    row = told["brief:fixing:T1/0"]
    assert re.search(r"= 5\.4 kg/m, up to 25 kg/m at 1500", row)
    assert " 1500 20 " in row
    assert "first within 300 of each end" in told["brief:fixings:words"]


def test_a_thing_is_called_by_its_own_name(brief: list[Content]) -> None:
    told = words_by_ident(brief)
    rows = [words for ident, words in told.items() if ident.startswith("brief:wall:C:work")]
    assert any("K1 fix kiln, heating load 1700" in words for words in rows)
    assert "To K1 kiln, heating load" in told["card:W08-2:words"]
    assert "M2 extract fan;" in told["card:W10-3:words"]
