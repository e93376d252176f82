"""From lengths to cut and stock to the cuts of each reel and bar."""

from __future__ import annotations

from collections import Counter, defaultdict
from typing import TYPE_CHECKING

from asfitted.calculate.containment.containment_kinds import kind_of
from asfitted.calculate.cutting_offcuts import plan_with_offcuts
from asfitted.calculate.materials.items import ItemCuts, Piece, StockCut
from asfitted.errors import InputOutOfRangeError, OutsideTableError
from asfitted.reference import cable_family, containment, termination

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.calculate.cutting_stock import Cut
    from asfitted.calculate.materials.wanted_pieces import Wanted
    from asfitted.resolve.stock_facts import StockFacts, StockPiece

#: Sold by the metre off the drum, so that nothing is over: common practice.
_BY_THE_METRE = ("armoured", "flexible")
_BAR_MM = 3000  # tray, trunking, plastic conduit, duct where no table names a length
_IN_THE_SPEC = "lengths given in the spec"


def cut_plan(wanted: Wanted, stock: StockFacts) -> ItemCuts:
    """Return how the lengths of one item are cut.

    A straight longer than a bar is whole bars and one rest, joined by couplers; a cable is never
    joined, so one that is longer than every reel is ordered to its own length.
    """
    listed, basis = _lengths(wanted, stock)
    saw = stock.saw_cut_mm if wanted.of == "containment" else 0
    pieces = _split(wanted, listed)
    hand: Counter[int] = Counter()
    for one in stock.in_hand:
        if _serves(one, wanted):
            hand[one.length_mm] += one.count
    reach = max((*listed, *hand), default=0)
    longer = [p for p in pieces if listed and p.length_mm > reach]
    rest = [p for p in pieces if p not in longer] if longer else pieces
    cuts = [StockCut(p.length_mm, in_hand=False, pieces=(p,)) for p in longer]
    ordered = least = sum(p.length_mm for p in longer)
    if longer:
        basis += "; longer than any reel: to its own length"
    if rest:
        demand = Counter(p.length_mm + saw for p in rest)
        plan = plan_with_offcuts(
            demand,
            {length + saw: n for length, n in hand.items()},
            tuple(length + saw for length in listed),
        )
        cuts = [
            *_named(plan.from_hand, plan.to_order, rest, saw, measured=not listed),
            *cuts,
        ]
        taken = [cut for cut in cuts if not cut.in_hand]
        ordered = sum(cut.stock_mm for cut in taken)
        gap = plan.ordered - plan.bound
        least = ordered - gap
    return ItemCuts(
        item=wanted.item,
        of=wanted.of,
        cuts=tuple(cuts),
        needed_mm=sum(p.length_mm for p in pieces),
        ordered_mm=ordered,
        least_mm=least,
        cut_by_seller=not listed,
        basis=basis,
    )


def _named(
    from_hand: Sequence[Cut],
    to_order: Sequence[Cut],
    pieces: Sequence[Piece],
    saw_mm: int,
    *,
    measured: bool,
) -> list[StockCut]:
    """Return the cuts with the names of their pieces, each name used once."""
    waiting: dict[int, list[Piece]] = defaultdict(list)
    for piece in pieces:
        waiting[piece.length_mm + saw_mm].append(piece)
    found = []
    for cuts, in_hand in ((from_hand, True), (to_order, False)):
        for cut in cuts:
            named = tuple(waiting[length].pop(0) for length in cut.pieces)
            # what the seller cuts to measure has no saw cut in it
            exact = measured and not in_hand
            found.append(
                StockCut(
                    sum(p.length_mm for p in named) if exact else cut.stock - saw_mm,
                    in_hand=in_hand,
                    pieces=named,
                    saw_mm=0 if exact else saw_mm,
                )
            )
    return found


def _lengths(wanted: Wanted, stock: StockFacts) -> tuple[tuple[int, ...], str]:
    """Return the lengths that can be ordered, mm; none where the seller cuts to measure."""
    given = {one.length_mm for one in stock.to_order if _serves(one, wanted)}
    if given:
        return tuple(sorted(given)), _IN_THE_SPEC
    if wanted.of == "cable":
        return _reels(wanted)
    return _bars(wanted)


def _reels(wanted: Wanted) -> tuple[tuple[int, ...], str]:
    made = cable_family.family(wanted.family)
    if made.construction in _BY_THE_METRE:
        return (), "sold by the metre (common practice)"
    try:
        usual = termination.cut_rounding(wanted.family)
    except (OutsideTableError, KeyError):
        return (), "no usual reel is tabulated: by the metre"
    lengths = tuple(sorted(round(m * 1000) for m in usual.stock_lengths_m))
    return lengths, f"usual reels or boxes ({usual.provenance})"


def _bars(wanted: Wanted) -> tuple[tuple[int, ...], str]:
    if wanted.kind == "flexible conduit":
        return (), "sold by the metre (common practice)"
    try:
        name = kind_of(wanted.kind).stock
        found = containment.stock(name) if name else None
    except (InputOutOfRangeError, OutsideTableError):
        found = None
    if found is None:
        return (_BAR_MM,), "bars of 3 m (common practice)"
    length = round(found.stock_length_m * 1000)
    return (length,), f"bars of {length / 1000:g} m ({found.provenance})"


def _split(wanted: Wanted, listed: Sequence[int]) -> list[Piece]:
    """Return the pieces, straights longer than a bar as whole bars and a rest."""
    if wanted.of == "cable" or not listed:
        return list(wanted.pieces)
    bar = max(listed)
    found = []
    for piece in wanted.pieces:
        whole, rest = divmod(piece.length_mm, bar)
        found += [Piece(piece.mark, bar)] * whole
        if rest:
            found.append(Piece(piece.mark, rest))
    return found


def _serves(one: StockPiece, wanted: Wanted) -> bool:
    """Tell whether a piece of stock is of the item."""
    if wanted.of == "cable":
        return (
            one.family == wanted.family
            and one.cores in (None, wanted.cores)
            and one.csa_mm2 in (None, wanted.csa_mm2)
        )
    return (
        one.kind == wanted.kind
        and one.width_mm == wanted.width_mm
        and (one.height_mm in (wanted.height_mm, one.width_mm) or not wanted.height_mm)
    )
