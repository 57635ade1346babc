"""Quantities as people write them: held exactly, with the text they were typed as."""

from maker_site.records.quantities.duration import Duration, DurationRange, duration, duration_range
from maker_site.records.quantities.length import MM_PER_INCH, PAPER_MM, Length, Size, length, place, size
from maker_site.records.quantities.measure import Measure, laydown, measure
from maker_site.records.quantities.money import Amount, Share, amount, share
from maker_site.records.quantities.numbers import number, plain, tidy
from maker_site.records.quantities.pressure import KPA_PER_PSI, Pressure, pressure
from maker_site.records.quantities.temperature import (
    Temperature,
    TemperatureRange,
    TemperatureStep,
    from_fahrenheit,
    temperature,
    temperature_range,
    temperature_step,
)

__all__ = [
    "KPA_PER_PSI",
    "MM_PER_INCH",
    "PAPER_MM",
    "Amount",
    "Duration",
    "DurationRange",
    "Length",
    "Measure",
    "Pressure",
    "Share",
    "Size",
    "Temperature",
    "TemperatureRange",
    "TemperatureStep",
    "amount",
    "duration",
    "duration_range",
    "from_fahrenheit",
    "laydown",
    "length",
    "measure",
    "number",
    "place",
    "plain",
    "pressure",
    "share",
    "size",
    "temperature",
    "temperature_range",
    "temperature_step",
    "tidy",
]
