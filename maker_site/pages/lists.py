"""What lists show of each thing, worked out once: a list is put together of these."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial
from typing import TYPE_CHECKING, Any, TypeAlias, TypeVar

from maker_site.pages.noting import Read
from maker_site.pages.worked import Sum, Worked

if TYPE_CHECKING:  # which holds these
    from maker_site.pages.notebook import Notebook

V = TypeVar("V")
Before: TypeAlias = Callable[[str, str], Sum[Any] | None]
"""Gives what a list showed of a thing in an earlier make, by kind and id, where it still holds."""


def nothing_shown(kind: str, name: str) -> None:
    """Return None: nothing is known of what was shown before."""


class Lists:
    """What lists of each kind show."""

    def __init__(self, book: Notebook, before: Before) -> None:
        self._book, self._before = book, before
        self._most: int | None = None
        self._kinds: dict[str, tuple[Callable[[Notebook, str], Any], Worked[Any]]] = {}

    def shown(self, kind: str, work: Callable[[Notebook, str], V], name: str) -> V:
        """Return what lists of a kind show of one thing, which `work` works out."""
        if kind not in self._kinds:
            self._begin(kind, work)
        found: V = self._kinds[kind][1][name]
        return found

    def new(self) -> Iterator[tuple[str, str, Sum[Any]]]:
        """Yield what was worked out since this was asked the last time: a kind, an id and the sum."""
        for kind, (_, sums) in self._kinds.items():
            for name, found in sums.new().items():
                yield kind, name, found

    def hold(self, most: int) -> None:
        """Hold so much of each kind at most from now on."""
        self._most = most
        for _, sums in self._kinds.values():
            sums.hold(most)

    def take_over(self, earlier: Lists, changed: frozenset[Read]) -> None:
        """Take from an earlier make what was made of nothing that has changed since."""
        for kind, (work, sums) in earlier._kinds.items():
            self._begin(kind, work).take_over(sums, changed)

    def _begin(self, kind: str, work: Callable[[Notebook, str], Any]) -> Worked[Any]:
        sums: Worked[Any] = Worked(tuple, partial(work, self._book), before=partial(self._before, kind))
        sums.hold(self._most)
        sums.gather()
        self._kinds[kind] = (work, sums)
        return sums
