"""A digest of everything that a page may have looked at, so that a later make can tell whether it has changed."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from typing import Final

from maker_site.pages.notebook import MATERIAL, POINTS, Notebook
from maker_site.pages.noting import WHOLE, Read, Worked, unnoted
from maker_site.records import Pressing
from maker_site.records.base import Record
from maker_site.records.remembered import Remembered, digest_of
from maker_site.workings.starting_point import StartingPoint
from maker_site.writer.kept import Kept

_MANY: Final = 400
"""Above so many ids of one kind the whole kind is noted instead."""
_NONE: Final = "-"
_APART: Final = "apart "
"""How the kind begins that a sum which is noted by itself is kept under."""
_OUTLINE: Final = "outline"


class Leaves:
    """The digests of one notebook's records and of the sums that are noted by themselves."""

    def __init__(self, book: Notebook, remembered: Remembered, kept: Kept) -> None:
        self._book = book
        self._digests = remembered.digests
        self._kept = kept
        self._kinds = kinds_of(book)
        self._known: dict[Read, str] = {}

    def key(self, reads: Iterable[Read]) -> str:
        """Return a digest of all that was looked at."""
        return digest_of([(read, self.of(read)) for read in sorted(reads, key=_order)])

    def of(self, read: Read) -> str:
        """Return the digest of one thing, or of a whole kind."""
        if read not in self._known:
            with unnoted():
                kind, name = read
                self._known[read] = self._whole(kind) if name is None else self._one(kind, name)
        return self._known[read]

    def turn(self, book: Notebook, changed: Iterable[Read]) -> None:
        """Go on with a later notebook, which differs in what has `changed`."""
        self._book, self._kinds = book, {**self._kinds, **kinds_of(book)}
        for read in changed:
            self._known.pop(read, None)

    def also(self, kinds: Mapping[str, Mapping[str, object]]) -> None:
        """Take plain values of other kinds too."""
        self._kinds = {**self._kinds, **kinds}

    def _whole(self, kind: str) -> str:
        if kind == "rows":
            return digest_of([self._digests.get(row.id) for row in self._book.workshop.pressings])
        if kind == "today":
            return self._book.day.isoformat()
        if kind in _SINGLE:
            return digest_of(singles_of(self._book)[kind])
        if kind in self._book.apart:
            return digest_of([(name, self.of((kind, name))) for name in self._book.apart[kind]])
        return digest_of([(name, self.of((kind, name))) for name in self._kinds[kind]])

    def _one(self, kind: str, name: str) -> str:
        if kind in self._book.apart:
            return self._apart(kind, name, self._book.apart[kind])
        found = self._kinds[kind].get(name)
        if found is None:
            return _NONE
        if kind in _WHOLE or (kind in _RECORDS and f"{WHOLE}{kind}" not in _WHOLE):
            file = f"articles/{name}.md" if kind == "article" else found.origin.file  # type: ignore[attr-defined]
            return self._digests.get(file, _NONE)
        if kind in _RECORDS:
            return self._outline(found)  # type: ignore[arg-type]
        if kind in _ROWS:
            return self._rows(found)  # type: ignore[arg-type]
        return digest_of(found)

    def _rows(self, rows: Sequence[Pressing]) -> str:
        return digest_of([self._digests.get(row.id) for row in rows])

    def _outline(self, record: Record) -> str:
        """Return the digest of an outline: of its values, wherever in the file they are written."""
        file = record.origin.file
        key = self._digests.get(file, "")
        known = self._kept.get(_OUTLINE, file, key) if key else None
        if known is not None:
            self._kept.keep(_OUTLINE, file)
            return str(known)
        digest = digest_of(record.__dict__)  # in words: the order of a pickled set differs from run to run
        self._kept.put(_OUTLINE, file, key, digest)
        return digest

    def _apart(self, kind: str, name: str, sums: Worked[object]) -> str:
        """Return the digest of a sum that is noted by itself; worked out only where what it comes from has changed."""
        if name not in sums.names():
            return _NONE
        kept = self._kept.get(f"{_APART}{kind}", name)
        if kept is not None and self.key(as_reads(kept[0])) == kept[1]:
            self._kept.keep(f"{_APART}{kind}", name)
            return str(kept[2])
        value = sums[name]
        if kind == POINTS:
            value = [self._point(point) for point in self._book.points[name]]
        digest = digest_of(value)
        reads = reduced(sums.made_of(name))
        self._kept.put(f"{_APART}{kind}", name, "", [as_lists(reads), self.key(reads), digest])
        return digest

    def _point(self, point: StartingPoint) -> object:
        behind = point.evidence
        rows = self._rows(behind.pressings) if behind else None
        setting = behind.setting if behind else None
        return (
            *(point.source.value, point.reason, point.true, point.temperature_range, point.time, point.time_range),
            *(point.pressure, point.face, point.press, point.dial, point.relative, setting, rows),
        )


def kinds_of(book: Notebook) -> dict[str, Mapping[str, object]]:
    """Return all that may be noted by an id, by its kind."""
    workshop = book.workshop
    return {
        "blank": workshop.blanks,
        "press": workshop.presses,
        "supply": workshop.supplies,
        "project": workshop.projects,
        f"{WHOLE}blank": workshop.blanks,
        f"{WHOLE}project": workshop.projects,
        "article": workshop.articles,
        "rows of project": book.pressings_by_project,
        "rows of blank": book.pressings_by_blank,
        "rows of press": book.pressings_by_press,
        "blanks on": book.blanks_on,
        "projects on": book.names_by_blank,
        "picture": book.pictures,
        "artwork": book.artwork,
    }


def singles_of(book: Notebook) -> dict[str, object]:
    """Return all that is noted as one."""
    return {"today": book.day, "cautions": book.said, MATERIAL: book.shown_material}


_RECORDS: Final = ("blank", "press", "supply", "project", "article")
_WHOLE: Final = (f"{WHOLE}blank", f"{WHOLE}project")
_ROWS: Final = ("rows of project", "rows of blank", "rows of press")
_SINGLE: Final = ("today", "cautions", "rows", MATERIAL)


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


def as_lists(reads: Iterable[Read]) -> list[list[str | None]]:
    """Return what was looked at for JSON, sorted."""
    return [[kind, name] for kind, name in sorted(reads, key=_order)]


def as_reads(lists: Iterable[Sequence[str | None]]) -> frozenset[Read]:
    """Return what was looked at out of JSON."""
    return frozenset((str(kind), name) for kind, name in lists)


def _order(read: Read) -> tuple[str, bool, str]:
    return (read[0], read[1] is not None, read[1] or "")
