"""The JSON Schema of a job file, for editors that complete and underline."""

from __future__ import annotations

from typing import Any

from asfitted.spec.job_spec import VERSIONS, JobSpec


def json_schema() -> dict[str, Any]:
    """Return the JSON Schema (draft 2020-12) of a job file, keys as written with spaces."""
    schema = JobSpec.model_json_schema(by_alias=True)
    schema["$schema"] = "https://json-schema.org/draft/2020-12/schema"
    schema["title"] = "asfitted job file"
    schema["properties"]["asfitted"] = {"enum": [*VERSIONS, *map(int, VERSIONS)]}
    return schema
