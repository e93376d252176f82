"""The title-block facts, the origin of the supply, and accepted departures."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Literal, cast

from asfitted.resolve.devices import device_of
from asfitted.resolve.installation import (
    Basis,
    Device,
    Generator,
    Job,
    Supply,
    Transformer,
    Waiver,
)
from asfitted.resolve.job_facts import firm_of, revisions_of, status_of
from asfitted.spec.fields import EDITIONS
from asfitted.spec.problem_codes import Code

if TYPE_CHECKING:
    from asfitted.resolve.ledger import Ledger
    from asfitted.spec.job import JobWords
    from asfitted.spec.supply import SupplyWords

NOT_RECORDED = "not recorded"
REFERENCE_AMBIENT_C = 30.0  # BS 7671 Appendix 4, the ambient air temperature of its tables


def job_of(words: JobWords, ledger: Ledger) -> Job:
    """Return the title-block facts; a fact that is left out is "not recorded"."""
    record = {"installer", "firm", "issued", "revisions", "not_seen"}
    given = words.model_dump(exclude=record)
    facts: dict[str, Any] = {name: value or NOT_RECORDED for name, value in given.items()}
    if words.edition is None:
        facts["edition"] = EDITIONS[-1]
        ledger.default("job", "edition", EDITIONS[-1], "the current edition")
    ledger.mark("job", ("job",))
    facts["building_use"] = words.building_use or ""  # no fact of the title block
    facts["paper"] = words.paper or "A3"
    firm, revisions = firm_of(words, ledger), revisions_of(words, ledger)
    facts["installer"] = firm.name if firm else NOT_RECORDED
    facts["phone"] = firm.phone if firm else facts["phone"]
    if revisions:
        facts["revision"] = revisions[-1].revision
    facts["status"] = status_of(words)
    not_seen = None if words.not_seen is None else tuple(words.not_seen)
    return Job(**facts, firm=firm, revisions=revisions, not_seen=not_seen)


def _cut_out(words: SupplyWords, ledger: Ledger) -> tuple[Device | None, Basis | None]:
    if words.cut_out is None:
        return None, None
    path = ("supply", "cut-out")
    device = device_of(words.cut_out, path, ledger, "supply", three_phase=words.phases == 3)
    if not words.cut_out.basis:
        reason = "not said whether measured or declared"
        ledger.default("supply", "basis of cut-out", Basis.ASSUMED.value, reason)
    return device, Basis(words.cut_out.basis or Basis.ASSUMED.value)


def _voltages(words: SupplyWords, ledger: Ledger) -> tuple[float, float]:
    """Return line to earth and line to line, V."""
    if words.voltage is None:
        u0_v, line_v = 230.0, 400.0 if words.phases == 3 else 230.0
        written = f"{line_v:g}/{u0_v:g} V" if words.phases == 3 else f"{u0_v:g} V"
        ledger.default("supply", "voltage", written, "nominal voltage of the public supply")
        return u0_v, line_v
    if words.phases == 3 and words.voltage.line_v == words.voltage.u0_v:
        message = "a three-phase supply needs both voltages"
        ledger.problem(Code.FIGURE, message, ("supply", "voltage"), "write 400/230 V")
    if words.phases == 1 and words.voltage.line_v != words.voltage.u0_v:
        message = "a single-phase supply has one voltage"
        ledger.problem(Code.FIGURE, message, ("supply", "voltage"), "write 230 V")
    return words.voltage.u0_v, words.voltage.line_v


def _source(words: SupplyWords, ledger: Ledger) -> Transformer | Generator | None:
    """Return the machine behind the supply; one machine only."""
    if words.transformer is None:
        for key, value in (("losses", words.losses), ("upstream", words.upstream)):
            if value is not None:
                message = f'"{key}" belongs to a transformer, and the supply names none'
                ledger.problem(
                    Code.MISSING, message, ("supply", key), "transformer: 500 kVA 4.75 %"
                )
    if words.generator is not None:
        if words.transformer is not None:
            message = "a supply has one source: transformer or generator"
            hint = "write a job for each: their fault currents differ"
            ledger.problem(Code.FIGURE, message, ("supply", "generator"), hint)
        return Generator(words.generator.rating_kva, words.generator.x_percent)
    if words.transformer is None:
        return None
    rating_kva, uk = words.transformer.rating_kva, words.transformer.uk_percent
    if words.losses is not None and words.losses > 10 * uk * rating_kva:
        message = f"losses of {words.losses:g} W are more than {uk:g} % of {rating_kva:g} kVA"
        ledger.problem(Code.FIGURE, message, ("supply", "losses"))
    return Transformer(rating_kva, uk, words.losses, words.upstream)


def supply_of(words: SupplyWords, ledger: Ledger) -> Supply:
    """Return the origin. Figures that are not written stay None."""
    ledger.mark("supply", ("supply",))
    cut_out, cut_out_basis = _cut_out(words, ledger)
    u0_v, line_v = _voltages(words, ledger)
    if words.frequency is None:
        ledger.default("supply", "frequency", "50 Hz", "nominal frequency of the public supply")
    if words.ambient is None:
        reason = "reference ambient of BS 7671 Appendix 4"
        ledger.default("supply", "ambient", f"{REFERENCE_AMBIENT_C:g} °C", reason)
    return Supply(
        system=cast("Literal['TN-S', 'TN-C-S', 'TT']", words.system),
        phases=words.phases,
        u0_v=u0_v,
        line_v=line_v,
        frequency_hz=50.0 if words.frequency is None else words.frequency,
        ze_ohm=ledger.known(words.ze, "supply", "Ze"),
        ipf_ka=ledger.known(words.fault_current, "supply", "fault current"),
        cut_out=cut_out,
        cut_out_basis=cut_out_basis,
        tails_mm2=words.tails.csa_mm2 if words.tails else None,
        tails_m=words.tails.length_m if words.tails else None,
        earthing_conductor_mm2=words.earthing_conductor,
        bonds=tuple(words.main_bonding.items()),
        electrode_ohm=ledger.known(words.electrode, "supply", "electrode resistance"),
        ambient_c=REFERENCE_AMBIENT_C if words.ambient is None else words.ambient,
        surge_protection=words.surge_protection or "",
        main_protective_mm2=words.main_protective_conductor,
        source=_source(words, ledger),
    )


def waivers_of(ledger: Ledger) -> tuple[Waiver, ...]:
    """Return the accepted departures in the order of the file."""
    return tuple(Waiver(w.rule, w.subject, w.reason, w.by) for w in ledger.loaded.spec.accept)
