"""Supply, boards and circuits of a generated job."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    import random

    from asfitted.dev._generated_building import Building, GeneratedRoom

MOST_LEVELS = 4
SHORT_NAMES = ("Oven", "Pump", "Lights", "Sockets", "Sign", "Lift", "Kiln", "Gate")
HEADS = (
    "Ventilation",
    "Socket-outlets",
    "Emergency lighting",
    "Refrigeration plant",
    "Telecommunications rack",
    "Under-floor heating",
    "Water treatment",
    "Display lighting",
)
TAILS = (
    "north side",
    "first-floor gallery",
    "behind the servery counter",
    "plant enclosure on the roof",
    "corridor to the rear stair",
    "conservation workshop and stores",
)
BONDS = ("water pipe", "gas pipe", "oil line", "steel frame of the building", "lightning rod")
#: Words of a point, the keys it needs, and heights it may stand at, m.
SINGLE = (
    ("13 A socket", {"gangs": "2", "IP": "IP2X"}, (0.45, 1.2)),
    ("13 A socket", {"IP": "IP2X"}, (0.45, 1.2, 1.5)),
    ("fused spur", {"fuse": "13 A", "load": "2 kW"}, (1.2, 0.6)),
    ("linear luminaire", {"load": "45 W", "IP": "IP65"}, (2.6, 3.0)),
    ("luminaire", {"load": "20 W"}, (2.4, 2.6)),
    ("emergency luminaire", {"load": "8 W"}, (2.2,)),
    ("light switch", {"IP": "IP2X"}, (1.2, 1.35)),
    ("isolator", {"rating": "20 A"}, (1.5,)),
    ("motor", {"load": "750 W", "power factor": "0.8", "restart": "manual"}, (0.5,)),
    ("fan", {"load": "400 W"}, (2.2, 2.7)),
    ("floodlight", {"load": "50 W", "IP": "IP65"}, (2.5, 3.0)),
    ("heating load", {"load": "3 kW"}, (0.6,)),
    ("junction box", {"IP": "IP66"}, (1.8, 2.4)),
    ("3-pin socket", {"rating": "32 A", "IP": "IP44"}, (1.2,)),
    ("equipment", {"load": "500 W"}, (1.2,)),
)
THREE = (
    ("5-pin socket", {"rating": "32 A", "IP": "IP44", "RCD": "40 A 30 mA type A"}, (1.3,)),
    ("isolator", {"rating": "63 A", "poles": "4", "IP": "IP65"}, (1.5,)),
    ("motor", {"load": "5.5 kW", "power factor": "0.83", "overload": "11 A"}, (0.5,)),
    ("heating load", {"load": "18 kW"}, (0.6,)),
    ("equipment", {"load": "6 kW"}, (1.2,)),
)
DEVICES = (
    "RCBO B20 30 mA type A 6 kA",
    "RCBO C16 30 mA type A 6 kA",
    "RCBO B32 30 mA type F 10 kA",
    "AFDD RCBO B16 30 mA type A 6 kA",
    "B6 SP 6 kA",
    "C10 SP 10 kA",
    "32 A BS 88-3",
)
DEVICES_THREE = (
    "C32 TP 6 kA",
    "C40 TP 10 kA",
    "RCBO C32 TP+N 300 mA type B delayed 10 kA",
    "MCCB 160 A Ir 125 A Im 1250 A 25 kA TP",
    "63 A BS 88-2 TP",
)
CABLES = (
    "T&E",
    "SWA 3c",
    "FP 3c 2.5 mm2",
    "singles",
    "SWA LSF 3c 4 mm2",
    "multicore PVC 3c 2.5 mm2",
)
CABLES_THREE = ("SWA 4c", "SWA 5c 16 mm2", "singles", "multicore LSF 5c 2.5 mm2")


@dataclass
class GeneratedBoard:
    """A board with the ways that are still free, and how far down the tree it stands."""

    tag: str
    phases: int
    ways: int
    level: int
    room: GeneratedRoom
    block: dict[str, Any]
    free: list[str] = field(default_factory=list)


@dataclass
class Power:
    """What is there of the power side while it is made."""

    dice: random.Random
    building: Building
    boards: list[GeneratedBoard] = field(default_factory=list)
    circuits: list[dict[str, Any]] = field(default_factory=list)
    points: int = 0

    def name(self) -> str:
        """Return the name of a load: one word or up to about sixty characters."""
        dice = self.dice
        if dice.random() < 0.35:
            return dice.choice(SHORT_NAMES)
        words = f"{dice.choice(HEADS)}, {dice.choice(TAILS)}"
        if dice.random() < 0.3:
            words += f", {dice.choice(TAILS)}"
        return words[:60].rstrip(" ,")


def supply_block(dice: random.Random, phases: int) -> dict[str, Any]:
    """Return the ``supply:`` block; figures are left out now and then."""
    system = dice.choice(("TN-S", "TN-C-S", "TT"))
    block: dict[str, Any] = {
        "system": system,
        "phases": phases,
        "voltage": "400/230 V" if phases == 3 else "230 V",
    }
    basis = dice.choice(("measured", "declared", "assumed"))
    if dice.random() < 0.9:
        block["Ze"] = (
            f"{dice.choice((0.15, 0.35, 0.8) if system != 'TT' else (21, 60))} ohm {basis}"
        )
    if dice.random() < 0.85:
        block["fault current"] = f"{dice.choice((0.9, 4.2, 16))} kA {basis}"
    if dice.random() < 0.9:
        block["cut-out"] = dice.choice(("100 A BS 88-3 declared", "400 A BS 88-2", "60 A BS 1361"))
    if dice.random() < 0.8:
        block["tails"] = dice.choice(("25 mm2, 2 m", "16 mm2", "70 mm2, 5 m"))
    if dice.random() < 0.85:
        block["earthing conductor"] = dice.choice(("16 mm2", "35 mm2"))
    bonds = dice.sample(BONDS, dice.randint(0, len(BONDS)))
    if bonds:
        block["main bonding"] = {bond: dice.choice(("10 mm2", "16 mm2")) for bond in bonds}
    if system == "TT" and dice.random() < 0.8:
        block["electrode"] = f"{dice.choice((18, 85))} ohm measured"
    if dice.random() < 0.6:
        block["surge protection"] = dice.choice(("type 2 at DB1", "not fitted: owner declined"))
    return block


def add_board(power: Power, parent: GeneratedBoard | None, phases: int) -> GeneratedBoard | None:
    """Add a board, with the circuit that feeds it; None where the parent has no way left for it."""
    dice = power.dice
    if parent is not None and parent.phases == 1:
        phases = 1
    way = ""
    if parent is not None:
        way = _take_way(power, parent, three=phases == 3)
        if not way:
            return None
    tag = f"{'CU' if phases == 1 else 'DB'}{len(power.boards) + 1}"
    room = dice.choice(power.building.rooms)
    ways = dice.choice((4, 6, 8, 12, 16, 24) if phases == 3 else (4, 8, 12, 18, 24))
    block: dict[str, Any] = {}
    if dice.random() < 0.5:
        block["name"] = power.name()
    block |= {
        "at": power.building.place((1.5, 1.6, 1.8), room=room),
        "ways": ways,
        "phases": phases,
    }
    board = GeneratedBoard(
        tag, phases, ways, 1 if parent is None else parent.level + 1, room, block
    )
    numbers = range(1, ways + 1)
    board.free = [f"{n}TP" for n in numbers] if phases == 3 else [str(n) for n in numbers]
    _board_facts(dice, board, parent, way)
    power.boards.append(board)
    if parent is not None:
        power.circuits.append(_feeder(power, parent, way, board))
    return board


def _board_facts(
    dice: random.Random, board: GeneratedBoard, parent: GeneratedBoard | None, way: str
) -> None:
    three, block = board.phases == 3, board.block
    if dice.random() < 0.3:
        block["state"] = dice.choice(("existing", "existing", "removed"))
    if dice.random() < 0.85:
        block["rating"] = dice.choice(("63 A", "100 A", "125 A", "250 A"))
    if dice.random() < 0.85:
        poles = "4P" if three else "2P"
        block["main switch"] = f"{dice.choice((63, 100, 250))} A switch-disconnector {poles}"
    block["fed from"] = "supply" if parent is None else f"{parent.tag}/{way}"
    if dice.random() < 0.7:
        block["IP"] = dice.choice(("IP40", "IP44", "IP65"))
    if dice.random() < 0.7:
        block["short-circuit rating"] = dice.choice(("6 kA", "10 kA", "25 kA"))
    if dice.random() < 0.2:
        block["Zs"] = "0.42 ohm measured"
        block["fault current"] = "3.1 kA measured"
    if dice.random() < 0.5:
        block["make group"] = "make P"


def _take_way(power: Power, board: GeneratedBoard, *, three: bool) -> str:
    """Return a free way of a board and mark it taken; "" when there is none."""
    dice = power.dice
    whole = [way for way in board.free if way.endswith("TP")]
    poles = [way for way in board.free if not way.endswith("TP")]
    if three:
        if not whole:
            return ""
        way = whole[0] if dice.random() < 0.7 else dice.choice(whole)
        board.free.remove(way)
        return way
    if poles:
        way = poles[0] if dice.random() < 0.7 else dice.choice(poles)
        board.free.remove(way)
        return way
    if not whole:
        return ""
    board.free.remove(whole[0])
    number = whole[0].removesuffix("TP")
    board.free += [f"{number}L2", f"{number}L3"]
    return f"{number}L1"


def _feeder(
    power: Power, parent: GeneratedBoard, way: str, board: GeneratedBoard
) -> dict[str, Any]:
    dice = power.dice
    three = board.phases == 3
    circuit: dict[str, Any] = {
        "way": f"{parent.tag}/{way}",
        "name": f"Sub-board {board.tag}" if dice.random() < 0.6 else power.name(),
        "device": dice.choice(("C63 TP 10 kA", "MCCB 160 A Ir 125 A Im 1250 A 25 kA TP"))
        if three
        else dice.choice(("C40 SP 6 kA", "63 A BS 88-3")),
        "feeds": board.tag,
    }
    cables = ("SWA 4c", "SWA 5c 25 mm2") if three else ("SWA 3c", "SWA 3c 16 mm2")
    circuit["cable"] = dice.choice(cables)
    if state := board.block.get("state"):
        circuit["state"] = state
    if dice.random() < 0.4:
        circuit["length"] = f"{dice.randint(4, 90)} m measured"
    return circuit


def add_circuit(power: Power) -> bool:
    """Add a circuit to some board; False when no board has a way left."""
    dice = power.dice
    open_boards = [board for board in power.boards if board.free]
    if not open_boards:
        return False
    board = dice.choice(open_boards)
    three = board.phases == 3 and dice.random() < 0.35
    way = _take_way(power, board, three=three) or _take_way(power, board, three=False)
    if not way:
        return False
    three = way.endswith("TP")
    circuit: dict[str, Any] = {
        "way": f"{board.tag}/{way}",
        "name": power.name(),
        "device": dice.choice(DEVICES_THREE if three else DEVICES),
    }
    state = dice.choices(("new", "existing", "removed"), (0.75, 0.18, 0.07))[0]
    if board.block.get("state") == "removed":
        state = "removed"
    if state != "new":
        circuit["state"] = state
    if state != "new" and dice.random() < 0.6:
        circuit |= {"use": dice.choice(("lighting", "sockets", "heating"))}
        circuit |= {"load": "4 A", "points served": dice.randint(1, 12)}
        if dice.random() < 0.5:
            circuit["place"] = dice.choice(TAILS)
    else:
        circuit["cable"] = dice.choice(CABLES_THREE if three else CABLES)
        circuit |= _ways_of_laying(dice)
        circuit["points"] = _points(power, board.room, three=three)
    power.circuits.append(circuit)
    return True


def _ways_of_laying(dice: random.Random) -> dict[str, str]:
    keys = {}
    if dice.random() < 0.5:
        keys["drops"] = dice.choice(("20 mm steel conduit", "25 mm plastic conduit"))
    if dice.random() < 0.15:
        keys["route"] = "clipped direct, 1.9 m up"
    if dice.random() < 0.25:
        keys["vulnerable"] = dice.choice(("none", "LED drivers", "controller of the plant"))
    return keys


def _points(power: Power, room: GeneratedRoom, *, three: bool) -> list[dict[str, Any]]:
    """Return a chain of points: one, a few of a kind, or a long mixed one."""
    dice = power.dice
    count = dice.choice((1, 1, 1, 2, 3, 4, 6, 10))
    one_kind = dice.random() < 0.5
    kinds = THREE if three else SINGLE
    same = dice.choice(kinds)
    wall = dice.choice(room.walls) if dice.random() < 0.4 else None
    points = []
    for _ in range(1 if three and one_kind else count):
        kind, keys, ups = same if one_kind else dice.choice(kinds)
        power.points += 1
        point: dict[str, Any] = {
            "tag": f"{kind[0].upper() if kind[0].isalpha() else 'S'}{power.points}"
        }
        point |= {"is": kind, **keys}
        if dice.random() < 0.2:
            point["name"] = power.name()
        out_m = dice.choice((0.0, 0.0, 0.5)) if "luminaire" in kind else 0.0
        outside = kind == "floodlight" and dice.random() < 0.6
        point["at"] = power.building.place(ups, room=room, wall=wall, outside=outside, out_m=out_m)
        points.append(point)
    return points


def add_spares(power: Power) -> None:
    """Enter some of the ways that are left as spares."""
    dice = power.dice
    for board in power.boards:
        for way in board.free[:4]:
            if dice.random() < 0.3:
                fitted = "spare" if way.endswith("TP") else "spare, C16 SP fitted"
                board.block.setdefault("spares", {})[way] = dice.choice(("spare", fitted))
