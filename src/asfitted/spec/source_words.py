"""Phrases that name the machine behind a supply: a transformer or a generator."""

from __future__ import annotations

import re
from dataclasses import dataclass

from asfitted.errors import NotUnderstoodError
from asfitted.quantities import APPARENT_KVA, SHARE_PCT, parse_quantity

TRANSFORMER_HINT = 'write rating and short-circuit voltage: "500 kVA 4.75 %"'
GENERATOR_HINT = """write rating and subtransient reactance: "60 kVA, x'' 12 %\""""


@dataclass(frozen=True)
class TransformerWords:
    """``500 kVA 4.75 %``: rated power and short-circuit voltage."""

    rating_kva: float
    uk_percent: float


@dataclass(frozen=True)
class GeneratorWords:
    """``60 kVA, x'' 12 %``: rated power and subtransient reactance."""

    rating_kva: float
    x_percent: float


def parse_transformer(text: str) -> TransformerWords:
    """Return rating and short-circuit voltage of a transformer.

    Raises:
        NotUnderstoodError: one of the two is missing or not understood.
    """
    words = " ".join(text.split())
    match = re.fullmatch(r"(\S+ ?[kM]VA),? (?:uk )?(\S+ ?%)", words, re.IGNORECASE)
    if not match:
        raise NotUnderstoodError(f'transformer "{words}" is not understood', TRANSFORMER_HINT)
    uk = _below_100(match[2], "short-circuit voltage")
    return TransformerWords(parse_quantity(match[1], APPARENT_KVA), uk)


def parse_generator(text: str) -> GeneratorWords:
    """Return rating and subtransient reactance of a generator.

    Raises:
        NotUnderstoodError: one of the two is missing or not understood.
    """
    words = " ".join(text.split())
    primes = """(?:''|"|\u2033|\u2032\u2032)"""
    match = re.fullmatch(rf"(\S+ ?[kM]VA),? xd?{primes}d? (\S+ ?%)", words, re.IGNORECASE)
    if not match:
        raise NotUnderstoodError(f'generator "{words}" is not understood', GENERATOR_HINT)
    x = _below_100(match[2], "subtransient reactance")
    return GeneratorWords(parse_quantity(match[1], APPARENT_KVA), x)


def _below_100(text: str, what: str) -> float:
    share = parse_quantity(text, SHARE_PCT)
    if share >= 100:
        raise NotUnderstoodError(f"{what} of {share:g} % cannot be", is_quantity=True)
    return share
