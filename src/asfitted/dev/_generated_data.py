"""Cameras, data points and their equipment in a generated job."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    import random

    from asfitted.dev._generated_building import Building

VIEWS = ("door", "till", "yard gate and the lane beyond it", "stair", "goods lift lobby", "bins")
PORTS_A_SWITCH, CHANNELS = 16, 32
LENS = {"lens": "2.8 mm", "sensor": "1/2.8", "pixels": 1920, "target": "6 m"}


def data_block(
    dice: random.Random, building: Building, cameras: int, fed_from: str
) -> dict[str, Any]:
    """Return the ``data:`` block with so many cameras and some data points."""
    cabinet = {
        "tag": "CAB1",
        "at": building.place((1.8, 2.0)),
        "size": dice.choice(("600 x 450", "500 x 400", "800 x 1200")),
    }
    if fed_from:
        cabinet["fed from"] = fed_from
    made = {f"CAM{n}": _camera(dice, building, n) for n in range(1, cameras + 1)}
    points = {f"D{n}": _point(dice, building) for n in range(1, dice.choice((0, 2, 9)) + 1)}
    on_switch = [device for device in (*made.values(), *points.values()) if device.get("port")]
    for i, device in enumerate(on_switch):
        device["port"] = f"SW{i // PORTS_A_SWITCH + 1}/{i % PORTS_A_SWITCH + 1}"
    equipment: dict[str, Any] = {}
    recorders = max(1, -(-cameras // CHANNELS))
    for n in range(1, recorders + 1):
        equipment[f"REC{n}"] = {
            "is": "recorder",
            "channels": CHANNELS,
            "disk": "4 TB",
            "keep": "14 days",
        }
    if any(
        " 12 V" in str(camera.get("signal", "")) or "channel" in camera for camera in made.values()
    ):
        equipment["PS1"] = {"is": "12 V supply", "output": "13.0 V", "rating": "10 A"}
    for n in range(1, -(-len(on_switch) // PORTS_A_SWITCH) + 1):
        equipment[f"SW{n}"] = {"is": "PoE switch", "ports": PORTS_A_SWITCH, "budget": "130 W"}
    for i, camera in enumerate(made.values()):
        if "channel" in camera:
            camera |= {"channel": i % CHANNELS + 1, "recorder": f"REC{i // CHANNELS + 1}"}
    block: dict[str, Any] = {"cabinet": cabinet, "equipment": equipment, "cameras": made}
    return block | ({"points": points} if points else {})


def _camera(dice: random.Random, building: Building, number: int) -> dict[str, Any]:
    outside = dice.random() < 0.5
    camera: dict[str, Any] = {
        "at": building.place((2.4, 2.6, 3.0), outside=outside),
        "views": dice.choice(VIEWS),
    }
    kind = dice.choice(("poe", "coax", "balun"))
    if kind == "poe":
        camera |= {"cable": "Cat6", "port": "SW1/1", "PoE class": 3, "load": "7 W"}
    elif kind == "coax":
        camera |= {"cable": "RG59+2 0.75 mm2", "signal": "HD 1080p", "load": "5 W", "channel": 1}
    else:
        camera |= {"cable": "Cat6 with baluns", "power pairs": dice.choice((1, 2, 3))}
        camera |= {"signal": "HD 1080p", "load": "5 W", "channel": 1}
    if dice.random() < 0.25:
        camera |= {"state": "existing", "length": f"{5 + number} m measured"}
    if dice.random() < 0.7:
        camera |= LENS | {"aim": dice.choice(("square", "45 left", "30 right"))}
    return camera


def _point(dice: random.Random, building: Building) -> dict[str, Any]:
    if dice.random() < 0.7:
        return {
            "is": "data outlet",
            "at": building.place((0.45, 1.2)),
            "cable": "Cat6",
            "port": "SW1/1",
        }
    at = building.place((2.4, 3.0))
    poe = {"port": "SW1/1", "PoE class": 4, "load": "14 W"}
    return {"is": "access point", "at": at, "cable": "Cat6", **poe}
