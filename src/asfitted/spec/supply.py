"""The supply at the origin."""

from __future__ import annotations

from pydantic import Field

from asfitted.spec.fields import (
    AreaMm2,
    Device,
    FrequencyHz,
    Generator,
    KnownKa,
    KnownOhm,
    Phases,
    PowerW,
    ShortCircuitMva,
    SpecModel,
    Surge,
    System,
    Tails,
    TemperatureC,
    Transformer,
    Voltage,
)


class SupplyWords(SpecModel):
    """``supply:``; figures that are not known stay out of the file."""

    system: System
    phases: Phases
    voltage: Voltage | None = None
    frequency: FrequencyHz | None = None
    ze: KnownOhm | None = Field(None, alias="Ze")
    fault_current: KnownKa | None = None
    cut_out: Device | None = Field(None, alias="cut-out")
    tails: Tails | None = None
    earthing_conductor: AreaMm2 | None = None
    main_protective_conductor: AreaMm2 | None = None  # main earthing terminal to the first board
    main_bonding: dict[str, AreaMm2] = Field(default_factory=dict)
    surge_protection: Surge | None = None
    electrode: KnownOhm | None = None
    ambient: TemperatureC | None = None
    transformer: Transformer | None = None
    losses: PowerW | None = None
    upstream: ShortCircuitMva | None = None
    generator: Generator | None = None
