"""What each thing that was worked out looked at, held so small that it can be gone through whole at each make."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, KeysView
from typing import Any, Final

from maker_site.pages.noting import Read

_MANY: Final = 400
"""Above so many ids of one kind the whole kind is noted instead."""


class Looked:
    """Notes by who took them: a kind, such as a batch of pages, and a name."""

    def __init__(self) -> None:
        self._numbers: dict[Read, int] = {}
        self._reads: list[Read] = []
        self._by: dict[str, dict[str, tuple[int, ...]]] = defaultdict(dict)

    def note(self, kind: str, name: str, reads: Iterable[Read]) -> None:
        """Note what was looked at, in place of what was noted before."""
        self._by[kind][name] = tuple(sorted(map(self._number, reads)))

    def forget(self, kind: str, name: str) -> None:
        """Take no more notice of somebody."""
        self._by[kind].pop(name, None)

    @property
    def kinds(self) -> KeysView[str]:
        """The kinds of those who took notes."""
        return self._by.keys()

    def reads(self, kind: str, name: str) -> tuple[Read, ...] | None:
        """Return what somebody looked at; None for who took no notes."""
        looked = self._by[kind].get(name)
        return None if looked is None else tuple(self._reads[number] for number in looked)

    def names(self, kind: str) -> KeysView[str]:
        """Return who took notes."""
        return self._by[kind].keys()

    def stale(self, kind: str, changed: Iterable[Read]) -> set[str]:
        """Return who looked at something that has changed."""
        numbers = {self._numbers[read] for read in changed if read in self._numbers}
        if not numbers:
            return set()
        return {name for name, looked in self._by[kind].items() if not numbers.isdisjoint(looked)}

    def as_data(self) -> Any:
        """Return all of it as plain values."""
        return self._reads, dict(self._by)

    @classmethod
    def of(cls, data: Any) -> Looked:
        """Return it out of plain values."""
        found = cls()
        found._reads, by = data
        found._numbers = {read: number for number, read in enumerate(found._reads)}
        found._by.update(by)
        return found

    def _number(self, read: Read) -> int:
        number = self._numbers.get(read)
        if number is None:
            number = self._numbers[read] = len(self._reads)
            self._reads.append(read)
        return number


def reduced(reads: Iterable[Read]) -> frozenset[Read]:
    """Return the same without what a whole kind holds already; of very many of one kind, the whole kind."""
    by_kind: dict[str, set[str | None]] = defaultdict(set)
    for kind, name in reads:
        by_kind[kind].add(name)
    found: set[Read] = set()
    for kind, names in by_kind.items():
        whole = None in names or len(names) > _MANY
        found |= {(kind, None)} if whole else {(kind, name) for name in names}
    return frozenset(found)
