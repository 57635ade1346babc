"""What one make leaves to the next in the same process, so that the next looks only at what was touched."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from pathlib import Path
from typing import Any, Final, TypeVar

from maker_site.pages.notebook import Notebook
from maker_site.pages.noting import Noted, NotedOutlines, Read, noting, unnoted
from maker_site.records.base import Record
from maker_site.records.problems import Problem
from maker_site.records.remembered import Remembered, digest_of
from maker_site.workings.review import over_limit, review_sheets, too_hot
from maker_site.writer.kept import Kept
from maker_site.writer.leaves import Leaves, as_lists, as_reads, kinds_of, reduced, singles_of
from maker_site.writer.look import Look
from maker_site.writer.sameness import program
from maker_site.writer.shelf import Shelf

V = TypeVar("V")
_ABSENT = object()
_HOT = "over limit"
_SUM = "sum"


class Memory:
    """Kept from make to make by who makes again and again. One that is new remembers nothing."""

    def __init__(self, *, for_more: bool = True) -> None:
        """For one make alone unless `for_more`: then what only the next one has use for is not held."""
        self._is_for_more = for_more
        self.remembered = Remembered()
        self.stamps: Mapping[str, str] | None = None
        """The site as the last make left it."""
        self.batches: dict[str, tuple[str, frozenset[Read], dict[str, Any]]] = {}
        """What each batch of pages was made on, looked at and came to."""
        self._touched: frozenset[str] | None = None
        """Since the last make that came to its end; None where that is not known."""
        self._is_told = False
        self._book: Notebook | None = None
        self._kinds: Mapping[str, Mapping[str, object]] = {}
        self._singles: Mapping[str, object] = {}
        self._leaves: Leaves | None = None
        self._kept: Kept | None = None
        self._changed: frozenset[Read] | None = None
        self._ground: str | None = None
        self._program: Final = program()
        """As it is when this process begins: what it runs does not change while it runs."""
        self._hot: dict[str, tuple[str | None, frozenset[Read]]] = {}
        """What is said of each project's setting where it is above a limit, with what that comes from."""
        self._sums: dict[str, tuple[Any, object, frozenset[Read]]] = {}

    def tell(self, touched: Iterable[str] | None) -> None:
        """Say which paths, from the content folder, were touched since the last make began; None where not known."""
        known = self._touched is not None and touched is not None
        self._touched = self._touched | frozenset(touched) if known else None  # type: ignore[operator,arg-type]
        self._is_told = True

    def begin(self, out: Path) -> Kept:
        """Begin a make, and return what is kept on disk."""
        self._touched, self._is_told = self._touched if self._is_told else None, False
        self.remembered.turn(self._touched)
        if self._kept is None:
            self._kept = Kept(out)
        return self._kept

    def restore(self, file: Path, seen: Look) -> Shelf:
        """Take what the last process read of the records, and return where it is kept; for the first make."""
        shelf = Shelf(file, seen)
        self.remembered = shelf.remembered
        return shelf

    @property
    def is_told(self) -> bool:
        """Whether it is known what was touched since the last make."""
        return self.remembered.is_quiet("theme") and self.remembered.is_quiet("fonts")

    def ground(self, look: Callable[[], str]) -> str:
        """Return a digest of the theme and the fonts, looked at again where they may have been touched."""
        if self._ground is None or not self.is_told:
            self._ground = look()
        return self._ground

    def hand_over(self, book: Notebook) -> None:
        """Give a new notebook what the last one worked out and nothing that has changed has to do with."""
        assert self._kept is not None  # a make has begun
        before, self._book = self._book, book
        if before is None or before.workshop.shop != book.workshop.shop:
            self._changed, self._sums, self._hot, self._kinds = None, {}, {}, kinds_of(book)
            self._leaves = Leaves(book, self.remembered, self._kept)
            return
        with unnoted():
            book.take_rows_over(before)
            now = kinds_of(book)
            changed = _differences(self._kinds, now)
            self._kinds = {**self._kinds, **now}
            if before.workshop.pressings != book.workshop.pressings:
                changed.add(("rows", None))
            self._add(book.take_over(before, frozenset(changed)))
        if self._leaves is not None and self._changed is not None:
            self._leaves.turn(book, self._changed)

    def review(self, book: Notebook) -> Iterator[Problem]:
        """Yield what `review` finds, worked out anew only where what it comes from has changed since any make."""
        assert self._kept is not None  # a make has begun
        assert self._leaves is not None  # a notebook was handed over
        base = digest_of(self._program, book.workshop.shop)
        with unnoted():
            yield from review_sheets(book.workshop)
            for name, project in book.workshop.projects.items():
                words = self._over_limit(book, name, base, self._leaves, self._kept)
                if words:
                    yield too_hot(project, words)

    def _over_limit(self, book: Notebook, name: str, base: str, leaves: Leaves, kept: Kept) -> str | None:
        known = self._hot.get(name)
        if known is not None and self.is_as_before(known[1]):
            return known[0]
        before = kept.get(_HOT, name, base)
        if before is not None and leaves.key(reads := as_reads(before[0])) == before[1]:
            kept.keep(_HOT, name)
            words: str | None = before[2]
        else:
            with noting() as notes:
                words = over_limit(book.remakes[name])
            if not self._is_for_more:
                book.remakes.drop(name)  # where it is wanted is in another process, which has not been forked yet
            reads = reduced(notes)
            kept.put(_HOT, name, base, [as_lists(reads), leaves.key(reads), words])
        if self._is_for_more:
            self._hot[name] = (words, reads)
        return words

    def settle(self, book: Notebook, more: Mapping[str, Mapping[str, object]]) -> Leaves:
        """Take what is known only when all is read, and return the digests of everything. `more` is plain values."""
        self._book = book
        singles, self._singles = self._singles, singles_of(book)
        others = _differences({kind: self._kinds.get(kind, {}) for kind in more}, more)
        self._kinds = {**self._kinds, **more}
        moved = {(kind, None) for kind, value in self._singles.items() if singles.get(kind, _ABSENT) != value}
        self._add(frozenset(others | moved))
        assert self._leaves is not None  # a notebook was handed over
        self._leaves.turn(book, self._changed or ())
        self._leaves.also(more)
        return self._leaves

    def note_batch(self, name: str, came_to: tuple[str, frozenset[Read], dict[str, Any]]) -> None:
        """Note what a batch of pages came to, for the next make; who makes once has no next."""
        if self._is_for_more:
            self.batches[name] = came_to

    def is_as_before(self, reads: Iterable[Read]) -> bool:
        """Tell whether nothing of what was looked at has changed since the last make that came to its end."""
        return self._changed is not None and self._changed.isdisjoint(reads)

    def sum(self, name: str, made_of: object, work: Callable[[], V]) -> V:
        """Return what is worked out from the notebook and from `made_of`, anew only where that has changed."""
        known = self._sums.get(name)
        if known is not None and known[1] == made_of and self.is_as_before(known[2]):
            return known[0]  # type: ignore[no-any-return]
        with noting() as reads:
            value = work()
        self._sums[name] = (value, made_of, frozenset(reads))
        return value

    @property
    def program(self) -> str:
        """A digest of the program, as `sameness.program` has it."""
        return self._program

    def stands(self, name: str, base: str) -> bool | None:
        """Return what was kept of a sum with `keep`, where it was made of the same in whichever process; else None."""
        assert self._kept is not None  # a make has begun
        before = self._kept.get(_SUM, name, base)
        if before is None or self._leaves is None or self._leaves.key(as_reads(before[0])) != before[1]:
            return None
        self._kept.keep(_SUM, name)
        return bool(before[2])

    def keep(self, name: str, base: str, *, came_to_something: bool) -> None:
        """Keep on disk what a sum was made of, and whether there is anything of it; `base` is what is not noted."""
        if self._kept is not None and self._leaves is not None and name in self._sums:
            reads = reduced(self._sums[name][2])
            self._kept.put(_SUM, name, base, [as_lists(reads), self._leaves.key(reads), came_to_something])

    def end(self, stamps: Mapping[str, str]) -> None:
        """End a make that has put its site into place."""
        self.stamps, self._changed, self._touched = stamps, frozenset(), frozenset()

    def write(self) -> None:
        """Put on disk what is to be kept; who waits for the pages need not wait for this."""
        if self._kept is not None:
            self._kept.write(patch=True)

    def _add(self, changed: frozenset[Read]) -> None:
        if self._changed is not None:
            self._changed |= changed


def _differences(
    before: Mapping[str, Mapping[str, object]], now: Mapping[str, Mapping[str, object]]
) -> set[tuple[str, str | None]]:
    """Return what differs between two states of some kinds of things, each with its whole kind."""
    found: set[tuple[str, str | None]] = set()
    for kind, things in now.items():
        old, new = _plain(kind, before.get(kind, {})), _plain(kind, things)
        names = {name for name, value in new.items() if not _same(old.get(name, _ABSENT), value)}
        names |= old.keys() - new.keys()
        if names:
            found |= {(kind, name) for name in names} | {(kind, None)}
    return found


def _plain(kind: str, things: Mapping[str, object]) -> Mapping[str, object]:
    if isinstance(things, NotedOutlines) and kind.startswith("whole "):
        return things.wholes
    return things.unnoted if isinstance(things, Noted) else things


def _same(one: object, other: object) -> bool:
    if one is other:
        return True
    if isinstance(one, Record) and isinstance(other, Record):
        return one.__dict__ == other.__dict__  # wherever in the file it is written
    return one == other
