"""What one make leaves to the next, in this process or in another, so that the next looks only at what was touched.

Records are compared with those of the last make one by one; what was worked out says what it looked at (`looked`), so
what differs tells what is to be worked out anew. Between processes the shelf keeps the records as they were and `State`
the rest; where they do not belong together, everything is worked out.
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterable, Iterator, Mapping
from pathlib import Path
from typing import Any, Final, TypeVar

from maker_site.pages.notebook import Notebook, noted
from maker_site.pages.noting import Noted, Read, noting, unnoted
from maker_site.pages.public.order import Order
from maker_site.pages.taking_over import take_apart_over, take_order_over, take_over, take_rows_over
from maker_site.pages.worked import Sum
from maker_site.records import load
from maker_site.records.problems import Problem
from maker_site.records.remembered import Remembered, digest_of
from maker_site.workings.review import over_limit, review_sheets, too_hot
from maker_site.writer.kept import Kept
from maker_site.writer.kinds import ASIDES, differences, digest_of_sum, order_of, records_of, singles_of
from maker_site.writer.known import KnownPaper
from maker_site.writer.look import Look, look_at_records, look_at_site
from maker_site.writer.looked import reduced
from maker_site.writer.sameness import program
from maker_site.writer.shelf import Shelf
from maker_site.writer.shown import Showing, Shown
from maker_site.writer.site_folder import SiteFolder
from maker_site.writer.state import State

V = TypeVar("V")
_HOT: Final = "over limit"
_SUM: Final = "sum"
_BATCH: Final = "batch"
_MENU: Final = "menu paper"


class Memory:
    """Kept from make to make by who makes again and again. One that is new knows what was kept on disk."""

    def __init__(self, *, for_more: bool = True) -> None:
        """For one make alone unless `for_more`: then what only the next one has use for is not held."""
        self._is_for_more = for_more
        self.remembered = Remembered()
        self.state = State()
        self._out = Path()
        self._touched: frozenset[str] | None = None
        """Since the last make that came to its end; None where that is not known."""
        self._is_told = False
        self._book: Notebook | None = None
        self._before: Notebook | None = None
        """The notebook of the last make, while it is not known whether the order of the public copy is as it was."""
        self._kept: Kept | None = None
        self._shelf: Shelf | None = None
        self._shown: Shown | None = None
        self._changed: frozenset[Read] | None = None
        """What differs from the last make that came to its end; None where that is not known."""
        self._order: Order | None = None
        self.papers: Mapping[str, KnownPaper] | None = None
        """What the papers of the last make are made of."""
        self._is_first = False
        """Nothing is on disk that belongs to this make or to one before it."""
        self._is_sure = False
        """The site is as a make in this process left it, as far as one is told."""
        self._ground: str | None = None
        self._program: Final = program()
        """As it is when this process begins: what it runs does not change while it runs."""
        self._sums: dict[str, tuple[object, object, frozenset[Read]]] = {}

    def tell(self, touched: Iterable[str] | None) -> None:
        """Say which paths, from the content folder, were touched since the last make began; None where not known."""
        known = self._touched is not None and touched is not None
        self._touched = self._touched | frozenset(touched) if known else None  # type: ignore[operator,arg-type]
        self._is_told = True

    def begin(self, content: Path, out: Path, seen: Look | None) -> Kept:
        """Begin a make, and return what is kept on disk. `seen` is a look at the records, where there was one."""
        touched, self._touched = self._touched if self._is_told else None, None
        self._is_told, self._out = False, out
        if self._kept is None or self._shelf is None:
            self._kept = Kept(out)
            self._shown = Shown(self._kept)
            self._shelf = Shelf(self._kept.file, seen or look_at_records(str(content)))
            self.remembered = self._shelf.remembered
            self.state = (self._shelf.mark and State.kept_with(self._kept, self._shelf.mark)) or State()
        elif touched is None:
            self._shelf.look(look_at_records(str(content)))
            self.remembered.turn()
        else:
            self._shelf.see(touched)
            self.remembered.turn(touched)
        self._touched = touched
        return self._kept

    @property
    def knows_before(self) -> bool:
        """Whether the last make is known, so that what differs from it is."""
        return self._changed is not None

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
        before, self._book = self._book or self._earlier(book), book
        if before is None or before.workshop.shop != book.workshop.shop:
            self._changed, self._sums, self.state, self._order = None, {}, State(), None
            return
        with unnoted():
            take_rows_over(book, before)
            changed = differences(records_of(before), records_of(book))
            if before.workshop.pressings != book.workshop.pressings:
                changed.add(("rows", None))
            if {kind for kind, _ in changed} <= ASIDES:
                take_order_over(book, before)  # no list looks at asides
            else:
                changed |= differences(order_of(before), order_of(book))
                self._before = self._before or before
            take_apart_over(book, before, frozenset(changed))
            changed |= self._moved(book, changed)
            take_over(book, before, frozenset(changed))
            self._add(changed)

    def _earlier(self, book: Notebook) -> Notebook | None:
        """Return the notebook of the last make in another process, as far as it is needed to compare with it."""
        if self._shelf is None or not self.state.looked.names(_BATCH):
            return None
        earlier = self._shelf.earlier
        workshop = load(book.workshop.root, earlier, across=False).workshop
        if workshop is None or earlier.read:
            return None
        pictures, artwork = (Noted(kind, self._files_before(kind, now)) for kind, now in _files(book).items())
        before = Notebook(noted(workshop), pictures, (), book.day, {}, artwork)
        self._changed = frozenset()
        return before

    def _files_before(self, kind: str, now: Mapping[str, object]) -> dict[str, Any]:
        """Return what was found of files the last time, as far as it differs from what is found now."""
        known = self.state.files[kind]
        same = {
            path: each
            for path, each in now.items()
            if path in known and self._digest_of(kind, path, each) == known[path]
        }
        return {**dict.fromkeys(known), **same}

    def _digest_of(self, kind: str, path: str, found: object) -> str:
        """Return the digest of what was found of a file; where it was not touched, that which it had."""
        known = self.state.files[kind].get(path)
        return known if known and self.remembered.is_quiet(path) else digest_of(found)

    def _moved(self, book: Notebook, changed: Iterable[Read]) -> set[Read]:
        """Return which of the sums that are noted by themselves have changed; of a kind as a whole too."""
        found: set[Read] = set()
        for kind in book.apart:
            known = self.state.apart[kind]
            for name in self.state.looked.stale(kind, changed):
                before = known.pop(name)
                if self._apart(book, kind, name) != before:
                    found |= {(kind, name), (kind, None)}
        return found

    def _apart(self, book: Notebook, kind: str, name: str) -> str:
        """Return the digest of a sum that is noted by itself, and note what it was made of."""
        known = self.state.apart[kind]
        if name not in known:
            with unnoted():
                sums = book.apart[kind]
                known[name] = digest_of_sum(book, kind, name, self.remembered.digest_of_row)
                made_of = sums.made_of(name) if name in sums.names() else ()
                self.state.looked.note(kind, name, reduced(made_of))
        return known[name]

    def review(self, book: Notebook) -> Iterator[Problem]:
        """Yield what `review` finds, worked out anew only where what it comes from has changed since any make."""
        state, projects = self.state, book.workshop.projects
        with unnoted():
            yield from review_sheets(book.workshop)
            seen = state.looked.names(_HOT)
            for name in seen - projects.keys():
                state.looked.forget(_HOT, name)
                state.hot.pop(name, None)
            for name in sorted(state.looked.stale(_HOT, self._changed or ()) | (projects.keys() - seen)):
                with noting() as notes:
                    words = over_limit(book.remakes[name])
                if not self._is_for_more:
                    book.remakes.drop(name)  # where it is wanted is in another process, which has not been forked yet
                self._note(_HOT, name, notes)
                state.hot.pop(name, None)
                if words:
                    state.hot[name] = words
            for name, words in sorted(state.hot.items()):
                yield too_hot(projects[name], words)

    def settle(self, book: Notebook) -> Order:
        """Take what is known only when all is read, and return the order of the public copy."""
        self._book = book
        order, last, before = Order(book), self._order, self._before
        if before is not None:
            self._add(differences((last or Order(before)).kinds, order.kinds))
        elif last is not None:
            order.take_over(last)
        self._order, self._before = order, None
        said, self.state.singles = self.state.singles, singles_of(book)
        self._add({(kind, None) for kind, value in self.state.singles.items() if said.get(kind) != value})
        if self._shown:
            there = book.workshop.projects.keys() | book.workshop.blanks.keys()
            self._shown.forget(self.state.looked, self._changed or (), there)
        return order

    def stale(self, copy: str, base: str) -> set[str]:
        """Return the batches of a copy that show something that has changed, of those that were built before.

        `base` is what all pages of the copy depend on.
        """
        built = {name for name in self.state.looked.names(_BATCH) if name.startswith(f"{copy}/")}
        same = self._changed is not None and self.state.bases.get(copy) == base
        self.state.bases[copy] = base
        return built & self.state.looked.stale(_BATCH, self._changed or ()) if same else built

    def note_batch(self, name: str, reads: Iterable[Read]) -> None:
        """Note what a batch of pages looked at."""
        self._note(_BATCH, name, reads)

    def shown_before(self, kind: str, name: str) -> Sum[Any] | None:
        """Return what a list showed of a thing in the last make, where nothing that it comes from has changed."""
        return self._shown.before(self.state.looked, kind, name) if self._shown and self.knows_before else None

    def note_shown(self, each: Showing) -> None:
        """Note what a list shows of a thing, and what was looked at for it."""
        assert self._shown is not None  # a make has begun
        name = sys.intern(each.name)  # it came out of another process, and lists of many kinds have the same names
        self._note(self._shown.keep(each._replace(name=name)), name, each.reads)

    def _note(self, kind: str, name: str, reads: Iterable[Read]) -> None:
        assert self._book is not None  # a make has begun
        looked = reduced(reads)
        self.state.looked.note(kind, name, looked)
        for of, which in looked:
            sums = self._book.apart.get(of)
            if sums is not None:
                for each in list(sums) if which is None else [which]:
                    self._apart(self._book, of, each)

    def is_as_before(self, reads: Iterable[Read]) -> bool:
        """Tell whether nothing of what was looked at has changed since the last make that came to its end."""
        return self._changed is not None and self._changed.isdisjoint(reads)

    def sum(self, name: str, made_of: object, work: Callable[[], V]) -> V:
        """Return what is worked out from the notebook and from `made_of`, anew only where that has changed."""
        known = self._sums.get(name)
        if known is not None and known[1] == made_of and self.is_as_before(known[2]):
            return known[0]  # type: ignore[return-value]
        with noting() as reads:
            value = work()
        self._sums[name] = (value, made_of, frozenset(reads))
        return value

    @property
    def program(self) -> str:
        """A digest of the program, as `sameness.program` has it."""
        return self._program

    def menu_stands(self, base: str) -> bool | None:
        """Return whether there is a menu on paper, where it would show what it showed; None where it may not."""
        state, name = self.state, digest_of(base)
        if self._changed is None or name not in state.looked.names(_MENU) or state.looked.stale(_MENU, self._changed):
            return None
        return state.menu

    def note_menu(self, base: str, reads: Iterable[Read], *, is_there: bool) -> None:
        """Note what the menu on paper looked at, and whether there is anything on it; `base` is what is not noted."""
        for name in list(self.state.looked.names(_MENU)):
            self.state.looked.forget(_MENU, name)
        self._note(_MENU, digest_of(base), reads)
        self.state.menu = is_there

    def keep_records(self) -> None:
        """Put on disk what was read of the records, and let go of it: for who is about to hold much else."""
        assert self._shelf is not None  # a make has begun
        self._shelf.keep()
        if not self._is_for_more:
            self.remembered.forget()
            self._shelf.earlier.forget()

    def end(self, manifest: str) -> None:
        """End a make that has put its site into place, which has its list of files."""
        self.state.manifest = manifest
        self._is_first, self._is_sure = self._is_first or self._changed is None, True
        self._changed, self._touched = frozenset(), frozenset()

    def drop(self) -> None:
        """Begin anew the next time: the make did not come to its end, and what is known may be half of it."""
        self._kept, self._shelf, self._book, self._changed, self.state = None, None, None, None, State()
        self._sums, self._touched, self._order, self._before, self.papers = {}, None, None, None, None

    def write(self, also: Callable[[str], None] = lambda left: None) -> None:
        """Put on disk what is to be kept; who waits for the pages need not wait for this.

        `also` keeps more, given what is seen of the site as it was left.
        """
        if self._kept is None or self._shelf is None or self._changed is None:
            return
        self._shelf.keep()
        assert self._book is not None  # a make has come to its end
        for kind, now in _files(self._book).items():
            self.state.files[kind] = {path: self._digest_of(kind, path, each) for path, each in now.items()}
        self.state.site = look_at_site(str(self._out))
        also(self.state.site)
        if self._shelf.mark:
            self.state.put(self._kept, self._shelf.mark)
        self._kept.write(patch=not self._is_first)
        if self._shown:
            self._shown.let_go()
        self._is_first = False

    def stands(self, site: SiteFolder, bases: Mapping[str, str]) -> bool:
        """Tell whether the site is as the last make left it, and its pages depend on the same `bases`, by copy."""
        if self._changed is None or self.state.bases != bases or self.state.manifest != site.manifest:
            return False
        return self._is_sure or self.state.site == look_at_site(str(self._out))

    def _add(self, changed: Iterable[Read]) -> None:
        if self._changed is not None:
            self._changed |= frozenset(changed)


def _files(book: Notebook) -> Mapping[str, Mapping[str, object]]:
    """Return what was found of pictures and of design files, by kind and path."""
    kinds = (("picture", book.pictures), ("artwork", book.artwork))
    return {kind: found.unnoted if isinstance(found, Noted) else found for kind, found in kinds}
