"""Spec: the text of a job file gives a frozen ``JobSpec`` whose every value knows its line."""

from __future__ import annotations

from asfitted.spec.load_job import LoadedJob, load_job
from asfitted.spec.schema import json_schema

__all__ = ["LoadedJob", "json_schema", "load_job"]
