"""What lists show of each thing, kept from make to make, so that a list is not worked out anew for one thing's sake."""

from __future__ import annotations

from collections import Counter
from collections.abc import Container, Iterable, Iterator
from typing import Any, Final, NamedTuple

from maker_site.pages.notebook import Notebook
from maker_site.pages.noting import Read
from maker_site.pages.worked import Sum
from maker_site.writer.kept import Kept
from maker_site.writer.looked import Looked, reduced
from maker_site.writer.pickles import DAMAGED, put_in, taken_out

_SHOWN: Final = "shown "
"""How its kinds begin among what is kept, and among those who looked at something."""
_FEW: Final = 8
"""Asked for more of one kind than that, all of it is read at once."""
_KINDS: Final = 2
"""Kinds of which all is held at once: pages that list one kind seldom look at more."""


class Showing(NamedTuple):
    """What lists of a kind show of one thing, as bytes, and what was looked at for it."""

    kind: str
    name: str
    data: bytes
    reads: frozenset[Read]


class Shown:
    """What was kept of lists; what `Looked` has no notes of does not hold any more."""

    def __init__(self, kept: Kept) -> None:
        self._kept = kept
        self._asked: Counter[str] = Counter()
        self._read: dict[str, dict[str, bytes]] = {}

    def before(self, looked: Looked, kind: str, name: str) -> Sum[Any] | None:
        """Return what was shown of a thing, and what was looked at for it; None where that has to be worked out."""
        reads = looked.reads(_SHOWN + kind, name)
        if reads is None:
            return None
        data = self._data(_SHOWN + kind, name)
        try:
            return None if data is None else (taken_out(data), reads)
        except DAMAGED:
            return None

    def _data(self, kind: str, name: str) -> bytes | None:
        self._asked[kind] += 1
        if self._asked[kind] < _FEW:
            return self._kept.get_bytes(kind, name)
        if kind not in self._read:
            while len(self._read) >= _KINDS:
                del self._read[next(iter(self._read))]
            self._read[kind] = self._kept.all_bytes(kind)
        return self._kept.new_bytes(kind, name) or self._read[kind].get(name)

    def keep(self, each: Showing) -> str:
        """Keep what is shown now, and return the kind under which it is to be noted what was looked at."""
        self._kept.put_bytes(_SHOWN + each.kind, each.name, "", each.data)
        return _SHOWN + each.kind

    def let_go(self) -> None:
        """Hold no more than what is not on disk yet: for who has put it there, or is done with lists for now."""
        self._asked.clear()
        self._read.clear()

    def forget(self, looked: Looked, changed: Iterable[Read], there: Container[str]) -> None:
        """Forget what looked at something that has changed, and all of what is not there any more."""
        changed = frozenset(changed)
        for kind in [kind for kind in looked.kinds if kind.startswith(_SHOWN)]:
            gone = [name for name in looked.names(kind) if name not in there]
            for name in looked.stale(kind, changed).union(gone):
                looked.forget(kind, name)
                self._kept.forget(kind, name)


def newly_shown(book: Notebook) -> Iterator[Showing]:
    """Yield what lists show that was worked out since this was asked the last time."""
    for kind, name, (value, reads) in book.lists.new():
        yield Showing(kind, name, put_in(value), reduced(reads))
