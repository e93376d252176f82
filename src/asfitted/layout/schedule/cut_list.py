"""The cut list: the arithmetic of every length, so that it can be checked with a tape."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.layout.brief.in_place import FOUND, in_place
from asfitted.layout.figures import rounded
from asfitted.layout.table import Column, Table

if TYPE_CHECKING:
    from asfitted.calculate.materials.items import ItemCuts, StockCut
    from asfitted.calculate.results import CableRoute
    from asfitted.layout.sheet_model import Model
    from asfitted.resolve.installation import Cable

COLUMNS = (
    Column("Cable", wraps=False),
    Column("Cable type"),
    Column("From", wraps=False),
    Column("To", wraps=False),
    Column("Length: how it adds up (m)"),
    Column("Cut", align="end", wraps=False),
    Column("Cut from"),
    Column("Cut by", least_mm=18.0),
)


def cut_list(model: Model) -> Table:
    """Return one row for each new cable. The last column is left for the initials of who cut it."""
    sources, found = reel_of_each(model), in_place(model.installation)
    rows, idents = [], []
    for cable in model.installation.cables.values():
        route = model.results.routes.get(cable.tag)
        if route is None or cable.state != "new":
            continue
        is_found = cable.tag in found
        rows.append(
            (
                cable.tag,
                kind_words(cable, model),
                start_words(cable, model),
                cable.to_end,
                length_sum(route),
                f"{rounded(route.cut_m, 1)} m",
                FOUND if is_found else sources.get(cable.tag, "not planned"),
                "–" if is_found else "",
            )
        )
        idents.append(cable.tag)
    return Table(COLUMNS, tuple(rows), tuple(idents))


def kind_words(cable: Cable, model: Model) -> str:
    """Return the type of a cable as every schedule names it."""
    figures, data = model.results.cables.get(cable.tag), model.results.data.get(cable.to_end)
    return figures.words if figures else (data.medium if data else "not recorded")


def start_words(cable: Cable, model: Model) -> str:
    """Return where a cable starts: the way where it leaves a board, else the tag of the thing."""
    return cable.circuit if cable.from_end in model.installation.boards else cable.from_end


def length_sum(route: CableRoute) -> str:
    """Return the length term by term: no figure is hidden in another."""
    return " + ".join(f"{part.words} {term_m(part.length_m)}" for part in route.parts)


def term_m(length_m: float) -> str:
    """Return a term of a sum in m: to the millimetre where it is no whole centimetre.

    Example:
        >>> term_m(0.95), term_m(1.075)
        ('0.95', '1.075')
    """
    return rounded(length_m, 3).removesuffix("0")


def reel_of_each(model: Model) -> dict[str, str]:
    """Return, by cable tag, which reel it is cut from; single conductors share their tag."""
    found: dict[str, str] = {}
    off = model.results.take_off
    for item in off.cuts if off is not None else ():
        if item.of != "cable":
            continue
        for number, cut in enumerate(item.cuts, start=1):
            for piece in cut.pieces:
                found.setdefault(piece.mark, reel_words(item, cut, number))
    return found


def reel_words(item: ItemCuts, cut: StockCut, number: int) -> str:
    """Return a reel or drum by its number and length: "reel 2, 100 m"."""
    if item.cut_by_seller and not cut.in_hand:
        return "to length"
    length = f"{cut.stock_mm / 1000:g} m"
    return f"reel {number}, {length} in hand" if cut.in_hand else f"reel {number}, {length}"
