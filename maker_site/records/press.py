"""Presses: what the dial says and what the platen does."""

from __future__ import annotations

from maker_site.records import fields as f
from maker_site.records.base import Part, Record


class Reading(Part):
    """One reading with a contact probe."""

    date: f.Date | None = None
    set: f.Temperature
    """What the dial said."""
    measured: f.Temperature
    """What the probe said."""
    where: f.Text | None = None
    """Centre, a corner."""


class Resolution(Part):
    """The smallest steps that the press can be set in."""

    temperature: f.TemperatureStep | None = None
    time: f.Seconds | None = None


class Press(Record):
    """One press. A setting without its press is gossip."""

    name: f.Text
    kind: f.PressKind | None = None
    platen: f.Size | None = None
    even_zone: f.Size | None = None
    """The part of the platen that is at the same temperature."""
    watts: f.Watts | None = None
    duty: f.Share | None = None
    """Share of the time that the element is on."""
    warm_up: f.Minutes | None = None
    idle: f.Temperature | None = None
    """Held between pressings by some mug presses."""
    lowest: f.Temperature | None = None
    highest: f.Temperature | None = None
    resolution: Resolution = Resolution()
    pressure_mark: f.Text | None = None
    """What light, medium and firm mean on this press."""
    timer_starts: f.Text | None = None
    """At closing, or when the temperature has come back."""
    readings: tuple[Reading, ...] = ()
    note: f.Text | None = None
