"""The firm that does the work, as written in the job file or in a file that many jobs share."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from pydantic import GetJsonSchemaHandler, model_validator

from asfitted.spec.fields import SpecModel, Text

if TYPE_CHECKING:
    from pydantic_core import CoreSchema


class FirmWords(SpecModel):
    """Who does the work. Plain words in place of the block are its name."""

    name: Text
    address: list[Text] | None = None
    phone: Text | None = None
    email: Text | None = None
    registration: Text | None = None
    logo: Text | None = None

    @model_validator(mode="before")
    @classmethod
    def _name_alone(cls, value: Any) -> Any:
        return {"name": value} if isinstance(value, str) else value

    @classmethod
    def __get_pydantic_json_schema__(
        cls, core_schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        """Return the JSON shape: words or a block of keys."""
        block = handler.resolve_ref_schema(handler(core_schema))
        return {"anyOf": [{"type": "string"}, dict(block)]}
