"""Ways of a board: how they are named, who is on which, and the true order of all of them."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Literal

from asfitted.resolve.installation import Way

Phase = Literal["L1", "L2", "L3", "TP", ""]
POLES: tuple[Literal["L1", "L2", "L3"], ...] = ("L1", "L2", "L3")
BLANK = "blank"

_NAME = re.compile(r"(?P<number>\d{1,3})(?P<phase>L[123]|TPN?)?", re.IGNORECASE)


@dataclass(frozen=True)
class WayName:
    """A way as written: ``3TP``, ``5L1``, or ``4``."""

    number: int
    phase: Phase

    def __str__(self) -> str:
        """Return the way as printed."""
        return f"{self.number}{self.phase}"


@dataclass(frozen=True)
class Seat:
    """A circuit's way: the board and the way on it, once settled."""

    board: str
    way: WayName

    @property
    def tag(self) -> str:
        """The circuit's tag, such as ``DB1/3TP``."""
        return f"{self.board}/{self.way}"


def read_way(text: str) -> WayName | None:
    """Return the way that the words name, None when they name none."""
    match = _NAME.fullmatch(text.strip())
    if not match:
        return None
    phase = (match["phase"] or "").upper().removesuffix("N")
    return WayName(int(match["number"]), phase)  # type: ignore[arg-type] # the pattern admits these


@dataclass
class WayTable:
    """Which circuit or spare is on which pole of one board while the circuits are read."""

    board: str
    count: int
    phases: Literal[1, 3]
    circuits: dict[tuple[int, Phase], str] = field(default_factory=dict)
    names: dict[tuple[int, Phase], str] = field(default_factory=dict)
    spares: dict[tuple[int, Phase], str] = field(default_factory=dict)
    phase_load_a: dict[str, float] = field(default_factory=lambda: dict.fromkeys(POLES, 0.0))

    def fault_of(self, way: WayName) -> tuple[str, str]:
        """Return what is wrong with a way's name on this board and a hint; ("", "") if nothing."""
        kind = "three-phase" if self.phases == 3 else "single-phase"
        if not 1 <= way.number <= self.count:
            return f"{self.board} has {self.count} ways; there is no way {way.number}", ""
        if self.phases == 1 and way.phase == "TP":
            hint = f'write "{self.board}/{way.number}"'
            return f"{self.board} is a {kind} board; it has no three-pole way", hint
        if self.phases == 1 and way.phase:
            return f"{self.board} is a {kind} board; its ways have no phase", (
                f'write "{self.board}/{way.number}"'
            )
        return "", ""

    def taken_by(self, way: WayName) -> str:
        """Return the name of the circuit or spare that has a pole of this way, "" if none."""
        for taken in (self.names, self.spares):
            for (number, phase), who in taken.items():
                shares = phase == way.phase or "TP" in (phase, way.phase)
                if number == way.number and shares:
                    return who
        return ""

    def free_poles(self, number: int) -> list[Literal["L1", "L2", "L3"]]:
        """Return the poles of a way that neither a circuit nor a spare has."""
        return [pole for pole in POLES if not self.taken_by(WayName(number, pole))]

    def least_loaded(self, poles: list[Literal["L1", "L2", "L3"]]) -> Literal["L1", "L2", "L3"]:
        """Return the pole with the least load on its phase so far; the first of equals."""
        return min(poles, key=lambda pole: (self.phase_load_a[pole], pole))

    def put(self, way: WayName, circuit: str, load_a: float, name: str) -> None:
        """Note a circuit on a way, its load on the phases, and the name it goes by."""
        self.circuits[way.number, way.phase] = circuit
        self.names[way.number, way.phase] = name
        for pole in POLES if way.phase == "TP" else (way.phase,):
            if pole in self.phase_load_a:
                self.phase_load_a[pole] += load_a

    def _way(self, number: int, phase: Phase) -> Way:
        key = (number, phase)
        circuit = self.circuits.get(key, "")
        words = "" if circuit else self.spares.get(key, BLANK)
        return Way(str(WayName(number, phase)), number, phase, circuit, words)

    def in_order(self) -> tuple[Way, ...]:
        """Return every way of the board once, in the order of the board.

        A way of a three-phase board with nothing on any pole stands as one blank three-pole way; of
        a partly used way each pole stands on its own.
        """
        if self.phases == 1:
            return tuple(self._way(n, "") for n in range(1, self.count + 1))
        rows: list[Way] = []
        for number in range(1, self.count + 1):
            used = [*self.circuits, *self.spares]
            has_pole = any(n == number and phase in POLES for n, phase in used)
            phases: tuple[Phase, ...] = POLES if has_pole else ("TP",)
            rows += [self._way(number, phase) for phase in phases]
        return tuple(rows)
