"""The words of the handover and the measured results, with every name looked up."""

from __future__ import annotations

from dataclasses import fields, replace
from types import MappingProxyType
from typing import TYPE_CHECKING

from asfitted.errors import Problem
from asfitted.resolve.handover_facts import HandoverFacts
from asfitted.resolve.readings import (
    BoardReading,
    CircuitReading,
    Instrument,
    Reading,
    Readings,
    SupplyReading,
    Taken,
)
from asfitted.spec.problem_codes import Code
from asfitted.spec.words import did_you_mean

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from asfitted.resolve.installation import Circuit, PointServed
    from asfitted.resolve.ledger import Ledger
    from asfitted.spec.load_results import LoadedResults
    from asfitted.spec.load_yaml import SpecPath
    from asfitted.spec.measured_results import CircuitReadings as CircuitWords
    from asfitted.spec.measured_results import TakenWords
    from asfitted.spec.reading_words import ReadingWords

NOT_RECORDED = "not recorded"


def handover_of(ledger: Ledger, tags: Iterable[str]) -> HandoverFacts:
    """Return what the job file says for the handover; ``tags`` are the things it may name."""
    words = ledger.loaded.spec.handover
    if words is None:
        return HandoverFacts()
    known = set(tags)
    for tag in words.care:
        if tag not in known:
            ledger.unknown(Code.NAME, "thing", tag, known, ("handover", "care", tag))
    return HandoverFacts(
        next_inspection=words.next_inspection or "",
        rcd_test=words.rcd_test or "",
        in_trouble_call=words.in_trouble_call or "",
        not_included=tuple(words.not_included),
        departures=tuple(words.departures),
        hazards=tuple(words.hazards),
        care=MappingProxyType(dict(words.care)),
    )


def readings_of(
    ledger: Ledger,
    circuits: Mapping[str, Circuit],
    boards: Iterable[str],
    points: Mapping[str, PointServed],
) -> Readings | None:
    """Return the measured results of the job, None where it gives none."""
    loaded = ledger.loaded.results
    if loaded is None:
        return None
    lookup = _Lookup(ledger, loaded)
    lookup.all_known("circuits", loaded.words.circuits, set(circuits))
    lookup.all_known("boards", loaded.words.boards, set(boards))
    for tag in loaded.words.circuits:
        if tag in circuits:
            lookup.fits(circuits[tag], points)
    return _given(lookup.readings())


def _given(readings: Readings) -> Readings | None:
    """Return the readings without the entries left blank; None where nothing was read at all."""
    supply = None if readings.supply is None or _is_blank(readings.supply) else readings.supply
    kept = replace(
        readings,
        supply=supply,
        boards=MappingProxyType({t: b for t, b in readings.boards.items() if not _is_blank(b)}),
        circuits=MappingProxyType({t: c for t, c in readings.circuits.items() if not _is_blank(c)}),
    )
    return kept if kept.instruments or kept.supply or kept.boards or kept.circuits else None


def _is_blank(entry: SupplyReading | BoardReading | CircuitReading) -> bool:
    """Tell whether an entry holds no reading, no reason and no remark."""
    values = [getattr(entry, each.name) for each in fields(entry) if each.name != "taken"]
    return not any(values) and not entry.taken.remarks


class _Lookup:
    """One run over the measured results."""

    def __init__(self, ledger: Ledger, loaded: LoadedResults) -> None:
        self.ledger, self.loaded = ledger, loaded

    def _problem(self, message: str, path: SpecPath, hint: str) -> None:
        self.ledger.problems.append(Problem(Code.NAME, message, self.loaded.place(path), hint))

    def all_known(self, group: str, given: Iterable[str], known: set[str]) -> None:
        """Note a problem for every key that names nothing of the job."""
        for tag in given:
            if tag not in known:
                message = f'{group[:-1]} "{tag}" is not in this job'
                self._problem(message, (group, tag), did_you_mean(tag, known))

    def fits(self, circuit: Circuit, points: Mapping[str, PointServed]) -> None:
        """Note readings that cannot belong to a circuit: it has no RCD, or is no ring."""
        words, path = self.loaded.words.circuits[circuit.tag], ("circuits", circuit.tag)
        has_rcd = circuit.device.rcd or any(points[tag].rcd for tag in circuit.points)
        if words.rcd_time and words.rcd_time.value is not None and not has_rcd:
            hint = "look whether the reading stands at the right way"
            message = f"a tripping time is given, and {circuit.tag} has no RCD"
            self._problem(message, (*path, "RCD time"), hint)
        if not circuit.ring and (words.r1 or words.rn or words.ring_r2):
            message = f"r1, rn and r2 are readings of a ring, and {circuit.tag} is none"
            self._problem(message, path, "write R1+R2 or R2")

    def readings(self) -> Readings:
        """Return all readings with their instruments."""
        words = self.loaded.words
        instruments = {
            tag: Instrument(tag, one.name, one.serial, one.checked or NOT_RECORDED)
            for tag, one in words.instruments.items()
        }
        return Readings(
            instruments=MappingProxyType(instruments),
            supply=self._supply(),
            boards=MappingProxyType({tag: self._board(tag) for tag in words.boards}),
            circuits=MappingProxyType(
                {tag: self._circuit(tag, one) for tag, one in words.circuits.items()}
            ),
        )

    def _taken(self, own: TakenWords, path: SpecPath) -> Taken:
        words = self.loaded.words
        instrument = own.instrument or words.instrument
        if instrument and instrument not in words.instruments:
            where = (*path, "instrument") if own.instrument else ("instrument",)
            hint = did_you_mean(instrument, words.instruments)
            self._problem(f'instrument "{instrument}" is not listed', where, hint)
        return Taken(
            by=own.by or words.by or NOT_RECORDED,
            date=own.date or words.date or NOT_RECORDED,
            instrument=instrument or NOT_RECORDED,
            remarks=own.remarks or "",
        )

    def _supply(self) -> SupplyReading | None:
        words = self.loaded.words.supply
        if words is None:
            return None
        return SupplyReading(
            taken=self._taken(words, ("supply",)),
            ze_ohm=_reading(words.ze),
            fault_ka=_reading(words.fault_current),
            electrode_ohm=_reading(words.electrode),
            polarity=words.polarity,
        )

    def _board(self, tag: str) -> BoardReading:
        words = self.loaded.words.boards[tag]
        return BoardReading(
            taken=self._taken(words, ("boards", tag)),
            zs_ohm=_reading(words.zs),
            fault_ka=_reading(words.fault_current),
            polarity=words.polarity,
            phase_sequence=words.phase_sequence,
        )

    def _circuit(self, tag: str, words: CircuitWords) -> CircuitReading:
        volts = words.insulation_voltage
        return CircuitReading(
            taken=self._taken(words, ("circuits", tag)),
            r1_ohm=_reading(words.r1),
            rn_ohm=_reading(words.rn),
            ring_r2_ohm=_reading(words.ring_r2),
            r1r2_ohm=_reading(words.r1_r2),
            r2_ohm=_reading(words.r2),
            insulation_test_v=float(volts) if volts else None,
            insulation_live_mohm=_reading(words.insulation_live),
            insulation_earth_mohm=_reading(words.insulation_earth),
            polarity=words.polarity,
            zs_ohm=_reading(words.zs),
            rcd_ms=_reading(words.rcd_time),
            rcd_button=words.rcd_button,
            afdd_button=words.afdd_button,
            not_tested=words.not_tested or "",
        )


def _reading(words: ReadingWords | None) -> Reading | None:
    if words is None:
        return None
    return Reading(words.value, words.shown, words.beyond, words.not_tested)
