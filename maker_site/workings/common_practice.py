"""Ranges everybody repeats, by substrate and method: a place to begin, never evidence, never a limit."""

from __future__ import annotations

import csv
from functools import cache
from importlib.resources import files
from typing import Final

from maker_site.frozen import frozen
from maker_site.language import marked
from maker_site.records.quantities import (
    DurationRange,
    Pressure,
    TemperatureRange,
    duration_range,
    pressure,
    temperature_range,
)

ORIGINS: Final = (
    marked("no source"),
    marked("trade articles"),
    marked("trade articles and sellers' pages"),
    marked("taken over from slate and ceramic; no source"),
    marked("taken over from hardboard; no source"),
    marked("taken over from polyester cloth; no source"),
)
"""What the data file says of where its figures come from."""


@frozen
class CommonRange:
    """One row of the data file."""

    substrate: str
    method: str
    temperature: TemperatureRange
    time: DurationRange
    pressure: Pressure
    face: str
    origin: str
    """Where the figures come from, or that they have no source: one of `ORIGINS`."""
    note: str


@cache
def common_ranges() -> tuple[CommonRange, ...]:
    """Return all rows of data/common_practice.csv, which ships with the package."""
    text = (files("maker_site.workings") / "data" / "common_practice.csv").read_text(encoding="utf-8")
    return tuple(
        CommonRange(
            row["substrate"],
            row["method"],
            temperature_range(row["temperature"]),
            duration_range(row["time"]),
            pressure(row["pressure"]),
            row["face"],
            row["origin"],
            row["note"],
        )
        for row in csv.DictReader(text.splitlines())
    )


def common_range(substrate: str, method: str) -> CommonRange | None:
    """Return the range for a substrate and method, or None where none is known."""
    return next((row for row in common_ranges() if (row.substrate, row.method) == (substrate, method)), None)
