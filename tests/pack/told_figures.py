"""What each kind of sheet must say of a job, worked out from the model alone, beside what it says.

Each function yields claims: where, the words that must stand there, and the words that do.
"""

from __future__ import annotations

import math
import re
import sys
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

sys.path.insert(0, str(Path(__file__).parent.parent / "sheets"))  # for sheet_words.py

from sheet_words import items_of, said, stands_in, words_by_ident

from asfitted.layout.figures import metres, rounded

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence

    from asfitted.layout.sheet_layout import SheetLayout
    from asfitted.layout.sheet_model import Model
    from asfitted.resolve.installation import Cable, Circuit, Device

    Sheets = Sequence[SheetLayout]


__all__ = ["CLAIMS", "Claim", "length_of", "said", "size_of", "stands_in", "words_by_ident"]


class Claim(NamedTuple):
    """Words that must stand at a place, and what stands there."""

    place: str
    wanted: str
    words: str


def size_of(model: Model, cable: Cable) -> str:
    """Return what a cable is: cores, size and type, or the medium of a data link."""
    figures = model.results.cables.get(cable.tag)
    return figures.words if figures else model.results.data[cable.to_end].medium


def head_of(model: Model, cable: Cable) -> str:
    """Return cores and size alone: ``4c × 6 mm²``."""
    return size_of(model, cable).partition(" mm²")[0] + " mm²"


def length_of(model: Model, cable: Cable) -> str:
    """Return the length of a cable as told to a tenth of a metre."""
    return metres(model.results.routes[cable.tag].length_m)


def sized(model: Model, *, new: bool = False) -> list[Cable]:
    """Return the cables of which size and way are known; the new ones alone if asked."""
    known = {*model.results.cables, *(link.cable for link in model.results.data.values())}
    cables = [c for c in model.installation.cables.values() if c.tag in known]
    return [c for c in cables if not new or c.state == "new"]


def rating_of(device: Device) -> str:
    """Return curve and rating of a device: ``B20``, ``60 A``."""
    return f"{device.curve}{device.rating_a:g}" if device.curve else f"{device.rating_a:g} A"


def on_diagram(model: Model, sheets: Sheets) -> Iterator[Claim]:
    """Tag, size, lengths, device and figures of each circuit on the single-line diagram."""
    texts = words_by_ident(sheets, "single-line")
    for board in model.installation.boards.values():
        if board.main_switch is not None:
            words = texts[f"{board.tag}:switch:words"]
            yield Claim(board.tag, rating_of(board.main_switch), words)
            if board.main_switch.rcd is not None:
                yield Claim(board.tag, f"{board.main_switch.rcd.idn_ma:g} mA", words)
    for circuit in model.installation.circuits.values():
        rating = texts[f"{circuit.tag}:rating"]
        yield Claim(f"{circuit.tag}:rating", rating_of(circuit.device), rating)
        if circuit.device.icn_ka is not None:
            yield Claim(f"{circuit.tag}:rating", f"{circuit.device.icn_ka:g} kA", rating)
        if circuit.device.rcd is not None:
            yield Claim(f"{circuit.tag}:rating", f"{circuit.device.rcd.idn_ma:g} mA", rating)
        yield from _legs(model, circuit, texts)
        yield from _figures(model, circuit, texts)


def _legs(model: Model, circuit: Circuit, texts: dict[str, str]) -> Iterator[Claim]:
    cables = [model.installation.cables[tag] for tag in circuit.cables]
    legs = {ident: words for ident, words in texts.items() if _is_leg(ident, circuit.tag)}
    for cable in cables:
        if cable.tag not in model.results.cables:
            continue
        ident, words = _leg_of(cable.tag, legs, cables)
        yield Claim(ident, head_of(model, cable), words)
        told = re.search(r"L = ([\d.+ ]+?) m( in all)?", words)
        lengths, in_all = told.groups() if told else ("", "")
        if not in_all:
            length = rounded(model.results.routes[cable.tag].length_m, 1)
            yield Claim(ident, length, lengths)
    for ident, words in legs.items():
        if total := re.search(r"L = ([\d.]+) m in all", words):
            run = [c for c in cables if _leg_of(c.tag, legs, cables)[0] == ident]
            whole = sum(model.results.routes[c.tag].length_m for c in run)
            yield Claim(ident, rounded(whole, 1), total[1])


def _is_leg(ident: str, circuit: str) -> bool:
    return ident.startswith(f"{circuit}:") and ident.endswith(":cable")


def _leg_of(tag: str, legs: dict[str, str], cables: Sequence[Cable]) -> tuple[str, str]:
    """Return the text that tells of a cable, alone or as one of "W13 to W13-3"."""
    order = [cable.tag for cable in cables]
    for ident, words in legs.items():
        first, last = re.match(r"(\S+)(?: to (\S+?),?(?= |$))?", words).groups()  # type: ignore[union-attr]
        last = last or first
        if {first, last} <= set(order) and order.index(first) <= order.index(tag) <= order.index(
            last
        ):
            return ident, words
    return f"{tag}: on no line of its circuit", ""


def _figures(model: Model, circuit: Circuit, texts: dict[str, str]) -> Iterator[Claim]:
    figures = model.results.circuits.get(circuit.tag)
    if figures is None or circuit.state != "new":
        return
    ident = f"{circuit.tag}:figures"
    laid = [r for t in circuit.cables if (r := model.results.cables.get(t))]
    least = [r.checked_capacity_a for r in laid if r.checked_capacity_a is not None]
    for one in laid:
        if one.checked_capacity_a is None:
            told = f"{one.tag} Iz not checked (free air {rounded(one.capacity_a, 1)} A)"
            yield Claim(ident, told, texts[ident])
    for name, value, unit, digits in (
        ("Ib", figures.design_current_a, "A", 1),
        ("Iz", min(least, default=None), "A", 1),
        ("drop", figures.drop_pct, "%", 2),
        ("Zs", figures.zs_ohm, "Ω", 2),
    ):
        figure = "not checked" if value is None else f"{rounded(value, digits)} {unit}"
        yield Claim(ident, f"{name} {figure}", texts[ident])


def on_overview(model: Model, sheets: Sheets) -> Iterator[Claim]:
    """Device, cable and length of each feeder on the overview of the boards."""
    texts = words_by_ident(sheets, "distribution-overview")
    for circuit in model.installation.circuits.values():
        words = texts.get(f"board:{circuit.feeds_board}:facts")
        if words is not None:
            yield Claim(circuit.tag, rating_of(circuit.device), words)
            for tag in circuit.cables:
                cable = model.installation.cables[tag]
                for wanted in (tag, head_of(model, cable), f"L = {length_of(model, cable)}"):
                    yield Claim(circuit.tag, wanted, words)


def on_schedule(model: Model, sheets: Sheets) -> Iterator[Claim]:
    """Every row of the cable schedule: ends, size, currents, drop, lengths."""
    texts = words_by_ident(sheets, "cable-schedule")
    for cable in model.installation.cables.values():
        row, route = texts[f"cable-schedule:{cable.tag}"], model.results.routes[cable.tag]
        wanted = [cable.tag, cable.to_end, size_of(model, cable), length_of(model, cable)]
        if cable.state == "new":
            wanted.append(metres(route.cut_m))
        if figures := model.results.cables.get(cable.tag):
            wanted.append(rounded(figures.design_current_a, 1))
            wanted.append(rounded(figures.capacity_a, 1))
            wanted.append(rounded(figures.drop_to_end_pct, 2))
        for words in wanted:
            yield Claim(cable.tag, words, row)


def on_charts(model: Model, sheets: Sheets) -> Iterator[Claim]:
    """Every circuit in the door of its board: device, size, length of the whole, limit of Zs."""
    texts = words_by_ident(sheets, "door-chart")
    for circuit in model.installation.circuits.values():
        row = texts[f"door-chart/{circuit.board}:{circuit.way}"]
        wanted = [circuit.way, circuit.name, rating_of(circuit.device)]
        cables = [model.installation.cables[tag] for tag in circuit.cables]
        if cables and cables[0].tag in model.results.cables:
            wanted.append(head_of(model, cables[0]))
            whole = sum(model.results.routes[c.tag].length_m for c in cables)
            wanted.append(metres(whole))
        if (figures := model.results.circuits.get(circuit.tag)) and figures.zs_limit_ohm:
            wanted.append(f"{rounded(figures.zs_limit_ohm, 2)} Ω")
        for words in wanted:
            yield Claim(circuit.tag, words, row)


def on_work_papers(model: Model, sheets: Sheets) -> Iterator[Claim]:
    """Cards, cut list and both labels of every new cable."""
    cards, cuts = words_by_ident(sheets, "route-brief"), words_by_ident(sheets, "cut-list")
    labels = words_by_ident(sheets, "labels")
    for cable in sized(model, new=True):
        size, cut = size_of(model, cable), metres(model.results.routes[cable.tag].cut_m)
        papers = {
            "card": cards[f"card:{cable.tag}:head"],
            "cut list": cuts[f"cut-list:{cable.tag}"],
        }
        for paper, words in papers.items():
            for wanted in (cable.tag, size, cut):
                yield Claim(f"{paper} {cable.tag}", wanted, words)
        for i, end in enumerate((cable.from_end, cable.to_end)):
            words = labels[f"label:{cable.tag}@{end}:{i}"]
            for wanted in (cable.tag, size, f"this end: {end}"):
                yield Claim(f"label {cable.tag}@{end}", wanted, words)


def on_way_labels(model: Model, sheets: Sheets) -> Iterator[Claim]:
    """The label of every new way, and the row of its circuit on the sheets for test results."""
    labels, tests = words_by_ident(sheets, "labels"), words_by_ident(sheets, "test-results")
    for circuit in model.installation.circuits.values():
        row = tests[f"details:{circuit.board}:{circuit.tag}"]
        places = [row] if circuit.state != "new" else [row, labels[f"label:{circuit.tag}"]]
        for words in places:
            yield Claim(circuit.tag, circuit.name, words)
            yield Claim(circuit.tag, rating_of(circuit.device), words)


def on_test_sheets(model: Model, sheets: Sheets) -> Iterator[Claim]:
    """The least protective conductor of each circuit and where it is, n/r where not known."""
    tests = words_by_ident(sheets, "test-results")
    for circuit in model.installation.circuits.values():
        row = tests[f"details:{circuit.board}:{circuit.tag}"]
        figures = model.results.circuits.get(circuit.tag)
        least = figures.least_cpc if figures else None
        if figures is None or least is None:
            yield Claim(circuit.tag, "n/r", row)
            continue
        size = least.words.removeprefix("steel ")
        alike = {model.results.cables[tag].cpc_words for tag in circuit.cables}
        if len(alike) == 1:
            yield Claim(circuit.tag, f"{size}, throughout", row)
            continue
        yield Claim(circuit.tag, f"{size}, in {least.cables[0]}", row)
        checked = model.results.cables[figures.cpc_checked]
        if checked.tag not in least.cables:
            yield Claim(circuit.tag, f"{checked.cpc_words} in {checked.tag}", row)


def on_calculations(model: Model, sheets: Sheets) -> Iterator[Claim]:
    """The working of every circuit: size and length of each cable, Zs and its limit."""
    of_circuit: dict[str, list[str]] = {}
    for _, item in items_of(sheets, "calculations"):
        head, _, circuit = item.ident.rpartition(":")[0].partition(":")
        if head == "calculations":
            of_circuit.setdefault(circuit, []).append(said(item))
    for cable in model.installation.cables.values():
        if cable.tag not in model.results.cables or cable.circuit not in of_circuit:
            continue
        rows = [r for r in of_circuit[cable.circuit] if r.startswith(f"{cable.tag} ")]
        words = " ".join(rows)
        yield Claim(f"working of {cable.tag}", size_of(model, cable), words)
        length_m = model.results.routes[cable.tag].length_m
        told = [m for m in re.findall(r"([\d.]+) m\b", words) if abs(float(m) - length_m) < 0.0051]
        yield Claim(
            f"working of {cable.tag}", f"{length_m:g} m", f"{length_m:g} m" if told else words
        )


def on_data_sheets(model: Model, sheets: Sheets) -> Iterator[Claim]:
    """Every link on the data diagram, in the camera schedule and in the table of its ends."""
    diagram = words_by_ident(sheets, "data-diagram")
    cameras = words_by_ident(sheets, "camera-schedule")
    ends = words_by_ident(sheets, "details-data-ends")
    for device, link in model.results.data.items():
        cable = model.installation.cables[link.cable]
        lines = [w for i, w in diagram.items() if re.match(rf"{re.escape(device)}:\w+:above", i)]
        yield Claim(f"diagram {device}", f"L={length_of(model, cable)}", " ".join(lines))
        places = {"diagram": " ".join(lines), "ends": ends.get(f"details:table:{device}")}
        if model.installation.data_devices[device].kind == "camera":
            places["cameras"] = cameras[f"camera-schedule:{device}"]
        for place, words in places.items():
            if words is not None:
                yield Claim(f"{place} {device}", link.cable, words)
                yield Claim(f"{place} {device}", link.medium, words)
                if place != "diagram":
                    yield Claim(f"{place} {device}", length_of(model, cable), words)
        if link.at_device_v is not None and link.supply.startswith("PS"):
            volts = rounded(link.at_device_v, 1)
            drawn = diagram[f"{device}:supply:below"]
            yield Claim(f"diagram {device}", f"{volts} V at the camera", drawn)
            yield Claim(f"cameras {device}", volts, places["cameras"] or "")


def on_detail_tables(model: Model, sheets: Sheets) -> Iterator[Claim]:
    """The cable that each row of a table of details names has its size there."""
    for sheet, item in items_of(sheets, "details"):
        if not item.ident.startswith("details:table:"):
            continue
        words = said(item)
        for tag in re.findall(r"\bW\d+(?:-\d+)?\b(?= \S+ ?×)", words):
            size = size_of(model, model.installation.cables[tag])
            yield Claim(f"sheet {sheet.number} {item.ident}", f"{tag} {size}", words)


def on_sections(model: Model, sheets: Sheets) -> Iterator[Claim]:
    """Every cable in the tables beside the cross-sections of the containment."""
    for sheet, item in items_of(sheets, "containment-sections"):
        if not item.ident.startswith("cables:") or item.ident.endswith(":head"):
            continue
        cable = model.installation.cables[item.ident.rpartition(":")[2]]
        place = f"sheet {sheet.number} {item.ident}"
        yield Claim(place, size_of(model, cable), said(item))
        if figures := model.results.cables.get(cable.tag):
            yield Claim(place, rounded(figures.overall_mm, 1), said(item))


def on_plans(model: Model, sheets: Sheets) -> Iterator[Claim]:
    """Every run of containment has its make-up and level on plan, elevation and schedule."""
    schedule = words_by_ident(sheets, "containment-schedule")
    for run in model.installation.containment.values():
        row = schedule[f"containment-schedule:{run.tag}"]
        yield Claim(f"schedule {run.tag}", run.words, row)
        if run.declared_length_m is not None:
            yield Claim(f"schedule {run.tag}", metres(run.declared_length_m), row)
    tags = {"key-plan": r"plan-run-tag:([^:]+)$", "floor-plan": r"plan-run-tag:([^:]+)$"}
    for key, pattern in (*tags.items(), ("elevation", r"(?:.*:)?run-tag:([^:]+):\d+$")):
        for sheet, item in items_of(sheets, key):
            found = re.match(pattern, item.ident)
            words = said(item)
            if found and not words.isdigit():  # a number leads to a keynote beside the drawing
                run = model.installation.containment[found[1]]
                yield Claim(f"sheet {sheet.number} {item.ident}", run.words, words)
                if key == "elevation":
                    yield _contents(model, item.ident, words)


def _contents(model: Model, ident: str, words: str) -> Claim:
    """Return the claim that a run holds at a place what the sections there hold."""
    tag, index = ident.rsplit(":", 2)[1:]
    path = model.installation.containment[tag].path
    a, b = path[int(index)], path[int(index) + 1]
    held = {
        cable
        for section in model.results.sections.values()
        if section.containment == tag
        and math.dist(a, section.start) + math.dist(section.end, b) < math.dist(a, b) + 1.0
        for cable in section.cables
    }
    if "cables, see table" in words:
        return Claim(ident, f"{len(held)} cables", words)
    told = set(re.findall(r"\b[A-Z]\d\d(?:-\d+)?\b", words.removeprefix(tag)))
    return Claim(ident, " ".join(sorted(held)), " ".join(sorted(told)))


def on_equipment(model: Model, sheets: Sheets) -> Iterator[Claim]:
    """Every board, point and data device in the equipment schedule, and on its label."""
    rows, labels = words_by_ident(sheets, "equipment-schedule"), words_by_ident(sheets, "labels")
    for board in model.installation.boards.values():
        row = rows[f"equipment-schedule:{board.tag}"]
        yield Claim(board.tag, f"{board.way_count} ways", row)
        yield Claim(board.tag, board.fed_by, row)
    for point in model.installation.points.values():
        row = rows[f"equipment-schedule:{point.tag}"]
        yield Claim(point.tag, point.circuit, row)
        if point.position.wall:  # the height at the end of a declared run is not recorded
            yield Claim(point.tag, f"+{point.position.up_mm:.0f}", row)
        if point.rating_a is not None:
            yield Claim(point.tag, f"{point.rating_a:g} A", row)
        if point.state == "new":
            yield Claim(point.tag, f"fed from {point.circuit}", labels[f"label:{point.tag}"])


def on_elevations(model: Model, sheets: Sheets) -> Iterator[Claim]:
    """Every thing on the face of a wall has its tag and height there."""
    texts: dict[str, str] = {}
    for sheet, item in items_of(sheets, "elevation/"):
        texts[sheet.number] = f"{texts.get(sheet.number, '')} {said(item)}"
    boards, points = model.installation.boards, model.installation.points
    for tag in (*boards, *points):
        place = model.installation.position_of(tag)
        if not place.wall or place.out_mm:
            continue
        key = f"elevation/{place.wall}" + ("/outside" if place.outside else "")
        shown = [s for s in sheets if s.number in texts and _shows(s, place.wall, texts[s.number])]
        words = " ".join(texts[sheet.number] for sheet in shown)
        yield Claim(f"{key} {tag}", tag, words)
        yield Claim(f"{key} {tag}", f"+{place.up_mm:.0f}", words)


def _shows(sheet: SheetLayout, wall: str, words: str) -> bool:
    """Tell whether a sheet of elevations shows a wall, whole or as a detail."""
    view = re.compile(rf"{re.escape(wall)}[:/]")
    return (
        wall in sheet.key
        or stands_in(f"wall {wall}", words)
        or any(view.match(item.ident) for item in sheet.items)
    )


def on_supports(model: Model, sheets: Sheets) -> Iterator[Claim]:
    """The spacing that the fixings list counts each run by, on its strip and on its elevations."""
    strips = words_by_ident(sheets, "containment-strips")
    elevations = " ".join(words_by_ident(sheets, "elevation").values())
    brief = words_by_ident(sheets, "route-brief")
    take = model.results.take_off
    for fixing in take.fixings if take else ():
        if fixing.subject not in model.installation.containment or "tie" in fixing.what:
            continue
        heads = [w for i, w in strips.items() if re.match(rf"strip:{fixing.subject}:\d+:fact:1", i)]
        wanted = f"{fixing.spacing_mm} mm"
        if heads:
            yield Claim(f"strip {fixing.subject}", wanted, " ".join(heads))
        told = re.search(r"Supports at most \(mm\): ([^.]*)", elevations)
        if model.installation.walls:
            yield Claim(
                f"elevations {fixing.subject}", str(fixing.spacing_mm), told[1] if told else ""
            )
        rows = [
            w
            for i, w in brief.items()
            if i.startswith(f"brief:fixing:{fixing.subject}/") and fixing.what in w
        ]
        if rows:
            yield Claim(f"brief {fixing.subject}", str(fixing.spacing_mm), " ".join(rows))


def on_starters(model: Model, sheets: Sheets) -> Iterator[Claim]:
    """Every starter, and every motor that brings its own, wherever its relay is told."""
    diagram = words_by_ident(sheets, "single-line")
    rows = words_by_ident(sheets, "equipment-schedule")
    labels, orders = words_by_ident(sheets, "labels"), words_by_ident(sheets, "materials")
    checks = " ".join(words_by_ident(sheets, "commissioning").values())
    steps = " ".join(w for i, w in words_by_ident(sheets, "route-brief").items() if ":steps:" in i)
    for point in model.installation.points.values():
        is_starter = point.kind == "motor starter"
        if not is_starter and point.starter != "built in":
            continue
        own = [w for i, w in diagram.items() if i.startswith(f"{point.circuit}:") and "what" in i]
        what = f"{point.rating_a:g} A direct-on-line starter" if is_starter else "starter built in"
        yield Claim(f"diagram {point.tag}", what, " ".join(own))
        yield Claim(f"schedule {point.tag}", what, rows[f"equipment-schedule:{point.tag}"])
        if point.state == "new":
            yield Claim(f"label {point.tag}", "stop is no isolator", labels[f"label:{point.tag}"])
        if is_starter:
            yield Claim(f"order {point.tag}", what, " ".join(orders.values()))
        if point.overload_a is not None:
            relay = f"overload relay {point.overload_a:g} A"
            yield Claim(f"diagram {point.tag}", relay, " ".join(own))
            yield Claim(f"schedule {point.tag}", relay, rows[f"equipment-schedule:{point.tag}"])
            yield Claim(f"checks {point.tag}", f"set to {point.overload_a:g} A", checks)
            yield Claim(f"order of work {point.tag}", f"{point.tag} {point.overload_a:g} A", steps)
    for point in model.installation.points.values():
        if point.starter in model.installation.points:
            own = [
                w for i, w in diagram.items() if i.startswith(f"{point.circuit}:") and "what" in i
            ]
            yield Claim(f"diagram {point.tag}", f"started by {point.starter}", " ".join(own))
            relay = model.installation.points[point.starter].overload_a
            yield Claim(f"model {point.tag}", str(relay), str(point.overload_a))


CLAIMS: dict[str, Callable[[Model, Sheets], Iterator[Claim]]] = {
    "single-line diagram": on_diagram,
    "overview": on_overview,
    "cable schedule": on_schedule,
    "door charts": on_charts,
    "cards, cut list, labels": on_work_papers,
    "labels of ways, test sheets": on_way_labels,
    "test sheets": on_test_sheets,
    "calculations": on_calculations,
    "data sheets": on_data_sheets,
    "tables of details": on_detail_tables,
    "cross-sections": on_sections,
    "containment": on_plans,
    "equipment": on_equipment,
    "elevations": on_elevations,
    "supports": on_supports,
    "starters": on_starters,
}
