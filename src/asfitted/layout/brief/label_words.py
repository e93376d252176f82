"""What stands on the labels; the cards of the route brief read the same words."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from asfitted.layout.schedule.cut_list import kind_words, start_words
from asfitted.layout.table import Column, Table
from asfitted.resolve.starters import NO_STARTER, STARTER

if TYPE_CHECKING:
    from collections.abc import Iterator

    from asfitted.layout.sheet_model import Model
    from asfitted.resolve.installation import Cable, Installation, PointServed


@dataclass(frozen=True)
class Label:
    """One label: its tag and the lines under it. ``ident`` tells two ends of a cable apart."""

    ident: str
    tag: str
    lines: tuple[str, ...]


def cable_line(cable: Cable, model: Model) -> str:
    """Return from and to, as on both labels of a cable."""
    return f"{start_words(cable, model)} to {cable.to_end}"


def cable_labels(model: Model) -> tuple[Label, ...]:
    """Return two labels for each new cable, one for each end."""
    return tuple(
        Label(
            f"{cable.tag}@{end}:{i}",
            cable.tag,
            (cable_line(cable, model), kind_words(cable, model), f"this end: {end}"),
        )
        for cable in model.installation.cables.values()
        if cable.state == "new"
        for i, end in enumerate((cable.from_end, cable.to_end))
    )


def way_labels(model: Model) -> tuple[Label, ...]:
    """Return a label for each way with a new circuit."""
    return tuple(
        Label(circuit.tag, circuit.tag, (circuit.name, circuit.device.words))
        for circuit in model.installation.circuits.values()
        if circuit.state == "new"
    )


def label_table(model: Model) -> Table:
    """Return every label as a row, for a label printer: its tag, then its lines."""
    labels = (*cable_labels(model), *way_labels(model), *device_labels(model))
    deepest = max((len(label.lines) for label in labels), default=0)
    heads = ("Tag", *(f"Line {i}" for i in range(1, deepest + 1)))
    rows = [(one.tag, *one.lines, *[""] * (deepest - len(one.lines))) for one in labels]
    columns = tuple(Column(head) for head in heads)
    return Table(columns, tuple(rows), tuple(label.ident for label in labels))


def device_labels(model: Model) -> tuple[Label, ...]:
    """Return a label for each new board, point and data device."""
    return tuple(_devices(model.installation))


def _isolate_at(point: PointServed, installation: Installation) -> tuple[str, ...]:
    """Return the caution on a starter and on a motor behind one: its stop isolates nothing."""
    if point.kind != STARTER and point.starter in {"", NO_STARTER}:
        return ()
    return (f"stop is no isolator: open {isolated_at(point, installation)}",)


def isolated_at(point: PointServed, installation: Installation) -> str:
    """Return what isolates a point: the last isolator or fused spur before it, else its way."""
    order = installation.circuits[point.circuit].points
    passed = [installation.points[tag] for tag in order[: order.index(point.tag)]]
    local = [p.tag for p in passed if p.kind in {"isolator", "fused spur"}]
    return local[-1] if local else point.circuit


def _devices(installation: Installation) -> Iterator[Label]:
    for board in installation.boards.values():
        if board.state == "new":
            name = (board.name,) if board.name not in ("", board.tag) else ()
            fed = "supply" if board.fed_by == "supply" else board.fed_by
            yield Label(board.tag, board.tag, (*name, f"fed from {fed}"))
    for point in installation.points.values():
        if point.state == "new":
            words = point.name or point.words.partition(",")[0]
            isolate = _isolate_at(point, installation)
            yield Label(point.tag, point.tag, (words, f"fed from {point.circuit}", *isolate))
    for device in installation.data_devices.values():
        if device.state == "new":
            extra = (device.views,) if device.views else ()
            port = (f"port {device.port}",) if device.port else ()
            yield Label(device.tag, device.tag, (device.kind, *extra, *port))
