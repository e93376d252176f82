"""Cables of a circuit, leg by leg from the board, tagged by the circuit's number."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.reference.points import point_kinds
from asfitted.resolve.cable_make import Live, make_of
from asfitted.resolve.installation import Basis, Cable, State
from asfitted.spec.problem_codes import Code
from asfitted.spec.words import did_you_mean

if TYPE_CHECKING:
    from collections.abc import Mapping

    from asfitted.quantities import Figure
    from asfitted.resolve.installation import Circuit, PointServed
    from asfitted.resolve.ledger import Ledger
    from asfitted.spec.circuits import CircuitWords, PointWords
    from asfitted.spec.load_yaml import SpecPath
    from asfitted.spec.words import CableWords

CLIPPED = "clipped"


def measured_length_m(figure: Figure | None, path: SpecPath, ledger: Ledger) -> float | None:
    """Return a cable length that was measured; one that does not say so is a problem."""
    if figure is None:
        return None
    if figure.basis != Basis.MEASURED.value:
        message = "a cable length that is written must have been measured"
        hint = f'write "{figure.value:g} m measured", or leave it out to have it worked out'
        ledger.problem(Code.FIGURE, message, (*path, "length"), hint)
    return figure.value


def checked_via(
    names: list[str] | None, path: SpecPath, runs: Mapping[str, object], ledger: Ledger
) -> tuple[str, ...]:
    """Return the runs that a cable must use; an unknown one is noted."""
    for number, name in enumerate(names or []):
        if name not in runs:
            ledger.unknown(Code.NAME, "run", name, runs, (*path, "via", number))
    return tuple(names or [])


class Legs:
    """Makes the cables of one circuit."""

    def __init__(
        self,
        circuit: Circuit,
        words: CircuitWords,
        path: SpecPath,
        runs: Mapping[str, object],
        *,
        ledger: Ledger,
        ambient_c: float,
    ) -> None:
        """Take the circuit, its words and what its cables may run in."""
        self.circuit = circuit
        self.words = words
        self.path = path
        self.runs = runs
        self.ledger = ledger
        self.ambient_c = ambient_c
        self.cables: list[Cable] = []

    def _live(self, points: Mapping[str, PointServed]) -> Live:
        """Return the live conductors that the circuit's load needs."""
        if self.circuit.phase != "TP":
            return Live(2)
        kinds = [point_kinds()[points[t].kind] for t in self.circuit.points if t in points]
        loads = [kind for kind in kinds if kind.serves and kind.use]
        if loads and not any(kind.neutral for kind in loads):
            return Live(3, f"a three-phase {loads[-1].key} needs no neutral")
        return Live(4)

    def _tag(self, to_end: str) -> str:
        key = f"{self.circuit.tag} ring" if to_end == self.circuit.board else to_end
        return self.ledger.tags.leg_tag(self.circuit.number, key, len(self.cables))

    def _drop(self, point: PointWords | None) -> str:
        written = (point.drop if point else None) or self.words.drops
        if written is None:
            self.ledger.default(self.circuit.tag, "drops", CLIPPED, "none was given")
        return written or CLIPPED

    def _state(self, cable: CableWords, point: PointWords | None) -> State:
        if cable.existing:
            return State.EXISTING
        return State((point.state if point else None) or self.words.state or "new")

    def _phrase(
        self, point: PointWords | None, path: SpecPath
    ) -> tuple[CableWords, SpecPath] | None:
        if point is not None and point.cable is not None:
            return point.cable, (*path, "cable")
        if self.words.cable is not None:
            return self.words.cable, (*self.path, "cable")
        if self.circuit.state is not State.EXISTING:
            message = f"circuit {self.circuit.tag} does not say its cable"
            self.ledger.problem(Code.MISSING, message, self.path, "add cable: SWA 4c, or T&E")
        return None

    def _length_m(self, point: PointWords | None, path: SpecPath) -> float | None:
        if point is not None and point.length is not None:
            return measured_length_m(point.length, path, self.ledger)
        if self.words.length is None:
            return None
        legs = len(self.words.points) + bool(self.words.feeds)
        if legs > 1:
            message = f"circuit {self.circuit.tag} has {legs} cables but one length"
            hint = "write the length at each point"
            self.ledger.problem(Code.CIRCUIT, message, (*self.path, "length"), hint)
        return measured_length_m(self.words.length, self.path, self.ledger)

    def _extra_m(self, point: PointWords | None) -> float:
        own = point.extra if point else None
        return own if own is not None else self.words.extra or 0.0

    def _insulation_mm(self, point: PointWords | None) -> float:
        own = point.insulation if point else None
        return own if own is not None else self.words.insulation or 0.0

    def add(
        self, from_end: str, to_end: str, point: PointWords | None, path: SpecPath, live: Live
    ) -> None:
        """Add the cable between two ends; what it lacks is noted."""
        phrase = self._phrase(point, path)
        if phrase is None:
            return
        cable, cable_path = phrase
        make = make_of(cable, live, cable_path, self.circuit.tag, self.ledger)
        if make is None:
            return
        own_via = point is not None and point.via is not None
        via, via_path = (point.via, path) if point and own_via else (self.words.via, self.path)
        route = (point.route if point else None) or self.words.route
        tag = self._tag(to_end)
        self.ledger.mark(tag, path)
        self.cables.append(
            Cable(
                tag=tag,
                circuit=self.circuit.tag,
                band="power" if make.family.band == "II" else "data",
                family=make.family.id,
                cores=make.cores,
                csa_mm2=cable.csa_mm2,
                cpc=make.cpc,
                from_end=from_end,
                to_end=to_end,
                state=self._state(cable, point),
                measured_length_m=self._length_m(point, path),
                via=checked_via(via, via_path, self.runs, self.ledger),
                clipped_up_mm=route.clipped_up_mm if route else None,
                drop=self._drop(point),
                ambient_c=self.ambient_c,
                insulation_mm=self._insulation_mm(point),
                extra_m=self._extra_m(point),
            )
        )

    def _from_end(self, point: PointWords, before: str, path: SpecPath, passed: list[str]) -> str:
        if point.after is None:
            return before
        ends = [self.circuit.board, *passed]
        if point.after not in ends:
            message = (
                f'{point.tag} comes after "{point.after}", which is no earlier point of its circuit'
            )
            hint = did_you_mean(point.after, ends)
            self.ledger.problem(Code.NAME, message, (*path, "after"), hint)
        return point.after

    def make(self, points: Mapping[str, PointServed]) -> list[Cable]:
        """Return the cables in order from the board."""
        live = self._live(points)
        before = self.circuit.board
        passed: list[str] = []
        for number, point in enumerate(self.words.points):
            path = (*self.path, "points", number)
            self.add(self._from_end(point, before, path, passed), point.tag, point, path, live)
            is_spur = self.circuit.ring and point.after is not None
            before = before if is_spur else point.tag
            passed.append(point.tag)
        if self.circuit.ring and self.words.points:
            self.add(before, self.circuit.board, None, self.path, live)
        if self.circuit.feeds_board:
            self.add(before, self.circuit.feeds_board, None, self.path, live)
        return self.cables
