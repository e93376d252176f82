"""Figures of CCTV and data links: reach, supplies, lenses, storage."""
