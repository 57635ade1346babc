"""What all records share: frozen, text in, no unknown field, each value with its file and line.

Inner module of the records room.
"""

from __future__ import annotations

from array import array
from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property, lru_cache
from typing import Any, Final, TypeVar

from pydantic import BaseModel, ConfigDict, PrivateAttr

from maker_site.records.problems import Problem, Severity
from maker_site.records.quantities import Amount
from maker_site.records.yaml_text import Place, dotted

P = TypeVar("P", bound="Part")
_set: Final = object.__setattr__
"""Frozen fields have no other way in."""
_ABSENT: Final = object()


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


class Lines(Mapping[Place, int]):
    """The lines of a record's values, held in little memory: one names many values and is seldom asked."""

    __slots__ = ("_lines", "_places")

    def __init__(self, found: Mapping[Place, int]) -> None:
        self._places = _once(tuple(found))
        self._lines = array("I", list(found.values()))

    def __getitem__(self, place: Place) -> int:
        try:
            return self._lines[self._places.index(place)]
        except ValueError:
            raise KeyError(place) from None

    def __iter__(self) -> Iterator[Place]:
        return iter(self._places)

    def __len__(self) -> int:
        return len(self._places)


@lru_cache(maxsize=1024)  # records that are written alike have the same places
def _once(places: tuple[Place, ...]) -> tuple[Place, ...]:
    return places


@lru_cache(maxsize=1024)
def _names(names: frozenset[str]) -> set[str]:
    return set(names)


class Part(BaseModel):
    """A frozen group of fields; field names are written with spaces (``print area``)."""

    model_config = ConfigDict(
        frozen=True,
        extra="forbid",
        alias_generator=lambda name: name.rstrip("_").replace("_", " "),
        arbitrary_types_allowed=True,
        populate_by_name=True,
        hide_input_in_errors=True,
        defer_build=True,  # a model is built when the first of its kind is read
    )

    def amounts(self, place: Place = ()) -> Iterator[tuple[Place, Amount]]:
        """Yield every amount of money in these fields with its place."""
        for name, info in type(self).model_fields.items():
            yield from _amounts_in(getattr(self, name), (*place, info.alias or name))

    def __reduce__(self) -> tuple[type[Again], tuple[Any, ...]]:
        """Return what is pickled; a look at ``__dict__`` would leave a dictionary behind for good."""
        found = [(name, getattr(self, name, _ABSENT)) for name in type(self).model_fields]
        names = tuple(name for name, value in found if value is not _ABSENT)
        shape = _shape(type(self), names, frozenset(self.__pydantic_fields_set__))
        return Again, (shape, self.__pydantic_private__, *(value for _, value in found if value is not _ABSENT))


@dataclass(frozen=True)
class Shape:
    """What is the same of very many parts, so that a pickle says it once."""

    kind: type[Part]
    names: tuple[str, ...]
    """The fields that are there, in the order of the class."""
    given: frozenset[str]
    """The fields that were given."""

    @cached_property
    def held(self) -> set[str]:
        """The fields that were given, as every part of the shape holds them."""
        return _names(self.given)


@lru_cache(maxsize=1024)
def _shape(kind: type[Part], names: tuple[str, ...], given: frozenset[str]) -> Shape:
    return Shape(kind, names, given)


class Again:
    """Makes a part again out of its pickle, held as `compact` does."""

    def __new__(cls, shape: Shape, private: dict[str, Any] | None, *values: object) -> Part:  # type: ignore[misc]
        """Return the part."""
        part = object.__new__(shape.kind)
        _fill(part, zip(shape.names, values, strict=True), shape.held, private)
        return part


def like(part: P, values: Mapping[str, object]) -> P:
    """Return the same fields given with some other values, which are taken as they are; held as `compact` does."""
    made = part.__new__(type(part))
    _fill(made, {**part.__dict__, **values}.items(), _held(part), part.__pydantic_private__)
    return made


def without(part: P, names: Collection[str]) -> P:
    """Return the same without some fields, which it is an AttributeError to look at; held as `compact` does."""
    made = part.__new__(type(part))
    values = ((name, value) for name, value in part.__dict__.items() if name not in names)
    _fill(made, values, _held(part), part.__pydantic_private__)
    return made


def compact(part: P) -> P:
    """Return the same fields held in a fraction of the memory: a workshop has very many, and they stay all day.

    Attributes that are set one by one, in the order of the class, share the table of their names with every other
    object of the class (PEP 412), which those that validation made don't. So do the sets of the names that were given.
    """
    return like(part, {name: _compact_value(value) for name, value in part.__dict__.items()})


def _compact_value(value: object) -> object:
    if isinstance(value, Part):
        return compact(value)
    if isinstance(value, tuple) and any(isinstance(each, Part) for each in value):
        return tuple(_compact_value(each) for each in value)
    return value


def _held(part: Part) -> set[str]:
    """Return the names of the fields that were given, as every part with the same ones holds them."""
    return _names(frozenset(part.__pydantic_fields_set__))


def _fill(part: Part, values: Iterable[tuple[str, object]], given: set[str], private: dict[str, Any] | None) -> None:
    for name, value in values:
        _set(part, name, value)
    _set(part, "__pydantic_fields_set__", given)
    _set(part, "__pydantic_extra__", None)
    _set(part, "__pydantic_private__", private)


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
