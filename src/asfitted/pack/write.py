"""Writes the files of a job. Each file is put in place whole; a failed run spoils nothing."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.draw.dxf import write_dxf
from asfitted.draw.preview import write_png
from asfitted.draw.svg import write_svg
from asfitted.errors import OutputError
from asfitted.pack.design_json import design_json
from asfitted.pack.pdf import pack_name, pack_pdf
from asfitted.pack.readers import attachments_for, sheets_for
from asfitted.pack.schedules import csv_text, schedule_tables
from asfitted.pack.spreadsheet import workbook_bytes

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence
    from pathlib import Path

    from asfitted.layout.sheet_layout import SheetLayout
    from asfitted.layout.sheet_model import Model
    from asfitted.pack.pdf_archive import Attachment


def _sheet_files(sheets: Sequence[SheetLayout]) -> re.Pattern[str]:
    """Return what the sheets of this job are called, in this or an earlier issue."""
    jobs = {sheet.name.partition(f"-{sheet.number}-")[0] for sheet in sheets}
    names = "|".join(sorted(re.escape(job) for job in jobs))
    return re.compile(rf"(?:(?:{names})-)?\d{{2,}}-[A-Za-z0-9.-]+\.(svg|png|dxf)")


@dataclass(frozen=True)
class Written:
    """Names of the files written, relative to the folder, in order."""

    files: tuple[str, ...]


def write_sheets(
    sheets: Sequence[SheetLayout],
    folder: Path,
    *,
    png_dpi: float | None = None,
    dxf: bool = False,
    progress: Callable[[str], None] | None = None,
) -> list[str]:
    """Write every sheet as SVG (PNG and DXF if asked for) into ``folder/sheets``.

    Sheets of an earlier run that the job no longer has are removed, so that old and new issues
    are never mixed.

    Raises:
        OutputError: the folder cannot be written, or the PNG or DXF library is missing.
    """
    files: dict[str, bytes] = {}
    for sheet in sheets:
        if progress:
            progress(f"drawing {sheet.name}")
        svg = write_svg(sheet)
        files[f"{sheet.name}.svg"] = svg.encode()
        if png_dpi is not None:
            files[f"{sheet.name}.png"] = write_png(svg, png_dpi)
        if dxf:
            files[f"{sheet.name}.dxf"] = write_dxf(sheet).encode()
    target = folder / "sheets"
    for name, data in files.items():
        put(target / name, data)
    ours = _sheet_files(sheets)
    for old in sorted(target.iterdir()):
        if ours.fullmatch(old.name) and old.name not in files:
            old.unlink()
    return [f"sheets/{name}" for name in files]


def write_pack(
    model: Model,
    sheets: Sequence[SheetLayout],
    folder: Path,
    *,
    png_dpi: float | None = None,
    dxf: bool = False,
    progress: Callable[[str], None] | None = None,
    attachments: Sequence[Attachment] = (),
) -> Written:
    """Write sheets, the PDF of the handover, the schedules (CSV, workbook) and ``design.json``.

    Raises:
        OutputError: a file cannot be written.
    """
    job = model.installation.job
    names = write_sheets(sheets, folder, png_dpi=png_dpi, dxf=dxf, progress=progress)
    if progress:
        progress("binding the PDF")
    pdf = f"{pack_name(job)}.pdf"
    put(folder / pdf, pack_pdf(sheets_for(sheets), job, attachments_for(attachments)))
    names.append(pdf)
    tables = schedule_tables(model)
    workbook = f"{pack_name(job)}-schedules.xlsx"
    put(folder / workbook, workbook_bytes(tables, job))
    names.append(workbook)
    for name, table in tables.items():
        put(folder / "schedules" / f"{name}.csv", csv_text(table).encode())
        names.append(f"schedules/{name}.csv")
    figures = design_json(model.installation, model.results, model.report)
    put(folder / "design.json", figures.encode())
    names.append("design.json")
    return Written(tuple(names))


def write_reader_packs(
    model: Model,
    sheets: Sequence[SheetLayout],
    folder: Path,
    readers: Sequence[str],
    *,
    progress: Callable[[str], None] | None = None,
    attachments: Sequence[Attachment] = (),
) -> Written:
    """Write the PDF of each named reader, and nothing else.

    Raises:
        OutputError: no such reader, or a file cannot be written.
    """
    job = model.installation.job
    names = []
    for reader in dict.fromkeys(readers):
        if progress:
            progress(f"binding the PDF for the {reader}")
        name = f"{pack_name(job, reader)}.pdf"
        held = attachments_for(attachments, reader)
        put(folder / name, pack_pdf(sheets_for(sheets, reader), job, held))
        names.append(name)
    return Written(tuple(names))


def put(path: Path, data: bytes) -> None:
    """Write a file beside its place, then move it there.

    Raises:
        OutputError: the folder or file cannot be written.
    """
    part = path.with_name(path.name + ".part")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        part.write_bytes(data)
        part.replace(path)
    except OSError as error:
        raise OutputError(f"cannot write {path}: {error.strerror or error}") from error
