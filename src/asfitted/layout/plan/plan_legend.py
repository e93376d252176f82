"""Legend of the key plan, top right, and the table of what hangs out in the room under it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.geometry import Point
from asfitted.layout.elevation.arrangement import USABLE, title_top
from asfitted.layout.elevation.panels import TablePanel
from asfitted.layout.legend import LineSample, lay_out_legend
from asfitted.layout.plan.out_in_room import TITLE, out_table
from asfitted.layout.plan.plan_runs import is_level_somewhere
from asfitted.layout.plan.plan_things import GREAT, GREAT_MM, SIZE_MM, plan_things, size_of

if TYPE_CHECKING:
    from asfitted.layout.legend import Legend
    from asfitted.layout.sheet_layout import Item
    from asfitted.layout.sheet_model import Model, Numbers
    from asfitted.layout.table import Table

LEGEND_MM = 118.0
GAP_MM = 6.0
OUT_KEY = "out-in-room"


def legend_of(model: Model) -> Legend:
    """Return the legend of what the plan uses."""
    installation = model.installation
    things = plan_things(installation, model.symbols)
    lines = [LineSample("wall, thickness nominal (100 mm)", 0.5, double=True)]
    if any(is_level_somewhere(run) for run in installation.containment.values()):
        lines.append(LineSample("containment from above", 0.5, double=True))
    seen = (model.results.data.get(t.tag) for t in things if t.looks is not None)
    if any(result is not None and result.field_of_view_deg is not None for result in seen):
        lines.append(
            LineSample("what a camera sees; length not to scale", 0.25, "long_dash_double_dot")
        )
    if any(w.openings for w in installation.walls.values()):
        lines.append(LineSample("door or other opening", 0.25, "dashed"))
    used = sorted({thing.symbol for thing in things if thing.symbol})
    return lay_out_legend(
        at=Point(USABLE.x1 - LEGEND_MM, USABLE.y0),
        width_mm=LEGEND_MM,
        columns=2,
        symbols=used,
        catalogue=model.symbols,
        lines=lines,
        abbreviations=(
            ("FFL", "finished floor level"),
            ("T/O, U/S, C/L", "top of, underside of, centre line of"),
        ),
        size_mm=GREAT_MM if any(name in GREAT for name in used) else SIZE_MM,
        sizes_mm={name: size_of(name) for name in used},
    )


def table_left_over(model: Model) -> Table | None:
    """Return the table of what hangs out in the room where it has no room under the legend."""
    table = out_table(model.installation, model.results)
    if table is None:
        return None
    height = TablePanel(OUT_KEY, TITLE, table).height(LEGEND_MM)
    room = title_top() - USABLE.y0 - legend_of(model).height_mm - GAP_MM
    return None if height is not None and height <= room else table


def legend_and_table(model: Model) -> tuple[Item, ...]:
    """Return the legend and, where it has room, the table under it."""
    legend = legend_of(model)
    table = out_table(model.installation, model.results)
    if table is None or table_left_over(model) is not None:
        return legend.items
    at = Point(USABLE.x1 - LEGEND_MM, USABLE.y0 + legend.height_mm + GAP_MM)
    return (*legend.items, *TablePanel(OUT_KEY, TITLE, table).items(at, LEGEND_MM))


def where_words(model: Model, numbers: Numbers) -> str:
    """Return the note that says on which sheets heights and lengths stand."""
    words = "Heights and lengths along walls stand on the elevations"
    if out_table(model.installation, model.results) is None:
        return f"{words}."
    sheet = next((n for key, n in numbers.by_key.items() if key.startswith(OUT_KEY)), "")
    table = f"table on sheet {sheet}" if sheet else "table"
    return f"{words}; things out in the room in the {table}."
