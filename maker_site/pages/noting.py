"""Who reads what: while a page is built, each record and each sum that it looks at is noted.

A page whose notes name nothing that has changed is as it was, so it need not be built again. What is noted is a kind
and an id, or a kind and None for the whole of a kind. Sums pass on what they were made of: a page that looks at one
has looked at all that is behind it.
"""

from __future__ import annotations

from collections.abc import ItemsView, Iterator, Mapping, ValuesView
from contextlib import contextmanager
from contextvars import ContextVar
from typing import Any, Final, TypeAlias, TypeVar

from maker_site.records.base import Record
from maker_site.records.outlines import Outlined, outline
from maker_site.records.shelved import ByKind
from maker_site.records.supply import Supply

V = TypeVar("V")
R = TypeVar("R", bound=Record)
WHOLE: Final = "whole "
"""How the kind of a whole record begins, where its outline is noted apart."""
Read: TypeAlias = tuple[str, str | None]
"""A kind and an id; None where the whole of a kind was looked at."""

_notes: ContextVar[set[Read] | None] = ContextVar("notes", default=None)


def notes() -> set[Read] | None:
    """Return what is noted so far, to be added to; None where nobody takes notes."""
    return _notes.get()


def note(kind: str, name: str | None = None) -> None:
    """Note that something is looked at, where anybody takes notes."""
    taken = _notes.get()
    if taken is not None:
        taken.add((kind, name))


@contextmanager
def noting() -> Iterator[set[Read]]:
    """Take notes in this block; who takes notes around it gets them too."""
    outer = _notes.get()
    taken: set[Read] = set()
    token = _notes.set(taken)
    try:
        yield taken
    finally:
        _notes.reset(token)
        if outer is not None:
            outer |= taken


@contextmanager
def unnoted() -> Iterator[None]:
    """Take no notes in this block: for what is noted under a name of its own."""
    token = _notes.set(None)
    try:
        yield
    finally:
        _notes.reset(token)


class Noted(Mapping[str, V]):
    """A mapping of one kind of thing that notes what is looked at; an id that is not there is noted too."""

    __slots__ = ("_found", "_kind")

    def __init__(self, kind: str, found: Mapping[str, V]) -> None:
        self._kind = kind
        self._found = found

    @property
    def unnoted(self) -> Mapping[str, V]:
        """The same without notes."""
        return self._found

    def __getitem__(self, name: str) -> V:
        note(self._kind, name)
        return self._found[name]

    def __contains__(self, name: object) -> bool:
        note(self._kind, str(name))
        return name in self._found

    def __iter__(self) -> Iterator[str]:
        note(self._kind)
        return iter(self._found)

    def __len__(self) -> int:
        note(self._kind)
        return len(self._found)

    def values(self) -> ValuesView[V]:
        """Return every value; the whole is noted."""
        note(self._kind)
        return self._found.values()

    def items(self) -> ItemsView[str, V]:
        """Return every id with its value; the whole is noted."""
        note(self._kind)
        return self._found.items()


class NotedOutlines(Noted[R], Outlined[R]):
    """Records of one kind: outlines, noted by the kind; the whole of one is noted as ``whole KIND``."""

    __slots__ = ("_records",)

    def __init__(self, kind: str, found: Mapping[str, R]) -> None:
        super().__init__(kind, {name: outline(record) for name, record in found.items()})
        self._records = found

    @property
    def wholes(self) -> Mapping[str, R]:
        """The whole records, without notes."""
        return self._records

    def whole(self, name: str) -> R:
        """Return a record with its asides."""
        note(f"{WHOLE}{self._kind}", name)
        return self._records[name]


class NotedSupplies(Noted[Supply], ByKind):
    """Supplies, of which one can look for those of a kind alone."""

    __slots__ = ("by_kind",)

    def __init__(self, found: Mapping[str, Supply]) -> None:
        super().__init__("supply", found)
        kinds: dict[str, tuple[str, ...]] = {}
        for name, supply in found.items():
            kinds[supply.kind] = (*kinds.get(supply.kind, ()), name)
        self.by_kind = Noted("supplies of", kinds)
        """The ids of each kind."""

    def of_kind(self, kind: str) -> tuple[str, ...]:
        """Return the ids of the supplies of a kind; they are noted, and none of the supplies is."""
        return self.by_kind.get(kind, ())


class NotedRows(tuple[V, ...]):
    """Rows that are looked at as a whole."""

    __slots__ = ()

    def __iter__(self) -> Iterator[V]:
        """Go through the rows."""
        note("rows")
        return super().__iter__()

    def __getitem__(self, where: Any) -> Any:
        """Return some of the rows."""
        note("rows")
        return super().__getitem__(where)
