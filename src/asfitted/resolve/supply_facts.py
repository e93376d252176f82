"""How a figure is known, devices, and the origin of the supply with the machine behind it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Literal


class State(StrEnum):
    """Whether a thing was there before the job, comes with it, or goes."""

    EXISTING = "existing"
    NEW = "new"
    REMOVED = "removed"


class Basis(StrEnum):
    """How a figure is known. Drawings print the first letter: (m), (d), (a)."""

    MEASURED = "measured"
    DECLARED = "declared"
    ASSUMED = "assumed"
    CALCULATED = "calculated"  # only ever by this program: never taken from a spec


@dataclass(frozen=True)
class Known:
    """A figure given in the spec, and how it is known."""

    value: float
    unit: str
    basis: Basis


@dataclass(frozen=True)
class Rcd:
    """A residual current device or the residual part of an RCBO."""

    idn_ma: float
    type: str  # AC, A, F, B
    rated_a: float | None
    delayed: bool = False


@dataclass(frozen=True)
class Device:
    """A protective or switching device as named on site, such as ``C32 TP 6 kA``."""

    words: str  # as printed: "C32 TP 6 kA"
    kind: Literal["mcb", "rcbo", "fuse", "mccb", "switch-disconnector", "rcd"]
    standard: str  # "BS EN 60898"
    rating_a: float
    poles: Literal["SP", "SP+N", "DP", "TP", "TP+N", "4P"]
    curve: str = ""  # B, C, D for breakers
    icn_ka: float | None = None
    rcd: Rcd | None = None
    frame_a: float | None = None  # of a breaker with a setting, whose rating_a is Ir
    im_a: float | None = None  # setting of its instantaneous release
    afdd: bool = False  # arc fault detection in the device


@dataclass(frozen=True)
class Transformer:
    """A transformer of which the origin is the secondary side.

    ``losses_w`` are the load losses at rated current and ``upstream_mva`` the short-circuit power
    on its primary side; None where not recorded.
    """

    rating_kva: float
    uk_percent: float
    losses_w: float | None = None
    upstream_mva: float | None = None


@dataclass(frozen=True)
class Generator:
    """A generator at whose terminals the origin is; ``x_percent`` is subtransient reactance."""

    rating_kva: float
    x_percent: float


@dataclass(frozen=True)
class Supply:
    """The origin. A figure that is not known is None and stays "not recorded"."""

    system: Literal["TN-S", "TN-C-S", "TT"]
    phases: Literal[1, 3]
    u0_v: float
    line_v: float  # line to line; equals u0_v for a single-phase supply
    frequency_hz: float
    ze_ohm: Known | None
    ipf_ka: Known | None
    cut_out: Device | None
    cut_out_basis: Basis | None
    tails_mm2: float | None
    tails_m: float | None
    earthing_conductor_mm2: float | None
    bonds: tuple[tuple[str, float], ...]  # (what, mm2)
    electrode_ohm: Known | None
    ambient_c: float
    surge_protection: str = ""  # "type 2 at DB1", "not fitted: why"; empty = not recorded
    main_protective_mm2: float | None = None  # main earthing terminal to the first board
    source: Transformer | Generator | None = None  # the machine behind it, where the spec says
