"""What a job file says for the handover: recommendations, exclusions, known hazards."""

from __future__ import annotations

from pydantic import Field

from asfitted.spec.fields import SpecModel, Text


class HandoverWords(SpecModel):
    """``handover:``; what is left out is printed as "not recorded"."""

    next_inspection: Text | None = None
    rcd_test: Text | None = Field(None, alias="RCD test")
    in_trouble_call: Text | None = None
    not_included: list[Text] = Field(default_factory=list)
    departures: list[Text] = Field(default_factory=list)
    hazards: list[Text] = Field(default_factory=list)
    care: dict[str, Text] = Field(default_factory=dict)
