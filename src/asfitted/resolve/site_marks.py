"""Lays mark-ups from site over a job: the design file stays as it was issued.

Each mark-up is turned into the words that the job file would hold, then the whole is read and
checked like any job; a problem points into the file of mark-ups.
"""

from __future__ import annotations

import copy
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from pydantic import ValidationError

from asfitted.errors import Problem, SpecError
from asfitted.resolve.job_record import SiteMark
from asfitted.spec.explain import explain
from asfitted.spec.job_spec import JobSpec
from asfitted.spec.load_job import LoadedJob, in_file_order
from asfitted.spec.problem_codes import Code
from asfitted.spec.site_marks import LoadedSite, MarkedDocument
from asfitted.spec.words import did_you_mean

if TYPE_CHECKING:
    from asfitted.resolve.installation import Installation
    from asfitted.spec.load_yaml import SpecPath
    from asfitted.spec.site_marks import SiteMarkWords


def marked_up(loaded: LoadedJob, design: Installation, site: LoadedSite) -> LoadedJob:
    """Return the job as found on site.

    Args:
        loaded: the design as issued.
        design: what it means; its tags are those that the mark-ups name.
        site: the mark-ups.

    Raises:
        SpecError: wrong job or revision, an unknown tag, or a job that cannot be used any more.
    """
    _check_issue(design, site)
    over = _Overlay(loaded, design, site)
    for number, mark in enumerate(site.words.marks):
        over.lay(mark, ("marks", number))
    if over.problems:
        raise SpecError(in_file_order(over.problems))
    base = loaded.document
    document = MarkedDocument(
        base.file, base.lines, over.data, base.values, base.keys, site.document, over.marked
    )
    try:
        spec = JobSpec.model_validate(over.data)
    except ValidationError as error:
        raise SpecError(in_file_order(explain(error, document))) from error
    return replace(loaded, spec=spec, document=document, site_marks=tuple(over.told))


def _check_issue(design: Installation, site: LoadedSite) -> None:
    issue = f"{design.job.number} {design.job.revision}"
    if site.words.job.split() != issue.split():
        message = f'these mark-ups are for "{site.words.job}", the job is {issue}'
        hint = "take the prints of the right issue to site, or correct the words"
        raise SpecError([site.problem(Code.NAME, message, ("for",), hint)])


def paths_of_tags(loaded: LoadedJob, design: Installation) -> dict[str, SpecPath]:
    """Return where in the job file each thing stands, by tag; a cable stands at its far end."""
    spec = loaded.spec
    found: dict[str, SpecPath] = {tag: ("boards", tag) for tag in spec.boards}
    found |= {tag: ("containment", tag) for tag in spec.containment}
    for index, circuit in enumerate(spec.circuits):
        found |= {p.tag: ("circuits", index, "points", n) for n, p in enumerate(circuit.points)}
        full = (circuit.way, *(f"{circuit.way}L{n}" for n in (1, 2, 3)))
        found |= {way: ("circuits", index) for way in full if way in design.circuits}
    if spec.data is not None:
        groups = (("equipment", spec.data.equipment), ("cameras", spec.data.cameras))
        for key, tags in (*groups, ("points", spec.data.points)):
            found |= {tag: ("data", key, tag) for tag in tags}
        if spec.data.cabinet is not None:
            found[spec.data.cabinet.tag] = ("data", "cabinet")
    for cable in design.cables.values():
        circuit_path = found.get(cable.circuit)
        is_to_board = cable.to_end in design.boards
        path = circuit_path if is_to_board else found.get(cable.to_end)
        if path is not None:
            found[cable.tag] = path
    return found


#: Keys by which a mark-up says which way a cable goes.
WAY_KEYS = frozenset({"via", "route"})


class _Overlay:
    """The data of the job while mark-ups are laid over it."""

    def __init__(self, loaded: LoadedJob, design: Installation, site: LoadedSite) -> None:
        self.data: dict[str, Any] = copy.deepcopy(loaded.document.data)
        self.design = design
        self.site = site
        self.paths = paths_of_tags(loaded, design)
        self.marked: dict[SpecPath, SpecPath] = {}
        self.problems: list[Problem] = []
        self.told: list[SiteMark] = []

    def lay(self, mark: SiteMarkWords, path: SpecPath) -> None:
        """Lay one mark-up over the data."""
        target = self.paths.get(mark.tag)
        if target is None:
            message = f'"{mark.tag}" is no tag of this job'
            hint = did_you_mean(mark.tag, self.paths)
            self._problem(Code.NAME, message, (*path, "tag"), hint)
            return
        drawn = [
            *self._moved(mark, target, path),
            *self._length(mark, target, path),
            *self._as_found(mark, target, path),
        ]
        told = "; ".join([*drawn, *([mark.note] if mark.note else [])]) or "as drawn"
        visit, place = self.site.words, self.site.document.place(path)
        photo = mark.photo or ""
        made = SiteMark(mark.tag, told, visit.by, visit.date, photo, place, drawn=bool(drawn))
        self.told.append(
            replace(
                made,
                way_given=not self._is_length_alone(mark, target),
                note=mark.note or "",
                is_in_place=bool(mark.as_found),
            )
        )

    def _is_length_alone(self, mark: SiteMarkWords, target: SpecPath) -> bool:
        """Tell whether a length was found and no mark-up says which way the cable goes."""
        if mark.measured is None and mark.lengthened_by is None:
            return False
        marks = self.site.words.marks
        ways = {self.paths.get(m.tag) for m in marks if WAY_KEYS & set(m.as_found or {})}
        return not {target, target[:2]} & ways

    def _problem(self, code: Code, message: str, path: SpecPath, hint: str) -> None:
        self.problems.append(self.site.problem(code, message, path, hint))

    def _set(self, target: SpecPath, key: str, value: Any, source: SpecPath) -> None:
        block: Any = self.data
        for step in target:
            block = block[step]
        block[key] = value
        self.marked[(*target, key)] = source

    def _moved(self, mark: SiteMarkWords, target: SpecPath, path: SpecPath) -> list[str]:
        if mark.moved_to is None:
            return []
        is_circuit = target[0] == "circuits" and len(target) == 2
        if target[0] == "containment" or mark.tag in self.design.cables or is_circuit:
            message = f"{mark.tag} has no single place to be moved to"
            hint = 'write "as found" with its level and run, or move the thing at its end'
            self._problem(Code.POSITION, message, (*path, "moved to"), hint)
            return []
        self._set(target, "at", mark.moved_to, (*path, "moved to"))
        return [f"moved to {mark.moved_to}"]

    def _length(self, mark: SiteMarkWords, target: SpecPath, path: SpecPath) -> list[str]:
        cable = self.design.cables.get(mark.tag)
        words: list[str] = []
        for key, value in (("measured", mark.measured), ("lengthened by", mark.lengthened_by)):
            if value is None:
                continue
            source = (*path, key)
            if cable is None:
                message = f'"{key}" is written at {mark.tag}, which is no cable'
                self._problem(Code.NAME, message, source, "write the tag of the cable, such as W05")
            elif key == "measured":
                self._set(target, "length", f"{value:g} m measured", source)
                words.append(f"measured {value:g} m from end to end")
            elif cable.measured_length_m is not None or mark.measured is not None:
                message = f"{mark.tag} has a measured length: it is not lengthened by a guess"
                hint = 'write "measured" with the whole length'
                self._problem(Code.FIGURE, message, source, hint)
            else:
                self._set(target, "extra", f"{cable.extra_m + value:g} m", source)
                words.append(f"longer than drawn by {value:g} m")
        return words

    def _as_found(self, mark: SiteMarkWords, target: SpecPath, path: SpecPath) -> list[str]:
        found = mark.as_found or {}
        for key, value in found.items():
            if key in {"tag", "points"}:
                message = f'"{key}" cannot be marked up from site'
                hint = "change the job file and issue a revision"
                self._problem(Code.SHAPE, message, (*path, "as found", key), hint)
                continue
            self._set(target, key, value, (*path, "as found", key))
        told = ", ".join(_found_words(key, value) for key, value in found.items())
        return [f"found {told}"] if told else []


def _found_words(key: str, value: Any) -> str:
    """Return what was found in words: a new way as such, a list without its brackets."""
    words = " ".join(str(v) for v in value) if isinstance(value, list) else str(value)
    if key == "via":
        return f"to go by {words}"
    return words if key == "route" else f"{key} {words}"
