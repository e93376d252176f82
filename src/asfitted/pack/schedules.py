"""Schedules as CSV: the same cells as on the sheets."""

from __future__ import annotations

import csv
import io
from typing import TYPE_CHECKING

from asfitted.layout.brief.fixings import fixing_table
from asfitted.layout.brief.label_words import label_table
from asfitted.layout.schedule.cable_schedule import cable_schedule
from asfitted.layout.schedule.camera_schedule import camera_schedule
from asfitted.layout.schedule.check_list import check_list
from asfitted.layout.schedule.circuit_details import circuit_details
from asfitted.layout.schedule.circuit_readings import circuit_readings
from asfitted.layout.schedule.containment_schedule import containment_schedule
from asfitted.layout.schedule.cut_list import cut_list
from asfitted.layout.schedule.cutting_plan import cutting_plan_table
from asfitted.layout.schedule.door_chart import door_chart
from asfitted.layout.schedule.equipment_schedule import equipment_schedule
from asfitted.layout.schedule.materials import materials_table

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model
    from asfitted.layout.table import Table


def schedule_tables(model: Model) -> dict[str, Table]:
    """Return every schedule of a job by file stem."""
    tables = {
        "cable-schedule": cable_schedule(model),
        "containment-schedule": containment_schedule(model),
        "cut-list": cut_list(model),
        "cutting-plan": cutting_plan_table(model),
        "fixings": fixing_table(model),
        "labels": label_table(model),
        "materials": materials_table(model),
        "equipment-schedule": equipment_schedule(model),
        "camera-schedule": camera_schedule(model),
        "design-check": check_list(model),
    }
    for board in model.installation.boards.values():
        tables[f"door-chart-{board.tag}"] = door_chart(board, model)
        tables[f"circuit-details-{board.tag}"] = circuit_details(board, model)
        tables[f"test-results-{board.tag}"] = circuit_readings(board, model)
    return {name: table for name, table in sorted(tables.items()) if table.rows}


def csv_text(table: Table) -> str:
    """Return a table as CSV text (comma, quoted where needed, CRLF as RFC 4180 says).

    A cell that is broken into lines on paper is one line here.
    """
    out = io.StringIO()
    writer = csv.writer(out)
    writer.writerow(column.header for column in table.columns)
    writer.writerows([cell.replace("\n", " ") for cell in row] for row in table.rows)
    return out.getvalue()
