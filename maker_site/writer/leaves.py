"""A digest of everything that a page may have looked at, so that a later make can tell whether it has changed."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from typing import Final

from maker_site.pages.notebook import POINTS, Notebook
from maker_site.pages.noting import Read, unnoted
from maker_site.records import Pressing
from maker_site.records.remembered import Remembered, digest_of
from maker_site.workings.starting_point import StartingPoint
from maker_site.writer.kept import Kept

_MANY: Final = 400
"""Above so many ids of one kind the whole kind is noted instead."""
_NONE: Final = "-"
_KIND: Final = "points"


class Leaves:
    """The digests of one notebook's records and of the sums that are noted by themselves."""

    def __init__(self, book: Notebook, remembered: Remembered, kept: Kept) -> None:
        self._book = book
        self._digests = remembered.digests
        self._kept = kept
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

    def all(self) -> dict[Read, str]:
        """Return the digest of each thing of each kind that may be noted."""
        names: list[Read] = [(kind, None) for kind in (*_RECORDS, *_ROWS, "blanks on", "projects on", *_SINGLE)]
        for kind, found in self._kinds().items():
            names += [(kind, name) for name in found]
        return {read: self.of(read) for read in names}

    def _kinds(self) -> Mapping[str, Mapping[str, object]]:
        book, workshop = self._book, self._book.workshop
        return {
            "blank": workshop.blanks,
            "press": workshop.presses,
            "supply": workshop.supplies,
            "project": workshop.projects,
            "article": workshop.articles,
            "rows of project": book.pressings_by_project,
            "rows of blank": book.pressings_by_blank,
            "rows of press": book.pressings_by_press,
            "blanks on": book.blanks_on,
            "projects on": book.names_by_blank,
            "picture": book.pictures,
            "artwork": book.artwork,
        }

    def _whole(self, kind: str) -> str:
        match kind:
            case "today":
                return self._book.day.isoformat()
            case "cautions":
                return digest_of(self._book.said)
            case "rows":
                return digest_of([self._digests.get(row.id) for row in self._book.workshop.pressings])
            case "points":
                return digest_of([self.of((kind, name)) for name in self._book.workshop.blanks])
        return digest_of([(name, self.of((kind, name))) for name in self._kinds()[kind]])

    def _one(self, kind: str, name: str) -> str:
        if kind == POINTS:
            return self._points(name)
        found = self._kinds()[kind].get(name)
        if found is None:
            return _NONE
        if kind in _RECORDS:
            file = f"articles/{name}.md" if kind == "article" else found.origin.file  # type: ignore[attr-defined]
            return self._digests.get(file, _NONE)
        if kind in _ROWS:
            return self._rows(found)  # type: ignore[arg-type]
        return digest_of(found)

    def _rows(self, rows: Sequence[Pressing]) -> str:
        return digest_of([self._digests.get(row.id) for row in rows])

    def _points(self, blank: str) -> str:
        """Return the digest of where to begin with a blank; worked out only where what it comes from has changed."""
        if blank not in self._book.workshop.blanks:
            return _NONE
        kept = self._kept.get(_KIND, blank)
        if kept is not None and self.key(as_reads(kept[0])) == kept[1]:
            self._kept.keep(_KIND, blank)
            return str(kept[2])
        digest = digest_of([self._point(point) for point in self._book.points[blank]])
        reads = reduced(self._book.points.made_of(blank))
        self._kept.put(_KIND, blank, "", [as_lists(reads), self.key(reads), digest])
        return digest

    def _point(self, point: StartingPoint) -> object:
        behind = point.evidence
        rows = self._rows(behind.pressings) if behind else None
        setting = behind.setting if behind else None
        return (
            *(point.source.value, point.reason, point.true, point.temperature_range, point.time, point.time_range),
            *(point.pressure, point.face, point.press, point.dial, point.relative, setting, rows),
        )


_RECORDS: Final = ("blank", "press", "supply", "project", "article")
_ROWS: Final = ("rows of project", "rows of blank", "rows of press")
_SINGLE: Final = ("today", "cautions", "rows")


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
