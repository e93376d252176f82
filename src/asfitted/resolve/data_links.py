"""Data equipment, cameras and data points, and the cable from the equipment to each."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Literal, cast

from asfitted.errors import OutsideTableError
from asfitted.reference.cable_family import family
from asfitted.resolve.cabinet import cabinet_of
from asfitted.resolve.cable_make import Live, make_of
from asfitted.resolve.cables import CLIPPED, checked_via, measured_length_m
from asfitted.resolve.installation import Cable, DataDevice, State
from asfitted.resolve.rating_plate import plate_of
from asfitted.spec.data import CameraWords, DataPointWords, DataWords
from asfitted.spec.problem_codes import Code

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from asfitted.resolve.installation import Cabinet
    from asfitted.resolve.ledger import Ledger
    from asfitted.resolve.positions import Positions
    from asfitted.spec.data import EquipmentWords, LinkWords
    from asfitted.spec.load_yaml import SpecPath

EquipmentKind = Literal["recorder", "12 V supply", "PoE switch"]
CAMERA_HEIGHT_MM = {True: 3000.0, False: 2600.0}  # outside, inside: common practice
OUTLET_HEIGHT_MM = 1200.0  # common practice
ACCESS_POINT_HEIGHT_MM = 2700.0  # common practice
_PATH: SpecPath = ("data",)


def _equipment_lacks(words: EquipmentWords) -> list[str]:
    needed: dict[str, dict[str, float | None]] = {
        "recorder": {"channels": words.channels},
        "PoE switch": {"ports": words.ports},
        "12 V supply": {"output": words.output, "rating": words.rating},
    }
    return [key for key, value in needed[words.kind].items() if value is None]


def _equipment_of(
    tag: str, words: EquipmentWords, cabinet: Cabinet | None, positions: Positions
) -> DataDevice | None:
    ledger, path = positions.ledger, (*_PATH, "equipment", tag)
    ledger.claim(tag, path)
    for key in _equipment_lacks(words):
        ledger.problem(Code.MISSING, f'{words.kind} {tag} lacks "{key}"', path)
    position = cabinet.position if cabinet else None
    if words.at is not None:
        position = positions.resolve(words.at, (*path, "at"), tag)
    elif cabinet is not None:
        ledger.default(tag, "position", cabinet.tag, "equipment stands in the cabinet")
    elif ledger.loaded.spec.data and ledger.loaded.spec.data.cabinet is None:
        message = f'{tag} has no position and the job has no "cabinet"'
        ledger.problem(Code.DATA_LINK, message, path, 'add "cabinet" under "data", or "at" here')
    if position is None:
        return None
    return DataDevice(
        tag=tag,
        kind=cast("EquipmentKind", words.kind),
        name=words.name or words.kind,
        state=State(words.state or "new"),
        position=position,
        ports=words.ports,
        budget_w=words.budget,
        channels=words.channels,
        disk_tb=words.disk,
        keep_days=words.keep,
        output_v=words.output,
        rating_a=words.rating,
        load_w=words.load,
        port=words.port or "",
        plate=plate_of(words),
    )


def _is_on_recorder(words: LinkWords) -> bool:
    """Tell whether a camera's picture goes to the recorder by coax or baluns."""
    try:
        construction = family(words.cable.family).construction
    except OutsideTableError:
        return False
    return words.cable.baluns or construction in ("coax", "coax_power")


class Links:
    """Joins each camera and data point to its recorder channel or switch port."""

    def __init__(self, words: DataWords, positions: Positions) -> None:
        """Take the data part of the spec."""
        self.words = words
        self.positions = positions
        self.ledger: Ledger = positions.ledger
        self.ports: dict[tuple[str, int], str] = {}
        self.channels: dict[tuple[str, int], str] = {}

    def _of_kind(self, kind: str) -> list[str]:
        return [tag for tag, e in self.words.equipment.items() if e.kind == kind]

    def near_end(self, tag: str, words: LinkWords, path: SpecPath) -> str:
        """Return the equipment that a cable starts from, "" when it cannot be told."""
        if isinstance(words, CameraWords) and _is_on_recorder(words):
            return self._recorder(tag, words, path)
        if words.port is None:
            message = f'{tag} lacks "port"'
            self.ledger.problem(Code.DATA_LINK, message, path, "port: SW1/1")
            return ""
        return self._switch(tag, words.port, path)

    def check_patch_lead(self, tag: str, words: EquipmentWords, path: SpecPath) -> None:
        """Note a port of the equipment itself that is not there or is taken."""
        if words.port is None:
            return
        if words.kind != "recorder":
            message = f'{tag} is a {words.kind}: only a recorder has a "port" on a switch'
            self.ledger.problem(Code.DATA_LINK, message, (*path, "port"))
            return
        self._switch(tag, words.port, path)

    def _recorder(self, tag: str, words: CameraWords, path: SpecPath) -> str:
        recorders = self._of_kind("recorder")
        if words.recorder is not None and words.recorder not in recorders:
            where = (*path, "recorder")
            self.ledger.unknown(Code.NAME, "recorder", words.recorder, recorders, where)
            return ""
        if words.recorder is None and len(recorders) != 1:
            many = "no recorder" if not recorders else f"{len(recorders)} recorders"
            message = f"{tag} goes to a recorder, but the job has {many}"
            self.ledger.problem(Code.DATA_LINK, message, path, 'add "recorder: REC1"')
            return ""
        return words.recorder or recorders[0]

    def _switch(self, tag: str, port: str, path: SpecPath) -> str:
        where = (*path, "port")
        switch, _, number = port.partition("/")
        switches = self._of_kind("PoE switch")
        if switch not in switches:
            self.ledger.unknown(Code.NAME, "PoE switch", switch, switches, where)
            return ""
        count = self.words.equipment[switch].ports or 0
        if not number.isdecimal() or not 1 <= int(number) <= max(count, 1):
            message = f'{tag}: "{port}" is not a port; {switch} has {count} ports'
            self.ledger.problem(Code.DATA_LINK, message, where, f"write {switch}/1 and so on")
            return ""
        taken = self.ports.setdefault((switch, int(number)), tag)
        if taken != tag:
            message = f"port {port} is taken by {taken} already"
            self.ledger.problem(Code.DATA_LINK, message, where)
        return switch

    def check_channel(self, tag: str, words: CameraWords, path: SpecPath) -> None:
        """Note a channel that is taken, or that the recorder does not have."""
        recorders = [words.recorder] if words.recorder else self._of_kind("recorder")
        if words.channel is None or len(recorders) != 1 or recorders[0] not in self.words.equipment:
            return
        recorder, where = recorders[0], (*path, "channel")
        count = self.words.equipment[recorder].channels
        if count is not None and words.channel > count:
            message = f"{tag} is on channel {words.channel}, but {recorder} has {count} channels"
            self.ledger.problem(Code.DATA_LINK, message, where)
        taken = self.channels.setdefault((recorder, words.channel), tag)
        if taken != tag:
            message = f"channel {words.channel} of {recorder} is taken by {taken} already"
            self.ledger.problem(Code.DATA_LINK, message, where)

    def device(
        self, tag: str, words: CameraWords | DataPointWords, path: SpecPath
    ) -> DataDevice | None:
        """Return the camera or data point, None when it cannot be placed."""
        default_up_mm = OUTLET_HEIGHT_MM
        if isinstance(words, CameraWords):
            default_up_mm = CAMERA_HEIGHT_MM[words.at.outside]
        elif words.kind == "access point":
            default_up_mm = ACCESS_POINT_HEIGHT_MM
        position = self.positions.resolve(words.at, (*path, "at"), tag, default_up_mm=default_up_mm)
        if position is None:
            return None
        device = DataDevice(
            tag=tag,
            kind=_device_kind(words),
            name=words.name or getattr(words, "views", None) or "",
            state=State(words.state or "new"),
            position=position,
            load_w=words.load,
            port=words.port or "",
            poe_class=words.poe_class,
            baluns=words.cable.baluns,
            plate=plate_of(words),
        )
        return _with_camera_facts(device, words) if isinstance(words, CameraWords) else device

    def cable(
        self,
        tag: str,
        words: LinkWords,
        path: SpecPath,
        number: int,
        *,
        runs: Mapping[str, object],
        ambient_c: float,
    ) -> Cable | None:
        """Return the cable from the equipment to a device, None when it cannot be told."""
        near_end = self.near_end(tag, words, path)
        cable_tag = self.ledger.tags.data_tag(tag, number)
        make = make_of(words.cable, Live(2), (*path, "cable"), tag, self.ledger)
        if words.drop is None:
            self.ledger.default(tag, "drop", CLIPPED, "none was given")
        via = checked_via(words.via, path, runs, self.ledger)
        length_m = measured_length_m(words.length, path, self.ledger)
        self.ledger.mark(cable_tag, path)
        if make is None or not near_end:
            return None
        state = "existing" if words.cable.existing else words.state or "new"
        return Cable(
            tag=cable_tag,
            circuit=tag,
            band="data" if make.family.band == "I" else "power",
            family=make.family.id,
            cores=make.cores,
            csa_mm2=words.cable.csa_mm2,
            cpc=make.cpc,
            from_end=near_end,
            to_end=tag,
            state=State(state),
            measured_length_m=length_m,
            via=via,
            clipped_up_mm=words.route.clipped_up_mm if words.route else None,
            drop=words.drop or CLIPPED,
            ambient_c=ambient_c,
            extra_m=words.extra or 0.0,
        )


def _device_kind(words: LinkWords) -> Literal["camera", "data outlet", "access point"]:
    if isinstance(words, DataPointWords):
        return cast("Literal['data outlet', 'access point']", words.kind)
    return "camera"


def _with_camera_facts(device: DataDevice, words: CameraWords) -> DataDevice:
    return replace(
        device,
        signal=words.signal or "",
        channel=words.channel,
        power_pairs=words.power_pairs,
        views=words.views or "",
        lens_mm=words.lens,
        sensor=words.sensor or "",
        pixels=words.pixels,
        target_m=words.target,
        aim_deg=words.aim,
    )


def _devices_in_order(
    words: DataWords,
) -> Iterator[tuple[str, CameraWords | DataPointWords, SpecPath]]:
    for tag, camera in words.cameras.items():
        yield tag, camera, (*_PATH, "cameras", tag)
    for tag, point in words.points.items():
        yield tag, point, (*_PATH, "points", tag)


def data_of(
    positions: Positions, runs: Mapping[str, object], ambient_c: float
) -> tuple[Cabinet | None, dict[str, DataDevice], dict[str, Cable]]:
    """Return cabinet, devices and data cables of the job, cameras before data points."""
    words = positions.ledger.loaded.spec.data
    if words is None:
        return None, {}, {}
    cabinet = cabinet_of(words, positions)
    devices: dict[str, DataDevice] = {}
    cables: dict[str, Cable] = {}
    for tag, equipment in words.equipment.items():
        if built := _equipment_of(tag, equipment, cabinet, positions):
            devices[tag] = built
    links = Links(words, positions)
    for tag, equipment in words.equipment.items():
        links.check_patch_lead(tag, equipment, (*_PATH, "equipment", tag))
    for number, (tag, link, path) in enumerate(_devices_in_order(words), start=1):
        positions.ledger.claim(tag, path)
        if isinstance(link, CameraWords):
            links.check_channel(tag, link, path)
        if device := links.device(tag, link, path):
            devices[tag] = device
        if cable := links.cable(tag, link, path, number, runs=runs, ambient_c=ambient_c):
            cables[cable.tag] = cable
    return cabinet, devices, cables
