"""Stock, prices and label grid from the words of the spec and its local files."""

from __future__ import annotations

from types import MappingProxyType
from typing import TYPE_CHECKING, Literal, cast

from asfitted.errors import OutsideTableError
from asfitted.reference.cable_family import families, family
from asfitted.resolve.stock_facts import LabelGrid, Price, StockFacts, StockPiece, price_key
from asfitted.spec.problem_codes import Code
from asfitted.spec.words import did_you_mean

if TYPE_CHECKING:
    from asfitted.resolve.ledger import Ledger
    from asfitted.spec.load_yaml import SpecPath
    from asfitted.spec.stock import LabelWords, StockPieceWords, StockWords

#: Kinds of containment that come in lengths; a hidden run is none.
KINDS = (
    "perforated tray",
    "wire basket",
    "cable ladder",
    "steel trunking",
    "plastic trunking",
    "steel conduit",
    "plastic conduit",
    "flexible conduit",
    "buried duct",
)


def stock_of(ledger: Ledger) -> StockFacts:
    """Return the stock facts of a job; problems are noted in the ledger."""
    loaded = ledger.loaded
    spec = loaded.spec
    words, path = spec.stock, ("stock",)
    if loaded.stock_file is not None:
        if words is not None:
            message = '"stock" and "stock file" are both written'
            ledger.problem(Code.SHAPE, message, ("stock file",), "keep one of them")
        words, path = loaded.stock_file, ("stock file",)
    prices = loaded.prices
    return StockFacts(
        in_hand=_pieces(words, "in hand", path, ledger),
        to_order=_pieces(words, "to order", path, ledger),
        saw_cut_mm=round(words.saw_cut) if words is not None and words.saw_cut else 0,
        currency=(prices.currency or "") if prices else "",
        prices=MappingProxyType(
            {
                price_key(item): Price(p.amount, cast("Literal['m', 'each']", p.per))
                for item, p in (prices.items if prices else {}).items()
            }
        ),
        labels=_label_grid(spec.labels or (words.labels if words is not None else None)),
    )


def _label_grid(words: LabelWords | None) -> LabelGrid:
    if words is None:
        return LabelGrid()
    return LabelGrid(
        columns=words.columns,
        rows=words.rows,
        width_mm=words.width,
        height_mm=words.height,
        left_margin_mm=words.left_margin,
        top_margin_mm=words.top_margin,
        gap_across_mm=words.gap_across,
        gap_down_mm=words.gap_down,
    )


def _pieces(
    words: StockWords | None, which: str, path: SpecPath, ledger: Ledger
) -> tuple[StockPiece, ...]:
    if words is None:
        return ()
    listed = words.in_hand if which == "in hand" else words.to_order
    # in a file of its own the place told is that of the key that names the file
    inner = len(path) == 1 and path[0] == "stock"
    found = [
        _piece(piece, (*path, which, i) if inner else path, ledger)
        for i, piece in enumerate(listed)
    ]
    return tuple(piece for piece in found if piece is not None)


def _piece(words: StockPieceWords, path: SpecPath, ledger: Ledger) -> StockPiece | None:
    length_mm, count = round(words.length * 1000), words.count or 1
    if (words.cable is None) == (words.kind is None):
        message = "a piece of stock is either a cable or a kind of containment"
        hint = 'write "cable: SWA 4c 6 mm2" or "is: perforated tray" with "size: 225 x 25"'
        ledger.problem(Code.SHAPE, message, path, hint)
        return None
    if words.cable is not None:
        try:
            made = family(words.cable.family)
        except OutsideTableError:
            known = [word for one in families() for word in one.words]
            message = f'cable "{words.cable.family}" is not known'
            ledger.problem(Code.NAME, message, path, did_you_mean(words.cable.family, known))
            return None
        return StockPiece(length_mm, count, made.id, words.cable.cores, words.cable.csa_mm2)
    kind = " ".join((words.kind or "").lower().split())
    if kind not in KINDS:
        message = f'kind of containment "{words.kind}" is not known'
        ledger.problem(Code.NAME, message, path, did_you_mean(kind, KINDS))
        return None
    if words.size is None:
        message = f"the size of the {kind} is not written"
        ledger.problem(
            Code.MISSING, message, path, 'write "size: 225 x 25", or "size: 25" if round'
        )
        return None
    return StockPiece(length_mm, count, kind=kind, width_mm=words.size[0], height_mm=words.size[1])
