"""Commissioning checks: what is looked at before and after it is switched on, to be ticked."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.brief.work_order import has_relay
from asfitted.layout.document.blocks import Paragraph, Ruled
from asfitted.layout.document.plain_words import short_place, some_of
from asfitted.layout.document.references import on_sheet
from asfitted.layout.table import Column, Table
from asfitted.resolve.starters import STARTER
from asfitted.sheets._document_pages import build_document, plan_document

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.document.blocks import Block
    from asfitted.layout.sheet_model import Content, Model, Numbers, SheetPlan
    from asfitted.resolve.installation import Installation, PointServed

ORDER = 112
LATE = 2
KEY = "commissioning"
READERS = ("second-electrician", "inspector")
COLUMNS = (
    Column("What", least_mm=52.0),
    Column("Right when", least_mm=60.0),
    Column("Done", align="middle", least_mm=13.0),
    Column("Found, by, date", least_mm=42.0),
)
Check = tuple[str, str]
INTRO = (
    "Nothing here is filled in beforehand. Isolate, lock off and prove dead before "
    "each check that needs it; only a competent person works on what may be live."
)
NO_RESTART = "restart after a loss of supply: not recorded"
MOST_NAMED = 12
DEAD = (
    ("Looked over as built", "sizes, devices and routes are those of the drawings, or noted"),
    ("Terminals", "tightened to the torque the maker gives; no strand left out"),
    ("Continuity, insulation, polarity", "readings on the test sheets, all within their limits"),
    ("Barriers and blanks", "every opening of a board closed, covers on"),
)


def plan(model: Model) -> list[SheetPlan]:
    """Plan the checks that the job needs."""
    return plan_document(
        key=KEY, title="Commissioning checks", section="Handover", blocks=_blocks(model)
    )


def build(plan: SheetPlan, model: Model, numbers: Numbers) -> Content:  # noqa: ARG001 - planned whole
    """Lay out one page."""
    return build_document(plan, numbers)


def _blocks(model: Model) -> list[Block]:
    installation = model.installation
    results = on_sheet(model, "test-results")
    intro = INTRO + (f" Readings stand from {results}." if results else "")
    groups = (
        ("Before it is switched on", list(DEAD) if installation.boards else []),
        ("Protection", _protection(installation)),
        ("Machines, isolators and lighting", _points(installation)),
        ("Cameras and network", _data(model)),
        ("Fire and building", _building(installation)),
    )
    return [Paragraph(intro), Ruled("checks", _table(groups), least_row_mm=7.5)]


def _table(groups: Sequence[tuple[str, Sequence[Check]]]) -> Table:
    """Return all checks under the name of their group, so that columns stand in line."""
    rows: list[tuple[str, ...]] = []
    heads: set[int] = set()
    for name, checks in groups:
        if checks:
            heads.add(len(rows))
            rows.append((name, "", "", ""))
            rows += [(what, right, "☐", "") for what, right in checks]
    idents = tuple(f"{i:04d}" for i in range(len(rows)))
    return Table(COLUMNS, tuple(rows), idents, frozenset(heads), frozenset(heads))


def _protection(installation: Installation) -> list[Check]:
    checks: list[Check] = []
    for board in installation.boards.values():
        circuits = [c for c in installation.circuits.values() if c.board == board.tag]
        buttons = [c.way for c in circuits if c.device.rcd is not None and c.state != "removed"]
        if buttons:
            checks.append((f"{board.tag}: test buttons of {some_of(buttons, 12)}", "each trips"))
        arcs = [c.way for c in circuits if c.device.afdd and c.state != "removed"]
        if arcs:
            checks.append((f"{board.tag}: AFDD buttons of {some_of(arcs, 12)}", "each trips"))
        if board.phases == 3:
            checks.append((f"{board.tag}: phase sequence", "L1, L2, L3 in order"))
        checks.append((f"{board.tag}: main switch", "makes every way dead, locks off"))
    supply = installation.supply
    if supply and supply.surge_protection and not supply.surge_protection.startswith("not fitted"):
        checks.append((f"Surge protection: {supply.surge_protection}", "window shows it is sound"))
    return checks


def _points(installation: Installation) -> list[Check]:
    """Return what is tried at the points, those of a circuit that are alike together."""
    groups: dict[tuple[str, str, str], list[str]] = {}
    for point in installation.points.values():
        if point.state == "new":
            for name, what, right in _point(point, installation):
                groups.setdefault((point.circuit, what, right), []).append(name)
    return [
        (some_of(names, MOST_NAMED) + (f": {what}" if what else ""), right)
        for (_, what, right), names in groups.items()
    ]


def _point(point: PointServed, installation: Installation) -> list[tuple[str, str, str]]:
    """Return what is tried at one point: its name, what of it, and when it is right.

    Socket-outlets without an RCD of their own are tested with their circuit.
    """
    circuit = installation.circuits[point.circuit]
    own = point.name if point.name not in {"", point.tag} else ""
    name = f"{point.tag} {own}".strip()
    checks: list[tuple[str, str, str]] = []
    if point.rcd is not None:
        checks.append((name, "test button in the outlet", "trips"))
    if point.kind == "isolator":
        named = f"{point.tag} for {circuit.name[0].lower()}{circuit.name[1:]}"
        checks.append((named, "", "makes its machine dead, locks off, is named"))
    if has_relay(point):
        checks.append((name, "overload relay", f"set to {point.overload_a:g} A"))
    if point.kind == STARTER:
        checks.append((name, "starter", f"starts and stops its motor; {_restart(point)}"))
    if point.kind in {"motor", "fan"}:
        turns = "turns the right way; " if circuit.phase == "TP" else ""
        checks.append((name, "runs", turns + _restart(point)))
    if "luminaire" in point.kind or point.kind == "floodlight":
        checks.append((name, "", "lights; switched where the drawing says"))
    if point.kind == "emergency luminaire":
        checks.append((name, "duration", "lights for its rated time with the supply off"))
    return checks


def _restart(point: PointServed) -> str:
    return f"{point.restart} restart" if point.restart else NO_RESTART


def _data(model: Model) -> list[Check]:
    checks: list[Check] = []
    for device in model.installation.data_devices.values():
        if device.state == "removed":
            continue
        if device.kind == "camera":
            target = f" at {device.target_m:g} m" if device.target_m else ""
            checks.append(
                (f"{device.tag}: {device.views}", f"picture sharp by day and night{target}")
            )
        elif device.kind == "recorder":
            days = f"{device.keep_days:g} days" if device.keep_days else "the days wanted"
            checks.append((device.tag, f"date and time right; keeps {days}; play-back tried"))
        elif device.kind in {"data outlet", "access point"}:
            place = short_place(device.position, model.installation)
            checks.append((f"{device.tag} ({place})", "link tested, all pairs, at its full speed"))
        elif device.kind == "12 V supply":
            checks.append((device.tag, "output voltage read at the supply and the furthest camera"))
    return checks


def _building(installation: Installation) -> list[Check]:
    checks: list[Check] = []
    for passage in installation.passages.values():
        sealed = "sealed to the rating of the wall or floor"
        checks.append((f"{passage.tag}: passage through {passage.through}", sealed))
    checks.append(
        ("Holes through walls and floors", "made good; fire-stopped where they are rated")
    )
    checks.append(("Supports", "metal where cables could fall across a way out"))
    return checks
