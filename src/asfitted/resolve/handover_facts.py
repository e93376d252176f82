"""What is recorded for the handover. An empty fact is one that nobody recorded."""

from __future__ import annotations

from dataclasses import dataclass, field
from types import MappingProxyType
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping


@dataclass(frozen=True)
class HandoverFacts:
    """Recommendations, exclusions and hazards as the job file words them."""

    next_inspection: str = ""
    rcd_test: str = ""
    in_trouble_call: str = ""
    not_included: tuple[str, ...] = ()
    departures: tuple[str, ...] = ()
    hazards: tuple[str, ...] = ()
    care: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))  # tag -> words
