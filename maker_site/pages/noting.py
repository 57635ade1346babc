"""Who reads what: while a page is built, each record and each sum that it looks at is noted.

A page whose notes name nothing that has changed is as it was, so it need not be built again. What is noted is a kind
and an id, or a kind and None for the whole of a kind. Sums pass on what they were made of: a page that looks at one
has looked at all that is behind it.
"""

from __future__ import annotations

from collections.abc import Callable, Container, ItemsView, Iterable, Iterator, Mapping, ValuesView
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


def note(kind: str, name: str | None = None) -> None:
    """Note that something is looked at, where anybody takes notes."""
    notes = _notes.get()
    if notes is not None:
        notes.add((kind, name))


@contextmanager
def noting() -> Iterator[set[Read]]:
    """Take notes in this block; who takes notes around it gets them too."""
    outer = _notes.get()
    notes: set[Read] = set()
    token = _notes.set(notes)
    try:
        yield notes
    finally:
        _notes.reset(token)
        if outer is not None:
            outer |= notes


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


class Worked(Mapping[str, V]):
    """Sums by id, each worked out when it is first looked at, with what it was made of.

    Who looks at one notes all that it was made of; with `apart` the sum itself is noted, as a kind of its own.
    """

    __slots__ = ("_apart", "_kept", "_most", "_names", "_work")

    def __init__(self, names: Callable[[], Iterable[str]], work: Callable[[str], V], apart: str | None = None) -> None:
        self._names = names
        self._work = work
        self._apart = apart
        self._most: int | None = None
        self._kept: dict[str, tuple[V, frozenset[Read]]] = {}

    def __getitem__(self, name: str) -> V:
        kept = self._kept.get(name)
        if kept is None:
            with unnoted(), noting() as reads:
                value = self._work(name)
            kept = self._kept[name] = (value, frozenset(reads))
            if self._most is not None and len(self._kept) > self._most:
                del self._kept[next(iter(self._kept))]
        notes = _notes.get()
        if notes is not None:
            if self._apart:
                notes.add((self._apart, name))
            else:
                notes |= kept[1]
        return kept[0]

    def names(self) -> Container[str]:
        """Return the ids that there are sums for."""
        found = self._names()
        return found if isinstance(found, Container) else frozenset(found)

    def hold(self, most: int | None) -> None:
        """Hold so many sums at most from now on, those worked out last; None holds all."""
        self._most = most

    def drop(self, name: str) -> None:
        """Let go of a sum; it is worked out again when it is looked at again."""
        self._kept.pop(name, None)

    def made_of(self, name: str) -> frozenset[Read]:
        """Return what a sum was made of."""
        with unnoted():
            self[name]
        return self._kept[name][1]

    def __iter__(self) -> Iterator[str]:
        return iter(self._names())

    def __len__(self) -> int:
        return sum(1 for _ in self._names())

    def take_over(self, before: Worked[V], changed: frozenset[Read]) -> None:
        """Take from an earlier make what was made of nothing that has changed since."""
        self._kept |= {name: kept for name, kept in before._kept.items() if kept[1].isdisjoint(changed)}
