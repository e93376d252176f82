"""Cut lengths of ten cables of the pottery, worked by hand from the figures of its job file.

Rules (common practice): path along runs and walls, 0.3 m for a change of level between level legs,
tails at both ends, 0.1 m a gland, waste (armoured 5 % and at least 1 m, others 10 %), rounded up
(armoured to whole metres, others to 0.1 m). Board tail 1.0, 32 A socket-outlet 0.25, isolator 0.2
or above 32 A 0.4, machine 0.4, accessory box 0.15, luminaire 0.3, cabinet 3.0, data outlet 0.3,
camera 0.5.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model

    Models = dict[str, Model]

# T4 goes up 2.90 - 1.95 = 0.95 from the top of DB1, then T1 from wall D 5.4 to the corner 6.4: 1.0
BY_HAND = {
    # 0.95 + 1.0 + 8.0 + 1.0 on T1, drop 2.9 - 1.3 = 1.6: 12.55; + 1.0 + 0.25 + 0.2 = 14.0
    # + waste 1.0 (5 % is 0.70) = 15.0
    "W05": (12.55, 14.0, 15.0),
    # wall B to 2.8: 0.95 + 1.0 + 8.0 + 2.8 + 1.6 = 14.35; + 1.45 = 15.8; + 1.0 = 16.8
    "W06": (14.35, 15.8, 17.0),
    # wall A to 6.7: 0.95 + 1.0 + 6.7 + 1.6 = 10.25; + 1.45 = 11.7; + 1.0 = 12.7
    "W07": (10.25, 11.7, 13.0),
    # T1 to A 5.6, T2 6.4 over, drop 1.4:
    # 0.95 + 1.0 + 5.6 + 6.4 + 1.4 = 15.35; + 1.0 + 0.4 + 0.2 = 16.95; + 1.0 = 17.95
    "W08": (15.35, 16.95, 18.0),
    # back along T1 from D 5.4 to 2.2 = 3.2, drop 1.4: 5.55; + 1.0 + 0.2 + 0.2 = 6.95; + 1.0
    "W09": (5.55, 6.95, 8.0),
    # isolator to machine: down 1.5 - 0.5 = 1.0, along 2.2 - 1.5 = 0.7; + 0.2 + 0.4 = 2.3; + 10 %
    "W09-2": (1.7, 2.3, 2.6),
    # clipped at 1.35: wall D 5.4 back to corner C, then 8.0 - 7.3 = 0.7; + 1.0 + 0.15 + 0.2 = 7.45
    "W12": (6.1, 7.45, 9.0),
    # T5 up 2.9 - 1.825 = 1.075, T1 back from B 4.4 to 2.0 = 2.4, drop 1.7; + 1.0 + 0.15; + 10 %
    "W13": (5.175, 6.325, 7.0),
    # T5 1.075, B 4.4 + A 8.0 - 1.75 = 6.25 is 10.65, drop 1.7; + 1.15 = 14.575; + 10 % = 16.033
    "W16": (13.425, 14.575, 16.1),
    # cabinet top 2.225 up to 2.55 = 0.325, T3 0.7 + 6.4 + 5.5 = 12.6, drop 2.55 - 1.2 = 1.35:
    # 14.275; + 3.0 + 0.3 = 17.575; + 10 % = 19.333
    "D05": (14.275, 17.575, 19.4),
}


@pytest.mark.parametrize("tag", BY_HAND)
def test_cut_length_is_the_sum_by_hand(demo_models: Models, tag: str) -> None:
    path_m, net_m, cut_m = BY_HAND[tag]
    route = demo_models["pottery-studio"].results.routes[tag]
    assert route.path_m == pytest.approx(path_m, abs=0.0005)
    waste = next(i for i, p in enumerate(route.parts) if p.words.startswith("waste"))
    assert sum(p.length_m for p in route.parts[:waste]) == pytest.approx(net_m, abs=0.0005)
    assert route.cut_m == pytest.approx(cut_m, abs=0.0005)
    assert sum(p.length_m for p in route.parts) == pytest.approx(cut_m, abs=0.0005)
