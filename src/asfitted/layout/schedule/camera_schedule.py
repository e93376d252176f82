"""The camera schedule: what each camera sees, what reaches it, and where its picture goes."""

from __future__ import annotations

from typing import TYPE_CHECKING

from asfitted.calculate.equipment_figures import camera_storage_tb
from asfitted.layout.breakable_words import with_breakable_words
from asfitted.layout.data_diagram.links import cables_by_device, recorder_of
from asfitted.layout.figures import rounded
from asfitted.layout.given_words import NOT_RECORDED, state_before, state_word
from asfitted.layout.schedule.words import (
    NOT_CHECKED,
    PLATE_COLUMNS,
    length_words,
    place,
    plate_cells,
)
from asfitted.layout.table import Column, Table
from asfitted.rounding import rounded_down

if TYPE_CHECKING:
    from asfitted.calculate.results import DataResult
    from asfitted.layout.sheet_model import Model
    from asfitted.resolve.installation import Cable, DataDevice, Installation

COLUMNS = (
    Column("Camera", wraps=False),
    Column("Place, height above floor (mm)"),
    Column("Looks at"),
    Column("Picture, lens"),
    Column("Target", align="end", wraps=False),
    Column("Detail at target"),
    Column("Cable"),
    Column("Length", align="end", wraps=False),
    Column("Supply"),
    Column("V there: night", align="end"),
    Column("V by day", align="end", wraps=False),
    Column("Picture goes to"),
    Column("Disk TB", align="end", wraps=False),
    *PLATE_COLUMNS,
    Column("State", wraps=False),
)
NONE = "–"


def camera_schedule(model: Model) -> Table:
    """Return one row for each camera, in the order of the spec."""
    cables = cables_by_device(model.installation)
    cameras = [d for d in model.installation.data_devices.values() if d.kind == "camera"]
    rows = tuple(_row(camera, cables.get(camera.tag), model) for camera in cameras)
    table = Table(COLUMNS, rows, tuple(camera.tag for camera in cameras))
    return with_breakable_words(table)


def _row(camera: DataDevice, cable: Cable | None, model: Model) -> tuple[str, ...]:
    figures = model.results.data.get(camera.tag)
    recorder = recorder_of(camera, cable, model.installation)
    night, day = _volts(figures)
    return (
        camera.tag,
        place(camera.position),
        camera.views or NOT_RECORDED,
        _picture(camera),
        NOT_RECORDED if camera.target_m is None else f"{camera.target_m:g} m",
        _detail(figures),
        _cable(cable, figures),
        NOT_RECORDED
        if cable is None
        else length_words(cable, figures.length_m if figures else None),
        _supply(camera, figures),
        night,
        day,
        _goes_to(camera, recorder),
        _storage(camera, recorder, model.installation),
        *plate_cells(camera.plate),
        state_word(camera.state) or "new",
    )


def _picture(camera: DataDevice) -> str:
    """Return signal or kind of camera, pixels across and lens."""
    kind = camera.signal or ("network" if camera.port else "")
    across = "" if camera.pixels is None else f"{camera.pixels} px across"
    lens = "lens not recorded" if camera.lens_mm is None else f"{camera.lens_mm:g} mm lens"
    return ", ".join(part for part in (kind, across, lens) if part)


def _detail(figures: DataResult | None) -> str:
    if figures is None or figures.density_px_m is None:
        return NOT_CHECKED
    return f"{rounded_down(figures.density_px_m, 0)} px/m: {figures.density_class}"


def _cable(cable: Cable | None, figures: DataResult | None) -> str:
    if cable is None or figures is None:
        return NOT_RECORDED
    return f"{cable.tag} {state_before(cable.state)}{figures.medium}"


def _supply(camera: DataDevice, figures: DataResult | None) -> str:
    if figures is None or not figures.supply:
        return NOT_RECORDED
    if camera.poe_class is not None:
        return f"{figures.supply}, PoE class {camera.poe_class}"
    if figures.window_v is not None and figures.window_v[1] < 20.0:
        cores = camera.power_pairs or 1
        return f"{figures.supply}, 12 V on {cores} + {cores} cores"
    return figures.supply


def _volts(figures: DataResult | None) -> tuple[str, str]:
    """Return the least voltage (infra-red on) and the greatest (no load drawn) at the camera."""
    if figures is None or figures.at_device_v is None or figures.supply_v is None:
        return NOT_CHECKED, NOT_CHECKED
    return rounded(figures.at_device_v, 1), f"≤ {rounded(figures.supply_v, 1)}"


def _goes_to(camera: DataDevice, recorder: str) -> str:
    port = camera.port.replace("/", " port ")
    channel = NOT_RECORDED if camera.channel is None else f"{camera.channel}"
    picture = f"{recorder or 'recorder not recorded'} channel {channel}"
    return f"{port}, {picture}" if port else picture


def _storage(camera: DataDevice, recorder: str, installation: Installation) -> str:
    keeper = installation.data_devices.get(recorder)
    if keeper is None or not keeper.keep_days:
        return NOT_CHECKED
    return rounded(camera_storage_tb(camera, days=keeper.keep_days), 2)
