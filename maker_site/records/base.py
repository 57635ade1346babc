"""What all records share: frozen, text in, no unknown field, each value with its file and line.

Inner module of the records room.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from pydantic import BaseModel, ConfigDict, PrivateAttr

from maker_site.records.problems import Problem, Severity
from maker_site.records.quantities import Amount
from maker_site.records.yaml_text import Place, dotted


@dataclass(frozen=True, slots=True)
class Origin:
    """The file that a record was read from, and the line of each of its values."""

    file: str
    """Path from the content folder, with forward slashes."""
    lines: Mapping[Place, int] = field(default_factory=dict)

    def line(self, place: Place) -> int:
        """Return the line of a value, or of the nearest thing around it; 0 where nothing is known."""
        while place and place not in self.lines:
            place = place[:-1]
        return self.lines.get(place, 0)

    def problem(self, place: Place, message: str, severity: Severity = Severity.ERROR) -> Problem:
        """Return a problem with one value of the record."""
        return Problem(self.file, self.line(place), dotted(place), message, severity)


class OneLine(Mapping[Place, int]):
    """The line of a record that stands in one line with all its values; a log has very many of them."""

    __slots__ = ("_line",)

    def __init__(self, line: int) -> None:
        self._line = line

    def __getitem__(self, place: Place) -> int:
        if place:
            raise KeyError(place)
        return self._line

    def __iter__(self) -> Iterator[Place]:
        return iter(((),))

    def __len__(self) -> int:
        return 1


class Part(BaseModel):
    """A frozen group of fields; field names are written with spaces (``print area``)."""

    model_config = ConfigDict(
        frozen=True,
        extra="forbid",
        alias_generator=lambda name: name.rstrip("_").replace("_", " "),
        arbitrary_types_allowed=True,
        populate_by_name=True,
        hide_input_in_errors=True,
    )

    def amounts(self, place: Place = ()) -> Iterator[tuple[Place, Amount]]:
        """Yield every amount of money in these fields with its place."""
        for name, info in type(self).model_fields.items():
            yield from _amounts_in(getattr(self, name), (*place, info.alias or name))


def _amounts_in(value: object, place: Place) -> Iterator[tuple[Place, Amount]]:
    if isinstance(value, Amount):
        yield place, value
    elif isinstance(value, Part):
        yield from value.amounts(place)
    elif isinstance(value, tuple):
        for index, each in enumerate(value):
            yield from _amounts_in(each, (*place, index))


class Record(Part):
    """A record of its own file, known by its file's or folder's name."""

    id: str
    """The file's or folder's name."""
    _origin: Origin = PrivateAttr(default_factory=lambda: Origin(""))
    _outline: Record | None = PrivateAttr(default=None)
    """Itself without its asides, once it was asked for; see `outlines`."""

    @property
    def origin(self) -> Origin:
        """Where the record was read."""
        return self._origin
