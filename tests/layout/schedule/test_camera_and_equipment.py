"""Camera and equipment schedules: every thing once, with figures that agree with the results."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from asfitted.layout.breakable_words import MOST_LETTERS, breakable, with_breakable_words
from asfitted.layout.schedule.camera_schedule import camera_schedule
from asfitted.layout.schedule.equipment_schedule import equipment_schedule
from asfitted.layout.table import Column, Table
from asfitted.resolve.rating_plate import Plate

if TYPE_CHECKING:
    from asfitted.layout.sheet_model import Model

    Models = dict[str, Model]


def cells(table: Table, ident: str) -> dict[str, str]:
    row = table.rows[table.row_idents.index(ident)]
    return {c.header: cell for c, cell in zip(table.columns, row, strict=True)}


def test_every_camera_has_one_row_with_the_calculated_figures(demo_models: Models) -> None:
    model = demo_models["pottery-studio"]
    table = camera_schedule(model)
    assert list(table.row_idents) == ["CAM1", "CAM2", "CAM3", "CAM4"]
    row, figures = cells(table, "CAM4"), model.results.data["CAM4"]
    assert row["V there: night"] == f"{figures.at_device_v:.1f}"
    assert row["Detail at target"].startswith(f"{figures.density_px_m:.0f} px/m")
    assert row["Picture goes to"] == "REC1 channel 4"
    assert row["Supply"] == "PS1, 12 V on 3 + 3 cores"


def test_a_network_camera_names_port_channel_and_class(demo_models: Models) -> None:
    row = cells(camera_schedule(demo_models["shop-cctv"]), "CAM3")
    assert row["Picture goes to"] == "SW1 port 3, REC1 channel 3"
    assert row["Supply"] == "SW1, PoE class 3"


@pytest.mark.parametrize("job", ["pottery-studio", "shop-cctv"])
def test_shares_of_the_disk_add_up_to_the_storage_of_the_recorder(
    demo_models: Models, job: str
) -> None:
    model = demo_models[job]
    table = camera_schedule(model)
    total = sum(float(cells(table, tag)["Disk TB"]) for tag in table.row_idents)
    storage = next(e.used for e in model.results.equipment if e.what == "storage")
    assert total == pytest.approx(storage, abs=0.005 * len(table.rows))


def test_a_job_without_cameras_has_no_camera_rows(demo_models: Models) -> None:
    assert camera_schedule(demo_models["community-shed"]).rows == ()


@pytest.mark.parametrize("job", ["pottery-studio", "community-shed", "shop-cctv"])
def test_everything_but_cameras_is_in_the_equipment_schedule_once(
    demo_models: Models, job: str
) -> None:
    installation = demo_models[job].installation
    cabinet = [installation.cabinet.tag] if installation.cabinet else []
    devices = [d.tag for d in installation.data_devices.values() if d.kind != "camera"]
    expected = [*installation.boards, *installation.points, *cabinet, *devices]
    assert sorted(equipment_schedule(demo_models[job]).row_idents) == sorted(expected)


def test_equipment_says_what_feeds_it_and_through_what(demo_models: Models) -> None:
    table = equipment_schedule(demo_models["pottery-studio"])
    assert cells(table, "Q1")["Fed from"] == "DB1/6TP"
    assert cells(table, "K1")["Fed from"] == "DB1/6TP through Q1"
    assert cells(table, "DB2")["Fed from"] == "DB1/9TP"
    assert cells(table, "DB1")["State"] == "existing"
    assert cells(table, "J1")["Rating"] == "not recorded"


def test_no_cell_is_blank(demo_models: Models) -> None:
    for model in demo_models.values():
        for table in (camera_schedule(model), equipment_schedule(model)):
            assert all(cell.strip() for row in table.rows for cell in row)


def test_long_words_are_parted_at_their_hyphens_and_lose_no_letter() -> None:
    tag = "CAM1-OF-THE-GATEHOUSE/NORTHERNMOSTCORNERBYTHEPOND"
    parted = breakable(tag)
    assert parted.replace(" ", "") == tag
    assert all(len(word) <= MOST_LETTERS for word in parted.split())
    assert breakable("32 A 5-pin socket-outlet") == "32 A 5-pin socket-outlet"


def test_a_table_of_short_words_is_left_as_it_is() -> None:
    table = Table((Column("Tag", wraps=False),), (("X1",),), ("X1",))
    assert with_breakable_words(table) is table


def test_rating_plates_are_shown_as_read_and_never_filled_in(demo_models: Models) -> None:
    model = demo_models["pottery-studio"]
    for table in (equipment_schedule(model), camera_schedule(model)):
        for ident in table.row_idents:
            row = cells(table, ident)
            assert {row["Make"], row["Model"], row["Serial number"]} == {"not recorded"}
    read = Plate(make="make Q", serial="0042")
    boards, devices = (
        dict(model.installation.boards),
        dict(model.installation.data_devices),
    )
    boards["DB2"] = replace(boards["DB2"], plate=read)
    devices["CAM3"] = replace(devices["CAM3"], plate=read)
    installation = replace(model.installation, boards=boards, data_devices=devices)
    shown = replace(model, installation=installation)
    for table, tag in ((equipment_schedule(shown), "DB2"), (camera_schedule(shown), "CAM3")):
        row = cells(table, tag)
        told = (row["Make"], row["Model"], row["Serial number"])
        assert told == ("make Q", "not recorded", "0042")
