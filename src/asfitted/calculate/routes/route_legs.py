"""The legs of a cable: its way dressed with words, reference methods and enclosures."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.containment.containment_kinds import (
    drop_enclosure,
    drop_method,
    is_enclosed,
    kind_of,
)
from asfitted.calculate.results import RouteLeg
from asfitted.calculate.routes.cable_ends import Stretch
from asfitted.geometry import distance3

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from asfitted.calculate.containment.run_sections import CutRun, RunSection
    from asfitted.calculate.routes.containment_runs import Run
    from asfitted.calculate.routes.passage_lines import PassageLine
    from asfitted.calculate.routes.route_graph import Span
    from asfitted.resolve.installation import Cable


def legs_of(
    cable: Cable,
    parts: Iterable[Stretch | Span],
    runs: Mapping[str, Run],
    cut: Mapping[str, CutRun],
    passages: Mapping[str, PassageLine],
) -> tuple[RouteLeg, ...]:
    """Return the legs of a way in order, one for each section of containment it passes."""
    legs: list[RouteLeg] = []
    for part in parts:
        if isinstance(part, Stretch):
            if part.length_mm > 0:
                legs.append(_outside_leg(cable, part))
        elif part.run in passages:
            legs.append(_passage_leg(passages[part.run], part, legs[-1] if legs else None, cable))
        else:
            legs += _containment_legs(part, runs[part.run], cut[part.run])
    return tuple(legs)


def _containment_legs(span: Span, run: Run, cut: CutRun) -> Iterator[RouteLeg]:
    kind = kind_of(run.containment.kind)
    for section, forwards in cut.along(span):
        start, end = section.start, section.end
        yield RouteLeg(
            kind="declared" if run.is_declared else "containment",
            section=section.ident,
            containment=run.tag,
            wall=section.wall,
            words=_along_words(run, section),
            start=start if forwards else end,
            end=end if forwards else start,
            length_mm=section.to_mm - section.from_mm,
            method=kind.method,
            enclosure=run.containment.kind,
        )


def _passage_leg(line: PassageLine, span: Span, before: RouteLeg | None, cable: Cable) -> RouteLeg:
    """Return the leg through a passage: it lies as the containment that leads to it, or clipped."""
    goes_on = before is not None and before.kind == "containment"
    enclosure = before.enclosure if before and goes_on else drop_enclosure(cable.drop)
    return RouteLeg(
        kind="passage",
        section="",
        containment="",
        wall="",
        words=f"through the {line.passage.through} by {line.tag}",
        start=line.mouth(span.from_mm).at,
        end=line.mouth(span.to_mm).at,
        length_mm=span.length_mm,
        method=before.method if before and goes_on else drop_method(enclosure),
        enclosure=enclosure,
        passage=line.tag,
    )


def _along_words(run: Run, section: RunSection) -> str:
    if run.is_declared:
        basis = run.containment.declared_basis
        return f"along {run.tag}, length {basis.value if basis else 'declared'}"
    if not section.wall:
        return f"along {run.tag} overhead"
    return f"along {run.tag} on wall {section.wall}"


def _outside_leg(cable: Cable, stretch: Stretch) -> RouteLeg:
    enclosure = drop_enclosure(cable.drop)
    through = stretch.kind == "through-wall"
    return RouteLeg(
        kind=stretch.kind,
        section="",
        containment="",
        wall=stretch.wall,
        words=_outside_words(stretch, cable.drop, enclosure),
        start=stretch.start,
        end=stretch.end,
        length_mm=distance3(stretch.start, stretch.end),
        method="C" if through else drop_method(enclosure),
        enclosure="through the wall" if through else enclosure,
    )


def _outside_words(stretch: Stretch, drop: str, enclosure: str) -> str:
    face = "outside, " if stretch.outside else ""
    wall = f"wall {stretch.wall}"
    inside_of = f" in {drop}" if is_enclosed(enclosure) else ""
    a, b = stretch.start.z, stretch.end.z
    if stretch.kind == "through-wall":
        return f"through {wall} at +{a:.0f}"
    if stretch.kind == "off-wall":
        where = f"off {wall}" if stretch.wall else "off the walls"
        level = f"at +{a:.0f}" if a == b else f"from +{a:.0f} to +{b:.0f}"
        return f"{face}{where} {level}{inside_of}"
    if a == b:
        return f"{face}level on {wall} at +{a:.0f}{inside_of or ', clipped'}"
    verb = "upright"
    if stretch.kind == "drop":
        run = stretch.run_up_mm
        # a drop is read from the run to the thing, whichever way the cable is pulled
        a, b = (b, a) if run is not None and b == run else (a, b)
        verb = "drop" if b < a else "rise"
    how = inside_of or ", clipped"
    return f"{face}{verb} on {wall} from +{a:.0f} to +{b:.0f}{how}"
