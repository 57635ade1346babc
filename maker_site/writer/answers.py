"""Answers kept ready: every setting that can be found, on disk beside no record of the maker's.

The kept file can be thrown away at any time, which costs time only. It is used while its fingerprint fits, is replaced
whole, and is made again where any part that is read of it does not agree with its checksum. Nothing that is slow to
import is imported while it fits.
"""

from __future__ import annotations

import contextlib
import json
import os
import sqlite3
import tempfile
import time
import zlib
from array import array
from collections.abc import Callable, Iterator, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Final, TypeVar

from maker_site.frozen import frozen
from maker_site.workings.finding.index import Index, Span, Vocabulary
from maker_site.writer.cache_folder import is_among_records, kept_file
from maker_site.writer.fingerprint import fingerprint

if TYPE_CHECKING:  # importing the records room is slow
    from maker_site.records import Problem, Workshop
    from maker_site.workings.finding.rows import Row

T = TypeVar("T")
_FORM: Final = 1
"""Of the kept file; goes up when what is kept changes its shape."""
_AT_ONCE: Final = 500
_A_DAY: Final = 86400
_TABLE: Final = (
    "CREATE TABLE kept (kind TEXT, number INTEGER, data BLOB, sum INTEGER, PRIMARY KEY (kind, number)) WITHOUT ROWID"
)


class RecordsBroken(Exception):
    """The records have errors, so there is nothing to answer from."""

    def __init__(self, problems: Sequence[Problem]) -> None:
        super().__init__(f"{len(problems)} problems")
        self.problems = tuple(problems)


class _NotKept(Exception):
    """The kept file is missing, of other records, or damaged."""


_MAKE_AGAIN: Final = (_NotKept, sqlite3.Error, ValueError, OSError)
"""What reading a kept file may raise that says no more than that it can't be used."""


@frozen
class Answers:
    """What can be asked of the records, read part by part as it is asked."""

    _kept: sqlite3.Connection

    @property
    def shop(self) -> Mapping[str, str]:
        """Return how the shop shows temperatures: ``{"temperature": "C"}``."""
        return dict(json.loads(self._one("shop", 0)))

    @property
    def blanks(self) -> Sequence[str]:
        """Return the ids of all blanks, sorted."""
        return list(json.loads(self._one("blanks", 0)))

    @property
    def presses(self) -> Sequence[str]:
        """Return the ids of all presses, sorted."""
        return list(json.loads(self._one("presses", 0)))

    @property
    def vocabulary(self) -> Vocabulary:
        """Return every word and figure that can be found."""
        words = self._one("words", 0).decode().split("\n")
        return Vocabulary(words, [Span(*each) for each in json.loads(self._one("spans", 0))])

    def postings(self, number: int) -> Sequence[int]:
        """Return the rows that say a word or figure of the vocabulary."""
        found = array("I")
        found.frombytes(self._one("postings", number))
        return found

    def rows(self, numbers: Sequence[int]) -> Iterator[str]:
        """Yield rows, each as the JSON text of its facts, in the order asked for."""
        for start in range(0, len(numbers), _AT_ONCE):
            some = numbers[start : start + _AT_ONCE]
            marks = ",".join("?" * len(some))
            asked = f"SELECT number, data, sum FROM kept WHERE kind = 'row' AND number IN ({marks})"
            found = {number: _whole(data, check) for number, data, check in self._kept.execute(asked, some)}
            if len(found) < len(set(some)):
                raise _NotKept
            yield from (found[number].decode() for number in some)

    def likes(self) -> Mapping[int, str]:
        """Return the blank that a row's setting is taken from, for rows where it is another's."""
        return {int(number): blank for number, blank in json.loads(self._one("likes", 0)).items()}

    def starting_points(self, blank: str) -> Sequence[Mapping[str, object]]:
        """Return the facts of where to begin with a blank: the first and the runner-up, where there is one."""
        return list(json.loads(self._one("start", self.blanks.index(blank))))

    def _one(self, kind: str, number: int) -> bytes:
        asked = "SELECT data, sum FROM kept WHERE kind = ? AND number = ?"
        found = self._kept.execute(asked, (kind, number)).fetchone()
        if found is None:
            raise _NotKept
        return _whole(*found)


def _whole(data: bytes, check: int) -> bytes:
    if not isinstance(data, bytes) or zlib.crc32(data) != check:
        raise _NotKept
    return data


def ask(content: Path, question: Callable[[Answers], T], cache: Path | None = None) -> T:
    """Return what `question` gives for the answers from a content folder, from the kept file where it fits.

    `question` may be called twice, so it must do nothing but read. `cache` is the folder of kept files, the user's own
    where None. Where nothing can be kept the answers are worked out and forgotten. Raises RecordsBroken.
    """
    now = fingerprint(content)
    file = kept_file("settings", content, cache)
    with contextlib.suppress(*_MAKE_AGAIN), contextlib.closing(_open(file, now)) as kept:
        return question(Answers(kept))
    made_now = _made(content, now, cache)
    with contextlib.closing(made_now) as made:
        _keep(made, file, content)
        return question(Answers(made))


def starting_points_on(
    content: Path, blank: str, press: str, cache: Path | None = None
) -> Sequence[Mapping[str, object]]:
    """Return the facts of where to begin with a blank on one press, worked out from the records; both must be known.

    Not kept: there are as many of these as blanks times presses. Raises RecordsBroken.
    """
    from maker_site.workings.evidence import evidence_of
    from maker_site.workings.finding.rows import starts
    from maker_site.workings.starting_point import starting_points

    workshop = _read(content, cache)
    record = workshop.blanks[blank]
    return starts(record, starting_points(record, workshop, evidence_of(workshop), workshop.presses[press]))


def _open(file: Path, now: str) -> sqlite3.Connection:
    if not file.is_file():
        raise _NotKept
    kept = sqlite3.connect(f"{file.resolve().as_uri()}?mode=ro&immutable=1", uri=True)
    try:
        if Answers(kept)._one("fingerprint", _FORM).decode() != now:
            raise _NotKept
    except BaseException:
        kept.close()
        raise
    return kept


def _made(content: Path, now: str, cache: Path | None) -> sqlite3.Connection:
    """Return the answers, worked out from the records into memory."""
    from maker_site.records.uncollected import uncollected

    with uncollected():
        return _worked_out(content, now, cache)


def _worked_out(content: Path, now: str, cache: Path | None) -> sqlite3.Connection:
    from maker_site.workings.evidence import evidence_of
    from maker_site.workings.finding.index import index
    from maker_site.workings.finding.rows import points_by_blank, rows, starts

    workshop = _read(content, cache)
    groups = evidence_of(workshop)
    points = points_by_blank(workshop, groups)
    found = rows(workshop, groups, points)
    made = sqlite3.connect(":memory:")
    made.execute(_TABLE)
    with made:
        begin = [starts(blank, points[blank.id]) for _, blank in sorted(workshop.blanks.items())]
        values = _values(workshop, found, index(row.sayings for row in found), begin)
        made.executemany(
            "INSERT INTO kept VALUES (?, ?, ?, ?)",
            ((kind, number, data, zlib.crc32(data)) for kind, number, data in values),
        )
        made.execute(
            "INSERT INTO kept VALUES ('fingerprint', ?, ?, ?)", (_FORM, now.encode(), zlib.crc32(now.encode()))
        )
    return made


def _read(content: Path, cache: Path | None) -> Workshop:
    from maker_site.records import load
    from maker_site.writer.shelf import shelved

    with shelved(content, cache) as remembered:
        findings = load(content, remembered)
    if findings.workshop is None:
        raise RecordsBroken(findings.problems)
    return findings.workshop


def _values(
    workshop: Workshop, found: Sequence[Row], indexed: Index, starts: Sequence[Sequence[Mapping[str, object]]]
) -> Iterator[tuple[str, int, bytes]]:
    """Yield all that is kept, each by its kind and number."""
    yield "shop", 0, _json({"temperature": workshop.shop.units.temperature})
    yield "blanks", 0, _json(sorted(workshop.blanks))
    yield "presses", 0, _json(sorted(workshop.presses))
    yield "words", 0, "\n".join(indexed.vocabulary.words).encode()
    yield "spans", 0, _json([[span.kind, span.low, span.high] for span in indexed.vocabulary.spans])
    yield "likes", 0, _json({number: row.like for number, row in enumerate(found) if row.like})
    for number, posted in enumerate(indexed.postings):
        yield "postings", number, posted.tobytes()
    for number, row in enumerate(found):
        yield "row", number, _json(row.facts)
    for number, start in enumerate(starts):
        yield "start", number, _json(start)


def _json(value: object) -> bytes:
    return json.dumps(value, ensure_ascii=False).encode()


def _keep(made: sqlite3.Connection, file: Path, content: Path) -> None:
    """Put the answers on disk whole or not at all; what can't be kept is worked out again next time."""
    if is_among_records(file, content):
        return
    with contextlib.suppress(OSError, sqlite3.Error):
        file.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
        _sweep(file.parent)
        handle, name = tempfile.mkstemp(prefix=".settings-", suffix=".part", dir=file.parent)
        part = Path(name)
        try:
            with os.fdopen(handle, "wb") as out:
                out.write(made.serialize())
                out.flush()
                os.fsync(out.fileno())
            part.replace(file)
        finally:
            part.unlink(missing_ok=True)


def _sweep(folder: Path) -> None:
    """Remove what runs that were killed half-way left behind, a day later."""
    for left in folder.glob(".settings-*.part"):
        if time.time() - left.stat().st_mtime > _A_DAY:
            left.unlink(missing_ok=True)
