"""The cable schedule: one row for each cable, with what to cut and the sum behind it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.cable_rating import capacity_words
from asfitted.layout.figures import metres
from asfitted.layout.given_words import NOT_RECORDED, state_before
from asfitted.layout.schedule.words import (
    device_words,
    end_words,
    figure,
    length_words,
)
from asfitted.layout.table import Column, Table

if TYPE_CHECKING:
    from asfitted.calculate.results import CableResult, CableRoute, RouteLeg
    from asfitted.layout.sheet_model import Model
    from asfitted.resolve.installation import Cable

COLUMNS = (
    Column("Cable", wraps=False),
    Column("From"),
    Column("To"),
    Column("Cable type"),
    Column("cpc"),
    Column("Runs in"),
    Column("Method, group"),
    Column("Protected by"),
    Column("Ib A", align="end", wraps=False),
    Column("Iz A", align="end"),
    Column("Drop %", align="end", wraps=False),
    Column("Length", align="end", wraps=False),
    Column("Cut", align="end", wraps=False),
)


def cable_schedule(model: Model) -> Table:
    """Return the schedule of every power and data cable, in order of tag as the spec has them."""
    cables = list(model.installation.cables.values())
    rows = tuple(_row(cable, model) for cable in cables)
    return Table(COLUMNS, rows, tuple(c.tag for c in cables))


def _row(cable: Cable, model: Model) -> tuple[str, ...]:
    installation, results = model.installation, model.results
    figures, route = results.cables.get(cable.tag), results.routes.get(cable.tag)
    circuit = installation.circuits.get(cable.circuit)
    data = results.data.get(cable.to_end)
    kind = figures.words if figures else (data.medium if data else NOT_RECORDED)
    start = cable.from_end
    if circuit is not None and start == circuit.board:
        start = circuit.tag
    return (
        cable.tag,
        end_words(installation, start),
        end_words(installation, cable.to_end),
        state_before(cable.state) + kind,
        figures.cpc_words.replace("steel armour", "armour") if figures else "–",
        runs_in(route) + ("" if route is None or route.way_surveyed else "; way not surveyed"),
        f"{figures.method}, {figures.group_count}" if figures else "–",
        device_words(circuit.device) if circuit else "–",
        figure(figures.design_current_a if figures else None, 1, missing="–"),
        _capacity(figures) if figures else "–",
        figure(figures.drop_to_end_pct if figures else None, 2, missing="–"),
        length_words(cable, route.length_m if route and route.length_m else None),
        "–" if cable.state != "new" or route is None else metres(route.cut_m),
    )


def _capacity(figures: CableResult) -> str:
    """Return Iz, on two lines where it was not checked, so that its column stays narrow."""
    return capacity_words(figures.capacity_a, figures.capacity_doubt).replace(" (", "\n(")


def runs_in(route: CableRoute | None) -> str:
    """Return what a cable runs in, in order, each named once: runs by tag, else the enclosure."""
    if route is None or route.broken:
        return "no route found"
    names = dict.fromkeys(
        leg.containment or _enclosure(leg) for leg in route.legs if leg.kind != "through-wall"
    )
    return ", ".join(names) if names else NOT_RECORDED


def _enclosure(leg: RouteLeg) -> str:
    """Return what a leg outside the containment runs in, as its words say it."""
    _, _, told = leg.words.rpartition(" in ")
    return told if told and told != leg.words else leg.enclosure
