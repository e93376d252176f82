"""Data files read once, checked against the schema, and frozen."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib import resources
from types import MappingProxyType
from typing import Any, TypeVar

import yaml
from pydantic import BaseModel, ValidationError

from asfitted.errors import OutsideTableError, ReferenceDataError
from asfitted.reference.figure import Figure
from asfitted.reference.schema import FileSchema, TableSchema

Row = Mapping[str, Any]
Model = TypeVar("Model", bound=BaseModel)


@dataclass(frozen=True)
class Table:
    """A table of figures; rows, notes and extras cannot be changed."""

    id: str
    title: str
    standard: str
    edition: str
    provenance: str
    source: str
    units: Any
    rows: tuple[Row, ...]
    counts: tuple[int, ...]
    notes: tuple[str, ...]
    extra: Mapping[str, Any]

    def row(self, **wanted: Any) -> Row:
        """Return the one row whose columns equal ``wanted``.

        Raises:
            OutsideTableError: no row does; names the table, the columns and what they hold.
        """
        for row in self.rows:
            if all(row.get(column) == value for column, value in wanted.items()):
                return row
        column, value = next(reversed(wanted.items()))
        raise self.outside(column, value)

    def row_at_or_above(self, axis: str, value: float, *, slack: float = 1e-9) -> Row:
        """Return the row with the least ``axis`` not below ``value``.

        Raises:
            OutsideTableError: every row is below ``value``.
        """
        fits = [row for row in self.rows if axis in row and row[axis] >= value - slack]
        if not fits:
            raise self.outside(axis, value)
        return min(fits, key=lambda row: float(row[axis]))

    def outside(self, axis: str, value: Any) -> OutsideTableError:
        """Return the error that says ``value`` is not on ``axis`` of this table."""
        held = [row[axis] for row in self.rows if axis in row]
        if held and all(isinstance(v, int | float) for v in held):
            extent = f"{min(held):g} to {max(held):g}"
        else:
            extent = ", ".join(dict.fromkeys(str(v) for v in held)) or "no such column"
        return OutsideTableError(
            f"{self.title} ({self.standard}): {axis} {value!r} is not in the table, "
            f"which holds {extent}"
        )

    def figure(self, row: Row, column: str, unit: str, *, factor: float = 1.0) -> Figure:
        """Return one cell as a Figure with its source.

        Args:
            row: A row of this table.
            column: Name of the column.
            unit: Unit of the returned value.
            factor: Multiplier from the table's unit to ``unit``.

        Raises:
            OutsideTableError: the standard gives no value in that cell.
        """
        if column not in row:
            where = ", ".join(f"{k} {v}" for k, v in list(row.items())[:2])
            raise OutsideTableError(
                f"{self.title} ({self.standard}): no {column} value for {where}; the row holds "
                f"{', '.join(k for k in row if k not in ('provenance', 'doubt', 'cells'))}"
            )
        return Figure(
            value=float(row[column]) * factor,
            unit=unit,
            source=self.standard,
            provenance=provenance_of(row, column),
            note=str(row.get("doubt") or row.get("note") or ""),
        )


def provenance_of(row: Row, column: str) -> str:
    """Return the provenance word of one cell: the row's word unless the row lists the column."""
    if column in row.get("memory_cells", ()):
        return "memory"
    if column in row.get("seen_cells", ()):
        return "seen"
    return str(row["provenance"])


def freeze(value: Any) -> Any:
    """Return a value with every mapping read-only and every list a tuple."""
    if isinstance(value, dict):
        return MappingProxyType({key: freeze(part) for key, part in value.items()})
    if isinstance(value, list):
        return tuple(freeze(part) for part in value)
    return value


def frozen_table(model: TableSchema) -> Table:
    """Return a checked table, frozen."""
    return Table(**{name: freeze(value) for name, value in model.model_dump().items()})


def read_checked(folder_and_name: tuple[str, ...], schema: type[Model]) -> Model:
    """Read one data file and check it.

    Raises:
        ReferenceDataError: the file is missing, is not YAML or breaks the schema.
    """
    where = resources.files("asfitted.reference").joinpath("data", *folder_and_name)
    try:
        return schema.model_validate(yaml.safe_load(where.read_text(encoding="utf-8")))
    except (OSError, yaml.YAMLError, ValidationError) as fault:
        raise ReferenceDataError(f"{'/'.join(folder_and_name)}: {fault}") from fault


@cache
def tables(file: str) -> Mapping[str, Table]:
    """Return the tables of ``data/<file>.yaml`` by id."""
    checked = read_checked((f"{file}.yaml",), FileSchema)
    return MappingProxyType({model.id: frozen_table(model) for model in checked.tables})


def table(file: str, table_id: str) -> Table:
    """Return one table.

    Raises:
        ReferenceDataError: the file holds no such table.
    """
    found = tables(file).get(table_id)
    if found is None:
        raise ReferenceDataError(f"{file}.yaml has no table {table_id!r}")
    return found
