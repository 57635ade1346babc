"""Gists: of each record what settings are worked out from, and no more; light to keep and to take up again.

They are named as the records' own fields are, so that what is worked out from records is worked out from gists.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from typing import TYPE_CHECKING, Protocol

from maker_site.frozen import frozen
from maker_site.records.quantities import (
    Duration,
    DurationRange,
    Length,
    Pressure,
    Temperature,
    TemperatureRange,
    TemperatureStep,
)

if TYPE_CHECKING:
    from maker_site.records.blank import Blank
    from maker_site.records.press import Press
    from maker_site.records.pressing import Pressing


@frozen
class Sheet:
    """What the supplier's sheet says."""

    temperature: TemperatureRange | None
    time: DurationRange | None
    pressure: Pressure | None
    face: str | None


@frozen
class BlankGist:
    """Of a blank."""

    id: str
    name: str
    substrate: str
    method: str
    thickness: Length | None
    supplier: str | None
    code: str | None
    limit: Temperature | None
    sheet: Sheet | None


@frozen
class Reading:
    """Of a press's reading."""

    date: date | None
    set: Temperature
    measured: Temperature


@frozen
class Resolution:
    """The smallest steps that a press can be set in."""

    temperature: TemperatureStep | None
    time: Duration | None


@frozen
class PressGist:
    """Of a press."""

    id: str
    name: str
    kind: str | None
    lowest: Temperature | None
    highest: Temperature | None
    resolution: Resolution
    readings: tuple[Reading, ...]


@frozen
class ProjectGist:
    """Of a project."""

    title: str
    occasions: tuple[str, ...]


@frozen
class Row:
    """Of a row of the log. It is its own origin."""

    file: str
    number: int
    """Of its line; after an edit of a file, of its row there, which is the same order."""
    date: date
    blank: str
    press: str
    temperature: Temperature
    time: Duration
    pressed: int
    good: int
    project: str | None
    method: str | None
    pressure: Pressure | None
    face: str | None
    defects: tuple[str, ...]

    @property
    def id(self) -> str:
        """The log's file and the row's line there."""
        return f"{self.file}:{self.number}"

    @property
    def origin(self) -> Row:
        """Where the row was read."""
        return self

    def line(self, place: tuple[str | int, ...]) -> int:
        """Return the line of a value."""
        return self.number


class _Origin(Protocol):
    @property
    def file(self) -> str: ...
    def line(self, place: tuple[str | int, ...]) -> int: ...


def of_blank(blank: Blank) -> BlankGist:
    """Return a blank's gist."""
    said = blank.sheet
    sheet = Sheet(said.temperature, said.time, said.pressure, said.face) if said else None
    return BlankGist(
        *(blank.id, blank.name, blank.substrate, blank.method, blank.thickness, blank.supplier),
        *(blank.code, blank.limit, sheet),
    )


def of_press(press: Press) -> PressGist:
    """Return a press's gist."""
    readings = tuple(Reading(each.date, each.set, each.measured) for each in press.readings)
    steps = Resolution(press.resolution.temperature, press.resolution.time)
    return PressGist(press.id, press.name, press.kind, press.lowest, press.highest, steps, readings)


def of_pressing(row: Pressing) -> Row:
    """Return a row's gist."""
    origin: _Origin = row.origin
    return Row(
        *(origin.file, origin.line(()), row.date, row.blank, row.press, row.temperature, row.time, row.pressed),
        *(row.good, row.project, row.method, row.pressure, row.face, row.defects),
    )


@frozen
class Bench:
    """As much of a workshop as some settings are worked out from."""

    blanks: Mapping[str, BlankGist]
    presses: Mapping[str, PressGist]
    projects: Mapping[str, ProjectGist]
