"""Cable families: one data file each, found by the words an electrician writes."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from importlib import resources
from types import MappingProxyType
from typing import TYPE_CHECKING

from asfitted.errors import OutsideTableError, ReferenceDataError
from asfitted.reference.loader import Row, Table, freeze, frozen_table, read_checked
from asfitted.reference.schema import AsFamily, FamilySchema, TableSchema

if TYPE_CHECKING:
    from collections.abc import Mapping


@dataclass(frozen=True)
class SharedTable:
    """A table of a family, and the words that justify it when another family owns it."""

    table: Table
    owner_id: str
    shared_because: str = ""


@dataclass(frozen=True)
class CableFamily:
    """What is the same for every cable of a family.

    Attributes:
        id: Short name, as the data file.
        words: Spec words that name it, in any letter case.
        title: What it is, in full.
        legend: Words for a drawing's legend.
        standard: Product standard.
        construction: armoured, flat, single, multicore, flexible, data, coax or coax_power.
        band: Voltage band "I" or "II" of the circuits it carries.
        insulation: "thermosetting 90", "thermoplastic 70" and the like.
        insulation_c: Highest conductor temperature, C.
        material: "copper" or "aluminium".
        conductor_class: IEC 60228 class 1, 2 or 5.
        cores: Numbers of cores made; live cores only for flat twin and earth.
        terminals_70c_table: Number of the table that sizes it at 70 C terminals, "" if its own.
        terminals_70c_family: Family that owns that table, "" if its own.
        dc_resistance: Row of the camera conductor table, "" if none.
    """

    id: str
    words: tuple[str, ...]
    title: str
    legend: str
    standard: str
    construction: str
    band: str
    insulation: str
    insulation_c: int
    material: str
    conductor_class: int
    cores: tuple[int, ...]
    terminals_70c_table: str
    terminals_70c_family: str
    dc_resistance: str

    @property
    def is_armoured(self) -> bool:
        """Whether it has steel wire armour."""
        return self.construction == "armoured"


@cache
def _files() -> Mapping[str, FamilySchema]:
    folder = resources.files("asfitted.reference").joinpath("data", "cables")
    names = sorted(p.name for p in folder.iterdir() if p.name.endswith(".yaml"))
    read = {name: read_checked(("cables", name), FamilySchema) for name in names}
    for name, model in read.items():
        if f"{model.id}.yaml" != name:
            raise ReferenceDataError(f"cables/{name} holds the family {model.id!r}")
    return MappingProxyType({model.id: model for model in read.values()})


@cache
def families() -> tuple[CableFamily, ...]:
    """Return every cable family, by id."""
    return tuple(_family(model) for model in _files().values())


def _family(model: FamilySchema) -> CableFamily:
    shared = model.terminals_70c
    return CableFamily(
        id=model.id,
        words=tuple(model.words),
        title=model.title,
        legend=model.legend,
        standard=model.standard,
        construction=model.construction,
        band=model.band,
        insulation=model.insulation,
        insulation_c=model.insulation_c,
        material=model.material,
        conductor_class=model.conductor_class,
        cores=tuple(model.cores),
        terminals_70c_table=shared.table if shared else "",
        terminals_70c_family=shared.as_family if shared else "",
        dc_resistance=model.dc_resistance,
    )


def _plain(word: str) -> str:
    return " ".join(word.lower().replace("_", " ").split())


@cache
def _by_word() -> Mapping[str, CableFamily]:
    found: dict[str, CableFamily] = {}
    for one in families():
        for word in dict.fromkeys(_plain(w) for w in (one.id, *one.words)):
            if word in found:
                raise ReferenceDataError(f"{word!r} names two cables: {found[word].id}, {one.id}")
            found[word] = one
    return MappingProxyType(found)


def family(word_or_id: str) -> CableFamily:
    """Return the family that a spec word or an id names, in any letter case.

    Raises:
        OutsideTableError: no family has that word; lists the words there are.
    """
    found = _by_word().get(_plain(word_or_id))
    if found is None:
        known = ", ".join(one.words[0] for one in families())
        raise OutsideTableError(f"no cable is called {word_or_id!r}; known: {known}")
    return found


@cache
def shared_table(family_id: str, kind: str) -> SharedTable:
    """Return a table of a family, following a reference to another family.

    Args:
        family_id: Id of the family.
        kind: "capacity", "capacity_other_methods", "voltage_drop" or "dimensions".

    Raises:
        OutsideTableError: the family has no such table.
        ReferenceDataError: the reference leads nowhere.
    """
    part = getattr(_files()[family_id], kind)
    if isinstance(part, TableSchema):
        return SharedTable(frozen_table(part), family_id)
    if isinstance(part, AsFamily):
        if part.as_family not in _files():
            raise ReferenceDataError(f"{family_id}: {kind} as unknown family {part.as_family!r}")
        owner_kind = "capacity" if kind == "capacity_other_methods" else kind
        owned = shared_table(part.as_family, owner_kind)
        return SharedTable(owned.table, owned.owner_id, f"{part.source} ({part.provenance})")
    title = _files()[family_id].title
    raise OutsideTableError(f"{title}: there is no table of {kind.replace('_', ' ')}")


def column_map(family_id: str, kind: str) -> Mapping[str, Mapping[str, str]]:
    """Return the columns a family names for a method, where they are not named after it."""
    model = _files()[family_id]
    named = model.method_columns if kind == "capacity" else model.voltage_drop_columns
    frozen: Mapping[str, Mapping[str, str]] = freeze(named)
    return frozen


def k_values(family_id: str) -> Row:
    """Return the k values of a family with their provenance and source.

    Raises:
        OutsideTableError: the family carries no power circuits.
    """
    model = _files()[family_id]
    if not model.k:
        raise OutsideTableError(f"{model.title}: k is not given; it carries no power circuit")
    held = {key: value for key, value in model.k.model_dump().items() if value is not False}
    frozen: Row = freeze(held)
    return frozen
