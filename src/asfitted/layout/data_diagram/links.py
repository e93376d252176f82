"""Which recorder, and which place in it, a camera or data point is joined to."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from asfitted.resolve.installation import Cable, DataDevice, Installation


def cables_by_device(installation: Installation) -> dict[str, Cable]:
    """Return the cable that ends at each camera, outlet and access point, by tag of the device."""
    devices = installation.data_devices
    return {c.to_end: c for c in installation.cables.values() if c.to_end in devices}


def recorder_of(device: DataDevice, cable: Cable | None, installation: Installation) -> str:
    """Return the tag of the recorder that takes a camera's picture, "" when it is not recorded.

    A coaxial or balun camera is cabled to it; a camera on a network port with a channel belongs to
    the only recorder of the job.
    """
    if device.kind != "camera":
        return ""
    recorders = [d.tag for d in installation.data_devices.values() if d.kind == "recorder"]
    if cable is not None and cable.from_end in recorders:
        return cable.from_end
    return recorders[0] if len(recorders) == 1 and device.channel is not None else ""


def port_number(port: str) -> int:
    """Return the number of a port: 3 of ``SW1/3``; 0 where it holds none."""
    _, _, number = port.partition("/")
    return int(number) if number.isdecimal() else 0
