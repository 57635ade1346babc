"""Outlines: records without what concerns nobody but who looks at the one record alone.

A page that shows something of every project is shown outlines, so that a note which it can't show does not concern
it: there is no such field in them, and looking at one is an AttributeError. Who shows one record asks for the whole.
"""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Mapping
from typing import Final, TypeVar, cast

from maker_site.records.base import Record, without
from maker_site.records.blank import Blank
from maker_site.records.project import Project

R = TypeVar("R", bound=Record)
V = TypeVar("V")
ASIDES: Final[Mapping[type[Record], tuple[str, ...]]] = {Project: ("note", "tutorial"), Blank: ("note", "bought")}
"""What an outline is without."""


class Outlined(Mapping[str, V]):
    """Records by id: outlines, and the whole of one where it is asked for by itself."""

    __slots__ = ()

    @abstractmethod
    def whole(self, name: str) -> V:
        """Return the whole record of an id; raises KeyError."""


def outline(record: R) -> R:
    """Return a record without its asides; the record itself where its kind has none."""
    asides = ASIDES.get(type(record), ())
    if not asides:
        return record
    if record._outline is None:
        record._outline = without(record, asides)
    return cast("R", record._outline)


def whole_of(records: Mapping[str, R], name: str) -> R:
    """Return the whole record of an id, whichever way the records are held."""
    return records.whole(name) if isinstance(records, Outlined) else records[name]
