"""What a data file must look like: checked at first use, before any figure is read."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import AfterValidator, BaseModel, ConfigDict, Field, model_validator

PROVENANCE_WORDS = ("seen", "memory", "common practice", "derived", "seen in part")


def _provenance(text: str) -> str:
    if not text.startswith(PROVENANCE_WORDS):
        raise ValueError(f"provenance {text!r} does not start with one of {PROVENANCE_WORDS}")
    return text


def _no_empty_cells(value: Any) -> Any:
    if value is None:
        raise ValueError("an empty cell: leave the column out of the row instead")
    for part in (
        value.values() if isinstance(value, dict) else value if isinstance(value, list) else ()
    ):
        _no_empty_cells(part)
    return value


Provenance = Annotated[str, AfterValidator(_provenance)]
Words = Annotated[str, Field(min_length=1)]
Filled = Annotated[Any, AfterValidator(_no_empty_cells)]


class Strict(BaseModel):
    """A model that refuses unknown keys."""

    model_config = ConfigDict(extra="forbid", frozen=True)


class TableSchema(Strict):
    """One table of figures."""

    id: Words
    title: Words
    standard: Words
    edition: Words
    provenance: Provenance
    source: Words
    units: Words | dict[str, Words]
    rows: Annotated[list[dict[str, Filled]], Field(min_length=1)]
    counts: list[int] = []
    notes: list[Words] = []
    extra: dict[str, Filled] = {}

    @model_validator(mode="after")
    def _every_row_says_where_from(self) -> TableSchema:
        for row in self.rows:
            if "provenance" not in row:
                raise ValueError(f"table {self.id}: a row has no provenance: {row}")
            _provenance(str(row["provenance"]))
        return self


class FileSchema(Strict):
    """One data file: a list of tables with different ids."""

    tables: Annotated[list[TableSchema], Field(min_length=1)]

    @model_validator(mode="after")
    def _ids_differ(self) -> FileSchema:
        ids = [table.id for table in self.tables]
        if len(set(ids)) != len(ids):
            raise ValueError(f"two tables share an id: {sorted(ids)}")
        return self


class AsFamily(Strict):
    """A table shared with another cable family, and why that holds."""

    as_family: Words
    provenance: Provenance
    source: Words


class Terminals70(Strict):
    """Which 70 C table sizes a 90 C cable at ordinary terminals."""

    as_family: Words
    table: Words


class KSchema(Strict):
    """k of the adiabatic equation, A s^0.5 / mm2."""

    line: float
    core: float | Literal[False] = False
    armour: float | Literal[False] = False
    separate: float | Literal[False] = False
    provenance: Provenance
    source: Words


class FamilySchema(Strict):
    """One cable family."""

    id: Words
    title: Words
    legend: Words
    standard: Words
    edition: Words
    construction: Literal[
        "armoured", "flat", "single", "multicore", "flexible", "data", "coax", "coax_power"
    ]
    band: Literal["I", "II"]
    insulation: Words
    insulation_c: int
    material: Literal["copper", "aluminium"]
    conductor_class: Literal[1, 2, 5]
    words: Annotated[list[Words], Field(min_length=1)]
    cores: list[int]
    dc_resistance: str = ""
    terminals_70c: Terminals70 | Literal[False] = False
    method_columns: dict[str, dict[str, str]] = {}
    voltage_drop_columns: dict[str, dict[str, str]] = {}
    k: KSchema | Literal[False] = False
    capacity: TableSchema | AsFamily | Literal[False] = False
    capacity_other_methods: AsFamily | Literal[False] = False
    voltage_drop: TableSchema | AsFamily | Literal[False] = False
    dimensions: TableSchema | AsFamily | Literal[False] = False
