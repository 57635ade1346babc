"""Sums that are worked out when they are first looked at, each with what it was made of."""

from __future__ import annotations

from collections.abc import Callable, Container, Iterable, Iterator, Mapping
from typing import TypeAlias, TypeVar

from maker_site.pages.noting import Read, notes, noting, unnoted

V = TypeVar("V")
Sum: TypeAlias = tuple[V, tuple[Read, ...]]
"""A value with what was looked at to work it out, each once: a set would take five times the memory."""


def nothing_before(name: str) -> None:
    """Return None: nothing is known from before of that name."""


class Worked(Mapping[str, V]):
    """Sums by id, each worked out when it is first looked at, with what it was made of.

    Who looks at one notes all that it was made of; with `apart` the sum itself is noted, as a kind of its own.
    `before` gives a sum that was worked out before this process began, where it still holds.
    """

    __slots__ = ("_apart", "_before", "_kept", "_most", "_names", "_new", "_work")

    def __init__(
        self,
        names: Callable[[], Iterable[str]],
        work: Callable[[str], V],
        apart: str | None = None,
        before: Callable[[str], Sum[V] | None] = nothing_before,
    ) -> None:
        self._names = names
        self._work = work
        self._apart = apart
        self._before = before
        self._most: int | None = None
        self._kept: dict[str, Sum[V]] = {}
        self._new: dict[str, Sum[V]] | None = None

    def __getitem__(self, name: str) -> V:
        kept = self._kept.get(name)
        if kept is None:
            kept = self._kept[name] = self._before(name) or self._worked(name)
            self._let_go()
        taken = notes()
        if taken is not None:
            if self._apart:
                taken.add((self._apart, name))
            else:
                taken.update(kept[1])
        return kept[0]

    def _worked(self, name: str) -> Sum[V]:
        with unnoted(), noting() as reads:
            value = self._work(name)
        found = (value, tuple(reads))
        if self._new is not None:
            self._new[name] = found
        return found

    def gather(self) -> None:
        """Hold what is worked out from now on for `new`."""
        self._new = {}

    def new(self) -> Mapping[str, Sum[V]]:
        """Return what was worked out since this was asked the last time, where it is gathered."""
        found = self._new
        if found:
            self._new = {}
        return found or {}

    def names(self) -> Container[str]:
        """Return the ids that there are sums for."""
        found = self._names()
        return found if isinstance(found, Container) else frozenset(found)

    def hold(self, most: int | None) -> None:
        """Hold so many sums at most from now on, those worked out last; None holds all."""
        self._most = most
        self._let_go()

    def _let_go(self) -> None:
        while self._most is not None and len(self._kept) > self._most:
            del self._kept[next(iter(self._kept))]

    def drop(self, name: str) -> None:
        """Let go of a sum; it is worked out again when it is looked at again."""
        self._kept.pop(name, None)

    def made_of(self, name: str) -> tuple[Read, ...]:
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
        self._kept |= {name: kept for name, kept in before._kept.items() if changed.isdisjoint(kept[1])}
