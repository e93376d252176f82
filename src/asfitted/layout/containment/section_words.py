"""What is written beside a cross-section: place, fill in figures, power from data."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.containment.section_fill import inside_area_mm2
from asfitted.layout.containment.strip_drawing import metres
from asfitted.layout.containment.supports import limit_source
from asfitted.layout.declared_runs import way_words
from asfitted.layout.figures import rounded
from asfitted.layout.surveyed_ways import told, way_notes
from asfitted.layout.table import Column, Table
from asfitted.reference import cable_family
from asfitted.reference.containment import edge_allowance_mm

if TYPE_CHECKING:
    from asfitted.layout.containment.cross_section import CrossSection
    from asfitted.layout.sheet_model import Model

COLUMNS = (
    Column("Section", wraps=False),
    Column("Cable", wraps=False),
    Column("What"),
    Column("Overall mm", "end"),
    Column("Circuit or link"),
)


def where_words(section: CrossSection, strip: str) -> tuple[str, ...]:
    """Return where a cross-section is cut and how it is seen.

    Args:
        section: the cross-section.
        strip: sheet and zone of the place on its strip, such as "sheet 15, zone C3"; may be empty.
    """
    place = section.place
    piece = place.piece.section
    wall = f"on wall {piece.wall}" if piece.wall else "off the walls"
    if place.developed.is_declared:
        wall = way_words(place.developed.run)
    words = f"{piece.ident}, {metres(place.along)} m from the start of the run, {wall}"
    seen = "seen towards the end of the run"
    return (words, f"{seen}; {strip}" if strip else seen)


def figure_lines(section: CrossSection, model: Model) -> tuple[tuple[str, bool], ...]:
    """Return the lines of figures, each with whether it is bold."""
    lines = [(line, False) for line in _fill(section)]
    if not section.fits:
        tags = " ".join(dict.fromkeys(shape.tag for shape in section.packed.left_out))
        how = "in one layer" if section.form == "layer" else "as laid here"
        lines.append((f"Does not fit {how}: {tags}", True))
    lines += _apart(section, model)
    mass = section.place.piece.section.mass_kg_m
    if mass:
        lines.append((f"Cables {rounded(mass, 1)} kg/m", False))
    lines += [
        (note, False) for note in way_notes(section.place.piece.section.cables, model.results)
    ]
    return tuple(lines)


def _fill(section: CrossSection) -> tuple[str, ...]:
    """Return used, whole, per cent, limit, spare, and where the limit comes from."""
    piece, run = section.place.piece.section, section.place.developed.run
    fill, limit = rounded(piece.fill_pct, 0), rounded(piece.limit_pct, 0)
    only_data = piece.power_circuits == 0
    basis = f"Limit: {limit_source(run, only_data=only_data)}"
    if piece.used_mm is not None:
        edge = edge_allowance_mm().value
        cables = sum(piece.overall_mm)
        spare = run.width_mm * piece.limit_pct / 100 - piece.used_mm
        return (
            (
                f"Width: cables {cables:.1f} + 2 edges of {edge:g} = {piece.used_mm:.1f} mm "
                f"of {run.width_mm:g} mm: {fill} %"
            ),
            f"Limit {limit} %: {_spare(spare, 'mm')}",
            basis,
        )
    if piece.used_area_mm2 is not None:
        inside = inside_area_mm2(run)
        spare = inside * piece.limit_pct / 100 - piece.used_area_mm2
        return (
            f"Area: cables {piece.used_area_mm2:.0f} mm² of {inside:.0f} mm² inside: {fill} %",
            f"Limit {limit} %: {_spare(spare, 'mm²')}",
            basis,
        )
    return ("Fill not checked: the room inside is not known",)


def _spare(spare: float, unit: str) -> str:
    if spare < 0:
        return f"over it by {rounded(-spare, 0)} {unit}"
    return f"{rounded(spare, 0)} {unit} left to it"


def _apart(section: CrossSection, model: Model) -> list[tuple[str, bool]]:
    """Return how far power and data are to be apart, here and from the nearest other run."""
    result = model.results.containment.get(section.place.developed.run.tag)
    lines: list[tuple[str, bool]] = []
    clear = section.clear_mm
    if clear is not None:
        divider = "; divider shown dashed: not recorded as fitted" if section.divider_mm else ""
        lines.append(
            (f"Power and data together: {rounded(clear, 0)} mm clear as laid here{divider}", True)
        )
    if result is None or result.separation_needed_mm is None or result.separation_mm is None:
        return lines
    need, has = rounded(result.separation_needed_mm, 0), rounded(result.separation_mm, 0)
    other = result.separation_from
    own = other == section.place.developed.run.tag
    words = f"Separation from {other}, the other band: needs {need} mm, has {has} mm"
    if own:
        words = (
            f"Power and data in one run: {need} mm apart or a divider is needed; none is recorded"
        )
    lines.append((words, own))
    return lines


def cable_table(section: CrossSection, model: Model) -> Table:
    """Return one row for each cable in a cross-section."""
    number = str(section.place.number)
    piece = section.place.piece.section
    rows = []
    for tag, overall in zip(piece.cables, piece.overall_mm, strict=True):
        cable = model.installation.cables[tag]
        result = model.results.cables.get(tag)
        legend = cable_family.family(cable.family).legend
        words = result.words if result else f"{cable.cores}c {legend}"
        data = model.results.data.get(cable.to_end)
        if result is None and data is not None:
            words = data.medium
        elif result is None and cable.csa_mm2 is None:
            words += ", no size found: drawn as the largest made"
        rows.append(
            (
                number,
                told(tag, model.results),
                words,
                f"{overall:.1f}",
                _circuit(model, cable.circuit),
            )
        )
    idents = tuple(f"section:{number}:{tag}" for tag in piece.cables)
    return Table(COLUMNS, tuple(rows), idents)


def _circuit(model: Model, tag: str) -> str:
    circuit = model.installation.circuits.get(tag)
    return f"{tag} {circuit.name}" if circuit else tag
