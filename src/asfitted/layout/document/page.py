"""One page of running text as items at their places."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from asfitted.geometry import Point
from asfitted.layout.document.references import filled, link_to
from asfitted.layout.sheet_layout import Item, Path, Text
from asfitted.layout.table import table_items

if TYPE_CHECKING:
    from collections.abc import Sequence

    from asfitted.layout.document.flow import Placed
    from asfitted.layout.document.strips import TableRow
    from asfitted.layout.sheet_model import Numbers


def page_items(placed: Sequence[Placed], at: Point, numbers: Numbers) -> tuple[Item, ...]:
    """Return the items of a page whose text begins at a point, with sheet numbers filled in."""
    items: list[Item] = []
    place = 0
    while place < len(placed):
        end = _end_of_group(placed, place)
        group = placed[place:end]
        if group[0].strip.table is None:
            items += _text_items(group, at, numbers)
        else:
            items += _table_items(group, at, numbers)
        place = end
    return tuple(items)


def _group_name(placed: Placed) -> str:
    table = placed.strip.table
    return f"table {table.ident}" if table else placed.strip.ident


def _end_of_group(placed: Sequence[Placed], start: int) -> int:
    """Return where the strips end that become one item or one table."""
    name = _group_name(placed[start])
    end = start + 1
    while end < len(placed) and _group_name(placed[end]) == name:
        end += 1
    return end


def _text_items(group: Sequence[Placed], at: Point, numbers: Numbers) -> list[Item]:
    texts: list[Text] = []
    paths: list[Path] = []
    keys = [key for placed in group for key in placed.strip.keys]
    for placed in group:
        strip, dy = placed.strip, at.y + placed.top_mm
        done = filled(strip.texts, strip.keys, numbers)
        texts += [replace(t, at=t.at.moved(at.x, dy)) for t in done]
        paths += [_moved(path, at.x, dy) for path in strip.paths]
    ident = group[0].strip.ident
    link = link_to(keys[0], numbers) if keys else ""
    items = [Item(f"{ident}:box", "outline", tuple(paths))] if paths else []
    return [*items, Item(ident, "text", tuple(texts), link=link)] if texts else items


def _moved(path: Path, dx: float, dy: float) -> Path:
    return replace(path, points=tuple(p.moved(dx, dy) for p in path.points))


def _table_items(group: Sequence[Placed], at: Point, numbers: Numbers) -> list[Item]:
    rows: list[TableRow] = [p.strip.table for p in group if p.strip.table is not None]
    first = rows[0]
    fitted, ident = first.fitted, first.ident
    top = at.y + group[0].top_mm - fitted.header_mm
    span = range(first.row, rows[-1].row + 1)
    items, _ = table_items(ident, fitted, span, Point(at.x, top))
    by_name = {f"{ident}:{fitted.table.row_idents[row.row]}": row for row in rows}
    return [_with_references(item, by_name.get(item.ident), numbers) for item in items]


def _with_references(item: Item, row: TableRow | None, numbers: Numbers) -> Item:
    if row is None:
        return item
    texts = tuple(part for part in item.parts if isinstance(part, Text))
    target = row.link or (row.keys[0] if row.keys else "")
    link = link_to(target, numbers) if target else ""
    return replace(item, parts=filled(texts, row.keys, numbers), link=link)
