"""Workings: pure functions of records. No file, no clock, no template."""
