"""Resolve: a checked spec and the reference tables give an ``Installation``."""

from __future__ import annotations

from asfitted.resolve.resolve_job import resolve

__all__ = ["resolve"]
