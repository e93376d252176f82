"""Materials of the pottery counted by hand from its job file."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from asfitted.calculate.materials.items import TakeOff
    from asfitted.layout.sheet_model import Model

    Models = dict[str, Model]

# item: (needed, to order), each with its sum
BY_HAND = {
    # T1 5.4 + 8.0 + 5.6 = 19.0 and T4 0.95; T1 parts at the tees: 4.4 1.0 | 5.6 2.4 | 4.4 1.2.
    # whole bars 1 + 1 + 1 = 3, rests 1.4 1.0 2.6 2.4 1.4 1.2 and 0.95: 2.6, 2.4, 1.4+1.4,
    # 1.2+1.0, 0.95
    "225 × 25 perforated tray": (19.95, 24.0),
    # T2: 6.4 is two bars and 0.4
    "100 × 25 perforated tray": (6.4, 9.0),
    # T3: 1.4 + 6.4 + 8.0 + 6.1; six whole bars, rests 1.4 0.4 2.0 0.1: 2.0+0.4+0.1 and 1.4
    "100 × 55 wire basket": (21.9, 24.0),
    # drops of 1.7 at S1, S2, S3, S4, F3, LS1; L1 0.6 + 1.6; 4.0 + 3.2 + 4.0 between luminaires
    "25 mm steel conduit": (6 * 1.7 + 0.6 + 1.6 + 11.2, 7 * 3.75),
    # T1 turns at D/A and A/B; 4c x 10 of 21.1 mm, six times (On-Site Guide Table D5)
    "flat bend 90°, 225 × 25 perforated tray, inside radius ≥ 127 mm": (2, 2),
    # T4 and T5 come up to T1 from below: a flat tee turned down by a riser; T2 goes off level
    "equal flat tee 225 perforated tray, inside radius ≥ 127 mm": (1, 1),
    "outside riser 90°, 225 × 25 perforated tray, inside radius ≥ 127 mm": (1, 1),
    "unequal flat tee 225/150 perforated tray, inside radius ≥ 127 mm": (1, 1),
    "outside riser 90°, 150 × 25 perforated tray, inside radius ≥ 127 mm": (1, 1),
    "unequal tee 225/100 perforated tray, inside radius ≥ 127 mm": (1, 1),
    # 3 between bars (4.4, 5.6, 4.4), 2 × 2 at bends, T4 3 and its riser 1, T5 2, T2 2 of the tees
    "coupler pair, 225 × 25 perforated tray": (15, 15),
    # conduit: of 13 pieces only the two of 4.0 are longer than a bar of 3.75
    "coupler, 25 mm steel conduit": (2, 2),
    # the rise at T1 turns off the wall to L1
    "bend 90°, 25 mm steel conduit": (1, 1),
    # L1 L2 L3 in and out at a right angle; L4 the last
    "angle box, 25 mm steel conduit": (3, 3),
    "terminal box, 25 mm steel conduit": (1, 1),
    # both ends of the drops at S1, S2, S3, S4, F3, LS1, and the rise at T1
    "bush and lock nut, 25 mm steel conduit": (13, 13),
    # U1: 58 m of bars of 3 m
    "coupler, 50 mm buried duct": (19, 19),
    "slow bend 90°, 50 mm buried duct": (1, 1),
    "warning tape over duct U1": (58, 58),
    "draw cord in duct U1": (58, 58),
    # 5 hangers of 2 rods; 4 linear luminaires of 2 and AP1; saddles 2 + 4 + 3 + 4 off the walls
    "top fixing, threaded rod M10": (10, 10),
    "top fixing, luminaires and devices": (9, 9),
    "top fixing, conduit off the walls": (13, 13),
    # CAM3 and CAM4 differ by their lens
    "camera, HD 1080p, 2.8 mm lens": (1, 1),
    "camera, HD 1080p, 6 mm lens": (1, 1),
    "patch lead, RJ45 both ends, REC1 to SW1": (1, 1),
    # ceil((L - 0.6) / 1.5) + 1: 4.4 4, 1.0 2, 5.6 5, 2.4 3, 4.4 4, 1.2 2
    "wall bracket for 225 tray, 130 mm off the wall": (20, 20),
    # overhead 6.4: ceil(5.8 / 1.5) + 1
    "trapeze hanger for 100 tray, rods 800 mm": (5, 5),
    # 5 hangers × 2 rods × (3.6 - 2.9 + 0.1)
    "threaded rod M10": (8.0, 8.0),
    # 4c x 6, 18.7 mm over all: W05 and W06 at DB1, IP40, and at X1 and X2, IP44
    "gland kit 20 BW, brass, M20x1.5": (2, 2),
    "gland kit 20 CW, brass, M20x1.5": (2, 2),
    # under 15.9 mm: W07, W09, W10, W12 at DB1; at spurs of IP2X: W12, W17, W17-2
    "gland kit 20S BW, brass, M20x1.5": (7, 8),
    # X3 and DB2, IP44; Q2 and FL1, IP65; both cables at J1, IP66; W10 and W10-2 at Q3, W10-2 and
    # W10-3 at Q4, W10-3 at M2, IP55
    "gland kit 20S CW, brass, M20x1.5": (11, 12),
    # W08 and W11 at DB1, IP40; W08 at an IP65 isolator and W11 at DB2, IP44: sealed
    "gland kit 25 BW, brass, M25x1.5": (2, 2),
    "gland kit 25 CW, brass, M25x1.5": (2, 2),
    # W08-2 and W09-2, each in one piece round the corner from upright to level; a cable of
    # diameter d fills 45 % of a bore of d / √0.45 (On-Site Guide Appendix E): 29.1 and 13.1 mm
    "flexible conduit, bore 44 mm or more": (0.9 + 0.7, 1.6),
    "flexible conduit, bore 20 mm or more": (1.0 + 0.7, 1.7),
    "gland, flexible conduit, bore 44 mm or more": (2, 2),
    "gland, flexible conduit, bore 20 mm or more": (2, 2),
    # two cameras on pairs
    "video balun, BNC plug to pair": (4, 4),
    # 29 new cables
    "cable label": (58, 58),
    # the one motor that does not bring its own
    "9 A direct-on-line starter, overload relay 3.5 A, IP55": (1, 1),
    # W17-2 through wall A, D04 through wall B
    "hole through a wall made good": (2, 2),
    # S1 to S4
    "surface box, twin": (4, 4),
}


@pytest.fixture
def off(demo_models: Models) -> TakeOff:
    found = demo_models["pottery-studio"].results.take_off
    assert found is not None
    return found


@pytest.mark.parametrize("item", BY_HAND)
def test_quantity_is_that_counted_by_hand(off: TakeOff, item: str) -> None:
    line = next(one for one in off.lines if one.item == item)
    assert (line.needed, line.to_order) == pytest.approx(BY_HAND[item], abs=0.0005)


def test_each_line_says_how_it_was_counted(off: TakeOff) -> None:
    assert all(line.basis for line in off.lines)
    assert all(line.to_order >= line.needed or line.unit == "m" for line in off.lines)


def test_the_cuts_of_every_item_are_whole(off: TakeOff) -> None:
    for item in off.cuts:
        cut = sum(p.length_mm for one in item.cuts for p in one.pieces)
        assert cut == item.needed_mm
        assert all(one.rest_mm >= 0 for one in item.cuts)
        assert item.is_least


def test_clips_of_a_drop_by_hand(off: TakeOff) -> None:
    # On-Site Guide Table D1 (memory): armoured over 15 to 20 mm, upright: 550; 1600 / 550 -> 3 + 1
    drop = next(f for f in off.fixings if (f.subject, f.where) == ("W05", "wall B"))
    assert (drop.spacing_mm, drop.count) == (550, 4)
    # over 9 to 15 mm, level: 350; 5400 / 350 -> 16 + 1
    level = next(f for f in off.fixings if (f.subject, f.where) == ("W12", "wall D"))
    assert (level.spacing_mm, level.count) == (350, 17)


def test_an_armoured_end_names_gland_thread_and_stripping(off: TakeOff) -> None:
    # 4c × 6, 18.7 mm over all, 12.3 over bedding: 20, as a maker's chart (seen), M20 entry;
    # armour 35, cores 200 (common practice)
    end = next(g for g in off.glands if (g.cable, g.at) == ("W05", "X1"))
    assert (end.size, end.kind, end.thread) == ("20", "CW", "M20x1.5")
    assert (end.armour_mm, end.core_mm) == (35, 200)
