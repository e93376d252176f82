"""Schedules: what each column says, as plain tables. Laying out a table is in ``layout.table``."""
